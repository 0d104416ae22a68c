#include <algorithm>
#include <cmath>
#include <string>

#include "bowfront/fit/stand_off.hpp"
#include "run.hpp"
#include "solve.hpp"

namespace bowfront::fit {
namespace {

// What a pane's bends may come off the form as: springback opens or closes each, its length stays.
template <class N>
void solve_free_radii(const PaneTask<N>& task, PaneSums<N>& pane) {
    const SheetSpec& sheet = task.c.sheets.at(task.spec.sheet);
    const N springback = task.book.input("k_s", Kind::ratio, sheet.springback);
    const N spread = task.book.input("Δk_s", Kind::ratio, sheet.springback_spread);
    constexpr std::string_view kFree =
        "mid-surface of what comes off a form that is made for the springback";
    for (std::size_t i = 0; i < pane.bends.size(); ++i) {
        BendSums<N>& bend = pane.bends[i];
        const auto radius = [&](std::string_view key, std::string_view symbol, N growth) {
            return task.figure(bend_path(i, key), symbol,
                               bend.inside_radius * growth / (1 + springback) + pane.thickness / 2,
                               kFree);
        };
        bend.free_radius =
            task.figure(bend_path(i, "free_radius/nominal"), "R_f", bend.radius, kFree);
        bend.free_radius_least = radius("free_radius/least", "R_f,least", 1 + springback - spread);
        bend.free_radius_most = radius("free_radius/most", "R_f,most", 1 + springback + spread);
    }
}

// As they were measured.
template <class N>
void solve_measured_radii(const PaneTask<N>& task, PaneSums<N>& pane) {
    for (std::size_t i = 0; i < pane.bends.size(); ++i) {
        const MeasuredRadius& made = task.spec.made.bends[i];
        const auto of = [&](const std::string& key, std::string_view symbol, double inside) {
            const N face =
                task.book.reference({"panes", task.side, bend_path(i, "measured/" + key)}, "Ri",
                                    Kind::length, inside, {"as measured"});
            return task.figure(bend_path(i, "free_radius/" + key), symbol,
                               face + pane.thickness / 2,
                               "mid-surface of the inside face that was measured");
        };
        BendSums<N>& bend = pane.bends[i];
        bend.free_radius = of("nominal", "R_f", made.value);
        bend.free_radius_least = of("least", "R_f,least", made.least);
        bend.free_radius_most = of("most", "R_f,most", made.most);
    }
}

// What it turns through then: of a curve, by all of its arcs as the tightest one does.
template <class N>
void solve_free_sweeps(const PaneTask<N>& task, PaneSums<N>& pane) {
    for (std::size_t i = 0; i < pane.bends.size(); ++i) {
        BendSums<N>& bend = pane.bends[i];
        const auto sweep = [&](std::string_view key, std::string_view symbol, N free) {
            return task.figure(bend_path(i, key), symbol, bend.sweep * bend.radius / free,
                               "the bend's length stays", Kind::angle);
        };
        bend.free_sweep = sweep("free_sweep/nominal", "θ_f", bend.free_radius);
        bend.free_sweep_least = sweep("free_sweep/least", "θ_f,least", bend.free_radius_most);
        bend.free_sweep_most = sweep("free_sweep/most", "θ_f,most", bend.free_radius_least);
    }
}

// Points on the pane's mid-line in the plan, as built, from its start on.
std::vector<Point> points_of(const std::vector<Segment>& chain) {
    std::vector<Point> points{chain.front().from};
    for (const Segment& segment : chain) {
        // What stands off between them is flat there: the most of it is met to a hundredth of it.
        constexpr double kStep = 0.2;  // rad
        const int count =
            std::max(2, static_cast<int>(std::ceil(std::abs(segment.sweep()) / kStep)));
        for (int i = 1; i <= count; ++i) {
            points.push_back(segment.at(static_cast<double>(i) / count));
        }
    }
    return points;
}

// A pane's mid-line when nothing holds it, larger by the sheet's movement.
// @param growth  of its bends' inside radii, of each
std::vector<Segment> free_line(const PaneSums<double>& pane, const std::vector<double>& growth,
                               double larger) {
    std::vector<SidePiece<double>> pieces = pane.path;
    double heading = pieces.front().start_heading();
    std::size_t bends = 0;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        SidePiece<double>& piece = pieces[i];
        if (piece.curved) {
            bends += i > 0 && goes_on(pieces[i - 1], piece) ? 0U : 1U;
            ArcSizes<double>& arc = piece.arc;
            const double half = pane.thickness / 2;
            arc.radius = (arc.radius - half) * growth[bends - 1] + half;
            arc.sweep = piece.length / arc.radius;
            arc.radius *= larger;
            arc.chord = 2 * arc.radius * std::sin(arc.sweep / 2);
            arc.rise = arc.radius * (1 - std::cos(arc.sweep / 2));
        }
        piece.length *= larger;
        piece.chord_heading = heading + piece.turned() / 2;
        heading += piece.turned();
    }
    return segments_of(pieces, {});
}

// Moved so that its middle lies on a point, along a direction.
std::vector<Segment> laid(std::vector<Segment> chain, double length, Point at, Point along) {
    const Point from = point_at(chain, length / 2);
    const Point tangent = tangent_at(chain, length / 2);
    const Motion turn{std::atan2(cross(tangent, along), dot(tangent, along)), {}, false};
    const auto move = [&](Point p) { return at + turn(p - from); };
    for (Segment& segment : chain) {
        segment = {move(segment.from), move(segment.to), segment.bulge};
    }
    return chain;
}

struct PlateStretch {
    double x = 1;
    double y = 1;
    friend bool operator==(const PlateStretch&, const PlateStretch&) = default;
};

// How far a free pane stands off the middle line of a groove that has moved with its plate.
double stand_off(const PaneSums<double>& pane, const std::vector<double>& growth, double larger,
                 const PlateStretch& plate) {
    const std::vector<Segment> built = segments_of(pane.path, {});
    std::vector<Point> groove = points_of(built);
    for (Point& p : groove) {
        p = {p.x * plate.x, p.y * plate.y};
    }
    const Point at = point_at(built, pane.length / 2);
    const Point along = tangent_at(built, pane.length / 2);
    return least_stand_off(
        groove, laid(free_line(pane, growth, larger), pane.length * larger,
                     {at.x * plate.x, at.y * plate.y}, {along.x * plate.x, along.y * plate.y}));
}

// What of a pane the lying goes by, in plain numbers.
template <class N>
PaneSums<double> plain_shape(const PaneSums<N>& pane) {
    PaneSums<double> plain;
    plain.thickness = value_of(pane.thickness);
    plain.length = value_of(pane.length);
    plain.path = plain_pieces(pane.path);
    return plain;
}

// How much the bends' inside radii have grown when they are as one of their sums has them.
template <class N>
std::vector<double> growth_of(const PaneSums<N>& pane, N BendSums<N>::*radius) {
    std::vector<double> growth;
    for (const BendSums<N>& bend : pane.bends) {
        growth.push_back((value_of(bend.*radius) - value_of(pane.thickness) / 2) /
                         value_of(bend.inside_radius));
    }
    return growth;
}

constexpr std::string_view kLaid =
    "geometry: the pane's straights and arcs, each bend opened or closed with its length kept, "
    "against points of the groove's middle line";
constexpr std::string_view kCondition =
    "twice the greatest distance from the groove's middle line, the free pane moved and turned so "
    "that it is least";

// What the pane takes of the grooves' width at worst: springback at its limits, every state, both
// plates.
template <class N>
N worst_rise_off(const PaneTask<N>& task, const TimberStates<N>& timber, const PaneSums<N>& pane,
                 const PaneSums<double>& shape) {
    double worst = 0;
    for (const AirState which : kAirStates) {
        const auto state = static_cast<std::size_t>(which);
        const TimberFactors<N>& factors = timber[state];
        const PlateStretch base{value_of(factors.base.width), value_of(factors.base.depth)};
        const PlateStretch top{value_of(factors.top.width), value_of(factors.top.depth)};
        for (const auto limit : {&BendSums<N>::free_radius_least, &BendSums<N>::free_radius_most}) {
            const std::vector<double> growth = growth_of(pane, limit);
            const double moved = value_of(pane.states[state].sheet);
            worst = std::max(worst, 2 * stand_off(shape, growth, moved, base));
            if (!(top == base)) {
                worst = std::max(worst, 2 * stand_off(shape, growth, moved, top));
            }
        }
    }
    const BendSums<N>& bend = pane.bends.front();
    return task.book.solved(
        {"panes", task.side, "radius_error/rise_off/worst"}, "z_R,worst", Kind::length, worst,
        kCondition, {bend.free_radius_least, bend.free_radius_most, pane.chord, pane.length},
        kLaid);
}

// The flexing of each bend to the radius of the groove that it stands in; the largest difference
// of both radii.
template <class N>
N solve_bend_flexing(const PaneTask<N>& task, const TimberStates<N>& timber, PaneSums<N>& pane) {
    using std::abs;
    N most_off(0);
    const Property& modulus = task.c.sheets.at(task.spec.sheet).like->modulus;
    const N stiffness = task.book.reference({"panes", task.side, "modulus"}, "E", Kind::stress,
                                            modulus.value, {modulus.source});
    for (std::size_t i = 0; i < pane.bends.size(); ++i) {
        BendSums<N>& bend = pane.bends[i];
        const SidePiece<N>& piece = pane.path[bend.tightest];
        bend.groove_radius_least = bend.groove_radius_most = bend.radius;
        N curvature(0);
        for (const AirState which : kAirStates) {
            const auto state = static_cast<std::size_t>(which);
            for (const bool top : {false, true}) {
                const std::string key =
                    bend_path(i, std::string(state_path(which)) +
                                     (top ? "/radius_at_top" : "/radius_at_base"));
                const N groove =
                    which == AirState::built || value_of(piece.length) <= 0
                        ? bend.radius
                        : moved_radius(task.book, top ? timber[state].top : timber[state].base,
                                       {"panes", task.side, key}, piece.arc.chord, piece.arc.rise,
                                       piece.chord_heading);
                bend.groove_radius_least = smaller(bend.groove_radius_least, groove);
                bend.groove_radius_most = larger(bend.groove_radius_most, groove);
                for (const N& free : {bend.free_radius_least, bend.free_radius_most}) {
                    const N now = free * pane.states[state].sheet;
                    most_off = larger(most_off, abs(now - groove));
                    curvature = larger(curvature, abs(1 / now - 1 / groove));
                }
            }
        }
        constexpr std::string_view kStates = "over all states, of base and top";
        bend.groove_radius_least = task.figure(bend_path(i, "groove_radius/least"), "R_g,least",
                                               bend.groove_radius_least, kStates);
        bend.groove_radius_most = task.figure(bend_path(i, "groove_radius/most"), "R_g,most",
                                              bend.groove_radius_most, kStates);
        bend.flexing_strain =
            task.figure(bend_path(i, "flexing_strain"), "ε_b", pane.thickest / 2 * curvature,
                        "bending of a thin strip: ε = t/2·abs(1/R₁ − 1/R₂)", Kind::ratio);
        bend.flexing_stress =
            task.figure(bend_path(i, "flexing_stress"), "σ_b", stiffness * bend.flexing_strain,
                        "short-time modulus; it creeps off in time", Kind::stress);
    }
    return most_off;
}

}  // namespace

