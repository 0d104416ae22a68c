#include "bowfront/pattern/case_parts.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include "bowfront/base/contract.hpp"
#include "bowfront/base/number_text.hpp"
#include "frame_part.hpp"

namespace bowfront::pattern {
namespace {


std::string title(std::string_view words) {
    std::string text(words);
    for (char& c : text) {
        c = c == '-' ? ' ' : c;
    }
    return text;
}

Part plate_part(const PlateTask& task) {
    Part part = timber_part(task.c, task.name, task.face == Face::high ? "Base" : "Top");
    part.body.section = {*task.layout.outline, {}};
    part.body.height = task.plate.thickness.value;
    part.body.face = task.face;
    for (Region& area : unite(recesses_of(task.layout))) {
        part.body.recesses.push_back({std::move(area), task.depth});
    }
    part.note = task.face == Face::high ? "grooves in the upper face" : "grooves in the lower face";
    cut_joints(task, part);
    part.pattern = pattern_of(part.body);
    part.placements = {{.origin = {0, 0, task.z}}};
    if (task.plate.sawn.value != Sawn::plywood) {
        const bool along_x = task.plate.grain.value == Grain::width;
        part.timber = size_along(part.body.section, along_x ? Point{1, 0} : Point{0, 1},
                                 part.body.height);
    }
    return part;
}

void add_plate_parts(const PlateTask& task, std::vector<Part>& parts) {
    if (task.layout.ring) {
        add_rail_parts(task, parts);
    } else {
        parts.push_back(plate_part(task));
    }
}

// A piece that stands with its grain upright.
TimberSize upright_size(const Body& body) {
    const Box box = body.section.box();
    return {body.height, box.width(), box.height()};
}

// Tenons on a post's ends, or bores for dowels in them.
void add_joint(const Case& c, const fit::PostJointLayout& joint, Part& part) {
    if (joint.kind == PostJoint::dowel) {
        const double depth = joint.size * fit::kDowelReach;
        for (const Point centre : joint.centres) {
            part.body.bores.push_back({centre, joint.size, depth});
            part.body.back_bores.push_back({centre, joint.size, depth});
            part.pattern.bores.push_back({centre, joint.size, depth});
        }
        part.note += "; bores of " + rounded_text(joint.size, 2) + " mm for dowels, " +
                     rounded_text(depth, 2) + " mm deep in both ends";
        return;
    }
    const double foot = fit::joint_depth(c.frame.base.thickness.value).tenon;
    const double head = fit::joint_depth(c.frame.top.thickness.value).tenon;
    for (const Contour& outline : joint.outlines) {
        part.body.steps.push_back({{outline, {}}, foot, Face::low});
        part.body.steps.push_back({{outline, {}}, head, Face::high});
        part.pattern.scribes.push_back({outline.segments()});
    }
    part.timber->length += foot + head;
    part.note += "; tenons of " + rounded_text(foot, 2) + " mm at the foot and " +
                 rounded_text(head, 2) + " mm at the head come on top, as scribed";
}

Part post_part(const Case& c, const fit::PostLayout& post) {
    const std::string& corner = post.name;
    Part part = timber_part(c, "post-" + corner, "Post, " + title(corner));
    BOWFRONT_EXPECTS(post.section.size() == 1);
    part.body.section = post.section.front();
    part.body.height = c.frame.clear_height.value;
    part.pattern = pattern_of(part.body);
    part.placements = {{}};
    part.timber = upright_size(part.body);
    part.note = "pattern is the section; grain runs along the length of " +
                rounded_text(part.body.height, 2) + " mm";
    if (post.joint) {
        add_joint(c, *post.joint, part);
    }
    return part;
}

// A line across the blank, on its film; none at an edge, and one where two bends meet.
void scribe_bend_line(double at, const PaneSums<double>& pane, Pattern& pattern) {
    constexpr double kEdge = 0.01;  // nothing shorter is cut, mm
    const auto there = [&](const Path& scribe) {
        return std::abs(scribe.segments.front().from.x - at) < kEdge;
    };
    if (at > kEdge && at < pane.blank_length - kEdge &&
        std::none_of(pattern.scribes.begin(), pattern.scribes.end(), there)) {
        pattern.scribes.push_back({{Segment{{at, 0}, {at, pane.blank_width}, 0}}});
    }
}

Part pane_part(const Case& c, const PaneSums<double>& pane, const fit::Layout& layout) {
    const PaneSpec& spec = *c.pane(pane.side);
    const Sheet& sheet = *c.sheets.at(spec.sheet).like;
    const std::string side(side_text(pane.side));
    const PaneSpan span = pane_span(pane);
    Part part;
    part.id = "pane-" + side;
    part.name = "Pane, " + side;
    part.assembly = "case";
    part.group = "glazing";
    part.material = spec.sheet;
    part.density = sheet.density.value;
    part.finish = sheet.kind == SheetKind::float_glass ? Finish::glass : Finish::clear_sheet;
    const auto line = fit::stretch(layout.line.sides[index(pane.side)], span.start, span.end);
    part.body.section = {band(line, pane.thickness, BandEnd::square, BandEnd::square), {}};
    part.body.height = pane.height;
    part.placements = {{.origin = {0, 0, -c.frame.groove.base_depth.value}}};
    part.pattern.outline = {
        Contour::rectangle({0, 0}, {pane.blank_length, pane.blank_width}), {}};
    part.pattern.thickness = pane.thickness;
    for (const BendSums<double>& bend : pane.bends) {
        for (const double at : {bend.blank_start, bend.blank_end}) {
            scribe_bend_line(at, pane, part.pattern);
        }
    }
    if (pane.heated) {
        part.note = "pattern is the blank, cut before heating; its length bends";
        if (pane.is_run()) {
            part.note += "; scribed lines are where its bends begin and end, its start edge is on "
                         "the left";
        }
    } else if (pane.curved) {
        part.note = "held to its curve cold";
    }
    return part;
}

void add_plate_beads(const Case& c, std::string_view plate, const fit::PlateLayout& layout,
                     double depth, double z, std::vector<Part>& parts) {
    const double off = (c.frame.groove.width.value + c.frame.bead_width.value) / 2;
    for (const fit::PlateGroove& groove : layout.grooves) {
        if (!groove.bead) {
            continue;
        }
        const std::string side(side_text(groove.side));
        Part part = timber_part(c, "bead-" + std::string(plate) + "-" + side,
                                "Bead, " + std::string(plate) + ", " + side);
        std::vector<Segment> middle;
        for (const Segment& s : groove.opening) {
            middle.push_back({s.from + left_of(s.tangent(0)) * off,
                              s.to + left_of(s.tangent(1)) * off, s.bulge});
        }
        part.body.section = {
            band(middle, c.frame.bead_width.value, BandEnd::square, BandEnd::square), {}};
        part.body.height = depth;
        part.pattern = pattern_of(part.body);
        part.placements = {{.origin = {0, 0, z}}};
        part.timber = size_along(part.body.section, middle.back().to - middle.front().from,
                                 part.body.height);
        part.note = "put in after the pane, pinned to the frame, not to the pane";
        parts.push_back(std::move(part));
    }
}

// What closes a post's rabbets once the panes stand in them: the rabbet less the groove's width.
// Where the rabbets of one post run into each other, the first bead takes the shared piece.
void add_post_beads(const Case& c, const fit::PostLayout& post, std::vector<Part>& parts) {
    if (c.frame.post.hold.value != Hold::rabbet) {
        return;
    }
    std::vector<Region> taken;
    for (const fit::PostGroove& groove : post.grooves) {
        taken.push_back({groove.hold, {}});
    }
    for (const fit::PostGroove& groove : post.grooves) {
        const auto rabbet = intersect({{post.outline, {}}}, {{groove.slot, {}}});
        int number = 0;
        for (const Region& area : subtract(rabbet, taken)) {
            const std::string& corner = post.name;
            std::string id = "bead-post-" + corner + "-" + std::string(side_text(groove.side));
            if (++number > 1) {
                id += "-" + std::to_string(number);
            }
            Part part = timber_part(c, id, "Bead, post " + title(corner) + ", " +
                                               std::string(side_text(groove.side)));
            part.body.section = area;
            part.body.height = c.frame.clear_height.value;
            part.pattern = pattern_of(part.body);
            part.placements = {{}};
            part.timber = upright_size(part.body);
            part.note = "pattern is the section; put in after the pane, pinned to the post";
            parts.push_back(std::move(part));
            taken.push_back(area);
        }
    }
}

}  // namespace

PaneSpan pane_span(const PaneSums<double>& pane) {
    const double middle = pane.start_in_post + pane.opening_length / 2;
    return {middle - pane.length / 2, middle + pane.length / 2};
}

std::vector<Part> case_parts(const Case& c, const CaseSums<double>& sums,
                             const fit::Layout& layout) {
    const Groove& groove = c.frame.groove;
    const double height = c.frame.clear_height.value;
    const std::vector<fit::PostLayout> posts(layout.posts.begin(), layout.posts.end());
    std::vector<Part> parts;
    add_plate_parts({c, "base", c.frame.base, layout.base, groove.base_depth.value, Face::high,
                     -c.frame.base.thickness.value, posts},
                    parts);
    add_plate_parts({c, "top", c.frame.top, layout.top, groove.top_depth.value, Face::low, height,
                     posts},
                    parts);
    for (const fit::PostLayout& post : layout.posts) {
        parts.push_back(post_part(c, post));
    }
    for (const fit::PostLayout& post : layout.posts) {
        add_post_beads(c, post, parts);
    }
    add_plate_beads(c, "base", layout.base, groove.base_depth.value, -groove.base_depth.value,
                    parts);
    add_plate_beads(c, "top", layout.top, groove.top_depth.value, height, parts);
    for (const auto& pane : sums.panes) {
        parts.push_back(pane_part(c, pane, layout));
    }
    return parts;
}

}  // namespace bowfront::pattern
