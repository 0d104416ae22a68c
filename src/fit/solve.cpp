#include "solve.hpp"

#include <algorithm>
#include <map>
#include <string>

#include "bowfront/base/contract.hpp"
#include "bowfront/fit/plan.hpp"
#include "run.hpp"

namespace bowfront::fit {
namespace {

// The same side in plain numbers, for the geometry of the plan.
template <class N>
SideSums<double> plain(const SideSums<N>& side) {
    SideSums<double> out;
    out.side = side.side;
    out.length = value_of(side.length);
    out.chord = value_of(side.chord);
    out.chord_heading = side.chord_heading;
    out.pieces = plain_pieces(side.pieces);
    return out;
}

constexpr std::string_view kHeatLimits = "forming ranges of the sheet library";

template <class N>
HeatingSums<N> solve_heating(const PaneTask<N>& task, const PaneSums<N>& pane) {
    const Forming& forming = *task.c.sheets.at(task.spec.sheet).like->forming;
    const auto reference = [&](std::string_view key, std::string_view symbol,
                               const Property& property) {
        return task.book.reference({"heating", task.side, key}, symbol, Kind::temperature,
                                   property.value, {property.source});
    };
    const auto figure = [&](std::string_view key, std::string_view symbol, Kind kind, N value,
                            std::string_view source) {
        return task.book.figure({"heating", task.side, key}, symbol, kind, value, source);
    };
    HeatingSums<N> heating;
    heating.side = task.spec.side;
    const auto& oven = task.c.oven;
    const N proposed = reference("proposed", "T_lib", forming.set);
    heating.oven_set = figure(
        "oven_set", "T_set", Kind::temperature,
        oven && oven->set ? task.book.input("T_case", Kind::temperature, *oven->set) : proposed,
        "the case file, or the library's setting");
    heating.core_min = reference("core_min", "T_core", forming.core_min);
    heating.face_limit = reference("face_limit", "T_face", forming.face_max);
    heating.accuracy =
        oven ? task.book.input("δ_T", Kind::temperature_difference, oven->accuracy) : N(0);
    heating.margin_to_limit =
        figure("margin_to_limit", "m_T", Kind::temperature_difference,
               heating.face_limit - (heating.oven_set + heating.accuracy), kHeatLimits);
    heating.margin_to_core =
        figure("margin_to_core", "m_core", Kind::temperature_difference,
               heating.oven_set - heating.accuracy - heating.core_min, kHeatLimits);
    constexpr double kHundredthInch = 0.254;  // mm
    heating.shop_rule = figure("shop_rule_min", "τ", Kind::plain, pane.thickness / kHundredthInch,
                               "one minute for each 0.01 in of thickness (common practice, no "
                               "source)");
    return heating;
}

template <class N>
PaneForm<N> solve_form(const PaneTask<N>& task, const PaneSums<N>& pane) {
    const SheetSpec& sheet = task.c.sheets.at(task.spec.sheet);
    const bool lengthwise = task.spec.along.value == Extrusion::length;
    const auto& shrink = lengthwise ? sheet.shrink_across : sheet.shrink_along;
    const auto& spread = lengthwise ? sheet.spread_across : sheet.spread_along;
    const N s = task.book.input(lengthwise ? "s_c" : "s_a", Kind::ratio, shrink);
    const N ds = task.book.input(lengthwise ? "Δs_c" : "Δs_a", Kind::ratio, spread);
    FormTask<N> form{pane.inside_radius, pane.sweep, pane.blank_width,
                     pane.blank_width * (1 - s + ds),
                     task.book.input("k_s", Kind::ratio, sheet.springback)};
    form.thickness = pane.thickness;
    for (const SidePiece<N>& piece : pane.path) {
        form.pieces.push_back(
            {piece.length, piece.curved ? piece.arc.radius - pane.thickness / 2 : N(0),
             piece.curved && piece.bow != pane.bow});
    }
    return {task.spec.side, forming::form_sizes(form, task.c.form, task.side, task.book)};
}

// A pane that is so short that it has no bend is objected to once that is known.
template <class N>
bool has_form(const PaneSums<N>& pane) {
    return !pane.is_run() ||
           std::any_of(pane.bends.begin(), pane.bends.end(),
                       [&](const BendSums<N>& bend) { return bend.bow == pane.bow; });
}

template <class N>
CaseSums<N> solve_all(const Case& c, Book<N>& book) {
    CaseSums<N> sums;
    sums.sides = solve_sides(c.plan, book);
    std::vector<SideSums<double>> shape;
    shape.reserve(sums.sides.size());
    for (const SideSums<N>& side : sums.sides) {
        shape.push_back(plain(side));
    }
    const GlazingLine line = glazing_line(c.plan, shape);
    const TimberStates<N> timber = timber_states(c, book);
    std::map<std::string, std::array<N, kAirStates.size()>> sheets;
    for (const PaneSpec& spec : c.panes) {
        const std::size_t place = index(spec.side);
        const PaneTask<N> task{c,
                               spec,
                               sums.sides[place],
                               line.directions[place],
                               line.directions[line.next(place)],
                               side_text(spec.side),
                               book};
        PaneSums<N> pane;
        solve_sizes(task, pane);
        if (sheets.find(spec.sheet) == sheets.end()) {
            sheets.emplace(spec.sheet, sheet_factors(c, c.sheets.at(spec.sheet), book));
        }
        solve_states(task, timber, sheets.at(spec.sheet), pane);
        solve_edges(task, pane);
        solve_radius(task, timber, pane);
        solve_loads(task, pane);
        if (pane.heated) {
            sums.heating.push_back(solve_heating(task, pane));
            if (has_form(pane)) {
                sums.forms.push_back(solve_form(task, pane));
            }
        }
        sums.panes.push_back(std::move(pane));
    }
    return sums;
}

}  // namespace

CaseSums<double> solve(const Case& c) {
    Book<double> book;
    return solve_all(c, book);
}

CaseSums<Traced> solve(const Case& c, Workings& workings) {
    Book<Traced> book(workings);
    return solve_all(c, book);
}

}  // namespace bowfront::fit
