#include "path_figures.hpp"

namespace bowfront {
namespace {

constexpr std::string_view kFollowed =
    "followed position by position: sections met in plan, corners turned in the swing";

// One pane's way in, and what it was followed with.
class PathFigures {
  public:
    PathFigures(const Case& c, const PaneSums<Traced>& pane, Workings& workings)
        : pane_(pane),
          workings_(workings),
          base_("panes/" + std::string(side_text(pane.side)) + "/loading_path"),
          groove_width_(Book<Traced>(workings).input("g", Kind::length, c.frame.groove.width)) {}

    void add(const fit::LoadingPath& path) const {
        if (path.states.empty()) {
            workings_.figure(base_ + "/clearance", "q", Kind::length, Traced(path.clearance),
                             "none: the pane can't move as its loading asks");
            return;
        }
        for (const fit::PassageInState& state : path.states) {
            const std::string in = base_ + "/states/" + std::string(state_text(state.state));
            const Traced nominal = followed(in + "/nominal/clearance", state.nominal.clearance,
                                            "nominal sizes", nominal_inputs(state.state));
            followed(in + "/worst/clearance", state.worst.clearance,
                     "all tolerances at their limits, and the worse limit of the springback",
                     worst_inputs(state.state));
            if (state.state == AirState::built) {
                workings_.figure(base_ + "/clearance", "q", Kind::length, nominal, "as built");
            }
        }
    }

    void add_flexing(const std::optional<Property>& limit) const {
        const RadiusSums<Traced>& error = pane_.radius_error;
        constexpr std::string_view kAllTheWay = "flexed from its own radius to the groove's";
        workings_.figure(base_ + "/flexing/strain", "ε_f", Kind::ratio, error.flexing_strain,
                         kAllTheWay);
        workings_.figure(base_ + "/flexing/stress", "σ_f", Kind::stress, error.flexing_stress,
                         kAllTheWay);
        if (limit) {
            workings_.input(base_ + "/flexing/lasting_limit", "σ_lim", Kind::stress, limit->value,
                            {Origin::Kind::library, {}, 0, std::string(limit->source)});
        }
    }

  private:
    Traced followed(const std::string& path, double value, std::string_view with,
                    const std::vector<Traced>& inputs) const {
        return workings_.solved(path, "q", Kind::length, value,
                                "least distance to timber on the way in, " + std::string(with),
                                inputs, kFollowed);
    }

    [[nodiscard]] std::vector<Traced> nominal_inputs(AirState which) const {
        const PaneState<Traced>& state = pane_.states[static_cast<std::size_t>(which)];
        std::vector<Traced> inputs = {state.length,       state.height,     pane_.formed_thickness,
                                      groove_width_,      state.base_depth, state.top_depth,
                                      state.opening_least, state.opening_height};
        if (pane_.heated) {
            inputs.push_back(pane_.radius_error.free_radius);
        }
        if (pane_.curved) {
            inputs.push_back(state.base_radius);
            inputs.push_back(state.top_radius);
        }
        return inputs;
    }

    [[nodiscard]] std::vector<Traced> worst_inputs(AirState which) const {
        std::vector<Traced> inputs = nominal_inputs(which);
        const FrameTolerances<Traced>& t = pane_.tolerances;
        inputs.insert(inputs.end(), {pane_.thickest, pane_.length_tolerance,
                                     pane_.height_tolerance, t.opening_length, t.opening_height,
                                     t.base_depth, t.top_depth, t.post_depth, t.groove_width});
        if (pane_.heated) {
            inputs.push_back(pane_.radius_error.free_radius_least);
            inputs.push_back(pane_.radius_error.free_radius_most);
        }
        return inputs;
    }

    const PaneSums<Traced>& pane_;
    Workings& workings_;
    std::string base_;
    Traced groove_width_;
};

}  // namespace

void add_path_figures(const Design& design, const CaseSums<Traced>& sums, Workings& workings) {
    for (const fit::LoadingPath& path : design.paths) {
        const PaneSums<Traced>& pane = *sums.pane(path.side);
        const PathFigures figures(design.c(), pane, workings);
        figures.add(path);
        if (pane.curved) {
            figures.add_flexing(
                design.c().sheets.at(design.c().pane(path.side)->sheet).like->long_term_stress);
        }
    }
}

}  // namespace bowfront
