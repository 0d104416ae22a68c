#include <algorithm>
#include <cmath>
#include <vector>

#include "bowfront/geom/region.hpp"
#include "geom/arc_view.hpp"
#include "geom/meetings.hpp"

namespace bowfront {
namespace {

/// Points inside `arc` at which a line towards the other segment may stand square on both.
std::vector<Point> facing_points(const Segment& arc, const Segment& other) {
    if (arc.straight()) {
        return {};
    }
    const Point toward =
        other.straight() ? left_of(other.tangent(0)) : other.centre() - arc.centre();
    const double reach = norm(toward);
    if (reach == 0) {
        return {};  // concentric arcs are nearest all along, and so at an end as well
    }
    std::vector<Point> found;
    for (const double side : {1 / reach, -1 / reach}) {
        if (const auto share = share_facing(arc, toward * side)) {
            found.push_back(arc.at(*share));
        }
    }
    return found;
}

double gap(const Segment& a, const Segment& b) {
    if (!meetings(a, b).empty()) {
        return 0;
    }
    double least = std::min(
        {b.distance_to(a.from), b.distance_to(a.to), a.distance_to(b.from), a.distance_to(b.to)});
    for (const Point p : facing_points(a, b)) {
        least = std::min(least, b.distance_to(p));
    }
    for (const Point p : facing_points(b, a)) {
        least = std::min(least, a.distance_to(p));
    }
    return least;
}

// A box that holds the segment and is found without its angles: an arc of at most half a turn stays
// within its rise of its chord.
Box roughly_round(const Segment& s) {
    const double rise = std::abs(s.bulge) * distance(s.from, s.to) / 2;
    return {{std::min(s.from.x, s.to.x) - rise, std::min(s.from.y, s.to.y) - rise},
            {std::max(s.from.x, s.to.x) + rise, std::max(s.from.y, s.to.y) + rise}};
}

}  // namespace

double distance_to_edge(const Contour& contour, Point p) {
    double least = HUGE_VAL;
    for (const Segment& s : contour.segments()) {
        least = std::min(least, s.distance_to(p));
    }
    return least;
}

bool touch(const Contour& a, const Contour& b) {
    const std::vector<Segment> others = b.segments();
    std::vector<Box> boxes;
    boxes.reserve(others.size());
    for (const Segment& other : others) {
        boxes.push_back(roughly_round(other));
    }
    for (const Segment& one : a.segments()) {
        const Box box = roughly_round(one);
        for (std::size_t i = 0; i < others.size(); ++i) {
            if (within(box, boxes[i], kJoint) && !meetings(one, others[i]).empty()) {
                return true;
            }
        }
    }
    return false;
}

double gap(const Contour& a, const Contour& b) {
    // Each segment and its box once, not once for every segment of the other outline.
    const std::vector<Segment> others = b.segments();
    std::vector<Box> boxes;
    boxes.reserve(others.size());
    for (const Segment& other : others) {
        boxes.push_back(other.box());
    }
    if (a.empty() || b.empty()) {
        return HUGE_VAL;
    }
    // No more than from a point of one to the nearest vertex of the other: with that, most segments
    // are too far away to be looked at.
    const Point from = a.vertices().front().at;
    double least = HUGE_VAL;
    for (const Segment& other : others) {
        least = std::min(least, distance(from, other.from));
    }
    for (const Segment& one : a.segments()) {
        const Box box = one.box();
        for (std::size_t i = 0; i < others.size(); ++i) {
            if (within(box, boxes[i], least)) {
                least = std::min(least, gap(one, others[i]));
            }
        }
    }
    return least;
}

}  // namespace bowfront
