#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>

#include "bowfront/fit/checks.hpp"
#include "numbers_in.hpp"
#include "support/sample_case.hpp"

namespace bowfront::fit {
namespace {

constexpr double kRounding = 1e-9;

Finding found(const Case& c, std::string_view id, std::string_view about) {
    const auto sums = solve(c);
    for (Finding& finding : checks(c, sums, layout(c, sums))) {
        if (finding.id == id && finding.about == about) {
            return finding;
        }
    }
    ADD_FAILURE() << "no check " << id;
    return {};
}

void set_thickness(Case& c, double thickness) {
    for (PaneSpec& pane : c.panes) {
        pane.thickness.value = thickness;
    }
    c.frame.groove.width.value = thickness + 1.8;
}

// By hand, back of the pilot boat: 478 x 380 mm clear, 3 mm, E 3200, 100 N. For a load in one point
// the handbook has αT 0.0139 at a/b 1.26; a palm of 80 mm takes a little off.
TEST(Push, bends_the_back_of_the_pilot_boat_as_estimated_by_hand) {
    const Case c = sample::pilot_boat();
    const auto sums = solve(c);
    const PaneSums<double>& back = *sums.pane(CaseSide::back);
    const double stiffness = 3200 * 27 / (12 * (1 - 0.37 * 0.37));
    const double small = 0.0139 * 100 * 380 * 380 / stiffness;
    // Large deflections: x + 0.272x³ = w₀/t.
    double x = 1;
    for (int i = 0; i < 50; ++i) {
        x -= (x + 0.272 * x * x * x - small / 3) / (1 + 3 * 0.272 * x * x);
    }
    constexpr double kPalm = 0.05;
    EXPECT_NEAR(back.push.deflection, 3 * x, kPalm * 3 * x);
    EXPECT_LT(back.push.deflection, 3 * x);
    // The end that the pane is not shoved against stands 9 mm in, the top 7.5 mm.
    const double w = back.push.deflection;
    EXPECT_NEAR(back.push.held, std::min(7.5 - 8 * w * w / (3 * 380), 9 - 8 * w * w / (3 * 478)),
                kRounding);
    EXPECT_EQ(back.push.force, 100);
}

// Twice 1190 kg/m³ of 3 mm over 478 x 380 mm. Roark's uniform load at a/b 1.26 and ν 0.3 has α
// 0.0666 and β 0.400; at ν 0.37 α falls by (1 − 0.37²)/(1 − 0.3²), β rises by 4 %.
TEST(Carried, bears_twice_its_own_weight) {
    const auto sums = solve(sample::pilot_boat());
    const PaneSums<double>& back = *sums.pane(CaseSide::back);
    const double pressure = 2 * 1190e-9 * 9.80665 * 3;
    EXPECT_NEAR(back.carried.force, pressure * 478 * 380, kRounding);
    constexpr double kReadOff = 0.01;  // two rows of a table, straight between them
    const double w = 0.0666 * 0.8631 / 0.91 * pressure * std::pow(380.0, 4) / (3200 * 27);
    EXPECT_NEAR(back.carried.deflection, w, kReadOff * w);
    const double stress = 0.400 * 1.04 * pressure * 380 * 380 / 9;
    EXPECT_NEAR(back.carried.stress, stress, kReadOff * stress);
}

TEST(Push, bends_a_thicker_pane_less_and_a_harder_one_more) {
    double deflection = 1e9;
    double stress = 1e9;
    for (const double thickness : {2.0, 3.0, 4.0, 6.0, 8.0, 12.0}) {
        Case c = sample::pilot_boat();
        set_thickness(c, thickness);
        const auto sums = solve(c);
        for (const auto& pane : sums.panes) {
            EXPECT_LE(pane.push.deflection, pane.push.deflection_worst);
            EXPECT_LE(pane.push.stress, pane.push.stress_worst);
            EXPECT_GE(pane.push.held, pane.push.held_worst);
        }
        const LoadSums<double>& push = sums.pane(CaseSide::back)->push;
        EXPECT_LT(push.deflection, deflection) << thickness;
        EXPECT_LT(push.stress, stress) << thickness;
        deflection = push.deflection;
        stress = push.stress;
    }
    Case c = sample::pilot_boat();
    const double gentle = solve(c).pane(CaseSide::back)->push.deflection;
    c.service.push.value = 200;
    EXPECT_GT(solve(c).pane(CaseSide::back)->push.deflection, gentle);
    c.service.push.value = 0;
    EXPECT_EQ(solve(c).pane(CaseSide::back)->push.deflection, 0);
    EXPECT_EQ(found(c, "push-stress", "back").status, Status::pass);
}

TEST(Push, does_the_same_to_the_mirrored_panes) {
    const auto sums = solve(sample::pilot_boat());
    const LoadSums<double>& left = sums.pane(CaseSide::left)->push;
    const LoadSums<double>& right = sums.pane(CaseSide::right)->push;
    EXPECT_NEAR(left.deflection, right.deflection, kRounding);
    EXPECT_NEAR(left.held_worst, right.held_worst, kRounding);
    EXPECT_NEAR(left.stress, right.stress, kRounding);
}

TEST(PushStress, warns_over_the_lasting_limit_and_ends_with_the_thickness_it_names) {
    Case c = sample::pilot_boat();
    const Finding warned = found(c, "push-stress", "back");
    EXPECT_EQ(warned.status, Status::warn);
    EXPECT_EQ(warned.code, Code::fit_load);
    EXPECT_GT(warned.worst, 10.3);
    EXPECT_LT(warned.worst, warned.limit);
    set_thickness(c, numbers_in(warned.advice)[0]);
    EXPECT_EQ(found(c, "push-stress", "back").status, Status::pass);
}

TEST(PushStress, fails_over_half_the_bending_strength) {
    Case c = sample::pilot_boat();
    c.service.push.value = 500;
    const Finding failed = found(c, "push-stress", "back");
    EXPECT_EQ(failed.status, Status::fail);
    // US facilities criteria 4-159-01 ask for 97 MPa.
    EXPECT_EQ(failed.limit, 97.0 / 2);
    set_thickness(c, numbers_in(failed.advice)[0]);
    EXPECT_EQ(found(c, "push-stress", "back").status, Status::warn);
}

TEST(PushEngagement, fails_where_a_thin_pane_is_pushed_out_of_its_grooves) {
    Case c = sample::straight_front();
    set_thickness(c, 1);
    c.frame.groove.post_depth.value = 5;
    c.fit.end_clearance.value = 1;
    c.frame.groove.top_depth.value = 6;
    c.fit.least_engagement->value = 0.5;
    c.service.push.value = 800;
    const Finding failed = found(c, "push-engagement", "back");
    EXPECT_EQ(failed.status, Status::fail);
    EXPECT_EQ(failed.code, Code::fit_load);
    EXPECT_EQ(found(sample::pilot_boat(), "push-engagement", "back").status, Status::pass);
    const double more = numbers_in(failed.advice)[0];
    c.frame.groove.post_depth.value += more;
    c.frame.groove.top_depth.value += more;
    EXPECT_NE(found(c, "push-engagement", "back").status, Status::fail);
}

}  // namespace
}  // namespace bowfront::fit
