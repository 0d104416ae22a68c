#include <algorithm>
#include <cmath>

#include "bowfront/forming/pane.hpp"
#include "solve.hpp"

namespace bowfront::fit {
namespace {

// The radii of the mid-surface that a formed pane may have when nothing holds it, as built.
template <class N>
struct FreeRadius {
    N nominal;
    N least;
    N most;
};

constexpr std::string_view kNominalRadius = "radius_error/free_radius/nominal";
constexpr std::string_view kLeastRadius = "radius_error/free_radius/least";
constexpr std::string_view kMostRadius = "radius_error/free_radius/most";

template <class N>
FreeRadius<N> measured_radius(const PaneTask<N>& task, const MeasuredRadius& made,
                              const PaneSums<N>& pane) {
    const auto of = [&](std::string_view key, std::string_view symbol, std::string_view measured,
                        double inside) {
        const N face = task.book.reference({"panes", task.side, measured}, "Ri", Kind::length,
                                           inside, {"by measured chord and rise"});
        return task.figure(key, symbol, face + pane.thickness / 2,
                           "mid-surface of the inside face that was measured");
    };
    return {of(kNominalRadius, "R_f", "measured/radius", made.value),
            of(kLeastRadius, "R_f,least", "measured/radius/least", made.least),
            of(kMostRadius, "R_f,most", "measured/radius/most", made.most)};
}

// Of the tightest of several bends, each of which was measured.
template <class N>
FreeRadius<N> measured_bend(const PaneTask<N>& task, const PaneSums<N>& pane) {
    const auto tighter = [](const BendSums<N>& a, const BendSums<N>& b) {
        return value_of(a.radius) < value_of(b.radius);
    };
    const auto at = std::min_element(pane.bends.begin(), pane.bends.end(), tighter);
    const auto bend = static_cast<std::size_t>(at - pane.bends.begin());
    return measured_radius(task, task.spec.made.bends.at(bend), pane);
}

template <class N>
FreeRadius<N> free_radius(const PaneTask<N>& task, const PaneSums<N>& pane) {
    // Of several bends: the tightest one's.
    if (pane.is_run() && !task.spec.made.bends.empty()) {
        return measured_bend(task, pane);
    }
    if (const auto& made = task.spec.made.radius) {
        return measured_radius(task, *made, pane);
    }
    const SheetSpec& sheet = task.c.sheets.at(task.spec.sheet);
    const N springback = task.book.input("k_s", Kind::ratio, sheet.springback);
    const N spread = task.book.input("Δk_s", Kind::ratio, sheet.springback_spread);
    // The form is made for the nominal springback, Rs = Ri/(1 + k).
    const auto of = [&](std::string_view key, std::string_view symbol, N growth) {
        return task.figure(key, symbol,
                           pane.inside_radius * growth / (1 + springback) + pane.thickness / 2,
                           "mid-surface of what comes off a form that is made for the springback");
    };
    return {task.figure(kNominalRadius, "R_f", pane.radius,
                        "mid-surface of what comes off a form that is made for the springback"),
            of(kLeastRadius, "R_f,least", 1 + springback - spread),
            of(kMostRadius, "R_f,most", 1 + springback + spread)};
}

// What springback and moving timber make of one pane at worst.
template <class N>
struct Worst {
    N off{0};        // difference of the radii, mm
    N curvature{0};  // difference of the curvatures, 1/mm
};

template <class N>
Worst<N> worst_of(const PaneTask<N>& task, const PaneSums<N>& pane, const FreeRadius<N>& free) {
    using std::abs;
    Worst<N> worst;
    for (const AirState which : kAirStates) {
        const PaneState<N>& state = pane.states[static_cast<std::size_t>(which)];
        for (const bool top : {false, true}) {
            const N groove = top ? state.top_radius : state.base_radius;
            const FigurePath path{"panes", task.side, state_path(which),
                                  top ? "radius_off_at_top" : "radius_off_at_base"};
            const N off = task.book.figure(path, "ΔR_k", Kind::length,
                                           larger(abs(free.least * state.sheet - groove),
                                                  abs(free.most * state.sheet - groove)),
                                           "free pane against groove, in this state of the air");
            const N curvature =
                larger(abs(1 / (free.least * state.sheet) - 1 / groove),
                       abs(1 / (free.most * state.sheet) - 1 / groove));
            worst.off = larger(worst.off, off);
            worst.curvature = larger(worst.curvature, curvature);
        }
    }
    return worst;
}

// The radii of the grooves that the pane stands in.
template <class N>
void solve_groove(const PaneTask<N>& task, PaneSums<N>& pane) {
    RadiusSums<N>& error = pane.radius_error;
    N least = pane.radius;
    N most = pane.radius;
    for (const PaneState<N>& state : pane.states) {
        least = smaller(least, smaller(state.base_radius, state.top_radius));
        most = larger(most, larger(state.base_radius, state.top_radius));
    }
    constexpr std::string_view kStates = "over all states, of base and top";
    error.groove_radius =
        task.figure("radius_error/groove_radius/nominal", "R_g", pane.radius, "as built");
    error.groove_radius_least =
        task.figure("radius_error/groove_radius/least", "R_g,least", least, kStates);
    error.groove_radius_most =
        task.figure("radius_error/groove_radius/most", "R_g,most", most, kStates);
}

template <class N>
N modulus_of(const PaneTask<N>& task) {
    const Property& modulus = task.c.sheets.at(task.spec.sheet).like->modulus;
    return task.book.reference({"panes", task.side, "modulus"}, "E", Kind::stress, modulus.value,
                               {modulus.source});
}

// How much of the face clearance the pane's own shape uses up, and how far it is flexed.
template <class N>
struct ShapeError {
    N share;
    N rise_off;
    N rise_off_worst;
    Worst<N> worst;
};

template <class N>
ShapeError<N> arc_error(const PaneTask<N>& task, const PaneSums<N>& pane,
                        const FreeRadius<N>& free) {
    using std::abs;
    using std::cos;
    const auto figure = [&](std::string_view key, std::string_view symbol, N value,
                            std::string_view source, Kind kind = Kind::length) {
        return task.book.figure({"panes", task.side, "radius_error", key}, symbol, kind, value,
                                source);
    };
    ShapeError<N> error;
    error.worst = worst_of(task, pane, free);
    const bool measured = task.spec.made.radius.has_value();
    const N half = cos(pane.sweep / 2);
    error.share = figure("share", "a", 2 * (1 - half) / (1 + half),
                         "geometry: arcs of two radii laid so that crown and ends stand off "
                         "equally, 2·tan²(θ/4) of the difference",
                         Kind::plain);
    error.rise_off = figure("rise_off/nominal", "z_R",
                            error.share * abs(free.nominal - pane.states[0].base_radius),
                            measured ? "the radius that was measured against the groove's"
                                     : "the form is made to the groove's radius");
    error.rise_off_worst = figure("rise_off/worst", "z_R,worst", error.share * error.worst.off,
                                  measured ? "limits of the measuring, worst state and plate"
                                           : "limits of the springback, worst state and plate");
    return error;
}

template <class N>
ShapeError<N> run_error(const PaneTask<N>& task, const TimberStates<N>& timber,
                        PaneSums<N>& pane) {
    const RunError<N> run = solve_run_error(task, timber, pane);
    ShapeError<N> error;
    error.share = run.share;
    error.rise_off = run.rise_off;
    error.rise_off_worst = run.rise_off_worst;
    error.worst.off = run.off;
    for (const BendSums<N>& bend : pane.bends) {
        // Bent by a strain over half the thickness.
        error.worst.curvature =
            larger(error.worst.curvature, bend.flexing_strain * 2 / pane.thickest);
    }
    return error;
}

template <class N>
void solve_formed(const PaneTask<N>& task, const TimberStates<N>& timber, PaneSums<N>& pane) {
    RadiusSums<N>& error = pane.radius_error;
    const auto figure = [&](std::string_view key, std::string_view symbol, N value,
                            std::string_view source, Kind kind = Kind::length) {
        return task.book.figure({"panes", task.side, "radius_error", key}, symbol, kind, value,
                                source);
    };
    const FreeRadius<N> free = free_radius(task, pane);
    error.free_radius = free.nominal;
    error.free_radius_least = free.least;
    error.free_radius_most = free.most;
    const ShapeError<N> shape =
        pane.is_run() ? run_error(task, timber, pane) : arc_error(task, pane, free);
    const Worst<N>& worst = shape.worst;
    error.share = shape.share;
    error.rise_off = shape.rise_off;
    error.rise_off_worst = shape.rise_off_worst;
    const EdgeSums<N>& bottom = pane.edge(PaneEdge::bottom);
    error.clearance_left =
        figure("clearance_left/nominal", "q_R", larger(N(0), bottom.face_clearance) - error.rise_off,
               "face clearance less what the difference of radii uses up");
    error.clearance_left_worst =
        figure("clearance_left/worst", "q_R,worst",
               larger(N(0), bottom.face_clearance_least) - error.rise_off_worst,
               "least face clearance less what the difference of radii uses up");
    const bool touches = value_of(error.clearance_left_worst) < 0;
    error.flexed_worst = figure("flexed/worst", "ΔR", touches ? worst.off : N(0),
                                "at most: from its own radius to the groove's");
    error.flexing_strain = figure("flexing_strain", "ε_f", pane.thickest / 2 * worst.curvature,
                                  "bending of a thin strip: ε = t/2·abs(1/R₁ − 1/R₂)", Kind::ratio);
    error.flexing_stress = figure("flexing_stress", "σ_f", modulus_of(task) * error.flexing_strain,
                                  "short-time modulus; it creeps off in time", Kind::stress);
    // A pane that lies outside a convex cheek is nowhere bent more than the cheek, so flexing it
    // all the way to the groove's radius is a bound.
    constexpr std::string_view kTouches = "as flexed all the way where it touches, else nothing";
    error.strain = figure("strain/nominal", "ε", N(0), "as formed", Kind::ratio);
    error.strain_worst = figure("strain/worst", "ε_worst", touches ? error.flexing_strain : N(0),
                                kTouches, Kind::ratio);
    error.stress = figure("stress/nominal", "σ_R", N(0), "as formed", Kind::stress);
    error.stress_worst = figure("stress/worst", "σ_R,worst",
                                touches ? error.flexing_stress : N(0), kTouches, Kind::stress);
}

// A pane that is held cold is flat when nothing holds it.
template <class N>
void solve_cold(const PaneTask<N>& task, PaneSums<N>& pane) {
    RadiusSums<N>& error = pane.radius_error;
    const auto figure = [&](std::string_view key, std::string_view symbol, N value,
                            std::string_view source, Kind kind) {
        return task.book.figure({"panes", task.side, "radius_error", key}, symbol, kind, value,
                                source);
    };
    constexpr std::string_view kStrip = "bending of a thin strip: ε = t/2·abs(1/R₁ − 1/R₂)";
    error.strain = figure("strain/nominal", "ε",
                          forming::flexing_strain(pane.thickness, 1 / pane.radius, N(0)), kStrip,
                          Kind::ratio);
    error.strain_worst = figure(
        "strain/worst", "ε_worst",
        forming::flexing_strain(pane.thickest, 1 / error.groove_radius_least, N(0)),
        "bending of a thin strip: ε = t/2·abs(1/R₁ − 1/R₂), in the tightest groove of all states",
        Kind::ratio);
    error.stress =
        figure("stress/nominal", "σ_R", pane.flexing_stress, "held to its radius", Kind::stress);
    error.stress_worst = figure("stress/worst", "σ_R,worst", modulus_of(task) * error.strain_worst,
                                "σ = E·ε", Kind::stress);
    // It goes in as it is held.
    error.flexing_strain =
        figure("flexing_strain", "ε_f", error.strain_worst, "from flat", Kind::ratio);
    error.flexing_stress =
        figure("flexing_stress", "σ_f", error.stress_worst, "from flat", Kind::stress);
}

}  // namespace

template <class N>
void solve_radius(const PaneTask<N>& task, const TimberStates<N>& timber, PaneSums<N>& pane) {
    pane.radius_error = {};
    if (pane.curved) {
        solve_groove(task, pane);
    }
    if (pane.heated) {
        solve_formed(task, timber, pane);
    } else if (pane.curved) {
        solve_cold(task, pane);
    }
}

template void solve_radius(const PaneTask<double>&, const TimberStates<double>&,
                           PaneSums<double>&);
template void solve_radius(const PaneTask<Traced>&, const TimberStates<Traced>&,
                           PaneSums<Traced>&);

}  // namespace bowfront::fit
