#include "bowfront/fit/plate_bending.hpp"
#include "bowfront/units/volume.hpp"
#include "solve.hpp"

namespace bowfront::fit {
namespace {

// A palm pressed flat. Common practice, no source.
constexpr double kHand = 80;  // mm, square
// Lifted by its base and set down hard, or tipped on its back: a pane bears twice its own weight.
// Common practice, no source.
constexpr double kCarried = 2;
constexpr double kGravity = 9.80665;     // m/s², standard

// What loads a pane: a force spread over a rectangle in its middle.
template <class N>
struct PaneLoad {
    std::string_view name;
    N force;
    double patch_length;
    double patch_height;
    bool in_the_middle;  // the stretched middle surface helps to carry it
};

template <class N>
struct LoadWriter {
    const PaneTask<N>& task;
    std::string_view name;
    N operator()(std::string_view key, std::string_view symbol, N value, std::string_view source,
                 Kind kind = Kind::length) const {
        return task.book.figure({"panes", task.side, name, key}, symbol, kind, value, source);
    }
};

// A figure of the nominal pane, or of the worst one, which its key says.
enum class Of { nominal, worst };

struct HeldKeys {
    std::string_view upright, sideways, held;
};
constexpr HeldKeys held_keys(Of which) noexcept {
    return which == Of::nominal
               ? HeldKeys{"pull_out_upright", "pull_out_sideways", "held/nominal"}
               : HeldKeys{"pull_out_upright_worst", "pull_out_sideways_worst",
                          "held/worst"};
}

template <class N>
struct SheetValues {
    N modulus;
    N poisson;
};

template <class N>
SheetValues<N> sheet_values(const PaneTask<N>& task) {
    const Sheet& sheet = *task.c.sheets.at(task.spec.sheet).like;
    return {task.book.reference({"panes", task.side, "modulus"}, "E", Kind::stress,
                                sheet.modulus.value, {sheet.modulus.source}),
            task.book.reference({"panes", task.side, "poisson"}, "ν", Kind::plain,
                                sheet.poisson.value, {sheet.poisson.source})};
}

template <class N>
N deflection(const PaneTask<N>& task, const PaneLoad<N>& load, Of which, N small, N thickness) {
    const FigurePath path{"panes", task.side, load.name,
                          which == Of::nominal ? "deflection/nominal" : "deflection/worst"};
    if (!load.in_the_middle) {
        return task.book.figure(path, "w", Kind::length, small,
                                "small deflections, which overstate it");
    }
    return task.book.solved(
        path, "w", Kind::length,
        value_of(thickness) * stiffened_deflection(value_of(small) / value_of(thickness)),
        "w/t + 0.272·(w/t)³ = w₀/t", {small, thickness},
        "large deflections: round plate on its rim, load in the middle, edges free to slide in; "
        "energy of the middle surface for the shape of small deflections");
}

// Engagement that is left when a pane bows by w and all of it is drawn out of one edge each way.
template <class N>
N held(const LoadWriter<N>& figure, const PaneSums<N>& pane, Of which, N w,
       N (*engagement)(const EdgeSums<N>&)) {
    const HeldKeys keys = held_keys(which);
    const auto pull = [&](std::string_view key, std::string_view symbol, N span) {
        return figure(key, symbol, 8 * w * w / (3 * span),
                      "chord shortening of a bowed pane: 8w²/(3L)");
    };
    const N upright = pull(keys.upright, "x_v", pane.opening_height);
    const N sideways = pull(keys.sideways, "x_u", pane.opening_length);
    const N ends = smaller(engagement(pane.edges[2]), engagement(pane.edges[3]));
    return figure(keys.held, "e_w", smaller(engagement(pane.edges[1]) - upright, ends - sideways),
                  "settled engagement less what the bow draws out of the top or of one end");
}

template <class N>
LoadSums<N> solve_load(const PaneTask<N>& task, const PaneLoad<N>& load,
                       const SheetValues<N>& sheet, const PaneSums<N>& pane) {
    const LoadWriter<N> figure{task, load.name};
    const PlateCoefficients plate =
        plate_coefficients({value_of(pane.opening_length), value_of(pane.opening_height),
                            load.patch_length, load.patch_height, value_of(sheet.poisson)});
    const auto coefficient = [&](std::string_view key, std::string_view symbol, double value) {
        return task.book.solved(
            {"panes", task.side, load.name, key}, symbol, Kind::plain, value,
            "Lévy's series for a plate on four edges, load spread over a rectangle in its middle",
            {pane.opening_length, pane.opening_height, sheet.poisson},
            pane.is_run()
                ? "Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells; a pane of several "
                  "pieces is taken as one flat plate of its developed size on all four edges, "
                  "larger than any flat part of it: its bends only stiffen it"
                : "Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells; a curved pane is "
                  "taken as flat, its curve only stiffens it");
    };
    const N alpha = coefficient("deflection_coefficient", "α", plate.deflection);
    const N beta = coefficient("stress_coefficient", "β", plate.stress);
    const N span = smaller(pane.opening_length, pane.opening_height);
    const auto small = [&](std::string_view key, N t) {
        return figure(key, "w₀", alpha * load.force * span * span / (sheet.modulus * t * t * t),
                      "small deflections: w₀ = α·F·s²/(E·t³)");
    };
    constexpr std::string_view kStress = "small deflections, which overstate it: σ = β·F/t²";
    const N thick = pane.bearing_thickness;
    const N thin = pane.bearing_thickness_least;
    LoadSums<N> sums;
    sums.force = figure("force", "F", load.force, "on the pane, spread evenly", Kind::force);
    sums.deflection = deflection(task, load, Of::nominal,
                                 small("small_deflection", thick), thick);
    sums.deflection_worst =
        deflection(task, load, Of::worst, small("small_deflection_worst", thin), thin);
    sums.stress = figure("stress/nominal", "σ_F", beta * load.force / (thick * thick),
                         kStress, Kind::stress);
    sums.stress_worst = figure("stress/worst", "σ_F,worst", beta * load.force / (thin * thin),
                               kStress, Kind::stress);
    sums.held = held<N>(figure, pane, Of::nominal, sums.deflection,
                        [](const EdgeSums<N>& edge) { return edge.settled; });
    sums.held_worst = held<N>(figure, pane, Of::worst, sums.deflection_worst,
                              [](const EdgeSums<N>& edge) { return edge.engagement_least; });
    return sums;
}

}  // namespace

template <class N>
void solve_loads(const PaneTask<N>& task, PaneSums<N>& pane) {
    const SheetValues<N> sheet = sheet_values(task);
    const double length = value_of(pane.opening_length);
    const double height = value_of(pane.opening_height);
    const N push = task.book.input("F_push", Kind::force, task.c.service.push);
    pane.push = solve_load(task, PaneLoad<N>{"push", push, smaller(kHand, length),
                                             smaller(kHand, height), true},
                           sheet, pane);
    const Property& density = task.c.sheets.at(task.spec.sheet).like->density;
    const N weight = kCarried * kGravity *
                     task.book.reference({"panes", task.side, "density"}, "ρ", Kind::plain,
                                         density.value, {density.source}) /
                     kCubicMetre *
                     pane.opening_length * pane.opening_height * pane.thickness;
    pane.carried =
        solve_load(task, PaneLoad<N>{"carried", weight, length, height, false}, sheet, pane);
}

template void solve_loads(const PaneTask<double>&, PaneSums<double>&);
template void solve_loads(const PaneTask<Traced>&, PaneSums<Traced>&);

}  // namespace bowfront::fit
