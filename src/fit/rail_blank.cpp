#include "rail_blank.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <utility>

#include "bowfront/geom/region.hpp"

namespace bowfront::fit {
namespace {

// Corners that turn by less are mitred: a butt would end in a feather edge. Common practice.
constexpr double kLeastButt = std::numbers::pi / 6;

// Whether the rail that starts at a corner runs through a butt there, not the one that ends.
bool next_runs_through(const std::vector<Segment>& previous, const std::vector<Segment>& next) {
    if (straight(previous) != straight(next)) {
        return straight(next);
    }
    // Sides that are alike may differ by rounding; then each runs through at its own start.
    return length_of(next) >= length_of(previous) - kJoint;
}

// A rail's outer edge with its end cut off, and that end.
struct CutEdge {
    std::vector<Segment> kept;
    std::vector<Segment> tail;
};

// Cuts the end of an outer edge off where a ray from the inner corner meets it; nothing where they
// don't meet, or next to nothing would be kept.
std::optional<CutEdge> cut_end(std::vector<Segment> outer, Point corner, Point way) {
    const Segment ray{corner, corner + way * length_of(outer), 0};
    std::vector<Segment> tail;
    while (!outer.empty()) {
        const Segment last = outer.back();
        outer.pop_back();
        const std::vector<Point> points = meetings(ray, last);
        if (points.empty()) {
            tail.insert(tail.begin(), last);
            continue;
        }
        const Point met = *std::min_element(points.begin(), points.end(), [&](Point a, Point b) {
            return distance(a, corner) < distance(b, corner);
        });
        const double share = last.nearest(met);
        if ((1 - share) * last.length() > kJoint) {
            tail.insert(tail.begin(), last.part(share, 1));
        }
        if (share * last.length() > kJoint) {
            Segment kept = last.part(0, share);
            if (!tail.empty()) {
                kept.to = tail.front().from;
            }
            outer.push_back(kept);
        }
        if (length_of(outer) < kLeastEdge) {
            return std::nullopt;
        }
        return CutEdge{std::move(outer), std::move(tail)};
    }
    return std::nullopt;
}

std::vector<Segment> turned_round(const std::vector<Segment>& chain) {
    std::vector<Segment> result;
    for (auto s = chain.rbegin(); s != chain.rend(); ++s) {
        result.push_back(s->reversed());
    }
    return result;
}

bool sound(const RailBlank& rail) {
    Edges whole = rail.edges;
    add_tails(whole.outer, whole.outer, rail.tails);
    return goes_round(outline_of(whole));
}

// Cuts a butt joint at the corner between two rails, where it can be cut there.
void butt(RailBlank& previous, RailBlank& next, bool next_through) {
    const Point corner = next.edges.inner.front().from;
    RailBlank before = previous;
    RailBlank after = next;
    if (next_through) {
        auto cut = cut_end(before.edges.outer, corner, next.edges.inner.front().tangent(0) * -1);
        if (!cut) {
            return;
        }
        before.edges.outer = std::move(cut->kept);
        after.tails.before = std::move(cut->tail);
    } else {
        const auto cut = cut_end(turned_round(after.edges.outer), corner,
                                 previous.edges.inner.back().tangent(1));
        if (!cut) {
            return;
        }
        after.edges.outer = turned_round(cut->kept);
        before.tails.after = turned_round(cut->tail);
    }
    if (sound(before) && sound(after)) {
        previous = std::move(before);
        next = std::move(after);
    }
}

}  // namespace

double length_of(const std::vector<Segment>& chain) {
    double sum = 0;
    for (const Segment& s : chain) {
        sum += s.length();
    }
    return sum;
}

bool straight(const std::vector<Segment>& chain) { return chain.front().straight(); }

void add_tails(std::vector<Segment>& first, std::vector<Segment>& last, const Tails& tails) {
    first.insert(first.begin(), tails.before.begin(), tails.before.end());
    last.insert(last.end(), tails.after.begin(), tails.after.end());
}

Contour outline_of(const Edges& edges) {
    std::vector<Segment> around = edges.outer;
    around.push_back({edges.outer.back().to, edges.inner.back().to, 0});
    for (auto s = edges.inner.rbegin(); s != edges.inner.rend(); ++s) {
        around.push_back(s->reversed());
    }
    around.push_back({edges.inner.front().from, edges.outer.front().from, 0});
    return Contour::from_segments(around);
}

bool goes_round(const Contour& outline) {
    return outline.area() > 0 && !self_crossing(outline);
}

std::vector<RailBlank> rail_blanks(const GlazingLine& line, const SideChains& outer,
                                   const SideChains& inner, RailCorner corner) {
    std::vector<RailBlank> result;
    for (std::size_t i = 0; i < outer.size(); ++i) {
        result.push_back({{outer[i], inner[i]}, {}});
    }
    for (std::size_t next = 0; next < outer.size() && corner == RailCorner::butt; ++next) {
        const std::size_t previous = line.previous(next);
        const Point before = inner[previous].back().tangent(1);
        const Point after = inner[next].front().tangent(0);
        if (std::atan2(cross(before, after), dot(before, after)) >= kLeastButt) {
            butt(result[previous], result[next],
                 next_runs_through(line.sides[previous], line.sides[next]));
        }
    }
    return result;
}

}  // namespace bowfront::fit
