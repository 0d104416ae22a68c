#include "pane_json.hpp"

#include <numbers>
#include <string>

#include "finding_json.hpp"

namespace bowfront::report {
namespace {

using Json = nlohmann::ordered_json;

constexpr double kPercent = 100;

Json nominal_and_worst(double nominal, double worst) {
    return {{"nominal", number_json(nominal)}, {"worst", number_json(worst)}};
}

Json range(double nominal, double least, double most) {
    return {{"nominal", number_json(nominal)},
            {"least", number_json(least)},
            {"most", number_json(most)}};
}

Json passage_json(const fit::Passage& passage) {
    return {{"possible", passage.possible()},
            {"flexed", passage.must_flex()},
            {"tightest", passage.tightest},
            {"clearance", number_json(passage.clearance)}};
}

}  // namespace

Json states_json(const PaneSums<double>& pane) {
    Json states = Json::array();
    for (const AirState which : kAirStates) {
        const PaneState<double>& state = pane.states[static_cast<std::size_t>(which)];
        states.push_back({{"state", state_text(which)},
                          {"temperature", number_json(state.temperature)},
                          {"humidity", number_json(state.humidity * kPercent)},
                          {"moisture_content", number_json(state.moisture)},
                          {"length", number_json(state.length)},
                          {"height", number_json(state.height)},
                          {"opening_least", number_json(state.opening_least)},
                          {"opening_most", number_json(state.opening_most)},
                          {"opening_height", number_json(state.opening_height)},
                          {"groove_depth",
                           {{"base", number_json(state.base_depth)},
                            {"top", number_json(state.top_depth)},
                            {"post", number_json(state.post_depth)}}}});
    }
    return states;
}

Json radius_error_json(const PaneSums<double>& pane) {
    const RadiusSums<double>& error = pane.radius_error;
    Json json;
    if (pane.heated) {
        json["free_radius"] =
            range(error.free_radius, error.free_radius_least, error.free_radius_most);
    }
    json["groove_radius"] =
        range(error.groove_radius, error.groove_radius_least, error.groove_radius_most);
    if (pane.heated) {
        json["rise_off"] = nominal_and_worst(error.rise_off, error.rise_off_worst);
        json["clearance_left"] =
            nominal_and_worst(error.clearance_left, error.clearance_left_worst);
        json["contact"] = {{"nominal", error.clearance_left < 0},
                           {"worst", error.clearance_left_worst < 0}};
        json["flexed"] = {{"worst", number_json(error.flexed_worst)}};
    }
    json["strain"] = nominal_and_worst(error.strain * kPercent, error.strain_worst * kPercent);
    json["stress"] = nominal_and_worst(error.stress, error.stress_worst);
    return json;
}

Json bends_json(const PaneSums<double>& pane) {
    constexpr double kDegrees = 180 / std::numbers::pi;
    Json bends = Json::array();
    for (const BendSums<double>& bend : pane.bends) {
        bends.push_back(
            {{"id", std::to_string(bends.size() + 1)},
             {"bow", bend.bow == Bow::out ? "out" : "in"},
             {"inside_radius", number_json(bend.inside_radius)},
             {"sweep", number_json(bend.sweep * kDegrees)},
             {"start", number_json(bend.start)},
             {"end", number_json(bend.end)},
             {"blank_start", number_json(bend.blank_start)},
             {"blank_end", number_json(bend.blank_end)},
             {"free_radius",
              range(bend.free_radius, bend.free_radius_least, bend.free_radius_most)},
             {"free_sweep", range(bend.free_sweep * kDegrees, bend.free_sweep_least * kDegrees,
                                  bend.free_sweep_most * kDegrees)},
             {"groove_radius",
              {{"least", number_json(bend.groove_radius_least)},
               {"most", number_json(bend.groove_radius_most)}}},
             {"flexing_strain", number_json(bend.flexing_strain * kPercent)},
             {"flexing_stress", number_json(bend.flexing_stress)}});
    }
    return bends;
}

Json load_json(const LoadSums<double>& load) {
    return {{"force", number_json(load.force)},
            {"deflection", nominal_and_worst(load.deflection, load.deflection_worst)},
            {"stress", nominal_and_worst(load.stress, load.stress_worst)},
            {"held", nominal_and_worst(load.held, load.held_worst)}};
}

Json loading_path_json(const Case& c, const PaneSums<double>& pane, const fit::LoadingPath& path) {
    Json json = {{"possible", path.possible},
                 {"still_off", path.still_off},
                 {"steps", path.steps},
                 {"tightest", path.tightest},
                 {"clearance", number_json(path.clearance)}};
    if (pane.curved) {
        const auto& limit = c.sheets.at(c.pane(pane.side)->sheet).like->long_term_stress;
        json["flexing"] = {{"strain", number_json(pane.radius_error.flexing_strain * kPercent)},
                           {"stress", number_json(pane.radius_error.flexing_stress)}};
        if (limit) {
            json["flexing"]["lasting_limit"] = number_json(limit->value);
        }
    }
    json["states"] = Json::array();
    for (const fit::PassageInState& state : path.states) {
        json["states"].push_back({{"state", state_text(state.state)},
                                  {"nominal", passage_json(state.nominal)},
                                  {"worst", passage_json(state.worst)}});
    }
    return json;
}

}  // namespace bowfront::report
