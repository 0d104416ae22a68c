#include <gtest/gtest.h>

#include <vector>

#include "bowfront/geom/region.hpp"

namespace bowfront {
namespace {

TEST(SelfCrossing, is_none_of_a_rectangle_or_a_circle) {
    EXPECT_FALSE(self_crossing(Contour::rectangle({0, 0}, {4, 3})));
    EXPECT_FALSE(self_crossing(Contour::circle({1, 1}, 2)));
}

TEST(SelfCrossing, names_the_two_segments_that_cross) {
    const std::vector<Point> bow{{0, 0}, {4, 4}, {4, 0}, {0, 4}};
    const auto crossing = self_crossing(Contour::polygon(bow));
    ASSERT_TRUE(crossing);
    EXPECT_EQ(crossing->first, 0U);
    EXPECT_EQ(crossing->second, 2U);
}

TEST(SelfCrossing, counts_a_corner_that_touches_another_side) {
    const std::vector<Point> touching{{0, 0}, {4, 0}, {4, 4}, {2, 0}, {0, 4}};
    EXPECT_TRUE(self_crossing(Contour::polygon(touching)));
}

TEST(SelfCrossing, is_told_of_an_arc_that_bulges_through_another_side) {
    // A rectangle 4 by 1 whose lower side rises by more than 1.
    const Contour bulging({{{0, 0}, -0.9}, {{4, 0}, 0}, {{4, 1}, 0}, {{0, 1}, 0}});
    EXPECT_TRUE(self_crossing(bulging));
    const Contour gentle({{{0, 0}, -0.2}, {{4, 0}, 0}, {{4, 1}, 0}, {{0, 1}, 0}});
    EXPECT_FALSE(self_crossing(gentle));
}

TEST(SelfCrossing, is_told_of_neighbours_that_meet_again) {
    // From an arc's end straight back across the arc.
    const Contour back({{{0, 0}, 1}, {{4, 0}, 0}, {{-1, -1}, 0}});
    EXPECT_TRUE(self_crossing(back));
}

}  // namespace
}  // namespace bowfront
