#include "bowfront/fit/stand_off.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <random>

#include "bowfront/fit/plan.hpp"

namespace bowfront::fit {
namespace {

// It stops once a step brings less than 1e-10 mm.
constexpr double kSettled = 1e-8;

// Points of a chain, so many from its start to its end.
std::vector<Point> points_on(const std::vector<Segment>& chain, int count) {
    double length = 0;
    for (const Segment& s : chain) {
        length += s.length();
    }
    std::vector<Point> points;
    for (int i = 0; i <= count; ++i) {
        points.push_back(point_at(chain, length * i / count));
    }
    return points;
}

const std::vector<Segment> kHook{{{0, 0}, {300, 0}, 0},
                                 {{300, 0}, {380, 80}, std::tan(std::numbers::pi / 8)},
                                 {{380, 80}, {380, 280}, 0}};

TEST(StandOff, is_nothing_for_a_curve_that_only_lies_elsewhere) {
    std::vector<Segment> moved;
    const Motion motion{0.02, {3, -2}, false};
    for (const Segment& s : kHook) {
        moved.push_back({motion(s.from), motion(s.to), s.bulge});
    }
    EXPECT_NEAR(least_stand_off(points_on(kHook, 60), moved), 0, kSettled);
}

// Points alternately 1 mm to both sides of a straight can't be laid nearer.
TEST(StandOff, levels_points_on_both_sides_of_a_straight) {
    std::vector<Point> points;
    for (int i = 0; i < 9; ++i) {
        points.push_back({i * 50.0, (i % 2 == 0 ? 1.0 : -1.0) + 4 + 0.01 * i * 50});
    }
    const std::vector<Segment> straight{{{0, 0}, {400, 0}, 0}};
    // Square to the sloping straight: 1 mm shortened by its slope, where all touch in turn.
    EXPECT_NEAR(least_stand_off(points, straight), 1 / std::hypot(1, 0.01), kSettled);
}

// Source: geometry, by hand: a hinge of two legs a, b that is opened by δ; ends and hinge stand off
// alike, by δ·a·b/(2(a + b)).
TEST(StandOff, of_an_opened_hinge_is_that_of_its_ends_and_its_corner) {
    constexpr double kOpened = 0.002;
    const std::vector<Point> groove =
        points_on({{{0, 0}, {300, 0}, 0}, {{300, 0}, {500, 0}, 0}}, 50);
    const double half = kOpened / 2;
    // A round corner of 1 mm in the place of the hinge.
    const Segment corner{{299.5, 0}, {300.5, 0.5 * kOpened}, std::tan(kOpened / 4)};
    const std::vector<Segment> own{{corner.from - corner.tangent(0) * 299.5, corner.from, 0},
                                   corner,
                                   {corner.to, corner.to + corner.tangent(1) * 199.5, 0}};
    EXPECT_NEAR(least_stand_off(groove, own), half * 300 * 200 / (300 + 200), 1e-3);
}

// Nothing that is tried at random lies nearer.
TEST(StandOff, is_beaten_by_no_movement) {
    std::mt19937_64 random(7);
    std::uniform_real_distribution<double> share(-1, 1);
    const std::vector<Point> groove = points_on(kHook, 80);
    std::vector<Segment> own = kHook;
    own[1].bulge = std::tan(0.98 * std::numbers::pi / 8);
    own[2] = {own[1].to, own[1].to + own[1].tangent(1) * 200, 0};
    own[0] = {own[1].from - own[1].tangent(0) * 300, own[1].from, 0};
    const double least = least_stand_off(groove, own);
    EXPECT_GT(least, 0.1);
    for (int i = 0; i < 4000; ++i) {
        const Motion motion{0.02 * share(random), {3 * share(random), 3 * share(random)}, false};
        double most = 0;
        for (const Point p : groove) {
            double nearest = HUGE_VAL;
            for (const Segment& s : own) {
                nearest = std::min(nearest, s.distance_to(motion(p)));
            }
            most = std::max(most, nearest);
        }
        EXPECT_GE(most, least - kSettled);
    }
}

}  // namespace
}  // namespace bowfront::fit
