#pragma once
/// \file
/// Outlines with no more vertices than they need.

#include <vector>

#include "bowfront/geom/contour.hpp"

namespace bowfront {

/// The outline of segments that end where the next begins. Neighbours on one straight, or on one
/// arc of up to half a turn together, become one segment.
[[nodiscard]] Contour join_neighbours(std::vector<Segment> segments);

}  // namespace bowfront
