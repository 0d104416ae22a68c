#include "bowfront/forming/pane.hpp"

#include <gtest/gtest.h>

#include <numbers>

namespace bowfront::forming {
namespace {

using std::numbers::pi;

// Half the last digit of figures published with two decimals, mm or per cent.
constexpr double kTwoDecimals = 0.5e-2;
// Three operations on sizes up to 1 m, mm.
constexpr double kRounding = 1e-12;

// Source: blank size on free heating, L₀ = L/(1 − s): free shrink of cast sheet up to 2 %, of
// extruded sheet 3 % along and a growth of 0.5 % across, by a sheet maker's thermoforming brief.
TEST(Blank, of_a_metre_is_longer_by_the_shrink) {
    EXPECT_NEAR(blank_for(1000.0, 0.02), 1020.41, kTwoDecimals);
    EXPECT_NEAR(blank_for(1000.0, 0.03), 1030.93, kTwoDecimals);
    EXPECT_NEAR(blank_for(1000.0, -0.005), 995.02, kTwoDecimals);
    EXPECT_EQ(blank_for(1000.0, 0.0), 1000);
}

// Source: constant volume, t₁/t₀ = 1/((1 − sx)(1 − sy)), for the same sheets.
TEST(Thickness, grows_so_that_volume_stays) {
    EXPECT_NEAR(100 * (thickened(1.0, 0.02, 0.02) - 1), 4.12, kTwoDecimals);
    EXPECT_NEAR(100 * (thickened(1.0, 0.03, -0.005) - 1), 2.58, kTwoDecimals);
    const double length = 542.7;
    const double width = 393.5;
    const double blank = blank_for(length, 0.03) * blank_for(width, -0.005) * 3;
    EXPECT_NEAR(blank, length * width * thickened(3.0, 0.03, -0.005), blank * 1e-15);
}

// Source: geometry for the arc; the shrink of 1.5 % is common practice, no source.
TEST(Blank, cut_to_a_front_s_inside_arc_comes_out_short_by_the_shrink) {
    const double inside_arc = 300 * pi / 2;
    EXPECT_NEAR(inside_arc, 471.24, kTwoDecimals);
    EXPECT_NEAR(inside_arc - formed_from(inside_arc, 0.015), 7.07, kTwoDecimals);
}

TEST(Blank, and_formed_size_undo_each_other) {
    for (const double shrink : {-0.05, 0.0, 0.015, 0.06, 0.2}) {
        for (const double size : {12.0, 300.0, 2440.0}) {
            EXPECT_NEAR(formed_from(blank_for(size, shrink), shrink), size, size * kRounding);
        }
    }
}

// Source: bending of a thin strip, ε = t/2·abs(1/R₁ − 1/R₂): R 300 -> 250 mm at 3 mm is 0.100 %,
// and 330 times the thickness (a sheet maker's least cold-bend radius) from flat is 0.1515 %.
TEST(FlexingStrain, is_half_the_thickness_times_the_change_of_curvature) {
    constexpr double kFourDecimals = 0.5e-4;  // of per cent
    EXPECT_NEAR(100 * flexing_strain(3.0, 1 / 300.0, 1 / 250.0), 0.1, kFourDecimals);
    EXPECT_NEAR(100 * flexing_strain(3.0, 0.0, 1 / 990.0), 0.1515, kFourDecimals);
    EXPECT_EQ(flexing_strain(3.0, 1 / 250.0, 1 / 300.0), flexing_strain(3.0, 1 / 300.0, 1 / 250.0));
    EXPECT_EQ(flexing_strain(3.0, 1 / 300.0, 1 / 300.0), 0);
}

TEST(CutOfBlank, undoes_the_limits_added) {
    // ISO 2768-1, class m, over 400 mm: 0.8 mm; 1.5 ± 0.5 % of shrink.
    const double blank = 550.9717906368;
    const double formed = 0.8 * (1 - 0.015) + blank * 0.005;
    EXPECT_NEAR(cut_of_blank(formed, blank, 0.015, 0.005), 0.8, 1e-12);
    EXPECT_EQ(cut_of_blank(0.8, blank, 0, 0), 0.8);
}

}  // namespace
}  // namespace bowfront::forming
