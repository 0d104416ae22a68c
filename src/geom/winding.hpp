#pragma once
/// \file
/// How often closed chains of segments run round a point.

#include <span>

#include "bowfront/geom/contour.hpp"

namespace bowfront {

/// Counter-clockwise turns of closed chains round a point, clockwise ones taken off. A point on
/// the chains counts for one side or the other.
[[nodiscard]] int winding(std::span<const Segment> closed, Point p);

}  // namespace bowfront
