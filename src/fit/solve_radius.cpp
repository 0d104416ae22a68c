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

constexpr std::string_view kLeastRadius = "radius_error/free_radius_least";
constexpr std::string_view kMostRadius = "radius_error/free_radius_most";

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
    return {of("radius_error/free_radius", "R_f", "measured/radius", made.value),
            of(kLeastRadius, "R_f,least", "measured/radius/least", made.least),
            of(kMostRadius, "R_f,most", "measured/radius/most", made.most)};
}

template <class N>
FreeRadius<N> free_radius(const PaneTask<N>& task, const PaneSums<N>& pane) {
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
                           "mid-surface of what comes off the form at a limit of the springback");
    };
    return {pane.radius, of(kLeastRadius, "R_f,least", 1 + springback - spread),
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

template <class N>
N modulus_of(const PaneTask<N>& task) {
    const Property& modulus = task.c.sheets.at(task.spec.sheet).like->modulus;
    return task.book.reference({"panes", task.side, "modulus"}, "E", Kind::stress, modulus.value,
                               {modulus.source});
}

template <class N>
void solve_formed(const PaneTask<N>& task, PaneSums<N>& pane) {
    using std::abs;
    using std::cos;
    RadiusSums<N>& error = pane.radius_error;
    const auto figure = [&](std::string_view key, std::string_view symbol, N value,
                            std::string_view source, Kind kind = Kind::length) {
        return task.book.figure({"panes", task.side, "radius_error", key}, symbol, kind, value,
                                source);
    };
    const FreeRadius<N> free = free_radius(task, pane);
    const Worst<N> worst = worst_of(task, pane, free);
    const bool measured = task.spec.made.radius.has_value();
    const N half = cos(pane.sweep / 2);
    const N share = figure("share", "a", 2 * (1 - half) / (1 + half),
                           "geometry: arcs of two radii laid so that crown and ends stand off "
                           "equally, 2·tan²(θ/4) of the difference",
                           Kind::plain);
    error.rise_off = figure("rise_off", "z_R", share * abs(free.nominal - pane.states[0].base_radius),
                            measured ? "the radius that was measured against the groove's"
                                     : "the form is made to the groove's radius");
    error.rise_off_worst = figure("rise_off_worst", "z_R,worst", share * worst.off,
                                  measured ? "limits of the measuring, worst state and plate"
                                           : "limits of the springback, worst state and plate");
    const EdgeSums<N>& bottom = pane.edge(PaneEdge::bottom);
    error.clearance_left =
        figure("clearance_left", "q_R", larger(N(0), bottom.face_clearance) - error.rise_off,
               "face clearance less what the difference of radii uses up");
    error.clearance_left_worst =
        figure("clearance_left_worst", "q_R,worst",
               larger(N(0), bottom.face_clearance_least) - error.rise_off_worst,
               "least face clearance less what the difference of radii uses up");
    const bool touches = value_of(error.clearance_left_worst) < 0;
    error.flexed_worst = figure("flexed_worst", "ΔR", touches ? worst.off : N(0),
                                "at most: from its own radius to the groove's");
    // A pane that lies outside a convex cheek is nowhere bent more than the cheek, so flexing it
    // all the way to the groove's radius is a bound.
    error.strain_worst = figure("strain_worst", "ε",
                                touches ? pane.thickest / 2 * worst.curvature : N(0),
                                "bending of a thin strip: ε = t/2·abs(1/R₁ − 1/R₂)", Kind::ratio);
    error.stress = N(0);
    error.stress_worst = figure("stress_worst", "σ_R", modulus_of(task) * error.strain_worst,
                                "short-time modulus; it creeps off in time", Kind::stress);
}

// A pane that is held cold is flat when nothing holds it.
template <class N>
void solve_cold(const PaneTask<N>& task, PaneSums<N>& pane) {
    RadiusSums<N>& error = pane.radius_error;
    N tightest = pane.radius;
    for (const PaneState<N>& state : pane.states) {
        tightest = smaller(tightest, smaller(state.base_radius, state.top_radius));
    }
    error.strain_worst =
        task.figure("radius_error/strain_worst", "ε",
                    forming::flexing_strain(pane.thickest, 1 / tightest, N(0)),
                    "bending of a thin strip: ε = t/2·abs(1/R₁ − 1/R₂), in the tightest groove of "
                    "all states",
                    Kind::ratio);
    error.stress = pane.flexing_stress;
    error.stress_worst = task.figure("radius_error/stress_worst", "σ_R",
                                     modulus_of(task) * error.strain_worst, "σ = E·ε",
                                     Kind::stress);
}

}  // namespace

template <class N>
void solve_radius(const PaneTask<N>& task, PaneSums<N>& pane) {
    RadiusSums<N>& error = pane.radius_error;
    error = {N(0), N(0), N(0), N(0), N(0), N(0), N(0), N(0)};
    if (pane.heated) {
        solve_formed(task, pane);
    } else if (pane.curved) {
        solve_cold(task, pane);
    }
}

template void solve_radius(const PaneTask<double>&, PaneSums<double>&);
template void solve_radius(const PaneTask<Traced>&, PaneSums<Traced>&);

}  // namespace bowfront::fit
