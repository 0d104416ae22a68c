#include "bowfront/fit/layout.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace bowfront::fit {
namespace {

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

// The panes by the places of their sides; null where a side is open.
using PanesBySide = std::vector<const PaneSums<double>*>;

PostLayout post_layout(const Case& c, const PanesBySide& panes, const GlazingLine& line,
                       std::size_t corner) {
    PostLayout post;
    post.corner = line.order[corner];
    post.name = corner_name(c.plan, corner);
    post.at = line.corners[corner];
    post.outline = post_outline(c.frame.post, line.directions[corner], post.at);
    if (panes[corner] != nullptr) {
        post.grooves.push_back(
            post_groove(c, *panes[corner], line.sides[corner], PaneEdge::start));
    }
    const std::size_t before = line.previous(corner);
    if (panes[before] != nullptr) {
        post.grooves.push_back(post_groove(c, *panes[before], line.sides[before], PaneEdge::end));
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

// Grooves and beads' recesses that a joint of a post could come near. Those of base and top lie one
// over the other, so that a joint clear of the one is clear of both.
std::vector<Contour> recesses_near(const Case& c, const PostLayout& post,
                                   const PlateLayout& plate) {
    // A joint is looked for no farther than width and depth from the corner point, and a distance
    // over as much again counts for nothing.
    const double reach = 2 * (c.frame.post.width.value + c.frame.post.depth.value) +
                         joint_size(c.frame.post);
    std::vector<Contour> near;
    const auto add = [&](const Contour& recess) {
        if (within(recess.box(), {post.at, post.at}, reach)) {
            near.push_back(recess);
        }
    };
    for (const PlateGroove& groove : plate.grooves) {
        add(groove.band);
        if (groove.bead) {
            add(*groove.bead);
        }
    }
    return near;
}

void place_joints(const Case& c, Layout& frame) {
    const auto place = [&](double size) {
        double fitting = size;
        for (PostLayout& post : frame.posts) {
            if (post.section.size() == 1) {
                const std::vector<Contour> recesses = recesses_near(c, post, frame.base);
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

Layout layout(const Case& c, const CaseSums<double>& sums) {
    Layout result;
    result.line = glazing_line(c.plan, sums.sides);
    PanesBySide panes(result.line.size(), nullptr);
    for (const PaneSums<double>& pane : sums.panes) {
        panes[index(pane.side)] = &pane;
    }
    for (std::size_t corner = 0; corner < result.line.size(); ++corner) {
        result.posts.push_back(post_layout(c, panes, result.line, corner));
    }
    result.base = plate_layout(c, sums, result.line, c.frame.base);
    result.top = plate_layout(c, sums, result.line, c.frame.top);
    if (c.frame.post.joint.value != PostJoint::butt) {
        place_joints(c, result);
    }
    return result;
}

}  // namespace bowfront::fit
