#include "bowfront/fit/section_clearance.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "support/sample_case.hpp"

namespace bowfront::fit {
namespace {

struct Way {
    Case c;
    CaseSums<double> sums = solve(c);
    Layout frame = layout(c, sums);
};

// Two ways to one clearance: outlines of arcs and straights met in plan, and the sums' formula for
// what the curve takes of a straight groove. The outlines' pane lies on the groove's middle, so the
// curve takes all of its play from one cheek.
TEST(SectionClearance, meets_the_posts_as_the_closed_formula_says) {
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
TEST(SectionClearance, comes_nearer_to_the_base_s_cheeks_with_another_radius) {
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
TEST(SectionClearance, shifts_a_curved_pane_away_from_the_cheek_that_its_ends_would_meet) {
    Case c = sample::pilot_boat();
    c.frame.groove.width.value = 3.35;
    const Way way{c};
    const PaneSums<double>& front = *way.sums.pane(CaseSide::front);
    ASSERT_GT(front.edge(PaneEdge::start).face_clearance, 0);
    const SectionClearance clearance = section_clearance(front, way.frame, front.radius);
    constexpr double kByHand = 0.005;
    EXPECT_NEAR(clearance.posts, 0.034, kByHand);
    EXPECT_NEAR(clearance.base, 0.034, kByHand);
}

// A groove that is narrower by δ is met as a pane that is thicker by δ is.
TEST(SectionClearance, counts_a_thicker_pane_as_a_narrower_groove) {
    constexpr double kNarrower = 0.3;
    const Way way{sample::straight_front()};
    Case c = sample::straight_front();
    c.frame.groove.width.value -= kNarrower;
    const Way narrow{c};
    for (const PaneSums<double>& pane : way.sums.panes) {
        const PaneSection thick{pane.length, pane.formed_thickness + kNarrower, 0, 0, 0};
        const auto thicker = section_clearance(pane, thick, way.frame, pane.states[0]);
        const auto narrower = section_clearance(*narrow.sums.pane(pane.side), narrow.frame, 0);
        constexpr double kRounding = 1e-6;
        EXPECT_NEAR(thicker.posts, narrower.posts, kRounding) << side_text(pane.side);
        EXPECT_NEAR(thicker.base, narrower.base, kRounding) << side_text(pane.side);
    }
}

}  // namespace
}  // namespace bowfront::fit
