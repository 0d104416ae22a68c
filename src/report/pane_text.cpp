#include "pane_text.hpp"

#include <algorithm>

#include "bowfront/base/number_text.hpp"

namespace bowfront::report {
namespace {

constexpr double kPercent = 100;

std::string shown(double value) { return fixed_text(value, 2); }

std::string column(double value, int decimals, std::size_t width) {
    const std::string number = fixed_text(value, decimals);
    return std::string(width - std::min(width, number.size()), ' ') + number;
}

std::string worst(double value) { return " (worst " + shown(value) + ")"; }

std::string load_text(std::string_view what, const LoadSums<double>& load) {
    return "  " + std::string(what) + " " + shown(load.force) + " N: bends " +
           shown(load.deflection) + worst(load.deflection_worst) + " mm, stress " +
           shown(load.stress) + worst(load.stress_worst) + " MPa, still held by " +
           shown(load.held) + worst(load.held_worst) + " mm\n";
}

std::string radius_text(const PaneSums<double>& pane) {
    const RadiusSums<double>& error = pane.radius_error;
    const std::string groove = shown(error.groove_radius) + " mm (" +
                               shown(error.groove_radius_least) + " to " +
                               shown(error.groove_radius_most) + " through the year)";
    const std::string strained = "strain " + fixed_text(error.strain_worst * kPercent, 3) +
                                 " % and stress " + shown(error.stress_worst) + " MPa";
    if (!pane.heated) {
        return "  held cold     to the groove's radius " + groove + ": at worst " + strained + "\n";
    }
    return "  own radius    " + shown(error.free_radius) + " mm (" +
           shown(error.free_radius_least) + " to " + shown(error.free_radius_most) +
           " by springback) in a groove of " + groove + "\n                uses up " +
           shown(error.rise_off) + worst(error.rise_off_worst) + " mm of face clearance, leaves " +
           shown(error.clearance_left) + worst(error.clearance_left_worst) + " mm; " +
           (error.clearance_left_worst < 0 ? "touches at worst, " + strained : "never touches") +
           "\n";
}

std::string answer(const fit::Passage& passage) {
    return fixed_text(passage.clearance, 2) +
           (passage.must_flex() ? " (flexed)" : passage.possible() ? "" : " (no way in)");
}

}  // namespace

std::string strength_text(const PaneSums<double>& pane) {
    return (pane.curved ? radius_text(pane) : std::string()) +
           load_text("pushed with   ", pane.push) + load_text("carried, bears", pane.carried);
}

std::string states_text(const PaneSums<double>& pane) {
    std::string text =
        "  state        degC   RH %  timber %     length    height  opening least     most"
        "    base     top    post\n";
    for (const AirState which : kAirStates) {
        const PaneState<double>& state = pane.states[static_cast<std::size_t>(which)];
        std::string name(state_text(which));
        name.resize(11, ' ');
        text += "  " + name + column(state.temperature, 1, 6) +
                column(state.humidity * kPercent, 1, 7) + column(state.moisture, 2, 10) +
                column(state.length, 2, 11) + column(state.height, 2, 10) +
                column(state.opening_least, 2, 15) + column(state.opening_most, 2, 9) +
                column(state.base_depth, 2, 8) + column(state.top_depth, 2, 8) +
                column(state.post_depth, 2, 8) + "\n";
    }
    return text;
}

std::string loading_text(const fit::LoadingPath& path) {
    if (path.states.empty()) {
        return "  way in        none: " + path.tightest + "\n";
    }
    std::string text = "  way in        with " + path.still_off + " off: " +
                       (path.possible ? "" : "NONE, ") + shown(path.clearance) + " mm left " +
                       path.tightest + "\n                at worst";
    for (const fit::PassageInState& state : path.states) {
        text += std::string(state.state == AirState::built ? " " : ", ") +
                std::string(state_text(state.state)) + " " + answer(state.worst);
    }
    return text + " mm\n";
}

}  // namespace bowfront::report
