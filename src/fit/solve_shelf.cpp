#include "solve_shelf.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include "bowfront/base/contract.hpp"
#include "bowfront/fit/plate_bending.hpp"
#include "bowfront/materials/timber.hpp"
#include "shelf_parts.hpp"
#include "solve.hpp"

namespace bowfront::fit {
namespace {

constexpr double kGravity = 9.80665;  // m/s², standard
constexpr double kCubicMetre = 1e9;   // mm³
constexpr double kPlywoodPoisson =
    0.3;  // taken as for most solids: it counts for little; no source

constexpr std::string_view kRailsSource =
    "strips from rail to rail, as beams on two supports; what hangs out beyond the rails is borne "
    "by "
    "the last strips, half a span wide. Other supports and the sheet's stiffness across, which "
    "help, "
    "are left out";
constexpr std::string_view kPlateSource =
    "a plate on rails all round, by Lévy's series, and a quarter more, since it is notched and its "
    "corners may lift";
constexpr std::string_view kCornersSource =
    "a plate on its corners alone bends both ways, each way with all of the load, as beams on two "
    "supports over the whole extent; its edges bear a quarter more than that. More than plate "
    "theory "
    "gives";

std::string_view source_of(ShelfModel model) {
    switch (model) {
        case ShelfModel::rails:
            return kRailsSource;
        case ShelfModel::plate:
            return kPlateSource;
        case ShelfModel::corners:
            break;
    }
    return kCornersSource;
}

template <class N>
class ShelfSolver {
  public:
    ShelfSolver(const ShelfTask<N>& task, const CaseSums<N>& sums)
        : task_(task), sums_(sums), material_(shelf_material(task.spec)) {}

    ShelfSums<N> solve() {
        ShelfSums<N> out;
        set_load(out);
        set_bending(out);
        set_gaps(out);
        set_tip(out);
        for (const ShelfRest& rest : task_.plan.rests) {
            const std::string path = "supports/" + rest.id;
            const N share =
                measured(path + "/share", "k_r", Kind::plain, rest.share,
                         "most of the weight that can come to rest here: any three rests "
                         "may bear all of it, since they are never quite level");
            out.reactions.push_back(figure(path + "/reaction", "R", Kind::force, share * out.force,
                                           "most that can come to rest here"));
        }
        return out;
    }

  private:
    N figure(std::string_view key, std::string_view symbol, Kind kind, N value,
             std::string_view source) const {
        return task_.book.figure({"shelves", task_.plan.id, key}, symbol, kind, value, source);
    }
    // Of the outline and what it rests on.
    N measured(std::string_view key, std::string_view symbol, Kind kind, double value,
               std::string_view source) const {
        return figure(key, symbol, kind, N(value), source);
    }
    // Of a library or a standard.
    N known(std::string_view key, std::string_view symbol, Kind kind, double value,
            std::string_view source) const {
        return task_.book.reference({"shelves", task_.plan.id, key}, symbol, kind, value, {source});
    }
    N known(std::string_view key, std::string_view symbol, Kind kind,
            const Property& property) const {
        return known(key, symbol, kind, property.value, property.source);
    }
    N length(std::string_view symbol, const Sourced<double>& value) const {
        return task_.book.input(symbol, Kind::length, value);
    }

    void set_load(ShelfSums<N>& out) {
        t_ = length("t", task_.spec.thickness);
        out.area = measured("area", "A_s", Kind::plain, task_.plan.outline.area(),
                            "area of the outline: shoelace formula and circular segments, mm²");
        const N density = known("density", "ρ", Kind::plain, material_.density);
        out.mass = figure("mass", "m_s", Kind::mass, density * out.area * t_ / kCubicMetre,
                          "mass = density times area times thickness");
        load_ = task_.book.input("m_l", Kind::mass, task_.spec.load);
        out.force = figure("force", "F", Kind::force, (out.mass + load_) * kGravity,
                           "weight of the shelf and of what stands on it");
        out.pressure = figure("pressure", "p", Kind::stress, out.force / out.area,
                              "spread evenly over the shelf");
    }

    // How much thinner the shelf may be than it was bought for.
    N thinner() const {
        const double t = task_.spec.thickness.value;
        if (task_.spec.sheet != nullptr) {
            const Property off = thickness_tolerance(*task_.spec.sheet, t);
            return known("thickness_tolerance", "Δt", Kind::length, off);
        }
        return cut("thickness_tolerance", "Δt", t);
    }
    N cut(std::string_view key, std::string_view symbol, double size) const {
        const ToleranceSpec& spec = task_.c.tolerance.cut.value;
        return spec.by_class
                   ? known(key, symbol, Kind::length, class_tolerance(*spec.by_class, size),
                           "ISO 2768-1:1989, table 1")
                   : known(key, symbol, Kind::length, spec.value, "tolerance of cuts");
    }

