#pragma once
/// \file
/// Where two segments meet, to a reach of the caller's choice.

#include <vector>

#include "bowfront/geom/contour.hpp"

namespace bowfront {

/// As `meetings`, with segments meeting where they come within `reach`, mm, of each other at an
/// end, at a crossing or where they touch.
[[nodiscard]] std::vector<Point> meetings_within(const Segment& a, const Segment& b, double reach);

/// Whether two boxes come within `reach` of each other.
[[nodiscard]] inline bool close_to(const Box& a, const Box& b, double reach) {
    return a.low.x <= b.high.x + reach && b.low.x <= a.high.x + reach &&
           a.low.y <= b.high.y + reach && b.low.y <= a.high.y + reach;
}

}  // namespace bowfront
