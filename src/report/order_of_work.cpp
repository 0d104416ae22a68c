#include "bowfront/report/measuring_card.hpp"

namespace bowfront::report {

std::vector<WorkStep> order_of_work(const Case& c, const CaseSums<double>& sums) {
    std::vector<WorkStep> steps;
    const bool beaded = c.frame.loading.value == Loading::beaded;
    if (!sums.heating.empty()) {
        steps.push_back({"Heat marked coupons of the very sheet, and measure them before and after.",
                         "State the shrink under \"sheets\" in the case file and make again, before "
                         "any blank is cut."});
        steps.push_back({"Build the form, and check its curve against the form's radius.", ""});
        for (const auto& heating : sums.heating) {
            steps.push_back({"Cut the " + std::string(side_text(heating.side)) +
                                 " blank, heat it, and let it cool on the form.",
                             "Measure blank, length, height, chord, rise and thickness of the pane, "
                             "and inspect. Only then cut grooves in posts, base and top."});
        }
    }
    steps.push_back({"Cut posts, base and top to their outlines, without grooves.",
                     "Measure the thickness of every sheet, and take the groove's width from it."});
    steps.push_back({beaded ? "Cut the rabbets in posts, base and top."
                            : "Cut the grooves in posts, base and top.",
                     "Measure depths and widths of the grooves in several places, and inspect."});
    steps.push_back({"Put base, posts and top together dry.",
                     "Measure every opening, length and height, and inspect. Only then cut the flat "
                     "panes, and glue."});
    steps.push_back({"Cut the flat panes.", "Measure each pane before the film comes off."});
    steps.push_back({beaded ? "Glue the frame, lay the panes in, and fix the beads."
                            : "Glue base and posts, put the panes in, and set the top on.",
                     ""});
    return steps;
}

}  // namespace bowfront::report
