#include <algorithm>
#include <optional>
#include <vector>

#include "bowfront/geom/region.hpp"
#include "geom/near_boxes.hpp"

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
    std::optional<SelfCrossing> found;
    each_near(boxes, kJoint, [&](std::size_t i, std::size_t j) {
        if (meet_beside(segments, i, j)) {
            found = {i, j};
        }
        return !found;
    });
    return found;
}

}  // namespace bowfront
