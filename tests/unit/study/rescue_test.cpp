#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "measured_cases.hpp"
#include "support/sample_case.hpp"

namespace bowfront::study {
namespace {

TEST(Rescue, a_pane_that_is_too_long_is_trimmed_or_its_posts_are_cut_deeper) {
    const Case c = sample::pilot_boat();
    const auto sums = fit::solve(c);
    Measured measured = nominal(c, sums);
    side(measured, CaseSide::back).pane.length = sums.pane(CaseSide::back)->length + 5.8;
    const Inspection inspection = inspect(c, sums, measured);
    EXPECT_EQ(finding(inspection.findings, "room", "back/sideways").status, Status::fail);
    const auto found = actions(inspection, "room", "back/sideways");
    ASSERT_FALSE(found.empty());
    EXPECT_THAT(found[0], testing::StartsWith("trim the back pane's length by "));
    for (const Rescue& rescue : inspection.rescues) {
        EXPECT_LT(rescue.after, rescue.before);
    }
    EXPECT_TRUE(inspection.beyond_rescue.empty());
}

TEST(Rescue, a_groove_is_not_deepened_through_its_floor) {
    Case c = sample::pilot_boat();
    c.frame.top.thickness.value = 18.1;  // 12 mm of groove leave 6.1 mm, and a third is 6.03 mm
    const auto sums = fit::solve(c);
    Measured measured = nominal(c, sums);
    side(measured, CaseSide::back).pane.height = sums.pane(CaseSide::back)->height + 4.4;
    const Inspection inspection = inspect(c, sums, measured);
    ASSERT_EQ(finding(inspection.findings, "room", "back/vertical").status, Status::fail);
    EXPECT_THAT(actions(inspection, "room", "back/vertical"),
                testing::ElementsAre(testing::StartsWith("trim the back pane's height by ")));
}

TEST(Rescue, a_pane_that_is_too_low_stands_on_a_strip_or_under_beads) {
    const Case c = sample::pilot_boat();
    const auto sums = fit::solve(c);
    Measured measured = nominal(c, sums);
    side(measured, CaseSide::back).pane.height = sums.pane(CaseSide::back)->height - 5.5;
    const Inspection inspection = inspect(c, sums, measured);
    ASSERT_EQ(finding(inspection.findings, "engagement", "back/top").status, Status::fail);
    EXPECT_THAT(actions(inspection, "engagement", "back/top"),
                testing::ElementsAre(testing::StartsWith("lay a strip "),
                                     testing::StartsWith("plant beads ")));
}

TEST(Rescue, where_nothing_else_helps_a_new_pane_is_proposed) {
    const Case c = sample::pilot_boat();
    const auto sums = fit::solve(c);
    Measured measured = nominal(c, sums);
    side(measured, CaseSide::back).pane.thickness = {8};  // no groove here can be so wide
    const Inspection inspection = inspect(c, sums, measured);
    EXPECT_THAT(inspection.beyond_rescue, testing::Contains("face-clearance back/top"));
    EXPECT_THAT(finding(inspection.findings, "face-clearance", "back/top").advice,
                testing::StartsWith("cut a new back pane, 502 mm x 393.5 mm"));
}

TEST(Rescue, a_groove_that_is_not_cut_yet_is_cut_otherwise_than_drawn) {
    const Case c = sample::pilot_boat();
    const auto sums = fit::solve(c);
    Measured measured = measuring(0.2);
    MeasuredSide back;
    back.side = CaseSide::back;
    back.pane.length = sums.pane(CaseSide::back)->length;
    back.pane.height = sums.pane(CaseSide::back)->height - 5;
    measured.sides = {back};
    const Inspection low = inspect(c, sums, measured);
    ASSERT_EQ(finding(low.findings, "engagement", "back/top").status, Status::fail);
    EXPECT_THAT(actions(low, "engagement", "back/top"),
                testing::Contains(testing::MatchesRegex(
                    "cut the base groove under the back pane .* mm deep instead of 6 mm")));
    measured.sides[0].pane.height = sums.pane(CaseSide::back)->height + 5;
    const Inspection tall = inspect(c, sums, measured);
    EXPECT_THAT(actions(tall, "room", "back/vertical"),
                testing::Contains(testing::MatchesRegex(
                    "cut the top groove over the back pane .* mm deep instead of 12 mm")));
}

TEST(Rescue, a_pane_that_is_not_cut_yet_is_cut_to_the_opening) {
    const Case c = sample::pilot_boat();
    const auto sums = fit::solve(c);
    Measured measured = measuring(0.2);
    MeasuredSide back;
    back.side = CaseSide::back;
    const PaneSums<double>& designed = *sums.pane(CaseSide::back);
    back.opening = {designed.opening_length + 14, designed.opening_height + 8};
    measured.sides = {back};
    const Inspection inspection = inspect(c, sums, measured);
    const auto found = std::find_if(
        inspection.panes.begin(), inspection.panes.end(),
        [](const InspectedPane& pane) { return pane.sums.side == CaseSide::back; });
    EXPECT_EQ(found->stage, PaneStage::not_cut);
    ASSERT_TRUE(found->to_cut);
    EXPECT_NEAR(found->to_cut->length, designed.length + 14, kExact);
    EXPECT_NEAR(found->to_cut->height, designed.height + 8, kExact);
    ASSERT_EQ(finding(inspection.findings, "engagement", "back/end").status, Status::fail);
    EXPECT_THAT(actions(inspection, "engagement", "back/end"),
                testing::ElementsAre("cut the back pane, 516 mm x 401.5 mm, instead of 502 mm x "
                                     "393.5 mm"));
    EXPECT_TRUE(inspection.beyond_rescue.empty());
}

TEST(Rescue, a_blank_that_is_not_heated_yet_is_trimmed_by_what_it_will_shrink_from) {
    const Case c = sample::pilot_boat();
    const auto sums = fit::solve(c);
    Measured measured = measuring(0.2);
    MeasuredSide front;
    front.pane.blank_length = sums.pane(CaseSide::front)->blank_length + 8;
    front.pane.blank_width = sums.pane(CaseSide::front)->blank_width;
    measured.sides = {front};
    const Inspection inspection = inspect(c, sums, measured);
    EXPECT_EQ(inspection.panes[0].stage, PaneStage::blank_cut);
    EXPECT_EQ(finding(inspection.findings, "room", "front/sideways").status, Status::fail);
    EXPECT_THAT(actions(inspection, "room", "front/sideways"),
                testing::Contains(testing::MatchesRegex(
                    "trim the blank of the front pane in length by .* mm before it is heated")));
}

}  // namespace
}  // namespace bowfront::study
