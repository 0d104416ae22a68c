#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <utility>

#include "shelf_parts.hpp"

namespace bowfront::fit {
namespace {

// A pin may reach this far from the post to the place where it bears. A choice of this tool.
constexpr double kLongestReach = 25;
// Two sides face each other where they are parallel but for the rounding of their ends.
constexpr double kParallel = 1e-9;

// An axis that a pin may lie on: from the post's inside out into the case.
struct Axis {
    Point from;
    Point outward;
};

double extent(const Contour& outline, Point direction, Point from) {
    const Motion turn{-std::atan2(direction.y, direction.x), {}, false};
    return outline.moved(turn).box().high.x - turn(from).x;
}

// Square to the post's faces, along each of them; or out through the corner between both sides.
std::vector<Axis> axes(const PostLayout& post, const CornerDirections& at) {
    constexpr int kPlaces = 16;  // along a face
    std::vector<Axis> all;
    for (const Segment& face : post.outline.segments()) {
        const Point outward = left_of(face.tangent(0)) * -1;
        for (int i = 1; face.straight() && i < kPlaces; ++i) {
            const Point mouth = face.at(static_cast<double>(i) / kPlaces);
            all.push_back({mouth - outward * kPinDepth, outward});
        }
    }
    const Point middle = left_of(direction(at.next)) - left_of(direction(at.previous));
    all.push_back({post.at, middle * (1 / norm(middle))});
    return all;
}

// The points of an outline on an axis, by their distance from its start.
std::vector<double> crossings(const Axis& axis, const Contour& outline) {
    const Box box = outline.box();
    const double far = distance(axis.from, (box.low + box.high) * 0.5) + box.width() + box.height();
    const Segment ray{axis.from, axis.from + axis.outward * far, 0};
    std::vector<double> found;
    for (const Segment& edge : outline.segments()) {
        for (const Point p : meetings(ray, edge)) {
            found.push_back(distance(axis.from, p));
        }
    }
    std::ranges::sort(found);
    return found;
}

// Timber left round a bore: to the grooves, and to the faces that it does not enter by.
double wall_of(const PostLayout& post, const ShelfPin& pin) {
    const Point side = left_of(pin.inward) * (kPinDiameter / 2);
    const Point bottom = pin.mouth + pin.inward * kPinDepth;
    const std::array corners{bottom + side, bottom - side, pin.mouth - side, pin.mouth + side};
    if (where(post.outline, corners[0]) != Side::inside ||
        where(post.outline, corners[1]) != Side::inside) {
        return 0;
    }
    double least = std::numeric_limits<double>::infinity();
    for (const Segment& face : post.outline.segments()) {
        const bool enters = face.distance_to(pin.mouth) <= kJoint;
        // A round post's bore ends under the face that it enters by.
        const std::size_t count = !enters ? corners.size() : face.straight() ? 0 : 2;
        for (std::size_t i = 0; i < count; ++i) {
            least = std::min(least, face.distance_to(corners[i]));
        }
    }
    const Contour bore = Contour::polygon(corners).counter_clockwise();
    for (const PostGroove& groove : post.grooves) {
        const bool within = where(groove.slot, pin.mouth) != Side::outside ||
                            where(groove.slot, bottom) != Side::outside;
        least = std::min(least, within ? 0 : gap(bore, groove.slot));
    }
    return least;
}

std::optional<ShelfPin> pin_on(const PostLayout& post, const Axis& axis, const Contour& outline) {
    const std::vector<double> out = crossings(axis, post.outline);
    const std::vector<double> in = crossings(axis, outline);
    if (out.empty() || in.empty() || in.front() - out.back() > kLongestReach) {
        return std::nullopt;
    }
    ShelfPin pin;
    pin.corner = post.corner;
    pin.name = post.name;
    pin.inward = axis.outward * -1;
    pin.mouth = axis.from + axis.outward * out.back();
    pin.tip = axis.from + axis.outward * (in.front() + kPinBearing);
    if (where(outline, pin.tip) != Side::inside) {
        return std::nullopt;
    }
    pin.wall = wall_of(post, pin);
    return pin;
}

// The middle of a rail at one of its ends, as far along its side as the end reaches.
ShelfRest rail_end(const ShelfRail& rail, const Layout& layout, PaneEdge end) {
    const Segment& side = layout.line.sides[index(rail.side)].front();
    const Point along = side.tangent(0) * (end == PaneEdge::start ? -1 : 1);
    const double reach = extent(rail.outline.outer, along, side.from);
    const Point middle = rail.outline.centroid() - side.from;
    return {"rail-" + std::string(side_text(rail.side)) + "-" + std::string(edge_text(end)),
            side.from + along * reach +
                left_of(side.tangent(0)) * dot(middle, left_of(side.tangent(0))),
            0};
}

// Rests in counter-clockwise order round what they enclose. Source: monotone chain.
std::vector<Point> hull(std::vector<Point> points) {
    std::ranges::sort(points, [](Point a, Point b) { return a.x != b.x ? a.x < b.x : a.y < b.y; });
    std::vector<Point> round;
    for (int pass = 0; pass < 2; ++pass) {
        const std::size_t start = round.size();
        for (const Point p : points) {
            while (round.size() >= start + 2 &&
                   cross(round.back() - round[round.size() - 2], p - round.back()) <= kJoint) {
                round.pop_back();
            }
            round.push_back(p);
        }
        round.pop_back();
        std::ranges::reverse(points);
    }
    return round;
}

// Of a weight on three rests, the share of the first; empty where it does not lie between them.
std::optional<double> share_of(Point a, Point b, Point c, Point weight) {
    const double whole = cross(b - a, c - a);
    if (std::abs(whole) <= kJoint) {
        return std::nullopt;
    }
    const double first = cross(b - weight, c - weight) / whole;
    const double second = cross(c - weight, a - weight) / whole;
    // A weight on the line between two rests lies between them, whatever its last digit says.
    constexpr double kOnTheLine = -1e-9;
    const double third = 1 - first - second;
    const bool between = first >= kOnTheLine && second >= kOnTheLine && third >= kOnTheLine;
    return between ? std::optional(std::max(first, 0.0)) : std::nullopt;
}

// The rests are never quite level, so that any three of them may bear all of it.
double most_share(const std::vector<ShelfRest>& rests, std::size_t which, Point weight) {
    double most = 0;
    for (std::size_t i = 0; i < rests.size(); ++i) {
        for (std::size_t j = i + 1; j < rests.size(); ++j) {
            if (i != which && j != which) {
                most = std::max(
                    most, share_of(rests[which].at, rests[i].at, rests[j].at, weight).value_or(0));
            }
        }
    }
    return most;
}

}  // namespace

std::optional<ShelfPin> shelf_pin(const PostLayout& post, const CornerDirections& directions,
                                  const Contour& outline) {
    std::optional<ShelfPin> best;
    for (const Axis& axis : axes(post, directions)) {
        const auto pin = pin_on(post, axis, outline);
        // Of places alike but for rounding, the first.
        if (pin && (!best || pin->wall > best->wall + kJoint)) {
            best = pin;
        }
    }
    return best;
}

std::vector<ShelfRail> shelf_rails(const Layout& layout, double inset) {
    // Posts, and rails that are there already: where two meet beside a thin post, they butt.
    std::vector<Region> taken;
    for (const PostLayout& post : layout.posts) {
        taken.push_back({post.outline, {}});
    }
    std::vector<ShelfRail> rails;
    for (std::size_t i = 0; i < layout.line.sides.size(); ++i) {
        const std::vector<Segment>& side = layout.line.sides[i];
        if (side.size() != 1 || !side.front().straight()) {
            continue;
        }
        const Point in = left_of(side.front().tangent(0));
        const std::vector<Segment> middle{{side.front().from + in * (inset + kRailWidth / 2),
                                           side.front().to + in * (inset + kRailWidth / 2), 0}};
        const Contour strip = band(middle, kRailWidth, BandEnd::square, BandEnd::square);
        const auto left = subtract({{strip, {}}}, taken);
        if (!left.empty()) {
            rails.push_back({layout.line.order[i], left.front()});
            taken.push_back(left.front());
        }
    }
    return rails;
}

std::vector<ShelfRest> shelf_rests(const ShelfPlan& plan, const Layout& layout) {
    std::vector<ShelfRest> rests;
    for (const ShelfPin& pin : plan.pins) {
        rests.push_back({"pin-" + pin.name, pin.tip, 0});
    }
    for (const ShelfRail& rail : plan.rails) {
        rests.push_back(rail_end(rail, layout, PaneEdge::start));
        rests.push_back(rail_end(rail, layout, PaneEdge::end));
    }
    return rests;
}

void set_span(const Layout& layout, bool both_ways, ShelfPlan& plan) {
    const Box box = plan.outline.box();
    plan.span = std::max(box.width(), box.height());
    plan.breadth = std::min(box.width(), box.height());
    plan.model = ShelfModel::corners;
    int pairs = 0;
    for (std::size_t i = 0; i < plan.rails.size(); ++i) {
        for (std::size_t j = i + 1; j < plan.rails.size(); ++j) {
            const Point a = layout.line.sides[index(plan.rails[i].side)].front().tangent(0);
            const Point b = layout.line.sides[index(plan.rails[j].side)].front().tangent(0);
            const double across =
                extent(plan.outline, left_of(a), {}) + extent(plan.outline, left_of(a) * -1, {});
            if (std::abs(cross(a, b)) > kParallel || dot(a, b) > 0) {
                continue;
            }
            ++pairs;
            if (plan.model == ShelfModel::corners || across < plan.span) {
                plan.model = ShelfModel::rails;
                plan.span = across;
                plan.breadth = extent(plan.outline, a, {}) + extent(plan.outline, a * -1, {});
            }
        }
    }
    // Two pairs of four sides are a parallelogram; it is taken for a plate where it is square to
    // itself.
    const bool round = pairs == 2 && layout.line.sides.size() == 4 && plan.rails.size() == 4;
    const Point first = layout.line.sides[0].front().tangent(0);
    const Point second = layout.line.sides[1].front().tangent(0);
    if (round && both_ways && std::abs(dot(first, second)) < kParallel) {
        plan.model = ShelfModel::plate;
    }
}

bool stands(ShelfPlan& plan) {
    std::vector<Point> points;
    for (const ShelfRest& rest : plan.rests) {
        points.push_back(rest.at);
    }
    const std::vector<Point> round = points.size() < 3 ? points : hull(points);
    if (round.size() < 3) {
        return false;
    }
    const Point weight = plan.outline.centroid();
    plan.hold = std::numeric_limits<double>::infinity();
    plan.overhang = 0;
    plan.bulge = 0;
    // The edge over which it tips first: by what stands out beyond it for each mm of hold.
    double worst = -1;
    for (std::size_t i = 0; i < round.size(); ++i) {
        const Point edge = round[(i + 1) % round.size()] - round[i];
        const Point outward = left_of(edge) * (-1 / norm(edge));
        const double held = dot(round[i] - weight, outward);
        const double out = std::max(extent(plan.outline, outward, round[i]), 0.0);
        plan.bulge = std::max(plan.bulge, out);
        if (held <= 0) {
            return false;
        }
        if (out / held > worst) {
            worst = out / held;
            plan.hold = held;
            plan.overhang = out;
        }
    }
    for (std::size_t i = 0; i < plan.rests.size(); ++i) {
        plan.rests[i].share = most_share(plan.rests, i, weight);
    }
    return true;
}

}  // namespace bowfront::fit
