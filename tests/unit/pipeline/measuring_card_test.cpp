#include "bowfront/report/measuring_card.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>

#include "bowfront/io/read_measured.hpp"
#include "support/run_case.hpp"
#include "support/sample_case.hpp"

namespace bowfront::report {
namespace {

using testing::HasSubstr;

// Half a dozen operations on lengths under 1 m.
constexpr double kRounding = 1e-9;

std::string with_all_measured(std::string card, const std::string& value) {
    const std::string blank = ": null";
    for (std::size_t at = card.find(blank); at != std::string::npos; at = card.find(blank, at)) {
        card.replace(at, blank.size(), ": " + value);
    }
    return card;
}

TEST(MeasuringCard, is_a_file_of_measurements_in_which_nothing_is_measured) {
    for (Case c : {sample::pilot_boat(), sample::straight_front(), sample::lift_and_drop(),
                   sample::beaded()}) {
        for (const LengthUnit unit : {LengthUnit::millimetre, LengthUnit::inch}) {
            c.units = unit;
            const auto read = io::read_measured(measuring_card(c, fit::solve(c)), "card", c).value;
            ASSERT_EQ(read.sides.size(), c.panes.size());
            for (const MeasuredSide& side : read.sides) {
                EXPECT_FALSE(side.pane.length || side.pane.height || side.opening.length);
                EXPECT_TRUE(side.pane.thickness.empty() && side.grooves.base.empty());
            }
        }
    }
}

TEST(MeasuringCard, has_every_field_that_a_file_of_measurements_has) {
    const Case arc = sample::pilot_boat();
    const Case bends = sample::case_with_front(
        {sample::straight_piece(300), sample::arc_piece(80, 1.5), sample::straight_piece(200)});
    // One arc is told by chord and rise, several bends by a radius each.
    const std::string card =
        measuring_card(arc, fit::solve(arc)) + measuring_card(bends, fit::solve(bends));
    for (const io::ObjectKeys& row : io::measured_keys()) {
        for (const std::string_view key : row.keys) {
            if (key != "$schema") {
                EXPECT_THAT(card, HasSubstr('"' + std::string(key) + "\":"));
            }
        }
    }
}

TEST(MeasuringCard, names_the_design_s_sizes_in_the_case_s_unit) {
    Case c = sample::straight_front();
    EXPECT_THAT(measuring_card(c, fit::solve(c)), HasSubstr("between base and top: 380 mm, 379.5 to 380.5 mm"));
    c.units = LengthUnit::inch;
    EXPECT_THAT(measuring_card(c, fit::solve(c)), HasSubstr("between base and top: 14.9606 in"));
}

TEST(MeasuringCard, is_read_back_once_it_is_filled_in) {
    const Case c = sample::pilot_boat();
    std::string card = measuring_card(c, fit::solve(c));
    for (const char* key : {"thickness", "base", "top", "start", "end"}) {
        const std::string blank = '"' + std::string(key) + "\": null";
        for (std::size_t at = card.find(blank); at != std::string::npos;
             at = card.find(blank, at)) {
            card.replace(at, blank.size(), '"' + std::string(key) + "\": [3, 3.1]");
        }
    }
    // "width" is a list among the grooves alone.
    const std::size_t grooves = card.find("\"grooves\"");
    ASSERT_NE(grooves, std::string::npos);
    const std::string filled = with_all_measured(card.substr(0, grooves), "100") +
                               with_all_measured(card.substr(grooves), "[4.8]");
    const auto read = io::read_measured(filled, "card", c).value;
    ASSERT_EQ(read.sides.size(), 4U);
    EXPECT_EQ(read.sides[0].pane.blank_width, 100);
    EXPECT_EQ(read.sides[0].grooves.end.size(), 2U);
    EXPECT_EQ(read.sides[3].grooves.width.size(), 1U);
}

std::size_t count_of(const std::string& text, const std::string& words) {
    std::size_t count = 0;
    for (std::size_t at = text.find(words); at != std::string::npos; at = text.find(words, at + 1)) {
        ++count;
    }
    return count;
}

TEST(MeasuringCard, windows_are_the_tolerances_that_the_sums_take) {
    const Case c = sample::pilot_boat();
    const auto sums = fit::solve(c);
    for (const CardField& field : card_fields(c, sums)) {
        SCOPED_TRACE(std::string(side_text(field.side)) + ' ' + std::string(field.key));
        ASSERT_TRUE(field.low && field.high);
        EXPECT_LT(*field.low, field.drawn);
        EXPECT_GT(*field.high, field.drawn);
        if (field.list == "grooves" && field.key == "top") {
            EXPECT_EQ(window_text(field, LengthUnit::millimetre), "11.8 to 12.2 mm");
        }
        if (field.list == "panes" && field.object == "blank") {
            // ISO 2768-1, class m: ± 0.8 mm from 400 to 1000 mm, ± 0.5 mm under that.
            EXPECT_NEAR(*field.high - field.drawn, field.key == "length" ? 0.8 : 0.5, kRounding);
        }
    }
}

TEST(MeasuringCard, windows_in_inches_keep_their_fractions) {
    CardField field;
    field.low = 17.25 * 25.4;
    field.high = 17.5 * 25.4;
    EXPECT_EQ(window_text(field, LengthUnit::inch), "17 1/4 to 17 1/2 in");
    field.low.reset();
    EXPECT_EQ(window_text(field, LengthUnit::inch), "17 1/2 in or less");
}

// The pane that is bent the most is the shortest from end to end, and rises the most.
TEST(MeasuringCard, windows_of_chord_and_rise_hold_the_springback) {
    Case c = sample::pilot_boat();
    c.sheets.at("cast-acrylic").spread_along.value = 0;
    c.sheets.at("cast-acrylic").spread_across.value = 0;
    c.tolerance.cut.value = {std::nullopt, 0};
    const auto sums = fit::solve(c);
    const PaneSums<double>& pane = *sums.pane(CaseSide::front);
    const double tight = 0.99 * pane.inside_radius;  // ± 1 % of springback
    const double half = pane.length / (tight + 1.5) / 2;
    for (const CardField& field : card_fields(c, sums)) {
        if (field.key == "chord") {
            EXPECT_NEAR(*field.low, 2 * tight * std::sin(half), kRounding);
        } else if (field.key == "rise") {
            EXPECT_NEAR(*field.high, tight * (1 - std::cos(half)), kRounding);
        }
    }
}

TEST(MeasuringCard, a_blank_that_is_trimmed_after_forming_need_only_be_large_enough) {
    Case c = sample::pilot_boat();
    c.panes[0].blank.method.value = BlankMethod::trim_after;
    const auto sums = fit::solve(c);
    const CardField field = card_fields(c, sums).front();
    EXPECT_EQ(field.object, "blank");
    EXPECT_FALSE(field.high);
    // Cast acrylic shrinks by 1.5 % ± 0.5 %.
    EXPECT_NEAR(*field.low * (1 - 0.02), sums.pane(CaseSide::front)->length, kRounding);
    EXPECT_THAT(window_text(field, LengthUnit::millimetre), testing::EndsWith(" mm or more"));
}

TEST(MeasuringPage, has_a_place_for_every_size_of_the_card_with_the_same_words) {
    for (const Case& c : {sample::pilot_boat(), sample::straight_front(), sample::beaded()}) {
        const auto sums = fit::solve(c);
        const std::string card = measuring_card(c, sums);
        const std::string page = measuring_page(c, sums);
        EXPECT_EQ(count_of(page, "<tr><td>"), count_of(card, ": null"));
        for (const CardField& field : card_fields(c, sums)) {
            const std::string words = field.what + "</td><td class=\"size\">" +
                                      card_length(field.drawn, c.units) +
                                      "</td><td class=\"size\">" + window_text(field, c.units);
            EXPECT_THAT(page, HasSubstr(words));
            EXPECT_THAT(card, HasSubstr(card_length(field.drawn, c.units) + ", " +
                                        window_text(field, c.units)));
        }
        for (const WorkStep& step : order_of_work(c, sums)) {
            EXPECT_THAT(page, HasSubstr(step.step));
        }
    }
}

TEST(MeasuringPage, shows_a_name_as_it_is) {
    Case c = sample::pilot_boat();
    c.name = "<b>\"A&B\"";
    const std::string page = measuring_page(c, fit::solve(c));
    EXPECT_THAT(page, HasSubstr("<h1>Measuring card: &lt;b&gt;&quot;A&amp;B&quot;</h1>"));
}

TEST(OrderOfWork, deals_out_every_field_of_the_card_once) {
    for (const Case& c : {sample::pilot_boat(), sample::straight_front(), sample::lift_and_drop()}) {
        const auto sums = fit::solve(c);
        std::size_t dealt = 0;
        for (const WorkStep& step : order_of_work(c, sums)) {
            dealt += step.fields.size();
            EXPECT_TRUE(step.fields.empty() || !step.hold.empty()) << step.step;
        }
        EXPECT_EQ(dealt, card_fields(c, sums).size());
    }
}

TEST(OrderOfWork, forms_and_measures_before_grooves_are_cut) {
    const Case c = sample::pilot_boat();
    const auto steps = order_of_work(c, fit::solve(c));
    const auto find = [&](const char* words) {
        return std::find_if(steps.begin(), steps.end(), [words](const WorkStep& step) {
            return step.step.find(words) != std::string::npos;
        });
    };
    const auto formed = find("Cut the front blank");
    const auto grooves = find("Cut the grooves");
    ASSERT_NE(formed, steps.end());
    ASSERT_NE(grooves, steps.end());
    EXPECT_LT(formed, grooves);
    EXPECT_THAT(formed->hold, HasSubstr("Only then cut grooves"));
}

TEST(OrderOfWork, of_a_case_of_flat_panes_heats_nothing) {
    const Case c = sample::straight_front();
    for (const WorkStep& step : order_of_work(c, fit::solve(c))) {
        EXPECT_THAT(step.step, testing::Not(HasSubstr("eat")));
    }
}

}  // namespace
}  // namespace bowfront::report
