#include <algorithm>
#include <numeric>
#include <optional>
#include <vector>

#include "bowfront/geom/region.hpp"
#include "geom/meetings.hpp"

namespace bowfront {
namespace {

// Neighbours that go on almost smoothly come within rounding of each other near their vertex. What
// lies as close to it as this is the vertex.
constexpr double kVertex = 1e-5;  // mm

bool meet_beside(const std::vector<Segment>& segments, std::size_t i, std::size_t j) {
    const std::size_t count = segments.size();
    std::vector<Point> shared;
    if ((i + 1) % count == j) {
        shared.push_back(segments[j].from);
    }
    if ((j + 1) % count == i) {
        shared.push_back(segments[i].from);
    }
    const std::vector<Point> points = meetings(segments[i], segments[j]);
    return std::any_of(points.begin(), points.end(), [&](Point p) {
        return std::none_of(shared.begin(), shared.end(),
                            [&](Point vertex) { return distance(p, vertex) <= kVertex; });
    });
}

}  // namespace

std::optional<SelfCrossing> self_crossing(const Contour& contour) {
    const std::vector<Segment> segments = contour.segments();
    std::vector<Box> boxes;
    boxes.reserve(segments.size());
    for (const Segment& s : segments) {
        boxes.push_back(s.box());
    }
    std::vector<std::size_t> order(segments.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return boxes[a].low.x != boxes[b].low.x ? boxes[a].low.x < boxes[b].low.x : a < b;
    });
    std::vector<std::size_t> open;  // whose boxes reach at least to where the sweep stands
    for (const std::size_t now : order) {
        std::erase_if(open, [&](std::size_t each) {
            return boxes[each].high.x < boxes[now].low.x - kJoint;
        });
        for (const std::size_t other : open) {
            if (close_to(boxes[now], boxes[other], kJoint) && meet_beside(segments, now, other)) {
                return SelfCrossing{std::min(now, other), std::max(now, other)};
            }
        }
        open.push_back(now);
    }
    return std::nullopt;
}

}  // namespace bowfront
