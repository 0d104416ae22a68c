#include "bowfront/forming/arc.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <utility>

#include "bowfront/base/contract.hpp"

namespace bowfront::forming {
namespace {

using std::numbers::pi;

// A dozen operations on sizes under 10 m: a relative error under 30 ulp of double.
constexpr double kRelative = 30 * 2.2e-16;
// Half the last digit of figures given with six decimals.
constexpr double kSixDecimals = 0.5e-6;

ArcSizes<double> arc(ArcMeasure measure, double value, double chord) {
    Book<double> book;
    return arc_over_chord(measure, value, chord, "plan/front", book);
}

void expect_one_circle(const ArcSizes<double>& arc) {
    const double scale = kRelative * (arc.radius + arc.length);
    // Geometry of the circle, each identity on its own: s = Rθ, c = 2R·sin(θ/2), f = R(1 − cos θ/2),
    // and the sagitta's R = (c²/4 + f²)/(2f).
    EXPECT_NEAR(arc.length, arc.radius * arc.sweep, scale);
    EXPECT_NEAR(arc.chord, 2 * arc.radius * std::sin(arc.sweep / 2), scale);
    EXPECT_NEAR(arc.rise, arc.radius * (1 - std::cos(arc.sweep / 2)), scale);
    EXPECT_NEAR(arc.radius * 2 * arc.rise, arc.chord * arc.chord / 4 + arc.rise * arc.rise,
                scale * arc.radius);
}

// Source: worked a second way by tests/reference/pilot_boat_sums.py (halving an interval, and the
// arc's length also by adding chords).
TEST(Arc, of_the_pilot_boat_is_known_from_its_radius) {
    const auto front = arc(ArcMeasure::radius, 420, 520);
    EXPECT_NEAR(front.length, 560.724733, kSixDecimals);
    EXPECT_NEAR(front.rise, 90.151550, kSixDecimals);
    EXPECT_NEAR(front.sweep * 180 / pi, 76.493240, kSixDecimals);
    EXPECT_EQ(front.radius, 420);
    EXPECT_EQ(front.chord, 520);
}

// Source: geometry; a half turn over a chord of 600 and a quarter turn over 300·√2.
TEST(Arc, of_half_and_quarter_turns_is_exact) {
    const auto half = arc(ArcMeasure::radius, 300, 600);
    EXPECT_NEAR(half.sweep, pi, kRelative);
    EXPECT_NEAR(half.rise, 300, 300 * kRelative);
    const auto quarter = arc(ArcMeasure::sweep, pi / 2, 300 * std::numbers::sqrt2);
    EXPECT_NEAR(quarter.radius, 300, 300 * kRelative);
    EXPECT_NEAR(quarter.length, 471.238898, kSixDecimals);
    EXPECT_NEAR(quarter.rise, 87.867966, kSixDecimals);
}

// Source: 3-4-5 triangle: chord 240, rise 80 stand in a circle of R = (120² + 80²)/160 = 130.
TEST(Arc, from_chord_and_rise_is_the_sagitta_circle) {
    const auto front = arc(ArcMeasure::rise, 80, 240);
    EXPECT_DOUBLE_EQ(front.radius, 130);
    EXPECT_NEAR(std::sin(front.sweep / 2), 120.0 / 130, kRelative);
    EXPECT_NEAR(front.rise, 80, 130 * kRelative);
}

TEST(Arc, with_a_rise_over_its_radius_turns_more_than_half_round) {
    // The other arc over the same chord: rise 2·130 − 80 = 180.
    const auto front = arc(ArcMeasure::rise, 180, 240);
    EXPECT_DOUBLE_EQ(front.radius, 130);
    EXPECT_GT(front.sweep, pi);
    const auto minor = arc(ArcMeasure::rise, 80, 240);
    EXPECT_NEAR(front.sweep + minor.sweep, 2 * pi, 4 * kRelative);
    expect_one_circle(front);
}

TEST(Arc, is_the_same_from_whichever_measure) {
    for (const double chord : {80.0, 520.0, 2400.0}) {
        // From nearly flat to well past half a turn.
        for (const double sweep : {0.02, 0.4, 1.335, 3.0, 3.3, 5.5}) {
            const auto first = arc(ArcMeasure::sweep, sweep, chord);
            expect_one_circle(first);
            const auto by_rise = arc(ArcMeasure::rise, first.rise, chord);
            const auto by_length = arc(ArcMeasure::length, first.length, chord);
            expect_one_circle(by_rise);
            expect_one_circle(by_length);
            // A flat arc's sweep hangs on the small difference of length and chord, θ²/24 of it:
            // the rounding of the length comes back 12/θ² times as large.
            const double loss = 1 + 12 / (sweep * sweep);
            EXPECT_NEAR(by_rise.sweep, sweep, sweep * kRelative * loss);
            EXPECT_NEAR(by_length.sweep, sweep, sweep * kRelative * loss);
            if (sweep < pi) {
                const auto by_radius = arc(ArcMeasure::radius, first.radius, chord);
                // Near half a turn the chord hardly changes with the angle.
                EXPECT_NEAR(by_radius.sweep, sweep, sweep * kRelative * (loss + 20));
            }
        }
    }
}

TEST(SweepOfLengthRatio, solves_its_condition) {
    // θ/2 over its sine is the ratio; a half turn gives π/2.
    EXPECT_NEAR(sweep_of_length_ratio(pi / 2), pi, 4 * kRelative);
    for (const double ratio : {1 + 1e-9, 1.001, 1.1, 2.0, 10.0, 1000.0}) {
        const double half = sweep_of_length_ratio(ratio) / 2;
        ASSERT_GT(half, 0);
        ASSERT_LT(half, pi);
        EXPECT_NEAR(half / std::sin(half), ratio, ratio * ratio * kRelative) << ratio;
    }
}

TEST(Arc, holds_callers_to_the_ranges) {
    EXPECT_THROW((void)arc(ArcMeasure::radius, 259.9, 520), ContractError);
    EXPECT_THROW((void)arc(ArcMeasure::radius, 420, 0), ContractError);
    EXPECT_THROW((void)arc(ArcMeasure::rise, 0, 520), ContractError);
    EXPECT_THROW((void)arc(ArcMeasure::sweep, 2 * pi, 520), ContractError);
    EXPECT_THROW((void)arc(ArcMeasure::length, 520, 520), ContractError);
    EXPECT_THROW((void)sweep_of_length_ratio(1), ContractError);
}

// Every two measures of one arc tell the same arc: those of two-fold answers up to where they fold.
TEST(FreeArc, is_the_same_from_every_two_of_its_measures) {
    using enum ArcMeasure;
    for (const double sweep : {0.2, 1.0, 1.5707963267948966, 2.5, 3.1}) {
        constexpr double kRadius = 420;
        const double chord_of = 2 * kRadius * std::sin(sweep / 2);
        const double rise_of = kRadius * (1 - std::cos(sweep / 2));
        const std::array values{std::pair{radius, kRadius}, std::pair{rise, rise_of},
                                std::pair{ArcMeasure::sweep, sweep},
                                std::pair{length, kRadius * sweep}, std::pair{chord, chord_of}};
        for (const auto& [a, x] : values) {
            for (const auto& [b, y] : values) {
                EXPECT_EQ(forming::measures_agree(a, x, b, y), a != b);
                if (a == b) {
                    continue;
                }
                Book<double> book;
                const auto arc = forming::free_arc(a, x, b, y, "plan/side", book);
                // A sine loses half its digits where an arc is nearly half a turn.
                constexpr double kHalfOfTheDigits = 1e-6;
                EXPECT_NEAR(arc.radius, kRadius, kRadius * kHalfOfTheDigits);
                EXPECT_NEAR(arc.sweep, sweep, kHalfOfTheDigits);
                EXPECT_NEAR(arc.length, kRadius * sweep, kRadius * kHalfOfTheDigits);
                EXPECT_NEAR(arc.chord, chord_of, kRadius * kHalfOfTheDigits);
            }
        }
    }
}

TEST(FreeArc, is_none_of_measures_that_no_arc_has) {
    using enum ArcMeasure;
    using forming::measures_agree;
    EXPECT_FALSE(measures_agree(radius, 100, chord, 201));
    EXPECT_FALSE(measures_agree(radius, 100, length, 629));
    EXPECT_FALSE(measures_agree(rise, 200, radius, 100));
    EXPECT_FALSE(measures_agree(rise, 37, length, 100));
    EXPECT_FALSE(measures_agree(chord, 100, length, 100));
    EXPECT_TRUE(measures_agree(rise, 36, length, 100));
}

// No arc rises over its length more than the one of that sweep: looked for among many.
TEST(FreeArc, knows_the_most_that_an_arc_rises_over_its_length) {
    double most = 0;
    for (int i = 1; i < 62'000; ++i) {
        const double sweep = i * 1e-4;
        most = std::max(most, (1 - std::cos(sweep / 2)) / sweep);
    }
    EXPECT_NEAR(most, forming::kMostRise, 1e-9);
    EXPECT_NEAR((1 - std::cos(forming::kMostRiseSweep / 2)) / forming::kMostRiseSweep,
                forming::kMostRise, 1e-15);
}

}  // namespace
}  // namespace bowfront::forming
