#include "bowfront/study/inspect.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>

#include "support/sample_case.hpp"

namespace bowfront::study {
namespace {

// Sums of a dozen lengths under a metre, each exact to 1e-13 of itself.
constexpr double kExact = 1e-9;

Measured measuring(double uncertainty) {
    Measured measured;
    measured.length_uncertainty.value = uncertainty;
    measured.thickness_uncertainty.value = uncertainty;
    return measured;
}

// Every size of every pane and its place, exactly as designed.
Measured nominal(const Case& c, const CaseSums<double>& sums) {
    Measured measured = measuring(0);
    const Groove& groove = c.frame.groove;
    for (const PaneSums<double>& pane : sums.panes) {
        MeasuredSide side;
        side.side = pane.side;
        side.pane.blank_length = pane.blank_length;
        side.pane.blank_width = pane.blank_width;
        side.pane.length = pane.length;
        side.pane.height = pane.height;
        side.pane.thickness = {pane.formed_thickness};
        side.opening = {pane.opening_length, pane.opening_height};
        side.grooves = {{groove.base_depth.value},
                        {groove.top_depth.value},
                        {groove.post_depth.value},
                        {groove.post_depth.value},
                        {groove.width.value}};
        if (pane.curved) {
            const double half = pane.sweep / 2;
            side.pane.chord = 2 * pane.inside_radius * std::sin(half);
            side.pane.rise = pane.inside_radius * (1 - std::cos(half));
        }
        measured.sides.push_back(side);
    }
    return measured;
}

MeasuredSide& side(Measured& measured, CaseSide which) {
    const auto found = std::find_if(measured.sides.begin(), measured.sides.end(),
                                    [which](const MeasuredSide& each) { return each.side == which; });
    return *found;
}

const Finding& finding(const std::vector<Finding>& all, std::string_view id,
                       std::string_view about) {
    const auto found = std::find_if(all.begin(), all.end(), [&](const Finding& each) {
        return each.id == id && each.about == about;
    });
    EXPECT_NE(found, all.end()) << id << ' ' << about;
    return *found;
}

std::vector<std::string> actions(const Inspection& inspection, std::string_view id,
                                 std::string_view about) {
    std::vector<std::string> words;
    for (const Rescue& rescue : inspection.rescues) {
        if (rescue.id == id && rescue.about == about) {
            words.push_back(rescue.action);
        }
    }
    return words;
}

void expect_same_nominal(const PaneSums<double>& made, const PaneSums<double>& designed) {
    for (const PaneEdge which : kPaneEdges) {
        SCOPED_TRACE(edge_text(which));
        EXPECT_NEAR(made.edge(which).engagement, designed.edge(which).engagement, kExact);
        EXPECT_NEAR(made.edge(which).settled, designed.edge(which).settled, kExact);
        EXPECT_NEAR(made.edge(which).clearance, designed.edge(which).clearance, kExact);
        EXPECT_NEAR(made.edge(which).face_clearance, designed.edge(which).face_clearance, kExact);
    }
    EXPECT_NEAR(made.room_vertical.nominal, designed.room_vertical.nominal, kExact);
    EXPECT_NEAR(made.room_sideways.nominal, designed.room_sideways.nominal, kExact);
    EXPECT_NEAR(made.loading.play, designed.loading.play, kExact);
    EXPECT_NEAR(made.loading.tilt_width, designed.loading.tilt_width, kExact);
    for (std::size_t i = 0; i < made.states.size(); ++i) {
        EXPECT_NEAR(made.states[i].opening_least, designed.states[i].opening_least, kExact);
        EXPECT_NEAR(made.states[i].opening_most, designed.states[i].opening_most, kExact);
    }
}

class Cases : public testing::TestWithParam<Case (*)()> {};

TEST_P(Cases, measured_to_be_just_as_designed_have_the_design_s_figures) {
    const Case c = GetParam()();
    const auto sums = fit::solve(c);
    const Inspection inspection = inspect(c, sums, nominal(c, sums));
    ASSERT_EQ(inspection.panes.size(), sums.panes.size());
    for (std::size_t i = 0; i < sums.panes.size(); ++i) {
        SCOPED_TRACE(side_text(sums.panes[i].side));
        expect_same_nominal(inspection.panes[i].sums, sums.panes[i]);
        if (inspection.panes[i].curve) {
            EXPECT_NEAR(inspection.panes[i].curve->radius, sums.panes[i].inside_radius, kExact);
            EXPECT_NEAR(inspection.panes[i].curve->gap, 0, kExact);
            EXPECT_NEAR(inspection.panes[i].curve->stress, 0, kExact);
        }
    }
}

TEST_P(Cases, without_a_measurement_have_the_design_s_worst_cases_too) {
    const Case c = GetParam()();
    const auto sums = fit::solve(c);
    const Inspection inspection = inspect(c, sums, measuring(0.2));
    for (std::size_t i = 0; i < sums.panes.size(); ++i) {
        const auto& made = inspection.panes[i].sums;
        expect_same_nominal(made, sums.panes[i]);
        for (const PaneEdge which : kPaneEdges) {
            EXPECT_NEAR(made.edge(which).engagement_least,
                        sums.panes[i].edge(which).engagement_least, kExact);
            EXPECT_NEAR(made.edge(which).face_clearance_least,
                        sums.panes[i].edge(which).face_clearance_least, kExact);
        }
        EXPECT_NEAR(made.room_sideways.worst, sums.panes[i].room_sideways.worst, kExact);
        EXPECT_NEAR(made.room_vertical.worst, sums.panes[i].room_vertical.worst, kExact);
    }
}

INSTANTIATE_TEST_SUITE_P(Inspect, Cases,
                         testing::Values(&sample::pilot_boat, &sample::straight_front,
                                         &sample::lift_and_drop, &sample::beaded));

TEST(Inspect, the_measuring_s_uncertainty_takes_the_place_of_the_tolerances) {
    const Case c = sample::straight_front();
    const auto sums = fit::solve(c);
    Measured measured = nominal(c, sums);
    measured.length_uncertainty.value = 0.25;
    const auto by_sums = inspect(c, sums, nominal(c, sums)).panes[0].sums;
    const auto made = inspect(c, sums, measured).panes[0].sums;
    // Upright: the pane, the opening and both grooves are off at once.
    EXPECT_NEAR(made.room_vertical.worst, by_sums.room_vertical.worst - 4 * 0.25, kExact);
    // Top: the pane, the opening and the base groove.
    EXPECT_NEAR(made.edge(PaneEdge::top).engagement_least,
                by_sums.edge(PaneEdge::top).engagement_least - 3 * 0.25, kExact);
}

TEST(Inspect, the_thickest_place_meets_the_narrowest) {
    const Case c = sample::straight_front();
    const auto sums = fit::solve(c);
    Measured measured = nominal(c, sums);
    side(measured, CaseSide::front).pane.thickness = {2.9, 3.3, 3.1};
    side(measured, CaseSide::front).grooves.width = {4.8, 4.6, 4.7};
    const auto made = inspect(c, sums, measured).panes[0].sums;
    EXPECT_NEAR(made.edge(PaneEdge::top).face_clearance, 4.6 - 3.3, kExact);
}

TEST(Inspect, measured_openings_take_the_place_of_the_design_s_in_every_state) {
    for (const Case& c : {sample::pilot_boat(), sample::straight_front()}) {
        const auto sums = fit::solve(c);
        Measured measured = nominal(c, sums);
        MeasuredOpening& opening = side(measured, CaseSide::front).opening;
        opening = {*opening.length + 2, *opening.height - 1};
        const auto& designed = *sums.pane(CaseSide::front);
        const auto made = inspect(c, sums, measured).panes[0].sums;
        EXPECT_NEAR(made.room_sideways.nominal, designed.room_sideways.nominal + 2, kExact);
        EXPECT_NEAR(made.room_vertical.nominal, designed.room_vertical.nominal - 1, kExact);
        for (std::size_t i = 0; i < made.states.size(); ++i) {
            // What is longer as built is longer in any air, but for the movement of those 2 mm.
            constexpr double kMovement = 2 * 0.05;  // timber here moves by less than 5 %
            EXPECT_NEAR(made.states[i].opening_most, designed.states[i].opening_most + 2,
                        kMovement);
        }
    }
}

TEST(Inspect, each_end_is_judged_by_both_posts) {
    const Case c = sample::straight_front();
    const auto sums = fit::solve(c);
    Measured measured = nominal(c, sums);
    side(measured, CaseSide::front).grooves.start = {14.2, 14};
    side(measured, CaseSide::front).grooves.end = {16, 16.5};
    const auto made = inspect(c, sums, measured).panes[0].sums;
    const double left = made.length - made.opening_length;
    EXPECT_NEAR(made.edge(PaneEdge::start).settled, left - 16, kExact);
    EXPECT_NEAR(made.edge(PaneEdge::end).settled, left - 14, kExact);
    EXPECT_NEAR(made.room_sideways.nominal, 14 + 16 - left, kExact);
}

TEST(Inspect, a_measured_blank_gives_the_pane_that_its_shrink_leaves) {
    const Case c = sample::pilot_boat();
    const auto sums = fit::solve(c);
    Measured measured = measuring(0);
    MeasuredSide front;
    front.pane.blank_length = 560;
    measured.sides = {front};
    const auto made = inspect(c, sums, measured).panes[0].sums;
    EXPECT_NEAR(made.length, 560 * (1 - 0.015), kExact);  // cast acrylic: 1.5 % ± 0.5 %
    EXPECT_NEAR(made.length_tolerance, 560 * 0.005, kExact);
}

TEST(Inspect, tells_the_shrink_that_a_pane_had) {
    const Case c = sample::pilot_boat();
    const auto sums = fit::solve(c);
    Measured measured = measuring(0.1);
    MeasuredSide front;
    front.pane.blank_length = 550;
    front.pane.length = 539;
    measured.sides = {front};
    const Inspection inspection = inspect(c, sums, measured);
    ASSERT_TRUE(inspection.panes[0].shrink_length);
    EXPECT_NEAR(*inspection.panes[0].shrink_length, 0.02, kExact);
    EXPECT_FALSE(inspection.panes[0].shrink_height);
}

TEST(Inspect, radius_is_by_chord_and_rise_of_the_inside_face) {
    const Case c = sample::pilot_boat();
    const auto sums = fit::solve(c);
    Measured measured = measuring(0);
    MeasuredSide front;
    front.pane.chord = 400;
    front.pane.rise = 50;
    measured.sides = {front};
    const auto curve = inspect(c, sums, measured).panes[0].curve;
    ASSERT_TRUE(curve);
    EXPECT_NEAR(curve->radius, (400.0 * 400 / 4 + 50 * 50) / (2 * 50), kExact);  // 425 mm
    const double wanted = 418.5 - std::sqrt(418.5 * 418.5 - 200 * 200);
    EXPECT_NEAR(curve->gap, wanted - 50, kExact);
}

TEST(Inspect, a_curve_that_is_not_the_grooves_warns_and_fails_by_stress_alone) {
    const Case c = sample::pilot_boat();
    const auto sums = fit::solve(c);
    Measured measured = nominal(c, sums);
    MeasuredPane& front = side(measured, CaseSide::front).pane;
    front.rise = *front.rise - 4;  // more than the face clearance, little enough to flex
    const Inspection flat = inspect(c, sums, measured);
    EXPECT_EQ(finding(flat.findings, "curve", "front").status, Status::warn);
    EXPECT_NE(finding(flat.findings, "curve-stress", "front").status, Status::fail);
    front.rise = 2;  // hardly bent at all: flexed by the whole of t/2R
    const Inspection unbent = inspect(c, sums, measured);
    const Finding& stress = finding(unbent.findings, "curve-stress", "front");
    EXPECT_EQ(stress.status, Status::fail);
    EXPECT_THAT(stress.advice, testing::HasSubstr("heat the front pane again"));
}

TEST(Inspect, a_curve_that_was_not_measured_keeps_the_design_s_spread) {
    const Case c = sample::pilot_boat();
    const auto sums = fit::solve(c);
    const auto of_radius = [](const Inspection& inspection) {
        return std::count_if(
            inspection.findings.begin(), inspection.findings.end(),
            [](const Finding& each) { return each.code == Code::fit_radius; });
    };
    EXPECT_GT(of_radius(inspect(c, sums, measuring(0.2))), 0);
    EXPECT_EQ(of_radius(inspect(c, sums, nominal(c, sums))), 0);
}

TEST(Inspect, judges_every_state_of_the_air) {
    const Case c = sample::pilot_boat();
    const auto sums = fit::solve(c);
    const Inspection inspection = inspect(c, sums, measuring(0.2));
    ASSERT_EQ(inspection.states.size(), kAirStates.size());
    // The worst over all states is that of one of them.
    const auto worst = finding(inspection.findings, "room", "front/sideways").worst;
    double least = 1e9;
    for (const StateFindings& state : inspection.states) {
        least = std::min(least, finding(state.findings, "room", "front/sideways").worst);
    }
    EXPECT_NEAR(worst, least, kExact);
    EXPECT_GT(finding(inspection.states[0].findings, "room", "front/sideways").worst, worst);
}

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

TEST(Inspect, objects_to_a_groove_through_its_board) {
    const Case c = sample::pilot_boat();
    const auto sums = fit::solve(c);
    Measured measured = nominal(c, sums);
    EXPECT_TRUE(objections(c, sums, measured).empty());
    side(measured, CaseSide::left).grooves.base = {6, 20.5};
    const auto found = objections(c, sums, measured);
    ASSERT_EQ(found.size(), 1U);
    EXPECT_EQ(found[0].pointer, "/frame/groove/depth/base");
}

}  // namespace
}  // namespace bowfront::study
