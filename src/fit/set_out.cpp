#include <cmath>
#include <numbers>
#include <optional>
#include <utility>
#include <vector>

#include "bowfront/fit/layout.hpp"

namespace bowfront::fit {
namespace {

constexpr double kPi = std::numbers::pi;

// Sides that turn into each other by less than this go on smoothly: where they are set out they
// still do, and to look for a meeting of lines that hardly turn would lose all digits.
constexpr double kSmooth = 1e-7;  // rad

// A straight or an arc of the glazing line set out: a line or a circle without ends.
struct Carrier {
    bool circle = false;
    Point point;      // on the line, or the circle's centre
    Point along;      // unit vector of the line
    double radius = 0;
    bool left = true;  // an arc's sense
};

Carrier set_out_segment(const Segment& segment, double margin) {
    if (segment.straight()) {
        const Point along = tangent_at({segment}, 0);
        return {false, segment.from - left_of(along) * margin, along, 0, true};
    }
    const bool left = segment.bulge > 0;
    return {true, segment.centre(), {}, segment.radius() + (left ? margin : -margin), left};
}

std::vector<Point> line_line(const Carrier& a, const Carrier& b) {
    const double turn = cross(a.along, b.along);
    if (turn == 0) {
        return {};
    }
    return {a.point + a.along * (cross(b.point - a.point, b.along) / turn)};
}

std::vector<Point> line_circle(const Carrier& line, const Carrier& circle) {
    const double middle = dot(circle.point - line.point, line.along);
    const Point foot = line.point + line.along * middle;
    const double off = distance(foot, circle.point);
    const double half_square = circle.radius * circle.radius - off * off;
    if (half_square < 0) {
        return {};
    }
    const Point half = line.along * std::sqrt(half_square);
    return {foot + half, foot - half};
}

std::vector<Point> circle_circle(const Carrier& a, const Carrier& b) {
    const Point between = b.point - a.point;
    const double apart = norm(between);
    if (apart == 0) {
        return {};
    }
    const Point along = between * (1 / apart);
    const double foot = (apart * apart + a.radius * a.radius - b.radius * b.radius) / (2 * apart);
    const double half_square = a.radius * a.radius - foot * foot;
    if (half_square < 0) {
        return {};
    }
    const Point half = left_of(along) * std::sqrt(half_square);
    const Point middle = a.point + along * foot;
    return {middle + half, middle - half};
}

std::vector<Point> meetings_of(const Carrier& a, const Carrier& b) {
    if (a.circle) {
        return b.circle ? circle_circle(a, b) : line_circle(b, a);
    }
    return b.circle ? line_circle(a, b) : line_line(a, b);
}

std::optional<Point> meeting(const Carrier& a, const Carrier& b, Point near) {
    std::optional<Point> best;
    for (const Point p : meetings_of(a, b)) {
        if (!best || distance(p, near) < distance(*best, near)) {
            best = p;
        }
    }
    return best;
}

std::vector<Segment> between(const Carrier& carrier, Point from, Point to) {
    if (!carrier.circle) {
        return {{from, to, 0}};
    }
    const Point a = from - carrier.point;
    const Point b = to - carrier.point;
    double sweep = std::atan2(cross(a, b), dot(a, b));
    if (carrier.left && sweep <= 0) {
        sweep += 2 * kPi;
    } else if (!carrier.left && sweep >= 0) {
        sweep -= 2 * kPi;
    }
    const int pieces = std::abs(sweep) > kPi ? 2 : 1;
    const double start = std::atan2(a.y, a.x);
    std::vector<Segment> arcs;
    for (int i = 0; i < pieces; ++i) {
        arcs.push_back(arc_segment(carrier.point, carrier.radius, start + i * sweep / pieces,
                                   sweep / pieces));
    }
    arcs.front().from = from;
    arcs.back().to = to;
    return arcs;
}

// Where the sides before and after a corner meet once they are set out.
std::optional<Point> corner_of(const GlazingLine& line, const Carrier& before, const Carrier& after,
                               std::size_t corner, double margin) {
    const CornerDirections& directions = line.directions[corner];
    const double turn = std::remainder(directions.next - directions.previous - kPi, 2 * kPi);
    if (std::abs(turn) < kSmooth) {
        return line.corners[corner] - left_of(direction(directions.next)) * margin;
    }
    return meeting(before, after, line.corners[corner]);
}

// A straight runs on the way that it ran, and an arc turns by no more than it may: else the margin
// has eaten the side up.
bool keeps_its_way(const Carrier& carrier, Point from, Point to) {
    return carrier.circle || dot(to - from, carrier.along) > 0;
}

// The segments of a side, the halves of an arc of more than half a turn taken together: its ends may
// move far round once it is set out.
std::vector<Segment> whole_pieces(const std::vector<Segment>& side) {
    std::vector<Segment> pieces;
    for (const Segment& segment : side) {
        const bool goes_on = !pieces.empty() && !segment.straight() && !pieces.back().straight() &&
                             segment.bulge * pieces.back().bulge > 0 &&
                             distance(segment.centre(), pieces.back().centre()) <= kJoint;
        if (!goes_on) {
            pieces.push_back(segment);
        }
    }
    return pieces;
}

// A side set out between its corners; empty where the margin has eaten a piece of it up.
std::optional<std::vector<Segment>> side_set_out(const std::vector<Segment>& side, double margin,
                                                 Point from, Point to) {
    std::vector<Segment> result;
    const std::vector<Segment> pieces = whole_pieces(side);
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        const Carrier carrier = set_out_segment(pieces[i], margin);
        if (carrier.circle && carrier.radius <= 0) {
            return std::nullopt;
        }
        const bool last = i + 1 == pieces.size();
        // Inside a side one piece runs on into the next.
        const Point end =
            last ? to
                 : pieces[i + 1].from - left_of(pieces[i + 1].tangent(0)) * margin;
        if (!keeps_its_way(carrier, from, end)) {
            return std::nullopt;
        }
        for (const Segment& s : between(carrier, from, end)) {
            result.push_back(s);
        }
        from = end;
    }
    return result;
}

}  // namespace

std::optional<SideChains> sides_set_out(const GlazingLine& line, double margin) {
    std::vector<Point> corners;
    for (std::size_t i = 0; i < line.size(); ++i) {
        const auto corner =
            corner_of(line, set_out_segment(line.sides[line.previous(i)].back(), margin),
                      set_out_segment(line.sides[i].front(), margin), i, margin);
        if (!corner) {
            return std::nullopt;
        }
        corners.push_back(*corner);
    }
    SideChains sides;
    for (std::size_t i = 0; i < line.size(); ++i) {
        auto side = side_set_out(line.sides[i], margin, corners[i], corners[line.next(i)]);
        if (!side) {
            return std::nullopt;
        }
        sides.push_back(std::move(*side));
    }
    const Contour outline = joined(sides);
    if (outline.area() <= 0 || self_crossing(outline)) {
        return std::nullopt;
    }
    return sides;
}

std::optional<Contour> set_out(const GlazingLine& line, double margin) {
    const auto sides = sides_set_out(line, margin);
    return sides ? std::optional(joined(*sides)) : std::nullopt;
}

}  // namespace bowfront::fit
