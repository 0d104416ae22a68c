#include <algorithm>

#include "bowfront/base/number_text.hpp"
#include "shelf_report.hpp"

namespace bowfront::report {
namespace {

std::string shown(double value) {
    return fixed_text(value, 2);
}

std::string bores_text(const ShelfSpec& spec, const fit::ShelfPlan& plan) {
    if (plan.pins.empty()) {
        return "  on rails of " + rounded_text(fit::kRailWidth, 1) + " x " +
               rounded_text(fit::kRailHeight, 1) + " mm: " + std::to_string(plan.rails.size()) +
               "\n";
    }
    const double middle = spec.height.value - spec.thickness.value - fit::kPinDiameter / 2;
    return "  on " + std::to_string(plan.pins.size()) + " steel pins: bores of " +
           rounded_text(fit::kPinDiameter, 1) + " mm, " + rounded_text(fit::kPinDepth, 1) +
           " mm deep, their middle " + shown(middle) +
           " mm over the base, where the posts' sections "
           "are scribed\n";
}

std::string shelf_text(const ShelfSpec& spec, const fit::Shelf& shelf) {
    const fit::ShelfSums<double>& sums = shelf.sums;
    const fit::ShelfPlan& plan = shelf.plan;
    const double most = *std::ranges::max_element(sums.reactions);
    return "\nShelf " + plan.id.substr(plan.id.find('-') + 1) + " (" + spec.material.value + ", " +
           rounded_text(spec.thickness.value, 2) + " mm)\n  upper face " +
           shown(spec.height.value) + " mm over the base; " + shown(plan.span) + " x " +
           shown(plan.breadth) + " mm, " + fixed_text(sums.mass, 3) + " kg, with " +
           fixed_text(spec.load.value, 3) + " kg on it\n" + bores_text(spec, plan) +
           "  sag in years " + shown(sums.sag) + " mm, thinnest " + shown(sums.sag_worst) +
           ", at most " + shown(sums.sag_limit) + "; stress " + shown(sums.stress) +
           " MPa, thinnest " + shown(sums.stress_worst) + ", at most " + shown(sums.stress_limit) +
           "\n  gap to panes " + shown(sums.pane_gap) + " mm, least " + shown(sums.pane_gap_least) +
           "; to posts " + shown(sums.post_gap) + ", least " + shown(sums.post_gap_least) +
           "; weight on one " + (plan.pins.empty() ? "rail's end" : "pin") + " at most " +
           shown(most) + " N\n" +
           (sums.edge_load ? "  it tips where more than " + shown(*sums.edge_load) +
                                 " kg stand alone at its outermost edge\n"
                           : "");
}

}  // namespace

std::string shelves_text(const Case& c, const fit::Shelves& shelves) {
    std::string text;
    for (std::size_t i = 0; i < shelves.list.size(); ++i) {
        text += shelf_text(c.shelves[i], shelves.list[i]);
    }
    return text;
}

}  // namespace bowfront::report
