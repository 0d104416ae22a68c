#pragma once
/// \file
/// How one curve lies along another to best advantage.

#include <vector>

#include "bowfront/geom/contour.hpp"

namespace bowfront::fit {

/// The greatest distance that points keep from a curve when it is moved and turned among them so
/// that this is least, mm; the curve's first and last pieces run on beyond its ends.
///
/// Found in steps: the least greatest distance for small movements by a linear program, the curve
/// moved so, and the distances taken anew, until nothing changes. Where the curve strays far from
/// the points it is the best of what was found, never less than the least. It is shifted along each
/// axis, and turned at its ends, by no more than twice what it stands off at first.
/// @param points  in order along the curve, not all in one place
/// @param curve   lies near the points; at least one segment
[[nodiscard]] double least_stand_off(const std::vector<Point>& points,
                                     const std::vector<Segment>& curve);

}  // namespace bowfront::fit
