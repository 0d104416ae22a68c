#pragma once
/// \file
/// Which of many boxes come near each other.

#include <algorithm>
#include <cstddef>
#include <numeric>
#include <vector>

#include "bowfront/geom/point.hpp"

namespace bowfront {

/// Calls `visit(i, j)`, i < j, for every two of some boxes that come within `reach`, mm, of each
/// other, until it gives false. A sweep along X: by the left ends of the boxes, then by their places.
/// Takes time in proportion to the boxes, unless many of them stand over each other.
template <class Visit>
void each_near(const std::vector<Box>& boxes, double reach, const Visit& visit) {
    std::vector<std::size_t> order(boxes.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return boxes[a].low.x != boxes[b].low.x ? boxes[a].low.x < boxes[b].low.x : a < b;
    });
    std::vector<std::size_t> open;  // whose boxes reach at least to where the sweep stands
    for (const std::size_t now : order) {
        std::erase_if(open, [&](std::size_t each) {
            return boxes[each].high.x < boxes[now].low.x - reach;
        });
        for (const std::size_t other : open) {
            if (within(boxes[now], boxes[other], reach) &&
                !visit(std::min(now, other), std::max(now, other))) {
                return;
            }
        }
        open.push_back(now);
    }
}

}  // namespace bowfront
