#include "bowfront/fit/plan.hpp"

#include <cmath>
#include <numbers>

#include "bowfront/base/contract.hpp"

namespace bowfront::fit {
namespace {

constexpr double kPi = std::numbers::pi;

struct Place {
    std::size_t piece = 0;
    double along = 0;  // from the piece's start
};

Place place_of(const std::vector<Segment>& chain, double length) {
    BOWFRONT_EXPECTS(!chain.empty());
    Place place{0, length};
    while (place.piece + 1 < chain.size() && place.along > chain[place.piece].length()) {
        place.along -= chain[place.piece].length();
        ++place.piece;
    }
    return place;
}

// The point on a straight or arc at a length from its start, before or past its ends too.
Point run_on(const Segment& segment, double along) {
    if (segment.straight()) {
        const Point d = segment.to - segment.from;
        return segment.from + d * (along / norm(d));
    }
    const Point centre = segment.centre();
    const double radius = segment.radius();
    const Point arm = segment.from - centre;
    const double start = std::atan2(arm.y, arm.x);
    const double turned = along / radius;  // negative before the start
    return centre + direction(start + (segment.bulge > 0 ? turned : -turned)) * radius;
}

Segment piece(const Segment& segment, double from, double to) {
    const Point a = run_on(segment, from);
    const Point b = run_on(segment, to);
    if (segment.straight()) {
        return {a, b, 0};
    }
    const double sweep = (to - from) / segment.radius();
    return {a, b, std::copysign(std::tan(sweep / 4), segment.bulge)};
}

}  // namespace

Contour joined(const SideChains& sides) {
    std::vector<Segment> all;
    for (const std::vector<Segment>& side : sides) {
        all.insert(all.end(), side.begin(), side.end());
    }
    return Contour::from_segments(all);
}

std::vector<Segment> stretch(const std::vector<Segment>& chain, double from, double to) {
    BOWFRONT_EXPECTS(from < to);
    const Place start = place_of(chain, from);
    const Place end = place_of(chain, to);
    std::vector<Segment> result;
    for (std::size_t i = start.piece; i <= end.piece; ++i) {
        const double a = i == start.piece ? start.along : 0;
        const double b = i == end.piece ? end.along : chain[i].length();
        if (b - a <= kJoint) {
            continue;
        }
        // Run on past its ends, an arc of half a turn becomes longer than one piece can be.
        const bool over_half_turn = !chain[i].straight() && b - a > kPi * chain[i].radius();
        const double middle = (a + b) / 2;
        if (over_half_turn) {
            result.push_back(piece(chain[i], a, middle));
        }
        result.push_back(piece(chain[i], over_half_turn ? middle : a, b));
    }
    return result;
}

Point point_at(const std::vector<Segment>& chain, double length) {
    const Place place = place_of(chain, length);
    return run_on(chain[place.piece], place.along);
}

Point tangent_at(const std::vector<Segment>& chain, double length) {
    const Place place = place_of(chain, length);
    const Segment& segment = chain[place.piece];
    if (segment.straight()) {
        const Point d = segment.to - segment.from;
        return d * (1 / norm(d));
    }
    const Point arm = run_on(segment, place.along) - segment.centre();
    const Point left = left_of(arm) * (1 / norm(arm));
    return segment.bulge > 0 ? left : left * -1;
}

}  // namespace bowfront::fit