    void set_bending(ShelfSums<N>& out) {
        const ShelfModel model = task_.plan.model;
        const bool rails = model != ShelfModel::corners;
        const std::string_view source = source_of(model);
        span_ = measured(
            "span", "L", Kind::length, task_.plan.span,
            rails ? "extent of the shelf from rail to rail" : "the longer extent of the shelf");
        const N breadth = measured("breadth", "B", Kind::length, task_.plan.breadth,
                                   "extent of the shelf the other way");
        const N bulge = measured("bulge", "o", Kind::length, task_.plan.bulge,
                                 "how far the shelf stands out beyond what it rests on, at most");
        const N modulus = known("modulus", "E", Kind::stress, material_.modulus);
        const N creep = known("creep", "φ", Kind::plain, material_.creep, material_.creep_source);
        BentShelf<N> of{model, span_, breadth, bulge, out.pressure, modulus, N(0), N(0)};
        set_coefficients(of);
        const auto bent = [&](N t) { return bend_shelf<N>(of, t); };
        out.thickness_least =
            figure("thickness_least", "t_min", Kind::length, larger(t_ - thinner(), t_ / 2),
                   "thinnest that it may be, and no less than half");
        const auto thick = bent(t_);
        const auto thin = bent(out.thickness_least);
        out.sag = figure("sag/nominal", "w", Kind::length, creep * thick.deflection, source);
        out.sag_worst = figure("sag/worst", "w_max", Kind::length, creep * thin.deflection, source);
        out.sag_limit =
            figure("sag/limit", "w_lim", Kind::length, span_ / kSpanOverSag,
                   "a sag that looks straight: 1/300 of the span; common practice (1/240 "
                   "to 1/300), no source");
        out.stress = figure("stress/nominal", "σ", Kind::stress, thick.stress, source);
        out.stress_worst = figure("stress/worst", "σ_max", Kind::stress, thin.stress, source);
        const N strength = known("strength", "σ_m", Kind::stress, material_.stress_limit);
        out.stress_limit = figure("stress/limit", "σ_lim", Kind::stress,
                                  strength * material_.of_strength, material_.limit_source);
    }

    void set_coefficients(BentShelf<N>& of) const {
        if (of.model != ShelfModel::plate) {
            return;
        }
        const double poisson =
            task_.spec.sheet != nullptr ? task_.spec.sheet->poisson.value : kPlywoodPoisson;
        const PlateCoefficients plate = plate_coefficients(
            {task_.plan.span, task_.plan.breadth, task_.plan.span, task_.plan.breadth, poisson});
        const auto coefficient = [&](std::string_view key, std::string_view symbol, double value) {
            return task_.book.solved(
                {"shelves", task_.plan.id, key}, symbol, Kind::plain, value,
                "Lévy's series for a plate on four edges under an even load", {of.span, of.breadth},
                "Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells");
        };
        of.alpha = coefficient("deflection_coefficient", "α_p", plate.deflection);
        of.beta = coefficient("stress_coefficient", "β_p", plate.stress);
    }

    // How much wider the air makes it than it was as built.
    N growth() const {
        const ShelfSpec& spec = task_.spec;
        const Service& air = task_.c.service;
        if (spec.timber != nullptr) {
            const N coefficient =
                known("movement", "C", Kind::plain, *spec.timber->tangential_coefficient);
            const double built =
                equilibrium_moisture(air.built_temperature.value, air.built_humidity.value);
            const double most =
                equilibrium_moisture(air.temperature[0].value, air.humidity[1].value);
            const N rise = measured("moisture_rise", "ΔM", Kind::plain, std::max(most - built, 0.0),
                                    "Wood Handbook FPL-GTR-282, equation 4-5: from as built to the "
                                    "dampest air, % of moisture content");
            return figure("growth", "x_g", Kind::length, coefficient * rise * task_.plan.breadth,
                          "ΔD = D·C·ΔM across the grain, Wood Handbook FPL-GTR-190, chapter 13");
        }
        if (spec.sheet != nullptr) {
            const N expansion = known("expansion", "α", Kind::plain, spec.sheet->expansion);
            const N warmer = task_.book.input("T_max", Kind::temperature, air.temperature[1]) -
                             task_.book.input("T_0", Kind::temperature, air.built_temperature);
            const double damp = moisture_growth(*spec.sheet, air.humidity[1].value) -
                                moisture_growth(*spec.sheet, air.built_humidity.value);
            const N swell = known("swelling", "ε_h", Kind::ratio, std::max(damp, 0.0),
                                  spec.sheet->moisture ? spec.sheet->moisture->source
                                                       : "nothing was published: none");
            return figure("growth", "x_g", Kind::length,
                          span_ * (expansion * larger(warmer, N(0)) + swell),
                          "warmest and dampest air against air as built");
        }
        return measured("growth", "x_g", Kind::length, 0, "plywood moves too little to count");
    }

