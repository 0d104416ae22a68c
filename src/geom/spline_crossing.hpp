#pragma once
/// \file
/// Where a chain of cubic pieces meets itself, by halving the hulls of their control points.

#include <array>
#include <optional>
#include <vector>

#include "bowfront/geom/cubic_spline.hpp"

namespace bowfront {

/// A cubic between two parameters by its control points: it lies within their hull and runs in
/// directions between those of the hull's legs. Source: Bézier's form of a cubic polynomial
struct CubicHull {
    std::array<Point, 4> control;
    double from = 0;
    double to = 0;
};

/// Appends the hull, halved until no leg turns back on another. Then neither a piece nor two that
/// follow each other smoothly can meet beyond their joint.
void append_advancing(std::vector<CubicHull>& hulls, const CubicHull& hull);

/// A meeting of two pieces that don't follow each other, of a chain made by `append_advancing`.
[[nodiscard]] std::optional<CurveCrossing> crossing(const std::vector<CubicHull>& chain);

}  // namespace bowfront
