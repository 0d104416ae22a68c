#pragma once
// Bodies like those of a case, small enough to be reckoned by hand.

#include <cmath>
#include <numbers>

#include "bowfront/pattern/part.hpp"

namespace bowfront::sample {

inline Body block(Point low, Point high, double height) {
    Body body;
    body.section.outer = Contour::rectangle(low, high);
    body.height = height;
    return body;
}

/// A pane bent about `centre`: mid radius, thickness, from `start` through `sweep` (rad, > 0).
inline Body bent_pane(Point centre, double mid_radius, double thickness, double start, double sweep,
                      double height) {
    const double outside = mid_radius + thickness / 2;
    const double inside = mid_radius - thickness / 2;
    const Segment outer = arc_segment(centre, outside, start, sweep);
    const Segment inner = arc_segment(centre, inside, start + sweep, -sweep);
    Body body;
    body.section.outer = Contour::from_segments(
        std::vector<Segment>{outer, {outer.to, inner.from, 0}, inner, {inner.to, outer.from, 0}});
    body.height = height;
    return body;
}

/// A 400 × 200 × 20 plate with its lower left corner at the origin: one straight groove with round
/// ends and one arc groove, both 4.8 wide and 6 deep, and two bores of which one goes through.
inline Body plate(Face face = Face::high) {
    Body body = block({0, 0}, {400, 200}, 20);
    body.face = face;
    const Segment straight{{40, 170}, {360, 170}, 0};
    const Segment arc = arc_segment({200, 300}, 250, 1.5 * std::numbers::pi - 0.6, 1.2);
    body.recesses.push_back({Region{band({straight}, 4.8, BandEnd::round, BandEnd::round), {}}, 6});
    body.recesses.push_back({Region{band({arc}, 4.8, BandEnd::round, BandEnd::square), {}}, 6});
    body.bores.push_back({{20, 20}, 5, 20});
    body.bores.push_back({{380, 20}, 8, 12});
    return body;
}

/// A square post with a groove along its whole height, open towards +X.
inline Body notched_post(double side, double groove_width, double groove_depth, double height) {
    const double half = side / 2;
    const double cheek = groove_width / 2;
    Body body;
    body.section.outer = Contour::polygon(std::vector<Point>{{-half, -half},
                                                             {half, -half},
                                                             {half, -cheek},
                                                             {half - groove_depth, -cheek},
                                                             {half - groove_depth, cheek},
                                                             {half, cheek},
                                                             {half, half},
                                                             {-half, half}});
    body.height = height;
    return body;
}

inline Placement at(double x, double y, double z) {
    return {{x, y, z}, {1, 0, 0}, {0, 0, 1}};
}

/// Turned about Z by `angle` (rad), then moved.
inline Placement turned(double angle, Point3 origin) {
    return {origin, {std::cos(angle), std::sin(angle), 0}, {0, 0, 1}};
}

}  // namespace bowfront::sample