    void set_gaps(ShelfSums<N>& out) {
        N thickest(0);
        for (const auto& pane : sums_.panes) {
            thickest = larger(thickest, pane.thickest);
        }
        const N off = measured("line_gap", "c_l", Kind::length, task_.plan.line_gap,
                               "least distance of the outline to the glazing line");
        const N groove = length("g", task_.c.frame.groove.width);
        const N tolerance = cut("cut_tolerance", "Δ_c", task_.plan.span);
        const N loss = growth() / 2 + tolerance;
        out.pane_gap = figure("gap/panes/nominal", "c_p", Kind::length, off - thickest / 2,
                              "to the face of the thickest pane");
        out.pane_gap_least = figure(
            "gap/panes/least", "c_p,min", Kind::length, off - larger(groove, thickest) / 2 - loss,
            "a pane hard against its groove's inner cheek, the shelf cut as large as its "
            "tolerance allows and grown to both sides");
        out.post_gap = measured("gap/posts/nominal", "c_c", Kind::length, task_.plan.post_gap,
                                "least distance of the outline to a post");
        out.post_gap_least = figure("gap/posts/least", "c_c,min", Kind::length, out.post_gap - loss,
                                    "the shelf cut as large as its tolerance allows and grown");
    }

    void set_tip(ShelfSums<N>& out) {
        const N hold =
            measured("tip/nominal", "h", Kind::length, task_.plan.hold,
                     "distance of the shelf's middle from the edge that it would tip over");
        const N overhang = measured("overhang", "o_t", Kind::length, task_.plan.overhang,
                                    "how far the shelf stands out beyond that edge");
        out.tip = hold;
        out.tip_worst =
            figure("tip/worst", "h_min", Kind::length,
                   (out.mass * hold + load_ * ((hold - overhang) / 2)) / (out.mass + load_),
                   "distance of the middle of all weight, with the load on the outer half "
                   "of the shelf alone, its middle halfway to the outermost edge");
        if (task_.plan.overhang > 0) {
            out.edge_load = figure("edge_load", "m_e", Kind::mass, out.mass * hold / overhang,
                                   "moments about the edge that the shelf would tip over");
        }
    }

    const ShelfTask<N>& task_;
    const CaseSums<N>& sums_;
    ShelfMaterial material_;
    N t_{};
    N span_{};
    N load_{};
};

}  // namespace

template <class N>
ShelfSums<N> solve_shelf(const ShelfTask<N>& task, const CaseSums<N>& sums) {
    return ShelfSolver<N>(task, sums).solve();
}

template ShelfSums<double> solve_shelf(const ShelfTask<double>&, const CaseSums<double>&);
template ShelfSums<Traced> solve_shelf(const ShelfTask<Traced>&, const CaseSums<Traced>&);

ShelfBending shelf_bending(const LoadedShelf& shelf) {
    BOWFRONT_EXPECTS(shelf.span > 0 && shelf.breadth > 0 && shelf.bulge >= 0);
    BOWFRONT_EXPECTS(shelf.modulus > 0 && shelf.thickness > 0);
    BentShelf<double> of{
        shelf.model, shelf.span, shelf.breadth, shelf.bulge, shelf.pressure, shelf.modulus, 0, 0};
    if (shelf.model == ShelfModel::plate) {
        const PlateCoefficients plate = plate_coefficients(
            {shelf.span, shelf.breadth, shelf.span, shelf.breadth, shelf.poisson});
        of.alpha = plate.deflection;
        of.beta = plate.stress;
    }
    const auto bent = bend_shelf<double>(of, shelf.thickness);
    return {bent.deflection, bent.stress};
}

}  // namespace bowfront::fit
