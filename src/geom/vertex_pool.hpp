#pragma once
/// \file
/// Points that are one within a tolerance, under one number.

#include <cstddef>
#include <cstdint>
#include <map>
#include <utility>
#include <vector>

#include "bowfront/geom/point.hpp"

namespace bowfront {

/// Gives points numbers. A point within `reach` of earlier ones is the earliest of them, so that it
/// has the same number whenever it is asked for, and the points that matter most go in first. All
/// others stay more than `reach` apart.
class VertexPool {
  public:
    /// @param reach > 0, mm
    explicit VertexPool(double reach) : reach_(reach) {}

    [[nodiscard]] std::size_t number_of(Point p);
    [[nodiscard]] Point operator[](std::size_t number) const { return points_[number]; }

  private:
    using Cell = std::pair<std::int64_t, std::int64_t>;

    double reach_;
    std::vector<Point> points_;
    std::map<Cell, std::vector<std::size_t>> cells_;  ///< squares of side `reach_`
};

}  // namespace bowfront