template <class N>
RunError<N> solve_run_error(const PaneTask<N>& task, const TimberStates<N>& timber,
                            PaneSums<N>& pane) {
    if (task.spec.made.bends.size() == pane.bends.size()) {
        solve_measured_radii(task, pane);
    } else {
        solve_free_radii(task, pane);
    }
    solve_free_sweeps(task, pane);
    RunError<N> error;
    error.off = solve_bend_flexing(task, timber, pane);
    const PaneSums<double> shape = plain_shape(pane);
    if (pane.bends.empty()) {
        error.share = error.rise_off = error.rise_off_worst = N(0);  // nothing is left of the pane
        return error;
    }
    constexpr double kOpened = 0.01;
    const std::vector<double> opened(pane.bends.size(), 1 + kOpened);
    error.share = task.book.solved(
        {"panes", task.side, "radius_error/share"}, "a", Kind::plain,
        2 * stand_off(shape, opened, 1, {}) / (kOpened * value_of(pane.inside_radius)),
        "twice the distance from the groove's middle line over the growth of the tightest bend's "
        "radius, every bend opened by a hundredth",
        {pane.inside_radius, pane.chord, pane.length}, kLaid);
    const FigurePath path{"panes", task.side, "radius_error/rise_off/nominal"};
    error.rise_off =
        task.spec.made.bends.empty()
            ? task.book.figure(path, "z_R", Kind::length, N(0),
                               "the form is made to the groove's bends")
            : task.book.solved(
                  path, "z_R", Kind::length,
                  2 * stand_off(shape, growth_of(pane, &BendSums<N>::free_radius), 1, {}),
                  kCondition, {pane.chord, pane.length}, kLaid);
    error.rise_off_worst = worst_rise_off(task, timber, pane, shape);
    return error;
}

template RunError<double> solve_run_error(const PaneTask<double>&, const TimberStates<double>&,
                                          PaneSums<double>&);
template RunError<Traced> solve_run_error(const PaneTask<Traced>&, const TimberStates<Traced>&,
                                          PaneSums<Traced>&);

}  // namespace bowfront::fit
