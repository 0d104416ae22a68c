#include "geom/vertex_pool.hpp"

#include <cmath>

namespace bowfront {

std::size_t VertexPool::number_of(Point p) {
    const auto cell = [&](double x) { return static_cast<std::int64_t>(std::floor(x / reach_)); };
    const Cell home{cell(p.x), cell(p.y)};
    std::size_t earliest = points_.size();
    for (const std::int64_t dx : {0, -1, 1}) {
        for (const std::int64_t dy : {0, -1, 1}) {
            const auto found = cells_.find({home.first + dx, home.second + dy});
            if (found == cells_.end()) {
                continue;
            }
            for (const std::size_t number : found->second) {
                if (number < earliest && distance(points_[number], p) <= reach_) {
                    earliest = number;
                }
            }
        }
    }
    if (earliest < points_.size()) {
        return earliest;
    }
    points_.push_back(p);
    cells_[home].push_back(points_.size() - 1);
    return points_.size() - 1;
}

}  // namespace bowfront
