#include "geom/outline_joining.hpp"

#include <optional>

namespace bowfront {
namespace {

/// Two segments that follow each other as one, where they run on one straight or one arc.
std::optional<Segment> joined(const Segment& a, const Segment& b) {
    // Parts of a half turn sum up to it within this much of its bulge.
    constexpr double kRounding = 1e-12;
    if (a.straight() != b.straight() || a.bulge * b.bulge < 0) {
        return std::nullopt;
    }
    Segment whole{a.from, b.to, 0};
    if (!a.straight()) {
        const double bulge = std::tan(std::atan(a.bulge) + std::atan(b.bulge));
        const double over = std::abs(std::atan(a.bulge) + std::atan(b.bulge)) - std::atan(1.0);
        if (over > kRounding) {
            return std::nullopt;
        }
        whole.bulge = over > -kRounding ? std::copysign(1.0, a.bulge) : bulge;
    } else if (dot(a.to - a.from, b.to - b.from) < 0) {
        return std::nullopt;
    }
    for (const Point p : {a.at(0.5), a.to, b.at(0.5)}) {
        if (whole.distance_to(p) > kJoint) {
            return std::nullopt;
        }
    }
    return whole;
}

}  // namespace

Contour join_neighbours(std::vector<Segment> segments) {
    for (std::size_t i = 0, kept_in_a_row = 0;
         segments.size() > 2 && kept_in_a_row < segments.size();) {
        const std::size_t next = (i + 1) % segments.size();
        if (const auto whole = joined(segments[i], segments[next])) {
            segments[i] = *whole;
            segments.erase(segments.begin() + static_cast<std::ptrdiff_t>(next));
            i = next < i ? i - 1 : i;
            kept_in_a_row = 0;
        } else {
            i = next;
            ++kept_in_a_row;
        }
    }
    std::vector<Vertex> vertices;
    vertices.reserve(segments.size());
    for (const Segment& segment : segments) {
        vertices.push_back({segment.from, segment.bulge});
    }
    return Contour(std::move(vertices));
}

}  // namespace bowfront
