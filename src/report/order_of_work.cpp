#include "access_report.hpp"
#include "bowfront/report/measuring_card.hpp"

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
                         "Measure blank, length, height, chord, rise and thickness of the pane, "
                         "and inspect. Only then cut grooves in posts, base and top.",
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
    for (const std::string& step : access_steps(c)) {
        steps.push_back({step, "", {}});
    }
    steps.push_back({"Put base, posts and top together dry.",
                     "Measure every opening, length and height, and inspect. Only then cut the flat "
                     "panes, and glue.",
                     fields.of_list("openings")});
    steps.push_back({"Cut the flat panes.", "Measure each pane before the film comes off.",
                     fields.of_unheated_panes()});
    steps.push_back({last_step(c), "", {}});
    return steps;
}

}  // namespace bowfront::report
