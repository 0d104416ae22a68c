#include <cmath>
#include <optional>
#include <string>

#include "check_groups.hpp"

namespace bowfront::fit {
namespace {

// Half of the strength in bending, for a load that is short. A choice of this tool.
constexpr double kShareOfStrength = 0.5;

struct LoadCheck {
    std::string_view name;  // of the figures, and of the checks
    std::string_view state;
    const LoadSums<double>& sums;
};

// Stress falls with the square of the thickness, and the thinnest sheet grows at least in
// proportion with the nominal one.
std::string thicker(const PaneSums<double>& pane, double stress, double limit) {
    return "take a sheet of at least " +
           at_least_text(pane.thickness * std::sqrt(stress / limit));
}

void check_stress(const PaneSums<double>& pane, const Sheet& sheet, const LoadCheck& load,
                  CheckList& list) {
    const std::string side(side_text(pane.side));
    const std::string id = std::string(load.name) + "-stress";
    const std::string figure = "panes/" + side + "/" + std::string(load.name) + "/stress/nominal";
    const std::optional<Property>& lasting = sheet.long_term_stress;
    const double strength = sheet.flexural_strength.value * kShareOfStrength;
    const double worst = load.sums.stress_worst;
    list.enter({Code::fit_load, id, side, std::string(load.state) + ", half the bending strength",
                "MPa", figure},
               load.sums.stress, worst, strength, Bound::at_most,
               [&](double) { return thicker(pane, worst, strength); });
    Finding& finding = list.last();
    if (finding.status == Status::pass && lasting && worst > lasting->value) {
        finding.status = Status::warn;
        finding.advice = thicker(pane, worst, lasting->value);
        finding.note = "over the lasting limit of " + rounded_text(lasting->value, 1) +
                       " MPa at its thinnest: a short load over it does not generally craze a "
                       "sheet, one that leans there for days does";
    }
}

void check_held(const PaneSums<double>& pane, const LoadCheck& load, CheckList& list) {
    const std::string side(side_text(pane.side));
    list.at_least({Code::fit_load, std::string(load.name) + "-engagement", side,
                   std::string(load.state) + ", still held at every edge", "mm",
                   "panes/" + side + "/" + std::string(load.name) + "/held/nominal"},
                  load.sums.held, load.sums.held_worst, 0, [](double missing) {
                      return "deepen the grooves in top and posts by " + at_least_text(missing) +
                             ", the pane with them, or take a thicker sheet";
                  });
}

}  // namespace

void check_loads(const Case& c, const PaneSums<double>& pane, CheckList& list) {
    const Sheet& sheet = *c.sheets.at(c.pane(pane.side)->sheet).like;
    const LoadCheck loads[] = {
        {"push", "pushed in the middle by a hand", pane.push},
        {"carried", "lying on its back and set down hard, twice its own weight", pane.carried}};
    for (const LoadCheck& load : loads) {
        check_held(pane, load, list);
        check_stress(pane, sheet, load, list);
    }
}

}  // namespace bowfront::fit
