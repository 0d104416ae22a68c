#include "bowfront/fit/loading_path.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <string>

#include "bowfront/fit/section_clearance.hpp"
#include "bowfront/fit/swing.hpp"
#include "support/sample_case.hpp"

namespace bowfront::fit {
namespace {

using testing::HasSubstr;

/// The best shift is found by thirds of a reach of some metres: (2/3)^64 of it.
constexpr double kShift = 1e-6;

struct Way {
    Case c;
    CaseSums<double> sums = solve(c);
    Layout frame = layout(c, sums);

    [[nodiscard]] LoadingPath of(CaseSide side) const {
        return loading_path(c, *sums.pane(side), frame);
    }
};

TEST(SlideIn, follows_the_pane_down_its_posts_with_the_top_off) {
    const Way way{sample::pilot_boat()};
    const LoadingPath front = way.of(CaseSide::front);
    EXPECT_TRUE(front.possible);
    EXPECT_EQ(front.still_off, "the top");
    ASSERT_EQ(front.steps.size(), 4U);
    EXPECT_THAT(front.steps[1], HasSubstr("the bow outwards"));
    EXPECT_THAT(front.steps[2], HasSubstr("Slide it down 380 mm"));
    EXPECT_THAT(front.steps[2], HasSubstr("6 mm into the base's groove"));
    EXPECT_THAT(front.steps[3], HasSubstr("7.5 mm"));
}

// Two ways to one clearance: outlines of arcs and straights met in plan, and the sums' formula for
// what the curve takes of a straight groove. The outlines' pane lies on the groove's middle, so the
// curve takes all of its play from one cheek.
TEST(SlideIn, meets_the_posts_as_the_closed_formula_says) {
    const Way way{sample::pilot_boat()};
    const PaneSums<double>& front = *way.sums.pane(CaseSide::front);
    const EdgeSums<double>& start = front.edge(PaneEdge::start);
    const double curve = start.face_clearance - (4.8 - front.formed_thickness);
    const SectionClearance clearance = section_clearance(front, way.frame, front.radius);
    constexpr double kRounding = 1e-6;
    // The formula counts half of the thickness as it turns, a few hundredths of a millimetre.
    constexpr double kTurned = 0.01;
    EXPECT_NEAR(clearance.posts, (4.8 - front.formed_thickness) / 2 + curve, kTurned);
    EXPECT_NEAR(clearance.base, (4.8 - front.formed_thickness) / 2, kRounding);
    // Flat panes: half of the play at each face.
    const SectionClearance back =
        section_clearance(*way.sums.pane(CaseSide::back), way.frame, 0);
    EXPECT_NEAR(back.posts, 0.9, kRounding);
    EXPECT_NEAR(back.base, 0.9, kRounding);
}

// Crown and ends come nearer to the cheeks by half of what the sums say the radii use up.
TEST(SlideIn, comes_nearer_to_the_base_s_cheeks_with_another_radius) {
    const Way way{sample::pilot_boat()};
    const PaneSums<double>& front = *way.sums.pane(CaseSide::front);
    const double half = std::cos(front.sweep / 2);
    for (const double off : {-2.0, 2.0}) {
        const double used = 2 * std::abs(off) * (1 - half) / (1 + half);
        const double left = section_clearance(front, way.frame, front.radius + off).base;
        // Second order: off²/R.
        constexpr double kSecondOrder = 0.02;
        EXPECT_NEAR(left, (4.8 - front.formed_thickness - used) / 2, kSecondOrder) << off;
    }
    EXPECT_LT(section_clearance(front, way.frame, front.radius + 30).base, 0);
}

// A groove of 3.35 mm leaves 0.129 mm at each face of the front; its curve takes 0.17 mm of one
// cheek in the posts. Shifted inwards by s, the crown comes s nearer to the base's cheek and the
// ends, turned by 37 degrees, 0.8·s away from the posts': both have 0.03 mm at s = 0.1 mm.
TEST(SlideIn, shifts_a_curved_pane_away_from_the_cheek_that_its_ends_would_meet) {
    Case c = sample::pilot_boat();
    c.frame.groove.width.value = 3.35;
    const Way way{c};
    const PaneSums<double>& front = *way.sums.pane(CaseSide::front);
    ASSERT_GT(front.edge(PaneEdge::start).face_clearance, 0);
    const SectionClearance clearance = section_clearance(front, way.frame, front.radius);
    constexpr double kStep = 0.129 / 8;  // of the shifts that are tried
    EXPECT_NEAR(clearance.posts, 0.034, kStep);
    EXPECT_NEAR(clearance.base, 0.034, kStep);
    EXPECT_TRUE(way.of(CaseSide::front).possible);
}

TEST(SlideIn, is_impossible_where_the_pane_meets_timber) {
    Case thick = sample::pilot_boat();
    thick.frame.groove.width.value = 3;
    const LoadingPath front = Way{thick}.of(CaseSide::front);
    EXPECT_FALSE(front.possible);
    EXPECT_LT(front.clearance, 0);
    EXPECT_THAT(front.tightest, HasSubstr("posts"));
    Case wide = sample::pilot_boat();
    wide.panes[3].length = sample::given(509.0, "/panes/3/size/length");
    EXPECT_FALSE(Way{wide}.of(CaseSide::back).possible);
    // A round end with a cutter of 1 mm stops the corners of a pane that the posts would take.
    Case round = sample::pilot_boat();
    round.cutter.diameter.value = 1;
    round.fit.end_clearance.value = 0;
    const LoadingPath stopped = Way{round}.of(CaseSide::back);
    EXPECT_FALSE(stopped.possible);
    EXPECT_THAT(stopped.tightest, HasSubstr("round ends"));
}

// Each tilt of the simulation against e·sin φ + t·cos φ with e along the pane, and the top of all
// against the sums.
TEST(LiftAndDrop, simulated_takes_what_the_closed_formulas_say_for_a_flat_pane) {
    const Way way{sample::lift_and_drop()};
    const PaneSums<double>& back = *way.sums.pane(CaseSide::back);
    const Swing swing{back.height, back.opening_height, back.formed_thickness, 0, 0};
    for (const double tilt : {0.01, 0.05, 0.1, 0.2, 0.28}) {
        const SwingPosition at = swing_position(swing, tilt);
        const double depth = 398 * std::cos(tilt) + 3 * std::sin(tilt) - 380;
        EXPECT_NEAR(at.depth, depth, kShift);
        EXPECT_NEAR(at.width, depth * std::tan(tilt) + 3 * std::cos(tilt), kShift) << tilt;
    }
    // 2048 tilts up to 1.5 rad: short by at most (1.5/4096)²/2·1200 mm of the top.
    constexpr double kSampling = 1e-4;
    const SwingExtremes extremes = swing_extremes(swing);
    EXPECT_NEAR(extremes.widest.width, back.loading.tilt_width, kSampling);
    EXPECT_NEAR(extremes.deepest.depth, back.loading.tilt_rise, kSampling);
}

// A curved pane's closed formulas take crown and ends at their worst at once; followed section by
// section it takes no more, and nearly as much of the depth.
TEST(LiftAndDrop, simulated_takes_no_more_than_the_closed_formulas_allow_a_curved_pane) {
    for (const double rise : {5.0, 20.0, 60.0, 90.0}) {
        Case c = sample::lift_and_drop();
        c.plan.front = FrontArc{ArcMeasure::rise, sample::given(rise, "/plan/front/rise")};
        const Way way{c};
        const PaneSums<double>& front = *way.sums.pane(CaseSide::front);
        const SwingExtremes extremes =
            swing_extremes({front.height, front.opening_height, front.formed_thickness,
                            front.radius, front.sweep});
        EXPECT_LE(extremes.widest.width, front.loading.tilt_width + kShift) << rise;
        EXPECT_LE(extremes.deepest.depth, front.loading.tilt_rise + kShift) << rise;
        // Half a thickness stands less far back at the ends, where it is turned.
        EXPECT_NEAR(extremes.deepest.depth, front.loading.tilt_rise,
                    front.formed_thickness * std::sin(front.sweep / 4));
    }
}

TEST(LiftAndDrop, names_the_tightest_place_and_what_is_missing_there) {
    Case c = sample::lift_and_drop();
    const LoadingPath fits = Way{c}.of(CaseSide::back);
    EXPECT_TRUE(fits.possible);
    EXPECT_EQ(fits.still_off, "the posts' beads");
    ASSERT_EQ(fits.steps.size(), 5U);
    EXPECT_THAT(fits.steps[3], HasSubstr("18 mm into the top's groove; let it down 6 mm"));
    c.frame.groove.width.value = 4;
    const LoadingPath narrow = Way{c}.of(CaseSide::back);
    EXPECT_FALSE(narrow.possible);
    EXPECT_THAT(narrow.tightest, HasSubstr("cheeks"));
    const PaneSums<double> back = *Way{c}.sums.pane(CaseSide::back);
    constexpr double kSampling = 1e-4;
    EXPECT_NEAR(narrow.clearance, 4 - back.loading.tilt_width, kSampling);
    c.frame.post.hold.value = Hold::groove;
    EXPECT_FALSE(Way{c}.of(CaseSide::back).possible);
    EXPECT_TRUE(Way{c}.of(CaseSide::back).steps.empty());
}

TEST(Beaded, is_laid_in_from_the_open_side_of_its_rabbets) {
    const Way way{sample::beaded()};
    for (const PaneSums<double>& pane : way.sums.panes) {
        const LoadingPath path = way.of(pane.side);
        EXPECT_TRUE(path.possible) << path.tightest << ' ' << path.clearance;
        EXPECT_EQ(path.still_off, "the top and all beads");
        EXPECT_EQ(path.steps.size(), 4U);
    }
    Case c = sample::beaded();
    c.frame.post.hold.value = Hold::groove;
    EXPECT_FALSE(Way{c}.of(CaseSide::back).possible);
}

TEST(LoadingPath, is_the_same_for_mirrored_panes) {
    for (const Case& c : {sample::pilot_boat(), sample::lift_and_drop(), sample::beaded()}) {
        const Way way{c};
        const LoadingPath left = way.of(CaseSide::left);
        const LoadingPath right = way.of(CaseSide::right);
        EXPECT_EQ(left.steps, right.steps);
        EXPECT_EQ(left.tightest, right.tightest);
        EXPECT_NEAR(left.clearance, right.clearance, kShift);
    }
}

}  // namespace
}  // namespace bowfront::fit
