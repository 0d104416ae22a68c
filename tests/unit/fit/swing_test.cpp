#include "bowfront/fit/swing.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "bowfront/fit/sums.hpp"
#include "support/sample_case.hpp"

namespace bowfront::fit {
namespace {

/// The best shift is found by thirds of a reach of some metres: (2/3)^64 of it. The tilt is closed
/// in on to 1e-8 rad, which moves depths by less than that times some metres.
constexpr double kShift = 1e-6;

struct Way {
    Case c;
    CaseSums<double> sums = solve(c);
};

// Each tilt of the simulation against e·sin φ + t·cos φ with e along the pane, and the top of all
// against the sums.
TEST(Swing, takes_what_the_closed_formulas_say_for_a_flat_pane) {
    const Way way{sample::lift_and_drop()};
    const PaneSums<double>& back = *way.sums.pane(CaseSide::back);
    const Swing swing{back.height, back.opening_height, back.formed_thickness, 0, 0, 0};
    for (const double tilt : {0.01, 0.05, 0.1, 0.2, 0.28}) {
        const SwingPosition at = swing_position(swing, tilt);
        const double depth = 398 * std::cos(tilt) + 3 * std::sin(tilt) - 380;
        EXPECT_NEAR(at.depth, depth, kShift);
        EXPECT_NEAR(at.width, depth * std::tan(tilt) + 3 * std::cos(tilt), kShift) << tilt;
    }
    const SwingExtremes extremes = swing_extremes(swing);
    EXPECT_NEAR(extremes.widest.width, back.loading.tilt_width, kShift);
    EXPECT_NEAR(extremes.deepest.depth, back.loading.tilt_rise, kShift);
}

// What the closed formula may count too much for a curved pane, at the tilt where it has its most:
// at that tilt the crown's section alone takes e·sin φ + t·cos φ, with an e that is at most
// t/2·(1 − cos θ/2)·tan φ shorter, since half a thickness stands less far back at the ends; the
// formula adds f·(1 − cos φ) for ends that stand lower than the crown.
double taken_twice(const PaneSums<double>& pane) {
    double widest = 0;
    double at = 0;
    for (double tilt = 0; tilt < 1.5; tilt += 1e-4) {
        const double deep = pane.rise + pane.formed_thickness;
        const double depth =
            pane.height * std::cos(tilt) + deep * std::sin(tilt) - pane.opening_height;
        const double width = depth * std::tan(tilt) + pane.formed_thickness * std::cos(tilt) +
                             pane.rise * (1 - std::cos(tilt));
        if (depth > 0 && width > widest) {
            widest = width;
            at = tilt;
        }
    }
    return pane.rise * (1 - std::cos(at)) + pane.formed_thickness / 2 *
                                                (1 - std::cos(pane.sweep / 2)) * std::sin(at) *
                                                std::tan(at) +
           kShift;
}

// A curved pane's closed formulas take crown and ends at their worst at once; followed section by
// section it takes no more, and nearly as much of the depth.
TEST(Swing, takes_no_more_than_the_closed_formulas_allow_a_curved_pane) {
    for (const double rise : {5.0, 20.0, 60.0, 90.0}) {
        Case c = sample::lift_and_drop();
        c.plan.front = FrontArc{ArcMeasure::rise, sample::given(rise, "/plan/front/rise")};
        const Way way{c};
        const PaneSums<double>& front = *way.sums.pane(CaseSide::front);
        const SwingExtremes extremes =
            swing_extremes({front.height, front.opening_height, front.formed_thickness,
                            front.radius, front.sweep, 0});
        EXPECT_LE(extremes.widest.width, front.loading.tilt_width + kShift) << rise;
        EXPECT_GE(extremes.widest.width, front.loading.tilt_width - taken_twice(front)) << rise;
        EXPECT_LE(extremes.deepest.depth, front.loading.tilt_rise + kShift) << rise;
        // Half a thickness stands less far back at the ends, where it is turned.
        EXPECT_NEAR(extremes.deepest.depth, front.loading.tilt_rise,
                    front.formed_thickness * std::sin(front.sweep / 4));
    }
}

// With e measured along the face that stands lower the sum is too small: such a groove would not
// let the pane pass.
TEST(Swing, needs_more_than_the_lower_face_s_depth_says) {
    const Way way{sample::lift_and_drop()};
    const PaneSums<double>& back = *way.sums.pane(CaseSide::back);
    const double t = back.formed_thickness;
    double lower = 0;
    for (double tilt = 0; tilt < 1; tilt += 1e-4) {
        const double depth = back.height - back.opening_height / std::cos(tilt);
        lower = std::max(lower, depth * std::sin(tilt) + t * std::cos(tilt));
    }
    const SwingExtremes extremes =
        swing_extremes({back.height, back.opening_height, t, 0, 0, 0});
    EXPECT_GT(extremes.widest.width, lower + 0.05);
    EXPECT_GE(back.loading.tilt_width, extremes.widest.width - kShift);
}

// In a groove of its own radius the pane takes least; another one costs what the sums say, twice
// the tangent squared of a quarter of the sweep, of the difference.
TEST(Swing, takes_more_of_a_groove_of_another_radius) {
    Case c = sample::lift_and_drop();
    const Way way{c};
    const PaneSums<double>& front = *way.sums.pane(CaseSide::front);
    const double off = 4;
    const double share = 2 * std::pow(std::tan(front.sweep / 4), 2);
    const auto upright = [&](double own, double groove) {
        return swing_position({front.height, front.opening_height, front.formed_thickness, own,
                               front.length / own, groove}, 0)
            .width;
    };
    const double same = upright(front.radius, front.radius);
    EXPECT_NEAR(same, front.formed_thickness, kShift);
    // Second order: off²/R, and the crown is one of 17 places.
    constexpr double kSecondOrder = 0.05;
    EXPECT_NEAR(upright(front.radius + off, front.radius), same + share * off, kSecondOrder);
    EXPECT_NEAR(upright(front.radius - off, front.radius), same + share * off, kSecondOrder);
}

}  // namespace
}  // namespace bowfront::fit
