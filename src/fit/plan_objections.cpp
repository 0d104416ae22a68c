#include "plan_objections.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <set>
#include <string>
#include <utility>

#include "bowfront/forming/form.hpp"
#include "bowfront/geom/region.hpp"
#include "check_list.hpp"
#include "geom/near_boxes.hpp"
#include "free_piece.hpp"

namespace bowfront::fit {
namespace {

constexpr double kTwoPi = 2 * std::numbers::pi;

std::string degrees(double radians) {
    return rounded_text(radians / std::numbers::pi * 180, 4) + " degrees";
}

// One measure of an arc against the chord that it stands over.
void object_to_arc_over(const FrontArc& arc, const std::string& pointer, double chord,
                        const std::string& chord_name, ObjectionList& list) {
    const double value = arc.value.value;
    switch (arc.measure) {
        case ArcMeasure::radius:
            if (2 * value < chord) {
                list.add(pointer,
                         "the chord (" + chord_name + " " + mm(chord) +
                             ") is longer than the diameter (" + mm(2 * value) + ")",
                         "the radius must be at least " + mm(chord / 2));
            }
            break;
        case ArcMeasure::sweep:
            if (!(value > 0 && value < kTwoPi)) {
                list.add(pointer, "the sweep is not between 0 and 360 degrees",
                         "give an angle over 0 and under 360 degrees");
            }
            break;
        case ArcMeasure::length:
            if (value <= chord) {
                list.add(pointer,
                         "the arc (" + mm(value) + ") is not longer than its chord (" + chord_name +
                             " " + mm(chord) + ")",
                         "give more than " + mm(chord));
            }
            break;
        case ArcMeasure::rise: break;
        case ArcMeasure::chord:
            list.add(pointer, "the chord is known already",
                     "give radius, rise, sweep or length");
            break;
    }
}

struct KnownChord {
    double chord = 0;
    std::string name;
};

KnownChord known_chord(const Plan& plan) {
    switch (plan.shape) {
        case PlanShape::quarter_round:
            return {std::hypot(plan.width.value, plan.depth.value), "over width and depth"};
        case PlanShape::bow_ends: return {plan.depth.value, "plan depth"};
        case PlanShape::serpentine:
            return {plan.width.value / plan.arcs, "one part of the plan width"};
        default: return {plan.width.value, "plan width"};
    }
}

void object_to_front(const Plan& plan, ObjectionList& list) {
    const bool ends = plan.shape == PlanShape::bow_ends;
    const std::string pointer = ends ? "/plan/ends" : "/plan/front";
    if (!plan.front) {
        list.add(pointer,
                 "a " + std::string(shape_text(plan.shape)) +
                     (ends ? " has no arc at its ends" : " has no front arc"),
                 "give its radius, rise, sweep or length");
        return;
    }
    const KnownChord known = known_chord(plan);
    object_to_arc_over(*plan.front, pointer + "/" + std::string(measure_text(plan.front->measure)),
                       known.chord, known.name, list);
}

void object_to_polygon(const Plan& plan, ObjectionList& list) {
    const std::size_t count =
        plan.corners.empty() ? static_cast<std::size_t>(std::max(0, plan.count)) : plan.corners.size();
    if (count < 3) {
        list.add("/plan", "a polygon of " + std::to_string(count) + " sides closes nothing in",
                 "give at least 3");
        return;
    }
    for (std::size_t i = 0; i < plan.corners.size(); ++i) {
        const auto& a = plan.corners[i];
        const auto& b = plan.corners[(i + 1) % count];
        if (std::hypot(b[0].value - a[0].value, b[1].value - a[1].value) <= kJoint) {
            list.add("/plan/corners/" + std::to_string(i),
                     "this corner and the next lie in one place", "leave one of them out");
        }
    }
}

std::string measures_in_words(const FrontArc& a, const FrontArc& b) {
    const auto words = [](const FrontArc& each) {
        return "a " + std::string(measure_text(each.measure)) + " of " +
               (each.measure == ArcMeasure::sweep ? degrees(each.value.value)
                                                  : mm(each.value.value));
    };
    return words(a) + " and " + words(b);
}

// What the second of two measures can be, beside the first.
std::string agreeing(const FrontArc& a, const FrontArc& b) {
    const FrontArc& first = a.measure < b.measure ? a : b;
    const FrontArc& second = a.measure < b.measure ? b : a;
    const double value = first.value.value;
    using enum ArcMeasure;
    if (first.measure == radius) {
        switch (second.measure) {
            case rise: return "a rise of less than " + mm(2 * value);
            case length: return "a length of at most " + mm(kTwoPi * value);
            case chord: return "a chord of at most " + mm(2 * value);
            default: return "a sweep of at most 360 degrees";
        }
    }
    if (first.measure == rise && second.measure == length) {
        return "a length of at least " + mm(value / forming::kMostRise);
    }
    if (first.measure == length) {
        return "a chord of less than " + mm(value);
    }
    return "a sweep under 360 degrees";
}

// A run is as smooth as its pieces: an arc turns by less than a full turn, and two straights in a
// row are one.
void object_to_run(const SideSpec& side, ObjectionList& list) {
    if (side.closing) {
        list.add(side.pointer, "a run or a curve can't close the chain",
                 "let a straight or an arc close it");
    }
    if (side.panes != 1) {
        list.add(side.pointer, "a run or a curve is glazed by one pane",
                 "leave out \"panes\", or make sides of its pieces");
    }
    for (std::size_t i = 0; i < side.pieces.size(); ++i) {
        const PieceSpec& piece = side.pieces[i];
        if (i > 0 && piece.straight && side.pieces[i - 1].straight) {
            list.add(piece.pointer, "two straights of a run follow each other",
                     "one straight of " +
                         mm(piece.straight->value + side.pieces[i - 1].straight->value));
        }
        if (!piece.straight && piece.arc.size() != 2 && !piece.is_free()) {
            list.add(piece.pointer, "a piece of a run has no shape",
                     "a length, two measures of an arc, or a curve");
        }
    }
}

void object_to_pieces(const SideSpec& side, ObjectionList& list) {
    if (side.pieces.empty()) {
        list.add(side.pointer, "the side has no pieces", "give at least one");
        return;
    }
    if (side.pieces.size() > 1 || side.pieces.front().is_free()) {
        object_to_run(side, list);
    }
    for (const PieceSpec& piece : side.pieces) {
        if (piece.is_free()) {
            if (const FreePieceFault fault = fault_of(piece); !fault.found.empty()) {
                list.add(piece.pointer, fault.found, fault.wanted);
            }
            continue;
        }
        const auto& arc = piece.arc;
        if (!side.closing && arc.size() == 2 &&
            !forming::measures_agree(arc[0].measure, arc[0].value.value, arc[1].measure,
                                     arc[1].value.value)) {
            list.add(piece.pointer, "no arc has " + measures_in_words(arc[0], arc[1]),
                     agreeing(arc[0], arc[1]));
        }
    }
}

void object_to_chain(const Plan& plan, ObjectionList& list) {
    if (plan.chain.empty()) {
        list.add("/plan/sides", "the chain has no sides", "give at least one");
        return;
    }
    std::set<std::string> names;
    for (const SideSpec& side : plan.chain) {
        if (!names.insert(side.name).second) {
            list.add(side.pointer, "a second side has the name " + side.name,
                     "give each side a name of its own");
        }
        object_to_pieces(side, list);
        if (side.closing && &side != &plan.chain.back()) {
            list.add(side.pointer, "a side that closes the chain does not stand last",
                     "put it last, and only one such side");
        }
    }
    if (plan.chain.size() == 1 && plan.chain.front().closing) {
        list.add("/plan/sides", "one side alone can't close a chain", "give the sides before it");
    }
}

// The chain's end against its start.
void object_to_gap(const Plan& plan, ObjectionList& list) {
    const PlanGap gap = plan_gap(plan);
    if (norm(gap.off) > kOpenPlan) {
        list.add("/plan/sides",
                 "the chain does not close: it ends " + mm(std::abs(gap.off.x)) +
                     (gap.off.x < 0 ? " left" : " right") + " and " + mm(std::abs(gap.off.y)) +
                     (gap.off.y < 0 ? " in front" : " behind") + " of where it starts",
                 "other sizes, or \"closing\" as its last side, which is solved for");
    } else if (std::abs(gap.turn) > kOpenPlan) {
        list.add("/plan/sides",
                 "the chain turns through " + degrees(kTwoPi + gap.turn) + " in all, not through 360",
                 "mend the turns, or leave the last side's turn to follow from the others");
    }
}

// Of a chain that closes itself: its end, and the arc over it.
void object_to_closing(const Plan& plan, ObjectionList& list) {
    Plan straight = plan;
    SideSpec& last = straight.chain.back();
    if (!last.closing) {
        object_to_gap(plan, list);
        return;
    }
    last.pieces.front().arc.clear();
    Book<double> book;
    const double chord = solve_sides(straight, book).back().length * last.panes;
    if (chord <= kOpenPlan) {
        list.add(last.pointer, "the sides before it close the chain already",
                 "leave the closing side out");
        return;
    }
    const auto& arc = plan.chain.back().pieces.front().arc;
    if (!arc.empty()) {
        object_to_arc_over(arc.front(),
                           last.pointer + "/arc/" +
                               std::string(measure_text(arc.front().measure)),
                           chord, "that closes the chain,", list);
    }
}

void object_to_outline(const Case& c, const GlazingLine& line, ObjectionList& list) {
    const Contour outline = line.outline();
    std::vector<std::size_t> of;  // the side of each segment
    for (std::size_t i = 0; i < line.size(); ++i) {
        of.insert(of.end(), line.sides[i].size(), i);
    }
    const std::string pointer = c.plan.shape == PlanShape::sides     ? "/plan/sides"
                                : c.plan.shape == PlanShape::polygon ? "/plan/corners"
                                                                     : "/plan";
    if (const auto crossing = self_crossing(outline); crossing && of.size() == outline.size()) {
        list.add(pointer,
                 "the glazing line crosses itself: the " +
                     std::string(side_text(line.order[of[crossing->first]])) + " and the " +
                     std::string(side_text(line.order[of[crossing->second]])) + " meet",
                 "a plan whose sides keep clear of each other");
    } else if (crossing) {
        list.add(pointer, "the glazing line crosses itself",
                 "a plan whose sides keep clear of each other");
    } else if (outline.area() <= 0) {
        list.add(pointer, "the plan runs clockwise",
                 "list it counter-clockwise as seen from above: from the front's left end to the "
                 "right");
    }
}

std::string piece_pointer(const Plan& plan, const CaseSide& side, std::size_t piece) {
    const std::string whole = side_pointer(plan, index(side));
    if (plan.shape != PlanShape::sides) {
        return whole;
    }
    for (const SideSpec& spec : plan.chain) {
        if (spec.pointer == whole && piece < spec.pieces.size()) {
            return spec.pieces[piece].pointer;
        }
    }
    return whole;
}

// The least radius that an arc of a pane's side can have: for its sheet, its groove and its form.
// The form lies in the hollow of the bends that bow as the whole side does; to the others it gives
// its own hollow, which its skin and cover make no tighter.
void object_to_radii(const Case& c, const PaneSpec& spec, const SideSums<double>& side,
                     ObjectionList& list) {
    for (std::size_t i = 0; i < side.pieces.size(); ++i) {
        const SidePiece<double>& piece = side.pieces[i];
        if (!piece.curved) {
            continue;
        }
        const bool on_form = piece.bow == side.bow();
        const double least =
            spec.thickness.value / 2 +
            (on_form ? forming::least_inside_radius(c.form, c.sheets.at(spec.sheet).springback.value)
                     : 0);
        if (piece.arc.radius <= least) {
            list.add(piece_pointer(c.plan, spec.side, piece.spec),
                     "the radius (" + mm(piece.arc.radius) +
                         ") is too small for sheet, groove and form",
                     "give more than " + mm(least) +
                         (on_form ? ", or a thinner skin" : ", or a thinner sheet"));
        }
    }
}

// Keys of the plan that a side's length goes by.
std::string length_pointer(const Plan& plan, const CaseSide& side) {
    if (plan.shape == PlanShape::polygon) {
        return plan.corners.empty() ? "/plan/side" : "/plan/corners";
    }
    if (plan.shape == PlanShape::sides) {
        return side_pointer(plan, index(side));
    }
    const bool deep = side_text(side).starts_with("right") || side_text(side).starts_with("left");
    return deep ? "/plan/depth" : "/plan/width";
}

bool share_room(const Contour& a, const Contour& b) {
    return touch(a, b) || where(a, b.vertices().front().at) == Side::inside ||
           where(b, a.vertices().front().at) == Side::inside;
}

// Every arc must be wider than the groove that follows it, and one that leaves a post wide enough
// to come out of it.
void object_to_piece_radii(const Case& c, const SideSums<double>& side, ObjectionList& list) {
    const double across = std::hypot(c.frame.post.width.value, c.frame.post.depth.value);
    for (std::size_t i = 0; i < side.pieces.size(); ++i) {
        const SidePiece<double>& piece = side.pieces[i];
        const bool ends = i == 0 || i + 1 == side.pieces.size();
        if (piece.curved && piece.arc.radius <= c.frame.groove.width.value) {
            list.add(piece_pointer(c.plan, side.side, piece.spec),
                     "the radius (" + mm(piece.arc.radius) +
                         ") is too small for sheet, groove and form",
                     "give a larger radius, or a thinner skin");
        } else if (piece.curved && side.is_run() && ends && 2 * piece.arc.radius <= across) {
            list.add(piece_pointer(c.plan, side.side, piece.spec),
                     "the bend (radius " + mm(piece.arc.radius) + ") does not come out of its post",
                     "a radius of more than " + mm(across / 2) + ", or a straight before the bend");
        }
    }
}

}  // namespace

void object_to_plan(const Plan& plan, ObjectionList& list) {
    switch (plan.shape) {
        case PlanShape::rectangle: break;
        case PlanShape::bow_front:
        case PlanShape::quarter_round:
        case PlanShape::half_round:
        case PlanShape::bow_ends:
        case PlanShape::serpentine: object_to_front(plan, list); break;
        case PlanShape::polygon: object_to_polygon(plan, list); break;
        case PlanShape::sides:
            object_to_chain(plan, list);
            if (list.empty()) {
                object_to_closing(plan, list);
            }
            break;
    }
}

void object_to_line(const Case& c, ObjectionList& list) {
    Book<double> book;
    const std::vector<SideSums<double>> sides = solve_sides(c.plan, book);
    const double across = std::hypot(c.frame.post.width.value, c.frame.post.depth.value);
    std::set<std::string> told;
    for (const SideSums<double>& side : sides) {
        const double chord = side.chord;
        const std::string pointer = length_pointer(c.plan, side.side);
        object_to_piece_radii(c, side, list);
        if (chord <= across && side.curved() && std::abs(side.turned()) > std::numbers::pi) {
            continue;  // its ends come together again: whether the posts meet is asked later
        }
        if (chord <= across && told.insert(pointer).second) {
            list.add(pointer,
                     "posts of " + mm(c.frame.post.width.value) + " by " +
                         mm(c.frame.post.depth.value) + " leave no opening on a side of " +
                         mm(chord),
                     "give more than " + mm(across) + ", or thinner posts");
        }
    }
    for (const PaneSpec& spec : c.panes) {
        object_to_radii(c, spec, sides[index(spec.side)], list);
    }
    if (list.empty() && c.plan.shape != PlanShape::rectangle) {
        object_to_outline(c, glazing_line(c.plan, sides), list);
    }
}

void object_to_room(const Case& c, const Layout& frame, ObjectionList& list) {
    if (!list.empty()) {
        return;
    }
    const std::size_t posts = frame.posts.size();
    std::vector<Contour> outlines;
    for (const PostLayout& post : frame.posts) {
        outlines.push_back(post.outline);
    }
    for (const PlateGroove& groove : frame.base.grooves) {
        outlines.push_back(
            band(groove.opening, c.frame.groove.width.value, BandEnd::square, BandEnd::square));
    }
    std::vector<Box> boxes;
    for (const Contour& outline : outlines) {
        boxes.push_back(outline.box());
    }
    each_near(boxes, 0, [&](std::size_t i, std::size_t j) {
        if (i >= posts) {
            return true;  // panes that meet each other are told of where their sides cross
        }
        if (j < posts) {
            if (share_room(outlines[i], outlines[j])) {
                list.add("/frame/post/width",
                         "the posts " + frame.posts[i].name + " and " + frame.posts[j].name +
                             " stand in each other",
                         "take thinner posts, or sides that are longer");
            }
            return list.empty();
        }
        const PlateGroove& groove = frame.base.grooves[j - posts];
        const std::size_t start = index(groove.side);
        if (i != start && i != frame.line.next(start) && share_room(outlines[i], outlines[j])) {
            list.add("/plan",
                     "the " + std::string(side_text(groove.side)) + " pane runs through the post " +
                         frame.posts[i].name,
                     "a plan whose sides keep clear of the other corners' posts");
        }
        return list.empty();
    });
}

}  // namespace bowfront::fit
