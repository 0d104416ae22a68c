#include "dxf/coincidence.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>
#include <utility>

namespace bowfront::dxf {
namespace {

// Neighbours meet at their joint, and those that are tangent there lie within kJoint of each other
// up to sqrt(2·R·kJoint) from it: 4.5 µm for R = 10 m. Half of the shortest segment is more than
// that, and less than a segment, so that neighbours that fold back are still found.
constexpr double kJointReach = 0.005;

// Lines nearer than this are one line to any cutter, mm.
constexpr double kSameLine = 1e-6;

struct Edge {
    Segment segment;
    Box box;
    std::size_t contour = 0;
    std::size_t index = 0;
    std::size_t next = 0;  // index of the segment that follows
};

void add_edges(std::vector<Edge>& edges, const Contour& contour, std::size_t number) {
    for (std::size_t i = 0; i < contour.size(); ++i) {
        const Segment segment = contour.segment(i);
        edges.push_back({segment, segment.box(), number, i, (i + 1) % contour.size()});
    }
}

bool overlap(const Box& a, const Box& b) {
    return a.low.x <= b.high.x + kJoint && b.low.x <= a.high.x + kJoint &&
           a.low.y <= b.high.y + kJoint && b.low.y <= a.high.y + kJoint;
}

bool at_joint(const Edge& a, const Edge& b, Point place) {
    if (a.contour != b.contour) {
        return false;
    }
    return (a.next == b.index && distance(place, a.segment.to) < kJointReach) ||
           (b.next == a.index && distance(place, b.segment.to) < kJointReach);
}

std::optional<Point> crossing(const Edge& a, const Edge& b) {
    if (!overlap(a.box, b.box)) {
        return std::nullopt;
    }
    for (const Point place : meetings(a.segment, b.segment)) {
        if (!at_joint(a, b, place)) {
            return place;
        }
    }
    return std::nullopt;
}

}  // namespace

std::optional<Point> crossing(const Region& region) {
    std::vector<Edge> edges;
    add_edges(edges, region.outer, 0);
    for (std::size_t i = 0; i < region.holes.size(); ++i) {
        add_edges(edges, region.holes[i], i + 1);
    }
    // A line sweeps along the longer side of the box: the fewer segments it crosses at a time, the
    // fewer pairs there are to ask.
    const Box whole = region.outer.box();
    const auto axis = whole.width() >= whole.height() ? &Point::x : &Point::y;
    std::sort(edges.begin(), edges.end(), [axis](const Edge& a, const Edge& b) {
        return std::tie(a.box.low.*axis, a.contour, a.index) <
               std::tie(b.box.low.*axis, b.contour, b.index);
    });
    std::vector<const Edge*> active;
    for (const Edge& edge : edges) {
        const double reached = edge.box.low.*axis - kJoint;
        std::erase_if(active, [&](const Edge* other) { return other->box.high.*axis < reached; });
        for (const Edge* other : active) {
            if (const auto place = crossing(*other, edge)) {
                return place;
            }
        }
        active.push_back(&edge);
    }
    return std::nullopt;
}

void Tracks::add(std::string_view layer, std::vector<Segment> segments) {
    Track track{std::string(layer), std::move(segments), {}, 0};
    for (const Segment& segment : track.segments) {
        track.box.add(segment.box());
        track.length += segment.length();
    }
    tracks_.push_back(std::move(track));
}

bool Tracks::same(const Track& a, const Track& b) {
    // The length of a track is off by no more than its ends and corners are.
    const double slack = kSameLine * static_cast<double>(a.segments.size() + b.segments.size());
    if (distance(a.box.low, b.box.low) > kSameLine ||
        distance(a.box.high, b.box.high) > kSameLine || std::abs(a.length - b.length) > slack) {
        return false;
    }
    const auto on_b = [&b](Point place) {
        return std::any_of(b.segments.begin(), b.segments.end(), [place](const Segment& segment) {
            return segment.distance_to(place) <= kSameLine;
        });
    };
    return std::all_of(a.segments.begin(), a.segments.end(), [&on_b](const Segment& segment) {
        return on_b(segment.from) && on_b(segment.at(0.5)) && on_b(segment.to);
    });
}

std::optional<Tracks::Twin> Tracks::doubled() const {
    std::vector<const Track*> order;
    for (const Track& track : tracks_) {
        order.push_back(&track);
    }
    // Twins have the same left side, so that each track is held against few others.
    std::stable_sort(order.begin(), order.end(), [](const Track* a, const Track* b) {
        return std::tie(a->layer, a->box.low.x) < std::tie(b->layer, b->box.low.x);
    });
    for (std::size_t i = 0; i < order.size(); ++i) {
        for (std::size_t j = i + 1; j < order.size() && order[j]->layer == order[i]->layer &&
                                    order[j]->box.low.x <= order[i]->box.low.x + kSameLine;
             ++j) {
            if (same(*order[i], *order[j])) {
                return Twin{order[i]->layer, order[i]->segments.front().from};
            }
        }
    }
    return std::nullopt;
}

}  // namespace bowfront::dxf
