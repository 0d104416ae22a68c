#include "bowfront/geom/hull.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>
#include <tuple>

#include "bowfront/base/contract.hpp"

namespace bowfront {
namespace {

using std::numbers::pi;

// Some dozens of operations on coordinates under 1 m, mm.
constexpr double kRounding = 1e-10;

TEST(Hull, of_a_rectangle_is_nearest_at_its_nearest_side) {
    const Contour rectangle = Contour::rectangle({-100, -20}, {100, 60});
    const HullEdge edge = nearest_hull_edge(rectangle, {10, 0});
    EXPECT_NEAR(edge.distance, 20, kRounding);
    EXPECT_NEAR(edge.outward.x, 0, kRounding);
    EXPECT_NEAR(edge.outward.y, -1, kRounding);
    EXPECT_NEAR(nearest_hull_edge(rectangle, {85, 20}).distance, 15, kRounding);
}

// Rounding must not choose between sides that are equally near.
TEST(Hull, of_equal_sides_names_the_front_then_the_left) {
    const Contour square = Contour::rectangle({-0.1, -0.1}, {0.3, 0.3});
    EXPECT_NEAR(nearest_hull_edge(square, {0.1, 0.1}).outward.y, -1, kRounding);
    const Contour deep = Contour::rectangle({-0.1, -9}, {0.3, 9});
    EXPECT_NEAR(nearest_hull_edge(deep, {0.1, 0}).outward.x, -1, kRounding);
}

TEST(Hull, of_a_circle_is_nearest_away_from_its_centre) {
    const Contour circle = Contour::circle({50, 80}, 40);
    const HullEdge edge = nearest_hull_edge(circle, {50 + 6, 80 - 8});
    EXPECT_NEAR(edge.distance, 30, kRounding);
    EXPECT_NEAR(edge.outward.x, 0.6, kRounding);
    EXPECT_NEAR(edge.outward.y, -0.8, kRounding);
    EXPECT_NEAR(nearest_hull_edge(circle, {50, 80}).distance, 40, kRounding);
}

// A square with a notch: it stands on the line across the hollow.
TEST(Hull, runs_across_a_hollow) {
    const Contour notched =
        Contour::polygon(std::vector<Point>{{0, 0}, {100, 0}, {50, 40}, {100, 100}, {0, 100}});
    EXPECT_NEAR(nearest_hull_edge(notched, {45, 49}).distance, 45, kRounding);
    EXPECT_NEAR(nearest_hull_edge(notched, {60, 49}).distance, 40, kRounding);
    // The same with an arc that bulges inwards.
    const Contour bitten({{{0, 0}}, {{100, 0}, -0.6}, {{100, 100}}, {{0, 100}}});
    EXPECT_NEAR(nearest_hull_edge(bitten, {60, 49}).distance, 40, kRounding);
}

// Two discs, of radius 30 about (0, 0) and 10 about (80, 0), in one outline: seen from (40, 0) the
// common tangent lies at its distance to that line, 30 - (30 - 10)·40/80 = 20.
TEST(Hull, has_the_common_tangent_of_two_arcs) {
    std::vector<Segment> dumbbell_line;
    for (const auto& [centre, radius, middle] :
         {std::tuple{Point{0, 0}, 30.0, pi}, std::tuple{Point{80, 0}, 10.0, 0.0}}) {
        constexpr double kHalf = 2.2;  // rad, more than a quarter turn to either side
        for (const double start : {middle - kHalf, middle}) {
            const Segment arc = arc_segment(centre, radius, start, kHalf);
            if (!dumbbell_line.empty() && distance(dumbbell_line.back().to, arc.from) > kJoint) {
                dumbbell_line.push_back({dumbbell_line.back().to, arc.from, 0});
            }
            dumbbell_line.push_back(arc);
        }
    }
    dumbbell_line.push_back({dumbbell_line.back().to, dumbbell_line.front().from, 0});
    const Contour dumbbell = Contour::from_segments(dumbbell_line);
    const HullEdge edge = nearest_hull_edge(dumbbell, {40, 0});
    EXPECT_NEAR(edge.distance, 20, kRounding);
    EXPECT_NEAR(edge.outward.x, 0.25, kRounding);
    EXPECT_NEAR(edge.outward.y, -std::sqrt(1 - 0.25 * 0.25), kRounding);
}

TEST(Hull, is_at_a_negative_distance_from_a_point_outside) {
    const Contour rectangle = Contour::rectangle({0, 0}, {100, 50});
    EXPECT_NEAR(nearest_hull_edge(rectangle, {130, 20}).distance, -30, kRounding);
    EXPECT_NEAR(nearest_hull_edge(rectangle, {103, 54}).distance, -5, kRounding);
    EXPECT_NEAR(nearest_hull_edge(Contour::circle({0, 0}, 10), {0, 25}).distance, -15, kRounding);
}

TEST(Hull, of_nothing_is_refused) {
    EXPECT_THROW((void)nearest_hull_edge(Contour(), {0, 0}), ContractError);
}

Contour random_outline(std::mt19937_64& random) {
    const auto draw = [&](double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(random);
    };
    const int corners = std::uniform_int_distribution<int>(3, 9)(random);
    std::vector<Vertex> vertices;
    for (int i = 0; i < corners; ++i) {
        const double angle = 2 * pi * (i + draw(-0.3, 0.3)) / corners;
        vertices.push_back({direction(angle) * draw(60, 300), draw(-0.7, 0.7)});
    }
    return Contour(std::move(vertices));
}

// The least of reach less p·u over a fan of directions is never under the true least, and the reach
// changes by no more than the outline's size times the angle between two rays of the fan.
TEST(Hull, is_where_a_fan_of_directions_finds_it) {
    constexpr unsigned kSeed = 20260407;
    constexpr int kOutlines = 200;
    constexpr int kRays = 2000;
    constexpr int kSteps = 40;
    constexpr double kSize = 900;  // mm, no two points of these outlines lie farther apart
    std::mt19937_64 random(kSeed);
    for (int i = 0; i < kOutlines; ++i) {
        const Contour outline = random_outline(random);
        const Point p = direction(i) * (i % 50);
        const HullEdge edge = nearest_hull_edge(outline, p);
        // Walked point by point, not by centres and radii.
        std::vector<Point> walked;
        for (const Segment& s : outline.segments()) {
            for (int step = 0; step < kSteps; ++step) {
                walked.push_back(s.at(static_cast<double>(step) / kSteps));
            }
        }
        double least = HUGE_VAL;
        for (int ray = 0; ray < kRays; ++ray) {
            const Point u = direction(2 * pi * ray / kRays);
            double far = -HUGE_VAL;
            for (const Point at : walked) {
                far = std::max(far, dot(at, u));
            }
            least = std::min(least, far - dot(p, u));
        }
        // A step along an arc hides an eighth of its square over the radius, under 1 mm here.
        EXPECT_GE(edge.distance, least - kSize * pi / kRays) << "seed " << kSeed << ", " << i;
        EXPECT_LE(edge.distance, least + 1) << "seed " << kSeed << ", " << i;
        EXPECT_NEAR(norm(edge.outward), 1, kRounding);
        EXPECT_NEAR(reach(outline, edge.outward) - dot(p, edge.outward), edge.distance, kRounding);
    }
}

}  // namespace
}  // namespace bowfront
