#include "bowfront/report/measuring_card.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <string>

#include "bowfront/io/read_measured.hpp"
#include "support/sample_case.hpp"

namespace bowfront::report {
namespace {

using testing::HasSubstr;

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
    const Case c = sample::pilot_boat();
    const std::string card = measuring_card(c, fit::solve(c));
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
    EXPECT_THAT(measuring_card(c, fit::solve(c)), HasSubstr("between base and top: 380 mm"));
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
