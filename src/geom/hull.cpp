#include "bowfront/geom/hull.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include "bowfront/base/contract.hpp"

namespace bowfront {
namespace {

// A corner of the outline, or the circle of one of its arcs: reaches centre·u + radius.
struct Round {
    Point centre;
    double radius = 0;
};

// Whether an arc reaches farthest in a direction between its ends, not at one of them: the
// direction lies within half the sweep of that to the arc's middle.
bool crown_faces(const Segment& arc, Point outward) {
    const Point middle = arc.at(0.5) - arc.centre();
    return dot(middle, outward) >= arc.radius() * std::cos(arc.sweep() / 2);
}

double reach_of(const std::vector<Segment>& outline, Point outward) {
    double farthest = -HUGE_VAL;
    for (const Segment& s : outline) {
        farthest = std::max(farthest, dot(s.from, outward));
        if (!s.straight() && crown_faces(s, outward)) {
            farthest = std::max(farthest, dot(s.centre(), outward) + s.radius());
        }
    }
    return farthest;
}

std::vector<Round> rounds_of(const std::vector<Segment>& outline) {
    std::vector<Round> rounds;
    for (const Segment& s : outline) {
        rounds.push_back({s.from, 0});
        if (!s.straight()) {
            rounds.push_back({s.centre(), s.radius()});
        }
    }
    return rounds;
}

// The two directions, if any, in which both reach equally far.
void add_common_directions(const Round& a, const Round& b, std::vector<Point>& directions) {
    const Point between = b.centre - a.centre;
    const double apart = norm(between);
    if (apart <= kJoint || std::abs(a.radius - b.radius) > apart) {
        return;
    }
    const double across = (a.radius - b.radius) / apart;  // the cosine to `between`
    const Point along = between * (1 / apart);
    const double aside = std::sqrt(1 - across * across);
    for (const double side : {-1.0, 1.0}) {
        directions.push_back(along * across + left_of(along) * (side * aside));
    }
}

std::vector<Point> directions_to_try(const std::vector<Round>& rounds, Point p) {
    std::vector<Point> directions;
    for (std::size_t i = 0; i < rounds.size(); ++i) {
        const Point from_centre = p - rounds[i].centre;
        if (norm(from_centre) > kJoint) {
            directions.push_back(from_centre * (1 / norm(from_centre)));
        }
        for (std::size_t j = i + 1; j < rounds.size(); ++j) {
            add_common_directions(rounds[i], rounds[j], directions);
        }
    }
    return directions;
}

bool faces_sooner(Point a, Point b) {
    return std::abs(a.y - b.y) > kJoint ? a.y < b.y : a.x < b.x - kJoint;
}

}  // namespace

double reach(const Contour& outline, Point outward) {
    return reach_of(outline.segments(), outward);
}

HullEdge nearest_hull_edge(const Contour& outline, Point p) {
    BOWFRONT_EXPECTS(!outline.empty());
    const std::vector<Segment> segments = outline.segments();
    HullEdge nearest{HUGE_VAL, {}};
    for (const Point outward : directions_to_try(rounds_of(segments), p)) {
        const double distance = reach_of(segments, outward) - dot(p, outward);
        const bool equal = std::abs(distance - nearest.distance) <= kJoint;
        if (equal ? faces_sooner(outward, nearest.outward) : distance < nearest.distance) {
            nearest = {distance, outward};
        }
    }
    return nearest;
}

}  // namespace bowfront
