#include "loading_steps.hpp"

#include <algorithm>
#include <numbers>

#include "bowfront/base/number_text.hpp"
#include "bowfront/fit/swing.hpp"
#include "check_groups.hpp"

namespace bowfront::fit {
namespace {

std::string depth_of(double length, std::string_view what) {
    return mm(length) + " into " + std::string(what);
}

std::vector<std::string> slide_in_steps(const Case& c, const PaneSums<double>& pane) {
    std::vector<std::string> steps = {
        "Leave the top off.",
        std::string("Stand the pane's ends in the upper ends of the post grooves") +
            (pane.curved ? ", the bow outwards." : "."),
        "Slide it down " + mm(pane.opening_height) + " between the posts, and " +
            depth_of(c.frame.groove.base_depth.value, "the base's groove") +
            " until it stands on the bottom.",
        "When all panes stand, lay the top on: its groove goes down over " +
            mm(pane.edge(PaneEdge::top).engagement) + " of this pane."};
    if (c.frame.post.hold.value == Hold::rabbet) {
        steps.insert(steps.end() - 1, "From above, fix the beads of the posts.");
    }
    return steps;
}

std::vector<std::string> lay_in_steps(const Case& c, const PaneSums<double>& pane) {
    return {"Leave the top off and all beads out: the rabbets are open to the inside.",
            "From inside, stand the pane " +
                depth_of(c.frame.groove.base_depth.value, "the base's rabbet") +
                " and lay it against the outer cheeks, both ends alike in their posts.",
            "Fix the beads of the posts and of the base.",
            "Fix the top's beads to the top, so that its rabbets are grooves, and lay it on: it goes "
            "down over " + mm(pane.edge(PaneEdge::top).engagement) + " of this pane."};
}

std::vector<std::string> lift_and_drop_steps(const Case& c, const PaneSums<double>& pane,
                                             const SwingExtremes& way) {
    return {"Base, posts and top are on; leave the posts' beads out.",
            "From the open side of the rabbets, lean the pane with its top edge under the top's "
            "groove.",
            "Lift the top edge into the groove while the foot swings in, just clear of the base: at " +
                degrees(way.widest.tilt) + " it takes " + mm(way.widest.width) +
                " of the groove's width, at " + degrees(way.deepest.tilt) + " " +
                mm(way.deepest.depth) + " of its depth.",
            "Upright, it stands " + depth_of(pane.height - pane.opening_height, "the top's groove") +
                "; let it down " + depth_of(c.frame.groove.base_depth.value, "the base's groove") +
                ".",
            "Fix the posts' beads."};
}

// How far a curved pane is flexed on its way in; empty where it goes in as it is.
std::string flexing_step(const Case& c, const PaneSums<double>& pane,
                         const std::vector<PassageInState>& states) {
    const bool cold = pane.curved && !pane.heated;
    const bool needed = std::any_of(
        states.begin(), states.end(), [](const PassageInState& state) {
            return state.nominal.must_flex() || state.worst.must_flex();
        });
    if (!cold && !needed) {
        return {};
    }
    return (cold ? "Bend it from flat to its radius and hold it so while it goes in: "
                 : "Where its radius has come out otherwise than its groove's, it goes in flexed to "
                   "the groove's: ") +
           flexing_text(c, pane) + ".";
}

std::vector<std::string> steps_of(const Case& c, const PaneSums<double>& pane) {
    switch (c.frame.loading.value) {
        case Loading::slide_in: return slide_in_steps(c, pane);
        case Loading::beaded: return lay_in_steps(c, pane);
        case Loading::lift_and_drop: break;
    }
    return lift_and_drop_steps(
        c, pane,
        swing_extremes({pane.height, pane.opening_height, pane.formed_thickness, pane.radius,
                        pane.sweep, pane.radius}));
}

}  // namespace

std::string degrees(double angle) {
    return rounded_text(angle * 180 / std::numbers::pi, 1) + " degrees";
}

std::vector<std::string> loading_steps(const Case& c, const PaneSums<double>& pane,
                                       const std::vector<PassageInState>& states) {
    std::vector<std::string> steps = steps_of(c, pane);
    if (std::string flexing = flexing_step(c, pane, states); !flexing.empty()) {
        steps.insert(steps.begin() + 1, std::move(flexing));
    }
    return steps;
}

}  // namespace bowfront::fit
