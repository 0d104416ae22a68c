#include "bowfront/geom/offset.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include "unit/geom/random_areas.hpp"

namespace bowfront {
namespace {

constexpr double kPi = std::numbers::pi;
/// A few dozen roundings of sizes up to 300 mm, and of their products, mm and mm².
constexpr double kSize = 1e-9;
constexpr double kArea = 1e-8;

Contour square(double side) {
    return Contour::rectangle({0, 0}, {side, side});
}

/// A rectangle of 200 × 100 mm whose corners are rounded.
Contour rounded_rectangle(double r) {
    const double bulge = std::tan(kPi / 8);
    return Contour({{{r, 0}},
                    {{200 - r, 0}, bulge},
                    {{200, r}},
                    {{200, 100 - r}, bulge},
                    {{200 - r, 100}},
                    {{r, 100}, bulge},
                    {{0, 100 - r}},
                    {{0, r}, bulge}});
}

double rounded_area(double width, double height, double r) {
    return width * height - (4 - kPi) * r * r;
}

Contour ell() {
    const Point corners[] = {{0, 0}, {100, 0}, {100, 40}, {40, 40}, {40, 100}, {0, 100}};
    return Contour::polygon(corners);
}

TEST(Offset, rounds_the_corners_of_an_area_that_grows) {
    const auto grown = offset(square(100), 10);
    ASSERT_EQ(grown.size(), 1U);
    EXPECT_NEAR(grown[0].area(), 14314.159265358979, kArea);
    EXPECT_EQ(grown[0].outer.size(), 8U);
    EXPECT_NEAR(grown[0].perimeter(), 400 + 20 * kPi, kSize);
}

TEST(Offset, carries_mitred_corners_on_to_where_they_meet) {
    const auto grown = offset(square(100), 10, OffsetCorner::mitre);
    ASSERT_EQ(grown.size(), 1U);
    EXPECT_EQ(grown[0].outer.size(), 4U);
    EXPECT_NEAR(grown[0].area(), 120 * 120, kArea);
}

TEST(Offset, rounds_a_mitred_corner_that_would_reach_too_far) {
    // A corner of α has its mitre 1/sin(α/2) distances off: four at 28.96°.
    const auto tip_of = [](double degrees) {
        const double half = degrees / 2 * kPi / 180;
        const Point corners[] = {{0, 0}, direction(-half) * 100, direction(half) * 100};
        return -offset(Contour::polygon(corners), 5, OffsetCorner::mitre)[0].box().low.x;
    };
    EXPECT_NEAR(tip_of(30), 5 / std::sin(15 * kPi / 180), kSize);
    EXPECT_NEAR(tip_of(28), 5, kSize);
}

TEST(Offset, keeps_the_corners_of_a_convex_area_that_shrinks) {
    for (const auto corners : {OffsetCorner::round, OffsetCorner::mitre}) {
        const auto shrunk = offset(square(100), -10, corners);
        ASSERT_EQ(shrunk.size(), 1U);
        EXPECT_EQ(shrunk[0].outer.size(), 4U);
        EXPECT_NEAR(shrunk[0].area(), 80 * 80, kArea);
    }
}

TEST(Offset, goes_round_an_inside_corner_that_it_leaves) {
    const auto shrunk = offset(ell(), -10);
    ASSERT_EQ(shrunk.size(), 1U);
    // Two arms of 20 mm by 80 mm, their common square of 20 mm counted once, and what the quarter
    // circle of 10 mm leaves of the corner.
    EXPECT_NEAR(shrunk[0].area(), 2 * 20 * 80 - 20 * 20 + (1 - kPi / 4) * 100, kArea);
    const auto mitred = offset(ell(), -10, OffsetCorner::mitre);
    ASSERT_EQ(mitred.size(), 1U);
    EXPECT_EQ(mitred[0].outer.size(), 6U);
    EXPECT_NEAR(mitred[0].area(), 2 * 20 * 80 - 20 * 20, kArea);
}

TEST(Offset, keeps_arcs_about_their_centres) {
    for (const double by : {-9.0, -3.0, 0.0, 4.0, 25.0}) {
        SCOPED_TRACE(by);
        const auto set_off = offset(rounded_rectangle(10), by);
        ASSERT_EQ(set_off.size(), 1U);
        EXPECT_EQ(set_off[0].outer.size(), 8U);
        EXPECT_NEAR(set_off[0].area(), rounded_area(200 + 2 * by, 100 + 2 * by, 10 + by), kArea);
    }
}

TEST(Offset, leaves_a_sharp_corner_where_an_arc_vanishes) {
    for (const double by : {-10.0, -15.0, -49.0}) {
        SCOPED_TRACE(by);
        const auto shrunk = offset(rounded_rectangle(10), by);
        ASSERT_EQ(shrunk.size(), 1U);
        EXPECT_EQ(shrunk[0].outer.size(), 4U);
        EXPECT_NEAR(shrunk[0].area(), (200 + 2 * by) * (100 + 2 * by), kArea);
    }
}

TEST(Offset, leaves_nothing_where_there_is_no_room) {
    EXPECT_TRUE(offset(rounded_rectangle(10), -50).empty());
    EXPECT_TRUE(offset(rounded_rectangle(10), -80).empty());
    EXPECT_TRUE(offset(Contour::circle({3, 4}, 20), -20).empty());
}

TEST(Offset, gives_circles_for_circles) {
    for (const double by : {-19.0, -7.5, 0.25, 300.0}) {
        const auto set_off = offset(Contour::circle({3, 4}, 20), by);
        ASSERT_EQ(set_off.size(), 1U);
        EXPECT_NEAR(set_off[0].area(), kPi * (20 + by) * (20 + by), 2 * kArea);
        for (const Segment& s : set_off[0].outer.segments()) {
            EXPECT_NEAR(s.radius(), 20 + by, kSize);
            EXPECT_NEAR(distance(s.centre(), {3, 4}), 0, kSize);
        }
    }
}

TEST(Offset, closes_holes_when_it_grows_and_widens_them_when_it_shrinks) {
    const Region ring{Contour::circle({}, 50), {Contour::circle({}, 20)}};
    const auto narrower = offset({ring}, -5);
    ASSERT_EQ(narrower.size(), 1U);
    EXPECT_NEAR(narrower[0].area(), kPi * (45 * 45 - 25 * 25), kArea);
    const auto closed = offset({ring}, 20);
    ASSERT_EQ(closed.size(), 1U);
    EXPECT_TRUE(closed[0].holes.empty());
    EXPECT_NEAR(closed[0].area(), kPi * 70 * 70, kArea);
    EXPECT_TRUE(offset({ring}, -15).empty());
}

TEST(Offset, shrinks_a_circular_segment_as_its_triangle_says) {
    // A chord 30 mm from the centre of a circle of 100 mm: inwards by d the chord lies at 30 + d,
    // the circle has 100 − d.
    const double half = std::acos(0.3);
    const Segment arc = arc_segment({}, 100, kPi / 2 - half, 2 * half);
    const Contour outline({{arc.from, arc.bulge}, {arc.to}});
    for (const double d : {5.0, 20.0, 34.0}) {
        SCOPED_TRACE(d);
        const auto shrunk = offset(outline, -d);
        ASSERT_EQ(shrunk.size(), 1U);
        const double r = 100 - d;
        const double theta = 2 * std::acos((30 + d) / r);
        EXPECT_NEAR(shrunk[0].area(), r * r / 2 * (theta - std::sin(theta)), kArea);
        EXPECT_EQ(shrunk[0].outer.size(), 2U);
        EXPECT_NEAR(shrunk[0].box().low.y, 30 + d, kSize);
        EXPECT_NEAR(shrunk[0].box().width(), 2 * std::sqrt(r * r - (30 + d) * (30 + d)), kSize);
    }
    EXPECT_TRUE(offset(outline, -35).empty());
}

TEST(Offset, splits_an_outline_at_its_waist) {
    const Point corners[] = {{0, 0},    {60, 0},   {60, 25},  {100, 25}, {100, 0}, {160, 0},
                             {160, 60}, {100, 60}, {100, 35}, {60, 35},  {60, 60}, {0, 60}};
    const Contour dumbbell = Contour::polygon(corners);
    EXPECT_EQ(offset(dumbbell, -4.9).size(), 1U);
    const auto halves = offset(dumbbell, -10);
    ASSERT_EQ(halves.size(), 2U);
    EXPECT_NEAR(halves[0].area(), halves[1].area(), kArea);
    // Beside its square, each half has the tip between the circles about the waist's two corners:
    // 2·∫(10 − √(100 − u²))du from 0 to 5.
    const double tip = 2 * (50 - (2.5 * std::sqrt(75.0) + 50 * kPi / 6));
    EXPECT_NEAR(halves[0].area(), 40 * 40 + tip, kArea);
}

TEST(Offset, follows_an_arc_that_bows_inwards_past_its_centre) {
    // A notch of a half circle of 10 mm in the edge of a plate: growing by 10 fills it.
    const Contour notched(
        {{{0, 0}}, {{100, 0}}, {{100, 50}}, {{60, 50}, -1}, {{40, 50}}, {{0, 50}}});
    const auto open = offset(notched, 6);
    ASSERT_EQ(open.size(), 1U);
    // Left of the notch: half a disc of 4 mm, and above it the space between the two corners'
    // quarter discs of 6 mm.
    const double left = kPi * 4 * 4 / 2 + 20 * 6 - 2 * kPi * 6 * 6 / 4;
    EXPECT_NEAR(open[0].area(), 100 * 50 + 6 * 300 + kPi * 6 * 6 - left, kArea);
    const auto filled = offset(notched, 10);
    ASSERT_EQ(filled.size(), 1U);
    EXPECT_TRUE(filled[0].holes.empty());
}

TEST(Offset, treats_outlines_alike_whichever_way_they_run) {
    const auto there = offset(ell(), -7);
    const auto back = offset(ell().reversed(), -7);
    ASSERT_EQ(back.size(), 1U);
    EXPECT_NEAR(there[0].area(), back[0].area(), kArea);
    EXPECT_NEAR(there[0].perimeter(), back[0].perimeter(), kSize);
}

TEST(Offset, knows_a_spike_from_a_notch) {
    // Two circles that touch within each other: between them a crescent with a cusp.
    const Contour outer = Contour::circle({0, 0}, 50);
    const Contour inner = Contour::circle({20, 0}, 30);
    const auto crescent = subtract({{outer, {}}}, {{inner, {}}});
    ASSERT_EQ(crescent.size(), 1U);
    const auto grown = offset(crescent, 5);
    ASSERT_EQ(grown.size(), 1U);
    EXPECT_NEAR(grown[0].area(), kPi * (55 * 55 - 25 * 25), 1e-3);
}

/// A convex outline of straights and arcs: some points of a circle, joined by chords that bulge by
/// less than the circle.
Contour convex(Shapes& shapes) {
    std::vector<double> angles;
    double angle = shapes.anywhere(0, 1);
    while (angle < 2 * kPi - 0.3) {
        angles.push_back(angle);
        angle += shapes.anywhere(0.2, 1.5);
    }
    std::vector<Vertex> vertices;
    for (std::size_t i = 0; i < angles.size(); ++i) {
        const double next = i + 1 < angles.size() ? angles[i + 1] : angles[0] + 2 * kPi;
        const double share = std::max(shapes.anywhere(-0.5, 1), 0.0);
        vertices.push_back({direction(angles[i]) * 60, std::tan(share * (next - angles[i]) / 4)});
    }
    return Contour(vertices);
}

TEST(OffsetLaws, convex_areas_grow_by_steiners_formula_and_come_back) {
    constexpr int kCases = 100;
    for (unsigned seed = 0; seed < kCases && !HasFailure(); ++seed) {
        SCOPED_TRACE(seed);
        Shapes shapes(seed, 0);
        const Contour outline = convex(shapes);
        const double d = shapes.anywhere(0.1, 80);
        const auto grown = offset(outline, d);
        ASSERT_EQ(grown.size(), 1U);
        EXPECT_NEAR(grown[0].area(), outline.area() + outline.perimeter() * d + kPi * d * d,
                    10 * kArea);
        EXPECT_NEAR(grown[0].perimeter(), outline.perimeter() + 2 * kPi * d, 10 * kSize);
        const auto back = offset(grown, -d);
        ASSERT_EQ(back.size(), 1U);
        EXPECT_NEAR(back[0].area(), outline.area(), 10 * kArea);
    }
}

double distance_to_edges(const std::vector<Region>& areas, Point p) {
    double least = HUGE_VAL;
    const auto see = [&](const Contour& outline) {
        for (const Segment& s : outline.segments()) {
            least = std::min(least, s.distance_to(p));
        }
    };
    for (const Region& area : areas) {
        see(area.outer);
        for (const Contour& hole : area.holes) {
            see(hole);
        }
    }
    return least;
}

void expect_at_the_distance(const std::vector<Region>& areas, double by) {
    // Where edges came within 1e-7 mm of each other they were taken as one.
    constexpr double kTaken = 3e-7;
    const auto set_off = offset(areas, by);
    const auto see = [&](const Contour& outline) {
        for (const Segment& s : outline.segments()) {
            for (const double t : {0.0, 0.31, 0.5, 0.77}) {
                EXPECT_NEAR(distance_to_edges(areas, s.at(t)), std::abs(by), kTaken);
            }
        }
    };
    for (const Region& area : set_off) {
        see(area.outer);
        for (const Contour& hole : area.holes) {
            see(hole);
        }
    }
}

void expect_points_inside(const std::vector<Region>& areas, double by, Shapes& shapes) {
    const auto set_off = offset(areas, by);
    for (int i = 0; i < 40; ++i) {
        const Point p{shapes.anywhere(-100, 100), shapes.anywhere(-100, 100)};
        const double away = distance_to_edges(areas, p) * (covers(areas, p) ? -1 : 1);
        if (std::abs(away - by) > 1e-5 && !near_edge(areas, p)) {
            EXPECT_EQ(covers(set_off, p), away < by) << p.x << " " << p.y;
        }
    }
}

class RandomOffsets : public testing::TestWithParam<double> {};

TEST_P(RandomOffsets, lie_at_the_distance_and_hold_what_is_within_it) {
    constexpr int kCases = 120;
    for (unsigned seed = 0; seed < kCases && !HasFailure(); ++seed) {
        SCOPED_TRACE(seed);
        Shapes shapes(seed, GetParam());
        const auto areas = unite(shapes.some(3));
        const double d = GetParam() > 0 ? 5 : shapes.anywhere(0.1, 15);
        for (const double by : {d, -d}) {
            SCOPED_TRACE(by);
            expect_at_the_distance(areas, by);
            expect_points_inside(areas, by, shapes);
        }
    }
}

INSTANTIATE_TEST_SUITE_P(OnGrid, RandomOffsets, testing::Values(5.0));
INSTANTIATE_TEST_SUITE_P(Anywhere, RandomOffsets, testing::Values(0.0));

}  // namespace
}  // namespace bowfront
