#pragma once
/// \file
/// Where two segments meet, to a reach of the caller's choice.

#include <vector>

#include "bowfront/geom/contour.hpp"

namespace bowfront {

/// As `meetings`, with segments meeting where they come within `reach`, mm, of each other at an
/// end, at a crossing or where they touch.
[[nodiscard]] std::vector<Point> meetings_within(const Segment& a, const Segment& b, double reach);

}  // namespace bowfront
