#include "bowfront/fit/grain_slope.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <utility>

namespace bowfront {
namespace {

// Two square roots' worth of operations on numbers about 1.
constexpr double kRounding = 1e-14;

TEST(BendingLeft, is_all_of_it_along_the_grain_and_the_least_across) {
    EXPECT_NEAR(bending_left(0.0), 1, kRounding);
    EXPECT_NEAR(bending_left(std::numbers::pi / 2), kAcrossBending, kRounding);
}

// Source: Wood Handbook FPL-GTR-190, table 5-12: bending strength of wood members with various slopes
// of the grain as a percentage of straight-grained ones; from memory, not verified
TEST(BendingLeft, keeps_to_the_handbook_s_slopes_of_the_grain) {
    constexpr double kWithin = 0.025;  // the formula's stated distance from the table
    for (const auto& [slope, share] : {std::pair{25.0, 0.96}, {20.0, 0.93}, {15.0, 0.89},
                                       {10.0, 0.81}, {5.0, 0.55}}) {
        EXPECT_NEAR(bending_left(std::atan(1 / slope)), share, kWithin) << "1 in " << slope;
    }
}

// The example of the header.
TEST(BendingLeft, of_a_slope_of_one_in_five_is_a_little_over_half) {
    constexpr double kShown = 0.005;
    EXPECT_NEAR(bending_left(std::atan(0.2)), 0.55, kShown);
}

TEST(BendingLeft, falls_with_the_angle) {
    double before = bending_left(0.0);
    for (int degrees = 1; degrees <= 90; ++degrees) {
        const double now = bending_left(degrees * std::numbers::pi / 180);
        EXPECT_LT(now, before) << degrees;
        before = now;
    }
}

}  // namespace
}  // namespace bowfront
