#include "bowfront/fit/layout.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "bowfront/base/contract.hpp"

namespace bowfront::fit {
namespace {

constexpr double kPi = std::numbers::pi;

// A side of the glazing line set out: a line or a circle without ends.
struct Carrier {
    bool circle = false;
    Point point;      // on the line, or the circle's centre
    Point along;      // unit vector of the line
    double radius = 0;
    bool left = true;  // an arc's sense
};

Carrier set_out_side(const std::vector<Segment>& side, double margin) {
    const Segment& first = side.front();
    if (first.straight()) {
        const Point along = tangent_at(side, 0);
        return {false, first.from - left_of(along) * margin, along, 0, true};
    }
    const bool left = first.bulge > 0;
    return {true, first.centre(), {}, first.radius() + (left ? margin : -margin), left};
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

std::optional<Point> meeting(const Carrier& a, const Carrier& b, Point near) {
    // Two arcs side by side do not occur in the shapes of this version.
    BOWFRONT_EXPECTS(!(a.circle && b.circle));
    const std::vector<Point> points = a.circle   ? line_circle(b, a)
                                      : b.circle ? line_circle(a, b)
                                                 : line_line(a, b);
    std::optional<Point> best;
    for (const Point p : points) {
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

// A rectangle along `inward` from far outside the post to the groove's bottom, between two
// distances across.
Contour slot_between(const PostGroove& groove, double out, double low, double high) {
    const auto at = [&](double u, double n) {
        return groove.mouth + groove.inward * u + groove.interior * n;
    };
    const std::array corners{at(-out, low), at(groove.depth, low), at(groove.depth, high),
                             at(-out, high)};
    return Contour::polygon(corners).counter_clockwise();
}

PostGroove post_groove(const Case& c, const PaneSums<double>& pane,
                       const std::vector<Segment>& side, PaneEdge end) {
    const Groove& groove = c.frame.groove;
    const bool at_start = end == PaneEdge::start;
    const double mouth = at_start ? pane.start_in_post : pane.side_length - pane.end_in_post;
    const double sign = at_start ? -1 : 1;
    PostGroove result;
    result.side = pane.side;
    result.end = end;
    result.mouth = point_at(side, mouth);
    const Point tangent = tangent_at(side, mouth);
    result.inward = tangent * sign;
    result.interior = left_of(tangent);  // counter-clockwise from above: the inside is on the left
    // The bottom stands square to the tangent at the point that lies the depth along the line.
    const Point bottom = point_at(side, mouth + sign * groove.post_depth.value);
    result.depth = dot(bottom - result.mouth, result.inward);
    const double half = groove.width.value / 2;
    // Past the face far enough to clear any section of the post, but not to the next post.
    const double out = c.frame.post.width.value + c.frame.post.depth.value;
    const double inner = c.frame.post.hold.value == Hold::rabbet ? out : half;
    result.slot = slot_between(result, out, -half, inner);
    result.hold = slot_between(result, out, -half, half);
    return result;
}

PostLayout post_layout(const Case& c, const CaseSums<double>& sums, const GlazingLine& line,
                       CaseSide corner) {
    PostLayout post;
    post.corner = corner;
    post.at = line.corners[index(corner)];
    post.outline = post_outline(c.frame.post, line.directions[index(corner)], post.at);
    if (const auto* pane = sums.pane(corner)) {
        post.grooves.push_back(
            post_groove(c, *pane, line.sides[index(corner)], PaneEdge::start));
    }
    const CaseSide before = previous(corner);
    if (const auto* pane = sums.pane(before)) {
        post.grooves.push_back(post_groove(c, *pane, line.sides[index(before)], PaneEdge::end));
    }
    std::vector<Region> tools;
    for (const PostGroove& groove : post.grooves) {
        tools.push_back({groove.slot, {}});
    }
    post.section = subtract({{post.outline, {}}}, tools);
    return post;
}

PlateGroove plate_groove(const Case& c, const PaneSums<double>& pane,
                         const std::vector<Segment>& side) {
    const double width = c.frame.groove.width.value;
    const double cutter = c.cutter.diameter.value / 2;
    const double past = c.frame.groove.post_depth.value + cutter;
    const double from = pane.start_in_post;
    const double to = pane.side_length - pane.end_in_post;
    PlateGroove groove;
    groove.side = pane.side;
    groove.line = stretch(side, from - past, to + past);
    groove.opening = stretch(side, from, to);
    groove.band = band(groove.line, width, BandEnd::round, BandEnd::round);
    if (c.frame.loading.value == Loading::beaded) {
        // The bead's recess runs under the posts by the cutter's radius, so that the round corners
        // that the cutter leaves lie beyond the bead's ends.
        const double bead = c.frame.bead_width.value;
        std::vector<Segment> middle;
        for (const Segment& s : stretch(side, from - cutter, to + cutter)) {
            const Point a = s.from + left_of(s.tangent(0)) * (bead / 2);
            const Point b = s.to + left_of(s.tangent(1)) * (bead / 2);
            middle.push_back({a, b, s.bulge});
        }
        groove.bead = band(middle, width + bead, BandEnd::square, BandEnd::square);
    }
    return groove;
}

PlateLayout plate_layout(const Case& c, const CaseSums<double>& sums, const GlazingLine& line,
                         const Plate& plate) {
    PlateLayout result;
    result.outline = set_out(line, plate.margin.value);
    if (plate.build.rails()) {
        if (const auto sides = sides_set_out(line, plate.margin.value)) {
            result.ring = ring(line, *sides, plate.build);
        }
    }
    for (const auto& pane : sums.panes) {
        result.grooves.push_back(plate_groove(c, pane, line.sides[index(pane.side)]));
    }
    return result;
}

// Grooves of base and top lie one over the other, so that a joint clear of the one is clear of both.
void place_joints(const Case& c, Layout& frame) {
    std::vector<Contour> recesses;
    for (const PlateGroove& groove : frame.base.grooves) {
        recesses.push_back(groove.band);
        if (groove.bead) {
            recesses.push_back(*groove.bead);
        }
    }
    const auto place = [&](double size) {
        double fitting = size;
        for (PostLayout& post : frame.posts) {
            if (post.section.size() == 1) {
                post.joint = post_joint({c, post.at, frame.line.directions[index(post.corner)],
                                         post.section.front(), recesses},
                                        size);
                fitting = std::min(fitting, post.joint->fitting);
            }
        }
        return fitting;
    };
    const double size = joint_size(c.frame.post);
    const double fitting = place(size);
    // By rule the joints are as large as all posts have room for: they are cut alike.
    if (!c.frame.post.joint_size && fitting > 0 && fitting < size) {
        (void)place(fitting);
    }
}

}  // namespace

std::optional<SideChains> sides_set_out(const GlazingLine& line, double margin) {
    std::array<Carrier, 4> carriers;
    for (const CaseSide side : kCaseSides) {
        carriers[index(side)] = set_out_side(line.sides[index(side)], margin);
        if (carriers[index(side)].circle && carriers[index(side)].radius <= 0) {
            return std::nullopt;
        }
    }
    std::array<Point, 4> corners;
    for (const CaseSide side : kCaseSides) {
        const auto corner = meeting(carriers[index(previous(side))], carriers[index(side)],
                                    line.corners[index(side)]);
        if (!corner) {
            return std::nullopt;
        }
        corners[index(side)] = *corner;
    }
    SideChains sides;
    for (const CaseSide side : kCaseSides) {
        sides.push_back(
            between(carriers[index(side)], corners[index(side)], corners[index(next(side))]));
    }
    return sides;
}

std::optional<Contour> set_out(const GlazingLine& line, double margin) {
    const auto sides = sides_set_out(line, margin);
    if (!sides) {
        return std::nullopt;
    }
    std::vector<Segment> outline;
    for (const auto& side : *sides) {
        outline.insert(outline.end(), side.begin(), side.end());
    }
    return Contour::from_segments(outline);
}

Layout layout(const Case& c, const CaseSums<double>& sums) {
    Layout result;
    result.line = glazing_line(c.plan, sums.front);
    for (const CaseSide corner : kCorners) {
        result.posts[index(corner)] = post_layout(c, sums, result.line, corner);
    }
    result.base = plate_layout(c, sums, result.line, c.frame.base);
    result.top = plate_layout(c, sums, result.line, c.frame.top);
    if (c.frame.post.joint.value != PostJoint::butt) {
        place_joints(c, result);
    }
    return result;
}

}  // namespace bowfront::fit
