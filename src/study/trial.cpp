#include "trial.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "bowfront/forming/pane.hpp"

namespace bowfront::study {
namespace {

Extent extent(bool last_cut, double blank, double formed,
              double tolerance, double shrink, double spread) {
    if (last_cut) {
        return {formed, tolerance, 0, 0};
    }
    return {blank, forming::cut_of_blank(tolerance, blank, shrink, spread), shrink, spread};
}

}  // namespace

PaneModel pane_model(const Case& c, const PaneSums<double>& pane, std::size_t sheet) {
    const PaneSpec& spec = *c.pane(pane.side);
    const SheetSpec& of = c.sheets.at(spec.sheet);
    PaneModel model;
    model.sums = &pane;
    model.sheet = sheet;
    model.lengthwise = spec.along.value == Extrusion::length;
    const double along = pane.heated ? of.shrink_along.value : 0;
    const double across = pane.heated ? of.shrink_across.value : 0;
    const double along_spread = pane.heated ? of.spread_along.value : 0;
    const double across_spread = pane.heated ? of.spread_across.value : 0;
    const bool last = !pane.heated || spec.blank.method.value == BlankMethod::trim_after;
    const bool lengthwise = model.lengthwise;
    model.length =
        extent(last, pane.blank_length, pane.length, pane.length_tolerance,
               lengthwise ? along : across, lengthwise ? along_spread : across_spread);
    model.height = extent(last, pane.blank_width, pane.height, pane.height_tolerance,
                          lengthwise ? across : along, lengthwise ? across_spread : along_spread);
    model.along = along;
    model.along_spread = along_spread;
    model.across = across;
    model.across_spread = across_spread;
    const Groove& groove = c.frame.groove;
    model.base = groove.base_depth.value;
    model.top = groove.top_depth.value;
    model.post = groove.post_depth.value;
    model.width = groove.width.value;
    model.tolerances = pane.tolerances;
    // The tighter bend of both ends takes more.
    double radius = std::max(pane.start_radius, pane.end_radius);
    if (pane.start_radius > 0 && pane.end_radius > 0) {
        radius = std::min(pane.start_radius, pane.end_radius);
    }
    if (radius > 0) {
        const double turned = pane.reach / radius;
        model.curve_taken = radius * (1 - std::cos(turned));
        model.thickness_taken = (1 + std::cos(turned)) / 2;
    }
    model.lifted = c.frame.loading.value == Loading::lift_and_drop;
    return model;
}

Trials::Trials(const Case& c, const CaseSums<double>& sums, std::uint64_t seed) : random_(seed) {
    std::map<std::string, std::size_t> sheets;
    for (const PaneSums<double>& pane : sums.panes) {
        const std::size_t sheet =
            sheets.emplace(c.pane(pane.side)->sheet, sheets.size()).first->second;
        panes_.push_back(pane_model(c, pane, sheet));
    }
    sheets_.resize(sheets.size());
}

}  // namespace bowfront::study
