#include <string>

#include "check_groups.hpp"

namespace bowfront::fit {

void check_radius(const Case& c, const PaneSums<double>& pane, CheckList& list) {
    if (!pane.heated) {
        return;
    }
    const std::string side(side_text(pane.side));
    const std::string figure = "panes/" + side + "/radius_error/";
    const RadiusSums<double>& error = pane.radius_error;
    const auto& limit = c.sheets.at(c.pane(pane.side)->sheet).like->long_term_stress;
    const std::string mended = "widen the grooves by " + at_least_text(-error.clearance_left_worst) +
                               ", or measure the springback and state its spread";
    const AsMade& made = c.pane(pane.side)->made;
    const bool measured = made.radius || !made.bends.empty();
    list.at_least({Code::fit_radius, "radius-contact", side,
                   measured ? "measured radius against the grooves', by its measuring and moving "
                              "timber"
                            : "free radius against the grooves', by springback and moving timber",
                   "mm", figure + "clearance_left/nominal"},
                  error.clearance_left, error.clearance_left_worst, 0,
                  [&](double) { return mended; });
    if (list.last().status == Status::fail) {
        list.last().status = Status::warn;  // contact is no failure: the stress that it makes may be
    }
    if (list.last().status != Status::pass) {
        list.last().note =
            std::string(pane.is_run()
                            ? "as it is, the pane's straights swing as its bends open or close, and "
                              "the cheeks hold it to the groove's bends, "
                            : "as it is, the pane presses on one cheek at mid-span and on the other "
                              "at its ends, ") +
            "flexed by at most " + mm(error.flexed_worst) + " of radius to a stress of " +
            rounded_text(error.stress_worst, 2) + " MPa" +
            (limit ? " (lasting limit " + rounded_text(limit->value, 1) + " MPa)"
                   : std::string(" (no lasting limit is known for this sheet)")) +
            (measured ? ""
                      : "; a springback that is measured, and stated with its spread, may leave more");
    }
    if (limit) {
        list.enter({Code::fit_radius, "radius-stress", side, "flexed to the grooves' radius", "MPa",
                    figure + "stress/worst"},
                   error.stress_worst, error.stress_worst, limit->value, Bound::at_most,
                   [&](double) { return mended; });
    }
}

}  // namespace bowfront::fit
