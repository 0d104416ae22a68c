#include <algorithm>
#include <cmath>
#include <numbers>
#include <set>
#include <tuple>

#include "bowfront/base/number_text.hpp"
#include "bowfront/fit/checks.hpp"
#include "bowfront/forming/form_profile.hpp"
#include "check_list.hpp"
#include "objection_list.hpp"
#include "plan_objections.hpp"

namespace bowfront::fit {
namespace {

constexpr double kTwoPi = 2 * std::numbers::pi;

// Posts must leave something of each side; with sizes that pass here every glazing line is sure
// to leave its posts, so that the sums can be done.
void object_to_posts(const Case& c, ObjectionList& list) {
    const double post = std::min(c.frame.post.width.value, c.frame.post.depth.value);
    if (c.frame.groove.width.value >= post) {
        list.add("/frame/groove/width",
                 "a groove of " + mm(c.frame.groove.width.value) + " in a post of " + mm(post) +
                     " leaves no cheek on one side",
                 "give less than " + mm(post));
    }
}

// Outside the handbook's range nothing is known of the timber's moisture.
void object_to_service(const Case& c, ObjectionList& list) {
    const auto check = [&](const Sourced<double>& value, double low, double high,
                           const char* wanted) {
        if (!(value.value >= low && value.value <= high)) {
            list.add(value.origin.pointer, "the timber's moisture is not known in this air", wanted);
        }
    };
    for (const Sourced<double>* temperature :
         {&c.service.built_temperature, &c.service.temperature[0], &c.service.temperature[1]}) {
        check(*temperature, -1.1, 132.2, "give a temperature from -1.1 C to 132.2 C");
    }
    for (const Sourced<double>* humidity :
         {&c.service.built_humidity, &c.service.humidity[0], &c.service.humidity[1]}) {
        check(*humidity, 0.05, 0.95, "give a humidity from 5 % to 95 %");
    }
}

void object_to_joints(const Case& c, ObjectionList& list) {
    const Post& post = c.frame.post;
    if (post.joint.value == PostJoint::butt) {
        return;
    }
    const double most = std::min(post.width.value, post.depth.value);
    if (joint_size(post) >= most) {
        list.add("/frame/post/joint_size",
                 "a " + std::string(joint_text(post.joint.value)) + " of " + mm(joint_size(post)) +
                     " is no smaller than the post",
                 "give less than " + mm(most));
    }
    for (const auto& [name, plate] : {std::pair{"base", &c.frame.base}, std::pair{"top", &c.frame.top}}) {
        if (plate->thickness.value * kMortiseShare <= kGlueRoom) {
            list.add("/frame/" + std::string(name) + "/thickness",
                     "a board of " + mm(plate->thickness.value) + " has no depth for a joint",
                     "give more than " + mm(kGlueRoom / kMortiseShare));
        }
    }
}

// A rail is one straight, or one arc built up from boards.
void object_to_rails(const Plan& plan, const std::string& plate, ObjectionList& list) {
    for (const CaseSide& side : sides_of(plan)) {
        if (has_several_pieces(plan, index(side))) {
            list.add("/frame/" + plate + "/build",
                     "the " + std::string(side_text(side)) +
                         " has several pieces, and no rail is built up along such a side",
                     "\"plate\", or sides of one straight or arc each");
            return;
        }
    }
}

void object_to_plates(const Case& c, ObjectionList& list) {
    const Groove& groove = c.frame.groove;
    const auto shallow = [&](const char* name, double depth, double thickness) {
        if (depth >= thickness) {
            list.add("/frame/groove/depth/" + std::string(name),
                     "the groove (" + mm(depth) + ") goes through the board (" + mm(thickness) + ")",
                     "give less than " + mm(thickness));
        }
    };
    for (const auto& [name, plate] : {std::pair{"base", &c.frame.base}, std::pair{"top", &c.frame.top}}) {
        if (plate->build.rails()) {
            object_to_rails(c.plan, name, list);
        }
        if (plate->margin.value <= groove.width.value / 2) {
            list.add("/frame/" + std::string(name) + "/margin",
                     "the groove (" + mm(groove.width.value) + " wide) would run out of the board's edge",
                     "give more than " + mm(groove.width.value / 2));
        }
        if (plate->build.rails() && plate->build.inset.value <= groove.width.value / 2) {
            list.add("/frame/" + std::string(name) + "/inset",
                     "the groove (" + mm(groove.width.value) + " wide) would run out of the rails' edge",
                     "give more than " + mm(groove.width.value / 2));
        }
    }
    shallow("base", groove.base_depth.value, c.frame.base.thickness.value);
    shallow("top", groove.top_depth.value, c.frame.top.thickness.value);
}

void object_to_pane(const Case& c, const PaneSpec& spec, ObjectionList& list) {
    const bool curved = is_curved(c.plan, index(spec.side));
    const Sheet& sheet = *c.sheets.at(spec.sheet).like;
    if (curved && sheet.kind == SheetKind::float_glass) {
        list.add(spec.pointer + "/sheet", "glass can't be bent here", "take a plastic sheet for a curved pane");
    } else if (curved && spec.bend.value == Bend::heat && !sheet.forming) {
        list.add(spec.pointer + "/sheet", "this sheet can't be formed in heat", "take another sheet");
    }
    if (curved && spec.bend.value == Bend::cold && has_several_pieces(c.plan, index(spec.side))) {
        list.add(spec.pointer + "/bend",
                 "a pane of several pieces can't be held cold: it bends at its bends alone",
                 "\"heat\"");
    }
    if (spec.blank.method.value == BlankMethod::as_cut && (spec.length || spec.height)) {
        list.add(spec.pointer + "/size", "the blank is given as cut, so the pane's size follows from it",
                 "leave out size, or the blank's length and width");
    }
}

// Posts and their grooves are straight: a run has to hold its first and its last piece until it is
// out of its post, and the pane has to reach past its first and its last bend line.
void object_to_ends(const Case& c, const PaneSums<double>& pane, const SideSums<double>& side,
                    ObjectionList& list) {
    if (!pane.is_run()) {
        return;
    }
    const std::string pointer = side_pointer(c.plan, index(pane.side));
    const auto of_spec = [&](std::size_t spec) {
        double length = 0;
        for (const SidePiece<double>& piece : side.pieces) {
            length += piece.spec == spec ? piece.length : 0;
        }
        return length;
    };
    const struct {
        const char* which;
        double has;
        double needs;
        bool reached;
    } ends[] = {{"first", of_spec(side.pieces.front().spec), pane.start_in_post,
                 pane.path.front().spec == side.pieces.front().spec},
                {"last", of_spec(side.pieces.back().spec), pane.end_in_post,
                 pane.path.back().spec == side.pieces.back().spec}};
    for (const auto& end : ends) {
        if (end.has < end.needs) {
            list.add(pointer,
                     "the " + std::string(end.which) + " piece of the " +
                         std::string(side_text(pane.side)) + " (" + mm(end.has) +
                         ") ends inside its post, whose groove is straight",
                     "a piece of at least " + mm(end.needs) + ", or a thinner post");
        } else if (!end.reached) {
            list.add(c.pane(pane.side)->pointer,
                     "the pane is so short that it ends before its " + std::string(end.which) +
                         " bend line",
                     "a longer pane");
        }
    }
}

void object_to_solved_pane(const Case& c, const CaseSums<double>& sums,
                           const PaneSums<double>& pane, ObjectionList& list) {
    const std::string& pointer = c.pane(pane.side)->pointer;
    const std::string side(side_text(pane.side));
    if (pane.opening_length <= 0) {
        list.add("/frame/post/width", "the posts leave no opening at the " + side, "take thinner posts");
        return;
    }
    if (pane.length <= 0 || pane.height <= 0) {
        list.add(pointer, "the clearances leave nothing of the pane", "give smaller clearances or deeper grooves");
    }
    const double run = c.frame.groove.post_depth.value + c.cutter.diameter.value / 2;
    if (pane.opening_length + 2 * run <= c.frame.groove.width.value) {
        list.add("/frame/groove/width", "the groove is wider than it is long at the " + side,
                 "give a narrower groove");
    }
    for (const auto& [end, inside] : {std::pair{"start", pane.start_in_post},
                                      std::pair{"end", pane.end_in_post}}) {
        if (c.frame.groove.post_depth.value >= inside) {
            list.add("/frame/groove/depth/post",
                     "the groove is deeper than half the post at the " + side + "'s " + end +
                         ": grooves would meet",
                     "give less than " + mm(inside));
            return;
        }
    }
    object_to_ends(c, pane, sums.sides[index(pane.side)], list);
    if (pane.curved && !pane.is_run() && pane.length >= kTwoPi * pane.radius) {
        list.add(pointer, "the pane is longer than a full turn", "give a shorter one");
    }
}

// Beyond its last row the standard leaves tolerances to agreement.
void object_to_tolerances(const Case& c, const PaneSums<double>& pane, ObjectionList& list) {
    constexpr double kLastRow = 4000;  // mm; ISO 2768-1:1989, table 1
    const auto check = [&](const char* key, const Sourced<ToleranceSpec>& spec, double size) {
        if (spec.value.by_class && size > kLastRow) {
            list.add("/tolerance/" + std::string(key),
                     "ISO 2768-1 has no tolerance for the " + std::string(side_text(pane.side)) +
                         " pane's " + mm(size),
                     "give a length in place of the class");
        }
    };
    const double blank = std::max(pane.blank_length, pane.blank_width);
    const double opening = std::max(pane.opening_length, pane.opening_height);
    check("cut", c.tolerance.cut, blank);
    check("opening", c.tolerance.opening, opening);
}

// Half of the form's width between the ends of its ribs' edge.
double half_span_of(const Case& c, const FormSizes<double>& sizes) {
    if (sizes.pieces.empty()) {
        return sizes.rib_radius * std::sin(sizes.rib_sweep / 2);
    }
    const std::vector<Segment> edge = forming::form_profile(sizes, c.form).edge;
    return (edge.front().from.x - edge.back().to.x) / 2;
}

// A fence stands on the skin, into a hollow of the form.
void object_to_fence(const Case& c, const PaneForm<double>& form, ObjectionList& list) {
    for (const FormPiece<double>& piece : form.sizes.pieces) {
        const double room = piece.radius + c.form.cover.value;
        if (piece.radius > 0 && piece.hollow && room <= c.form.fence_depth.value) {
            list.add("/form/fence/depth",
                     "a fence of " + mm(c.form.fence_depth.value) +
                         " does not go into the hollow of the " +
                         std::string(side_text(form.side)) + "'s form (radius " +
                         mm(piece.radius) + ")",
                     "give less than " + mm(room) + ", or a wider bend");
            return;
        }
    }
}

void object_to_form(const Case& c, const PaneForm<double>& form, ObjectionList& list) {
    constexpr double kMostRibs = 200;
    const FormSizes<double>& sizes = form.sizes;
    const double thickness = c.form.rib_thickness.value;
    if (sizes.rib_pitch <= thickness) {
        list.add("/form/ribs/max_spacing",
                 "the ribs would stand in one another: " + mm(sizes.rib_pitch) +
                     " from middle to middle, each " + mm(thickness) + " thick",
                 "give a wider spacing or thinner ribs");
    } else if (sizes.rib_count > kMostRibs) {
        list.add("/form/ribs/max_spacing",
                 "the form would have " + rounded_text(sizes.rib_count, 0) + " ribs",
                 "give a spacing that needs at most " + rounded_text(kMostRibs, 0));
    }
    const double half_span = half_span_of(c, sizes);
    if (forming::can_be_drawn_off(sizes) && half_span <= 4 * thickness) {
        list.add("/form/ribs/thickness",
                 "the form is " + mm(2 * half_span) + " wide, too narrow for boards of " +
                     mm(thickness),
                 "take boards of less than " + mm(half_span / 4));
    }
}

void object_to_cheeks(const Case& c, const PostLayout& post, ObjectionList& list) {
    const double half = c.frame.groove.width.value / 2;
    const std::string& corner = post.name;
    for (const PostGroove& groove : post.grooves) {
        // Both corners of the bottom must lie in timber, or there is no cheek to hold the pane.
        const Point bottom = groove.mouth + groove.inward * groove.depth;
        const bool held = where(post.outline, bottom - groove.interior * half) == Side::inside &&
                          (c.frame.post.hold.value == Hold::rabbet ||
                           where(post.outline, bottom + groove.interior * half) == Side::inside);
        if (!held) {
            list.add("/frame/groove/width",
                     "the " + std::string(side_text(groove.side)) + " pane's groove in the " +
                         corner + " post has no cheek on one side",
                     "give a narrower or a deeper groove, or a wider post");
        }
    }
}

// Parts, files and figures go by the pieces' names, and a side may be named as another one's piece.
void object_to_rail_names(const Case& c, const Ring& ring, ObjectionList& list) {
    std::set<std::string> names;
    for (const RailPiece& piece : ring.pieces) {
        if (!names.insert(piece.name).second) {
            list.add(side_pointer(c.plan, index(piece.side)),
                     "two pieces of rails would have the name " + piece.name,
                     "give one of the sides another name");
        }
    }
}

void object_to_layout(const Case& c, const Layout& frame, ObjectionList& list) {
    for (const auto& [name, plate, board] :
         {std::tuple{"base", &frame.base, &c.frame.base},
          std::tuple{"top", &frame.top, &c.frame.top}}) {
        if (!plate->outline) {
            list.add("/frame/" + std::string(name) + "/margin",
                     "the glazing line set out by this margin does not close",
                     "give another margin, or a plan with gentler bows");
        }
        if (plate->ring) {
            object_to_rail_names(c, *plate->ring, list);
        }
        if (plate->outline && board->build.rails() && !plate->ring) {
            const bool asked = board->build.segments.has_value();
            list.add("/frame/" + std::string(name) + (asked ? "/segments" : "/inset"),
                     "no ring of rails can be made: its inner edge does not close, or a curved rail "
                     "has no room for as many pieces",
                     "give a smaller inset or fewer segments");
        }
    }
    object_to_room(c, frame, list);
    for (const PostLayout& post : frame.posts) {
        const std::string& corner = post.name;
        if (post.section.size() != 1) {
            list.add("/frame/groove", "the grooves cut the " + corner + " post apart",
                     "give narrower or shallower post grooves, or a larger post");
        } else if (post.grooves.size() == 2 && c.frame.post.hold.value == Hold::groove &&
                   gap(post.grooves[0].hold, post.grooves[1].hold) == 0) {
            list.add("/frame/groove/depth/post", "the grooves in the " + corner + " post meet",
                     "give shallower or narrower grooves, or a larger post");
        } else {
            object_to_cheeks(c, post, list);
        }
        if (post.joint && (post.joint->clear <= 0 || post.joint->shoulder <= 0)) {
            list.add(c.frame.post.joint_size ? "/frame/post/joint_size" : "/frame/post/joint",
                     "a " + std::string(joint_text(post.joint->kind)) + " of " +
                         mm(post.joint->size) + " meets a groove or the edge of the " + corner +
                         " post",
                     post.joint->fitting > 0
                         ? "give a joint_size of " + mm(post.joint->fitting) + " or less"
                         : "another joint, or a larger post");
        }
    }
}

void object_to_shop(const Case& c, ObjectionList& list) {
    if (!(c.shop.step.value > 0)) {
        list.add("/shop/step", "the shop can set no step", "a step over 0, such as 0.5 mm");
    }
}

// What can be told before any sum is done.
void object_to_values(const Case& c, ObjectionList& list) {
    object_to_plan(c.plan, list);
    object_to_posts(c, list);
    object_to_plates(c, list);
    object_to_joints(c, list);
    object_to_service(c, list);
    object_to_shop(c, list);
    for (const PaneSpec& spec : c.panes) {
        object_to_pane(c, spec, list);
    }
}

void object_to_sums(const Case& c, const CaseSums<double>& sums, ObjectionList& list) {
    for (const auto& pane : sums.panes) {
        object_to_solved_pane(c, sums, pane, list);
        object_to_tolerances(c, pane, list);
    }
    for (const auto& form : sums.forms) {
        object_to_fence(c, form, list);
        object_to_form(c, form, list);
    }
}

}  // namespace

SolvedCase solved_case(const Case& c) {
    SolvedCase out;
    ObjectionList list;
    object_to_values(c, list);
    if (list.empty()) {
        object_to_line(c, list);
    }
    if (list.empty()) {
        out.sums = solve(c);
        object_to_sums(c, out.sums, list);
    }
    out.objections = list.take();
    return out;
}

SolvedFrame solved_frame(const Case& c, const CaseSums<double>& sums) {
    SolvedFrame out;
    ObjectionList list;
    out.layout = layout(c, sums);
    object_to_layout(c, out.layout, list);
    if (list.empty()) {
        out.findings = frame_checks(c, out.layout);
    }
    out.objections = list.take();
    return out;
}

Solution solution(const Case& c) {
    SolvedCase solved = solved_case(c);
    Solution out{std::move(solved.objections), std::move(solved.sums), {}};
    if (out.objections.empty()) {
        ObjectionList list;
        out.layout = layout(c, out.sums);
        object_to_layout(c, out.layout, list);
        out.objections = list.take();
    }
    return out;
}

std::vector<Objection> objections(const Case& c) {
    return solution(c).objections;
}

}  // namespace bowfront::fit
