#include <algorithm>

#include "bowfront/base/contract.hpp"
#include "bowfront/geom/region.hpp"

namespace bowfront {
namespace {

/// How far the directions of neighbours in a chain may differ, rad: above the rounding of angles
/// that were worked out by way of a cosine, and under 1e-6 mm at the edges of a 20 mm groove.
constexpr double kTangentTolerance = 1e-7;

void expect_band_fits(const std::vector<Segment>& chain, double width) {
    BOWFRONT_EXPECTS(!chain.empty());
    BOWFRONT_EXPECTS(width > 0);
    for (std::size_t i = 0; i < chain.size(); ++i) {
        BOWFRONT_EXPECTS(chain[i].length() > kJoint);
        BOWFRONT_EXPECTS(std::abs(chain[i].bulge) <= 1);
        BOWFRONT_EXPECTS(chain[i].straight() || 2 * chain[i].radius() - width > kJoint);
        if (i > 0) {
            const Point arriving = chain[i - 1].tangent(1);
            const Point leaving = chain[i].tangent(0);
            BOWFRONT_EXPECTS(distance(chain[i - 1].to, chain[i].from) <= kJoint);
            BOWFRONT_EXPECTS(distance(arriving, leaving) <= kTangentTolerance);
        }
    }
}

std::vector<Segment> reversed(const std::vector<Segment>& chain) {
    std::vector<Segment> back;
    back.reserve(chain.size());
    for (auto segment = chain.rbegin(); segment != chain.rend(); ++segment) {
        back.push_back(segment->reversed());
    }
    return back;
}

/// The chain from the first point that lies `reach` away from its start, mm; empty where there is
/// none, or nothing is left behind it.
std::vector<Segment> without_start(const std::vector<Segment>& chain, double reach) {
    const Point start = chain.front().from;
    const Contour circle = Contour::circle(start, reach);
    for (auto segment = chain.begin(); segment != chain.end(); ++segment) {
        double share = 2;
        for (const Segment& half : circle.segments()) {
            for (const Point p : meetings(*segment, half)) {
                share = std::min(share, segment->nearest(p));
            }
        }
        if (share <= 1) {
            std::vector<Segment> rest;
            if ((1 - share) * segment->length() > kJoint) {
                rest.push_back(segment->part(share, 1));
            }
            rest.insert(rest.end(), segment + 1, chain.end());
            return rest;
        }
    }
    return {};
}

/// A segment set off to its left, mm: an arc keeps its centre and its sweep.
Segment set_off(const Segment& segment, double left) {
    return {segment.from + left_of(segment.tangent(0)) * left,
            segment.to + left_of(segment.tangent(1)) * left, segment.bulge};
}

/// Appends one edge of the band and what leads from its end to the other edge.
void append_edge(std::vector<Vertex>& vertices, const std::vector<Segment>& chain, double width,
                 BandEnd end) {
    for (const Segment& segment : chain) {
        vertices.push_back({set_off(segment, -width / 2).from, segment.bulge});
    }
    const double cap = end == BandEnd::round ? 1 : 0;
    vertices.push_back({set_off(chain.back(), -width / 2).to, cap});
}

}  // namespace

Contour band(const std::vector<Segment>& chain, double width, BandEnd start, BandEnd end) {
    expect_band_fits(chain, width);
    const bool rounded = start == BandEnd::round || end == BandEnd::round;
    BOWFRONT_EXPECTS(!rounded || Path{chain}.length() >= width - kJoint);
    std::vector<Segment> spine = chain;
    if (start == BandEnd::round) {
        spine = without_start(spine, width / 2);
    }
    if (end == BandEnd::round && !spine.empty()) {
        spine = reversed(without_start(reversed(spine), width / 2));
    }
    if (spine.empty()) {
        // Both ends are round and leave room for nothing between them: a disc, if they fit at all.
        const Point first = chain.front().from;
        const Point last = chain.back().to;
        BOWFRONT_EXPECTS(distance(first, last) >= width - kJoint);
        return Contour::circle((first + last) * 0.5, width / 2);
    }
    std::vector<Vertex> vertices;
    append_edge(vertices, spine, width, end);
    append_edge(vertices, reversed(spine), width, start);
    return Contour(std::move(vertices));
}

}  // namespace bowfront
