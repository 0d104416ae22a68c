#include "access_report.hpp"
#include "bowfront/report/measuring_card.hpp"

#include <algorithm>

namespace bowfront::report {
namespace {

// The fields of the card, dealt out to the steps that they are measured at.
class Fields {
  public:
    Fields(const Case& c, const CaseSums<double>& sums) : all_(card_fields(c, sums)), sums_(sums) {}

    [[nodiscard]] std::vector<CardField> of_heated(const CaseSide& side) const {
        return chosen([&](const CardField& field) {
            return field.list == "panes" && field.side == side;
        });
    }
    [[nodiscard]] std::vector<CardField> of_flat_sheets() const {
        return chosen([&](const CardField& field) {
            return field.list == "panes" && !heated(field) && field.key == "thickness";
        });
    }
    [[nodiscard]] std::vector<CardField> of_unheated_panes() const {
        return chosen([&](const CardField& field) {
            return field.list == "panes" && !heated(field) && field.key != "thickness";
        });
    }
    [[nodiscard]] std::vector<CardField> of_list(std::string_view list) const {
        return chosen([&](const CardField& field) { return field.list == list; });
    }

  private:
    [[nodiscard]] bool heated(const CardField& field) const {
        return sums_.pane(field.side)->heated;
    }
    template <class Wanted>
    [[nodiscard]] std::vector<CardField> chosen(Wanted wanted) const {
        std::vector<CardField> some;
        for (const CardField& field : all_) {
            if (wanted(field)) {
                some.push_back(field);
            }
        }
        return some;
    }

    std::vector<CardField> all_;
    const CaseSums<double>& sums_;
};

void add_bending(const CaseSums<double>& sums, const Fields& fields, std::vector<WorkStep>& steps) {
    if (sums.heating.empty()) {
        return;
    }
    steps.push_back({"Heat marked coupons of the very sheet, and measure them before and after.",
                     "State the shrink under \"sheets\" in the case file and make again, before "
                     "any blank is cut.",
                     {}});
    steps.push_back({"Build the form, and check its curve against the form's radius.", "", {}});
    for (const auto& heating : sums.heating) {
        steps.push_back({"Cut the " + std::string(side_text(heating.side)) +
                             " blank, heat it, and let it cool on the form.",
                         "Measure blank, length, height, " +
                             std::string(sums.pane(heating.side)->is_run()
                                             ? "the inside radius of each bend"
                                             : "chord, rise") +
                             " and thickness of the pane, and inspect. Only then cut grooves in "
                             "posts, base and top.",
                         fields.of_heated(heating.side)});
    }
}

std::string groove_step(const Case& c) {
    if (c.frame.loading.value == Loading::beaded) {
        return "Cut the rabbets in posts, base and top.";
    }
    return c.frame.post.hold.value == Hold::rabbet
               ? "Cut the rabbets in the posts, and the grooves in base and top."
               : "Cut the grooves in posts, base and top.";
}

bool any_on(const Case& c, ShelfSupport support) {
    return std::ranges::any_of(c.shelves,
                               [&](const ShelfSpec& shelf) { return *shelf.support == support; });
}

// Shelves go in from above, past the posts, and rest on what stands in the way of the ones below.
void add_shelves(const Case& c, std::vector<WorkStep>& steps) {
    if (c.shelves.empty()) {
        return;
    }
    const bool pins = any_on(c, ShelfSupport::pins);
    const bool rails = any_on(c, ShelfSupport::rails);
    const std::string rests = pins && rails ? "pins in or rails on" : pins ? "pins in" : "rails on";
    steps.push_back({"With panes and beads in and the top off, put in the shelves, the lowest "
                     "first: " + rests +
                         ", then lower the shelf on them from above, level, between the posts.",
                     "",
                     {}});
}

// The way in of each pane stands in the report, step by step.
std::string last_step(const Case& c) {
    const bool rabbets = c.frame.post.hold.value == Hold::rabbet;
    switch (c.frame.loading.value) {
        case Loading::beaded: return "Glue the frame, lay the panes in, and fix the beads.";
        case Loading::lift_and_drop:
            return "Glue the frame with its top, lift the panes in and drop them, and fix the "
                   "posts' beads.";
        case Loading::slide_in: break;
    }
    return std::string("Glue base and posts, put the panes in") +
           (rabbets ? ", fix the posts' beads, and set the top on." : ", and set the top on.");
}

// The same without the top, which closes the way of the shelves.
std::string panes_step(const Case& c) {
    const bool rabbets = c.frame.post.hold.value == Hold::rabbet;
    if (c.frame.loading.value == Loading::beaded) {
        return "Glue base and posts, lay the panes in, and fix the beads.";
    }
    return std::string("Glue base and posts, and put the panes in") +
           (rabbets ? "; fix the posts' beads." : ".");
}

}  // namespace

std::vector<WorkStep> order_of_work(const Case& c, const CaseSums<double>& sums) {
    const Fields fields(c, sums);
    std::vector<WorkStep> steps;
    add_bending(sums, fields, steps);
    steps.push_back({"Cut posts, base and top to their outlines, without grooves.",
                     "Measure the thickness of every sheet, and take the groove's width from it.",
                     fields.of_flat_sheets()});
    steps.push_back({groove_step(c),
                     "Measure depths and widths of the grooves in several places, and inspect.",
                     fields.of_list("grooves")});
    if (any_on(c, ShelfSupport::pins)) {
        steps.push_back({"Bore the posts for the shelves' pins, square to their length, where their "
                         "sections are scribed and their notes say.",
                         "",
                         {}});
    }
    for (const std::string& step : access_steps(c)) {
        steps.push_back({step, "", {}});
    }
    steps.push_back({"Put base, posts and top together dry.",
                     "Measure every opening, length and height, and inspect. Only then cut the flat "
                     "panes, and glue.",
                     fields.of_list("openings")});
    if (!c.shelves.empty()) {
        steps.push_back({"Cut the shelves, and the rails that they lie on.",
                         "Try each between the posts, dry and without the top: it must drop past them "
                         "without force.",
                         {}});
    }
    steps.push_back({"Cut the flat panes.", "Measure each pane before the film comes off.",
                     fields.of_unheated_panes()});
    if (c.shelves.empty()) {
        steps.push_back({last_step(c), "", {}});
    } else {
        steps.push_back({panes_step(c), "", {}});
        add_shelves(c, steps);
        steps.push_back({"Set the top on.", "", {}});
    }
    return steps;
}

}  // namespace bowfront::report
