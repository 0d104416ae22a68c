#include <gtest/gtest.h>

#include <random>
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

// Every two segments asked, one by one: the sweep passes none over.
TEST(SelfCrossing, is_told_of_whatever_asking_all_pairs_finds) {
    std::mt19937_64 random(7);
    std::uniform_real_distribution<double> place(0, 100);
    int crossed = 0;
    for (int round = 0; round < 400; ++round) {
        std::vector<Point> corners;
        for (int i = 0; i < 4 + round % 4; ++i) {
            corners.push_back({place(random), place(random)});
        }
        const Contour contour = Contour::polygon(corners);
        const std::vector<Segment> segments = contour.segments();
        bool meet = false;
        for (std::size_t i = 0; i < segments.size(); ++i) {
            for (std::size_t j = i + 2; j < segments.size() - (i == 0 ? 1 : 0); ++j) {
                meet = meet || !meetings(segments[i], segments[j]).empty();
            }
        }
        crossed += meet ? 1 : 0;
        EXPECT_EQ(self_crossing(contour).has_value(), meet) << "seed 7, round " << round;
    }
    EXPECT_GT(crossed, 100);
    EXPECT_LT(crossed, 300);
}

}  // namespace
}  // namespace bowfront
