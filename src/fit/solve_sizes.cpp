#include <algorithm>
#include <cmath>

#include "bowfront/base/contract.hpp"
#include "bowfront/forming/pane.hpp"
#include "line_in_post.hpp"
#include "solve.hpp"

namespace bowfront::fit {
namespace {

template <class N>
N shrink_input(const PaneTask<N>& task, std::string_view symbol, const Sourced<double>& value) {
    return task.book.input(symbol, Kind::ratio, value);
}

// Shrink along the pane's length and along its height.
template <class N>
struct PaneShrink {
    Shrink<N> length{N(0), N(0)};
    Shrink<N> height{N(0), N(0)};
};

template <class N>
PaneShrink<N> pane_shrink(const PaneTask<N>& task) {
    const SheetSpec& sheet = task.c.sheets.at(task.spec.sheet);
    const bool lengthwise = task.spec.along.value == Extrusion::length;
    const auto shrink = [&](bool along, std::string_view symbol, std::string_view spread) {
        return Shrink<N>{
            shrink_input(task, symbol, along ? sheet.shrink_along : sheet.shrink_across),
            shrink_input(task, spread, along ? sheet.spread_along : sheet.spread_across)};
    };
    return {shrink(lengthwise, lengthwise ? "s_a" : "s_c", lengthwise ? "Δs_a" : "Δs_c"),
            shrink(!lengthwise, lengthwise ? "s_c" : "s_a", lengthwise ? "Δs_c" : "Δs_a")};
}

// One direction of a pane: its size as formed with ±, and the blank's size.
template <class N>
struct Extent {
    N formed;
    N tolerance;
    N blank;
};

struct ExtentNames {
    std::string_view formed, blank, tolerance, cut_tolerance;
    std::string_view formed_symbol, blank_symbol, tolerance_symbol, cut_symbol;
};

constexpr ExtentNames kLengthNames{"formed/developed_length", "blank/length", "tolerance/length",
                                   "tolerance/cut_length",    "L",            "L₀",
                                   "ΔL",                      "δ_L"};
constexpr ExtentNames kHeightNames{"formed/height",        "blank/width", "tolerance/height",
                                   "tolerance/cut_height", "W",           "W₀",
                                   "ΔW",                   "δ_W"};

constexpr std::string_view kShrinkSource = "definition of shrink as loss over the length before heating";

// One direction of a pane as it was measured.
struct MadeExtent {
    const std::optional<MeasuredSize>& formed;
    const std::optional<MeasuredSize>& blank;
    std::string_view formed_key, blank_key;
};

template <class N>
N cut_tolerance(const PaneTask<N>& task, const ExtentNames& names, N size) {
    return tolerance(task, names.cut_tolerance, names.cut_symbol, task.c.tolerance.cut,
                     value_of(size));
}

// A pane that is to be trimmed from a blank that is cut: to the size wanted, if that is left of it.
template <class N>
void trim_extent(const PaneTask<N>& task, const ExtentNames& names, N wanted,
                 const Shrink<N>& shrink, Extent<N>& result) {
    result.formed = task.figure(names.formed, names.formed_symbol,
                                smaller(wanted, forming::formed_from(result.blank, shrink.nominal)),
                                "size that the frame asks for, or what the blank leaves");
    result.tolerance = task.figure(names.tolerance, names.tolerance_symbol,
                                   cut_tolerance(task, names, result.formed),
                                   "the trimming cut alone");
}

// A pane that is made: its size is known, or follows from the blank that it is formed of.
template <class N>
Extent<N> made_extent(const PaneTask<N>& task, const ExtentNames& names, N wanted,
                      const MadeExtent& made, const Shrink<N>& shrink) {
    Extent<N> result;
    if (made.blank) {
        result.blank = task.figure(
            names.blank, names.blank_symbol,
            measured_size(task, made.blank_key, names.blank_symbol, *made.blank), "as measured");
    }
    if (!made.formed && task.spec.blank.method.value == BlankMethod::trim_after) {
        trim_extent(task, names, wanted, shrink, result);
        return result;
    }
    if (!made.formed) {
        result.formed = task.figure(names.formed, names.formed_symbol,
                                    forming::formed_from(result.blank, shrink.nominal),
                                    kShrinkSource);
        const N limit = measured_limit(task, made.blank_key, names.cut_symbol, *made.blank);
        result.tolerance =
            task.figure(names.tolerance, names.tolerance_symbol,
                        limit * (1 - shrink.nominal) + result.blank * shrink.spread,
                        "limits added: the blank's measuring, and the spread of its shrink");
        return result;
    }
    result.formed = task.figure(
        names.formed, names.formed_symbol,
        measured_size(task, made.formed_key, names.formed_symbol, *made.formed), "as measured");
    result.tolerance = task.figure(
        names.tolerance, names.tolerance_symbol,
        measured_limit(task, made.formed_key, names.tolerance_symbol, *made.formed),
        "the measuring alone");
    if (!made.blank) {
        result.blank = task.figure(names.blank, names.blank_symbol,
                                   forming::blank_for(result.formed, shrink.nominal),
                                   kShrinkSource);
    }
    return result;
}

template <class N>
Extent<N> extent(const PaneTask<N>& task, const ExtentNames& names, N wanted,
                 const std::optional<Sourced<double>>& cut, const MadeExtent& made,
                 const Shrink<N>& shrink, bool heated) {
    if (made.formed || made.blank) {
        return made_extent(task, names, wanted, made, shrink);
    }
    Extent<N> result;
    const bool as_cut = task.spec.blank.method.value == BlankMethod::as_cut;
    if (!heated) {
        // Cut to size: blank and pane are the same piece.
        const N size = as_cut ? task.input(names.blank_symbol, *cut) : wanted;
        result.blank = task.figure(names.blank, names.blank_symbol, size, "cut once, not heated");
        result.formed = task.figure(names.formed, names.formed_symbol, result.blank,
                                    "cut once, not heated");
        result.tolerance = task.figure(names.tolerance, names.tolerance_symbol,
                                       cut_tolerance(task, names, result.blank), "the cut alone");
        return result;
    }
    if (as_cut) {
        result.blank = task.figure(names.blank, names.blank_symbol,
                                   task.input(names.blank_symbol, *cut), "as it is already cut");
        result.formed = task.figure(names.formed, names.formed_symbol,
                                    forming::formed_from(result.blank, shrink.nominal),
                                    kShrinkSource);
    } else {
        result.formed = task.figure(names.formed, names.formed_symbol, wanted,
                                    "size that the frame asks for");
        const bool trimmed = task.spec.blank.method.value == BlankMethod::trim_after;
        const N hot = trimmed ? result.formed + 2 * task.input("m", task.spec.blank.trim)
                              : result.formed;
        result.blank = task.figure(names.blank, names.blank_symbol,
                                   forming::blank_for(hot, shrink.nominal), kShrinkSource);
        if (trimmed) {
            result.tolerance = task.figure(names.tolerance, names.tolerance_symbol,
                                           cut_tolerance(task, names, result.formed), "the trimming cut alone");
            return result;
        }
    }
    result.tolerance = task.figure(
        names.tolerance, names.tolerance_symbol,
        cut_tolerance(task, names, result.blank) * (1 - shrink.nominal) + result.blank * shrink.spread,
        "limits added: the blank's cut, and the spread of its shrink");
    return result;
}

template <class N>
N wanted_height(const PaneTask<N>& task, N opening) {
    if (task.spec.height) {
        return task.input("W", *task.spec.height);
    }
    const N top = task.input("D_t", task.c.frame.groove.top_depth);
    if (task.c.frame.loading.value == Loading::lift_and_drop) {
        return opening + top - task.input("c_l", task.c.fit.loading_clearance);
    }
    return opening + task.input("D_b", task.c.frame.groove.base_depth) + top -
           task.input("c_t", task.c.fit.top_clearance);
}

template <class N>
N wanted_length(const PaneTask<N>& task, N opening) {
    if (task.spec.length) {
        return task.input("L", *task.spec.length);
    }
    return opening + 2 * (task.input("D_p", task.c.frame.groove.post_depth) -
                          task.input("c_e", task.c.fit.end_clearance));
}

template <class N>
void solve_opening(const PaneTask<N>& task, PaneSums<N>& pane) {
    pane.side_length =
        task.figure("side_length", "S", task.line.length, "glazing line, corner to corner");
    const LineInPost<N> start = line_in_post(task, PaneEdge::start);
    const LineInPost<N> end = line_in_post(task, PaneEdge::end);
    pane.start_in_post = start.length;
    pane.start_radius = start.radius;
    pane.end_in_post = end.length;
    pane.end_radius = end.radius;
    const AsMade& made = task.spec.made;
    if (made.opening_length) {
        pane.opening_length =
            task.figure("opening/length", "O",
                        measured_size(task, "opening_length", "O", *made.opening_length),
                        "as measured");
        pane.side_length = task.figure(
            "side_length", "S", pane.opening_length + pane.start_in_post + pane.end_in_post,
            "measured opening and what stands in both posts");
    } else {
        pane.opening_length = task.figure(
            "opening/length", "O", pane.side_length - pane.start_in_post - pane.end_in_post,
            "glazing line outside both posts");
    }
    pane.opening_height =
        task.figure("opening/height", "H",
                    made.opening_height
                        ? measured_size(task, "opening_height", "H", *made.opening_height)
                        : task.input("h", task.c.frame.clear_height),
                    "clear height between base and top");
}

template <class N>
void solve_thickness(const PaneTask<N>& task, const PaneShrink<N>& shrink, PaneSums<N>& pane) {
    pane.thickness = task.figure("thickness", "t", task.input("t", task.spec.thickness), "as bought");
    const auto& given = task.c.tolerance.sheet_thickness;
    if (given) {
        pane.thickness_tolerance = tolerance(task, "tolerance/thickness", "δ_t", *given,
                                             value_of(pane.thickness));
    } else {
        const Property limit = thickness_tolerance(*task.c.sheets.at(task.spec.sheet).like,
                                                   value_of(pane.thickness));
        pane.thickness_tolerance =
            task.book.reference({"panes", task.side, "tolerance/thickness"}, "δ_t", Kind::length,
                                limit.value, {limit.source});
    }
    const auto formed_of = [&](N sheet) {
        return task.figure(
            "formed/thickness", "t₁",
            forming::thickened(sheet, shrink.length.nominal, shrink.height.nominal),
            "constant volume");
    };
    const auto thickest_of = [&](N sheet) {
        return task.figure("thickest", "t₁max",
                           forming::thickened(sheet, shrink.length.nominal + shrink.length.spread,
                                              shrink.height.nominal + shrink.height.spread),
                           "constant volume, at the limits of thickness and shrink");
    };
    const auto& made = task.spec.made.thickness;
    if (made && task.spec.made.before_heating) {
        const N sheet = measured_size(task, "thickness", "t", *made);
        pane.formed_thickness = formed_of(sheet);
        pane.thickest = thickest_of(sheet + measured_limit(task, "thickness", "δ_t", *made));
        return;
    }
    if (made) {
        pane.formed_thickness =
            task.figure("formed/thickness", "t₁", measured_size(task, "thickness", "t₁", *made),
                        "as measured at the thickest place");
        pane.thickest = task.figure("thickest", "t₁max",
                                    pane.formed_thickness +
                                        measured_limit(task, "thickness", "δ_t", *made),
                                    "the measuring alone");
        return;
    }
    const N thick = pane.thickness + pane.thickness_tolerance;
    if (!pane.heated) {
        pane.formed_thickness =
            task.figure("formed/thickness", "t₁", pane.thickness, "not heated");
        pane.thickest = task.figure("thickest", "t₁max", thick, "limit of the sheet's thickness");
        return;
    }
    pane.formed_thickness = formed_of(pane.thickness);
    pane.thickest = thickest_of(thick);
}

// However wide its tolerance, a sheet is not taken to be thinner than this share of its thickness.
constexpr double kThinnest = 0.1;

// Loads are borne by the sheet as bought, which heating only thickens. What was measured of a formed
// pane is brought back to that, so that a pane just as designed bears just what was designed.
template <class N>
void solve_bearing_thickness(const PaneTask<N>& task, const PaneShrink<N>& shrink,
                             PaneSums<N>& pane) {
    if (const auto& made = task.spec.made.thinnest) {
        const N left = task.spec.made.before_heating
                           ? N(1)
                           : (1 - shrink.length.nominal) * (1 - shrink.height.nominal);
        const N thin = measured_size(task, "thinnest", "t_m", *made);
        pane.bearing_thickness = task.figure("bearing_thickness", "t_b", thin * left,
                                             "thinnest place, before heating: constant volume");
        pane.bearing_thickness_least =
            task.figure("thinnest", "t_min",
                        larger(thin - measured_limit(task, "thinnest", "δ_t", *made),
                               kThinnest * thin) *
                            left,
                        "the measuring alone, before heating: constant volume");
        return;
    }
    pane.bearing_thickness = pane.thickness;
    pane.bearing_thickness_least =
        task.figure("thinnest", "t_min",
                    larger(pane.thickness - pane.thickness_tolerance, kThinnest * pane.thickness),
                    "lower limit of the sheet's thickness");
}

template <class N>
void solve_thinnest(const PaneTask<N>& task, const PaneShrink<N>& shrink, PaneSums<N>& pane) {
    pane.thinnest_formed = task.figure(
        "thinnest_formed", "t₁min",
        pane.heated ? forming::thickened(pane.bearing_thickness_least,
                                         shrink.length.nominal - shrink.length.spread,
                                         shrink.height.nominal - shrink.height.spread)
                    : pane.bearing_thickness_least,
        "constant volume, thinnest sheet and least shrink");
}

template <class N>
void solve_curve(const PaneTask<N>& task, N shrink, PaneSums<N>& pane) {
    using std::cos;
    using std::sin;
    if (!pane.curved) {
        pane.radius = pane.inside_radius = pane.sweep = pane.rise = pane.cold_radius =
            pane.flexing_stress = N(0);
        pane.chord = pane.length;
        return;
    }
    if (task.line.is_run()) {
        solve_run(task, shrink, pane);
    } else {
        constexpr std::string_view kSource = "geometry of the mid-surface";
        pane.radius = task.line.pieces.front().arc.radius;
        pane.inside_radius =
            task.figure("formed/inside_radius", "Ri", pane.radius - pane.thickness / 2, kSource);
        pane.sweep =
            task.figure("formed/sweep", "θ", pane.length / pane.radius, kSource, Kind::angle);
        pane.chord =
            task.figure("formed/chord", "c", 2 * pane.radius * sin(pane.sweep / 2), kSource);
        pane.rise =
            task.figure("formed/rise", "f", pane.radius * (1 - cos(pane.sweep / 2)), kSource);
    }
    const Sheet& sheet = *task.c.sheets.at(task.spec.sheet).like;
    const auto& multiple = sheet.cold_bend_multiple;
    pane.cold_radius =
        multiple ? task.figure("cold_radius", "Rc",
                               task.book.reference({"panes", task.side, "cold_bend_multiple"}, "k",
                                                   Kind::plain, multiple->value,
                                                   {multiple->source}) *
                                   pane.thickness,
                               "smallest radius held cold: R = k·t")
                 : N(0);
    if (pane.heated) {
        pane.flexing_stress = N(0);
        return;
    }
    const N modulus = task.book.reference({"panes", task.side, "modulus"}, "E", Kind::stress,
                                          sheet.modulus.value, {sheet.modulus.source});
    pane.flexing_stress = task.figure(
        "flexing_stress", "σ",
        modulus * forming::flexing_strain(pane.thickness, 1 / pane.radius, N(0)),
        "bending of a thin strip: σ = E·t/2·abs(1/R₁ − 1/R₂)", Kind::stress);
}

}  // namespace

double class_tolerance(ToleranceClass by_class, double size) {
    // ISO 2768-1 has rows for these sizes, mm. Smaller ones take the first row; larger ones are
    // objected to after the sums are done, for which the last row stands in.
    constexpr double kFirstRow = 0.5;
    constexpr double kLastRow = 4000;
    constexpr double kFirstOfVeryCoarse = 3.001;
    const double toleranced = std::clamp(size, kFirstRow, kLastRow);
    if (const auto value = linear_tolerance(by_class, toleranced)) {
        return *value;
    }
    // Class f ends at 2 m: class m is the next one that has a value. Class v begins over 3 mm: its
    // first row is wide enough for what is smaller.
    return by_class == ToleranceClass::fine
               ? linear_tolerance(ToleranceClass::medium, toleranced).value()
               : linear_tolerance(by_class, kFirstOfVeryCoarse).value();
}

template <class N>
N tolerance(const PaneTask<N>& task, std::string_view key, std::string_view symbol,
            const Sourced<ToleranceSpec>& spec, double size) {
    if (!spec.value.by_class) {
        return task.book.input(symbol, Kind::length,
                               Sourced<double>{spec.value.value, spec.origin});
    }
    return task.book.reference({"panes", task.side, key}, symbol, Kind::length,
                               class_tolerance(*spec.value.by_class, size),
                               {"ISO 2768-1:1989, table 1"});
}

template <class N>
void solve_sizes(const PaneTask<N>& task, PaneSums<N>& pane) {
    pane.side = task.spec.side;
    pane.curved = task.line.curved();
    pane.bow = task.line.bow();
    pane.heated = pane.curved && task.spec.bend.value == Bend::heat;
    solve_opening(task, pane);
    const PaneShrink<N> shrink = pane.heated ? pane_shrink(task) : PaneShrink<N>{};
    const AsMade& made = task.spec.made;
    const Extent<N> length = extent(task, kLengthNames, wanted_length(task, pane.opening_length),
                                    task.spec.blank.length,
                                    {made.length, made.blank_length, "length", "blank_length"},
                                    shrink.length, pane.heated);
    const Extent<N> height = extent(task, kHeightNames, wanted_height(task, pane.opening_height),
                                    task.spec.blank.width,
                                    {made.height, made.blank_width, "height", "blank_width"},
                                    shrink.height, pane.heated);
    pane.length = length.formed;
    pane.length_tolerance = length.tolerance;
    pane.blank_length = length.blank;
    pane.height = height.formed;
    pane.height_tolerance = height.tolerance;
    pane.blank_width = height.blank;
    solve_thickness(task, shrink, pane);
    solve_bearing_thickness(task, shrink, pane);
    solve_thinnest(task, shrink, pane);
    solve_curve(task, shrink.length.nominal, pane);
}

template double tolerance(const PaneTask<double>&, std::string_view, std::string_view,
                          const Sourced<ToleranceSpec>&, double);
template Traced tolerance(const PaneTask<Traced>&, std::string_view, std::string_view,
                          const Sourced<ToleranceSpec>&, double);
template void solve_sizes(const PaneTask<double>&, PaneSums<double>&);
template void solve_sizes(const PaneTask<Traced>&, PaneSums<Traced>&);

}  // namespace bowfront::fit
