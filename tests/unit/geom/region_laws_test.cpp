/// Laws that unions, differences and intersections keep whatever the areas are, on seeded random
/// areas. Half of them stand on a coarse grid, where edges and arcs coincide and touch at every
/// turn; the others anywhere.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "unit/geom/random_areas.hpp"

namespace bowfront {
namespace {

/// Areas of coordinates up to 100 mm, summed over a few hundred segments, mm².
constexpr double kAreaRounding = 1e-7;
/// Where edges touch, they are taken as one up to 1e-7 mm; over outlines of 1 m that adds up to
/// this much, mm².
constexpr double kTouching = 1e-4;
/// As the header promises of results, mm.
constexpr double kShortest = 1e-7;

void expect_well_formed(const std::vector<Region>& regions) {
    double previous = HUGE_VAL;
    for (const Region& region : regions) {
        EXPECT_GT(region.outer.area(), 0);
        EXPECT_LE(region.area(), region.outer.area());
        EXPECT_LE(region.outer.area(), previous + kAreaRounding);
        previous = region.outer.area();
        for (const Segment& segment : region.outer.segments()) {
            EXPECT_GT(segment.length(), kShortest);
            EXPECT_LE(std::abs(segment.bulge), 1);
        }
        for (const Contour& hole : region.holes) {
            EXPECT_LT(hole.area(), 0);
            EXPECT_NE(where(region.outer, hole.segment(0).at(0.5)), Side::outside);
        }
    }
}

std::vector<Region> both(std::vector<Region> a, const std::vector<Region>& b) {
    a.insert(a.end(), b.begin(), b.end());
    return a;
}

struct Case {
    std::vector<Region> a;
    std::vector<Region> b;
    std::vector<Region> united;
    std::vector<Region> common;
    std::vector<Region> rest;  ///< of a
};

Case make_case(Shapes& shapes, int most) {
    Case c{shapes.some(most), shapes.some(most), {}, {}, {}};
    c.united = unite(both(c.a, c.b));
    c.common = intersect(c.a, c.b);
    c.rest = subtract(c.a, c.b);
    return c;
}

void expect_areas_add_up(const Case& c) {
    const double a = area(unite(c.a));
    const double b = area(unite(c.b));
    EXPECT_NEAR(a + b, area(c.united) + area(c.common), kTouching);
    EXPECT_NEAR(area(c.rest), a - area(c.common), kTouching);
    EXPECT_NEAR(area(unite(c.united)), area(c.united), kAreaRounding);
    EXPECT_NEAR(area(intersect(c.rest, c.b)), 0, kTouching);
}

void expect_points_agree(const Case& c, Shapes& shapes) {
    for (int i = 0; i < 20; ++i) {
        const Point p{shapes.anywhere(-90, 90), shapes.anywhere(-90, 90)};
        if (near_edge(c.a, p) || near_edge(c.b, p)) {
            continue;
        }
        const bool in_a = covers(c.a, p);
        const bool in_b = covers(c.b, p);
        EXPECT_EQ(covers(c.united, p), in_a || in_b);
        EXPECT_EQ(covers(c.common, p), in_a && in_b);
        EXPECT_EQ(covers(c.rest, p), in_a && !in_b);
    }
}

class RegionLaws : public testing::TestWithParam<double> {};

TEST_P(RegionLaws, hold_for_pairs_and_groups) {
    constexpr int kCases = 2000;
    for (unsigned seed = 0; seed < kCases && !HasFailure(); ++seed) {
        SCOPED_TRACE(seed);
        Shapes shapes(seed, GetParam());
        const Case c = make_case(shapes, seed % 3 == 0 ? 5 : 1);
        for (const auto* result : {&c.united, &c.common, &c.rest}) {
            expect_well_formed(*result);
        }
        expect_areas_add_up(c);
        expect_points_agree(c, shapes);
    }
}

TEST_P(RegionLaws, do_not_change_under_motions) {
    constexpr int kCases = 300;
    for (unsigned seed = 0; seed < kCases && !HasFailure(); ++seed) {
        SCOPED_TRACE(seed);
        Shapes shapes(seed, GetParam());
        const Case c = make_case(shapes, 3);
        const Motion motion{.angle = shapes.anywhere(-4, 4),
                            .shift = {shapes.anywhere(-5000, 5000), shapes.anywhere(-5000, 5000)},
                            .mirrored = seed % 2 == 0};
        const auto placed = [&](std::vector<Region> regions) {
            for (Region& region : regions) {
                region = region.moved(motion);
            }
            return regions;
        };
        const auto rest = subtract(placed(c.a), placed(c.b));
        EXPECT_EQ(rest.size(), c.rest.size());
        EXPECT_NEAR(area(rest), area(c.rest), kTouching);
        EXPECT_NEAR(area(intersect(placed(c.a), placed(c.b))), area(c.common), kTouching);
    }
}

TEST_P(RegionLaws, hold_for_edges_a_hair_apart) {
    constexpr int kCases = 1000;
    // Edges are taken as one at up to some 1e-6 mm here, over outlines of 1 m.
    constexpr double kTangled = 1e-3;
    for (unsigned seed = 0; seed < kCases && !HasFailure(); ++seed) {
        SCOPED_TRACE(seed);
        Shapes shapes(seed, GetParam());
        const auto a = shapes.shaken(shapes.some(3));
        const auto b = shapes.shaken(shapes.some(3));
        const double united = area(unite(both(a, b)));
        const double common = area(intersect(a, b));
        EXPECT_NEAR(area(unite(a)) + area(unite(b)), united + common, kTangled);
        EXPECT_NEAR(area(subtract(a, b)) + common, area(unite(a)), kTangled);
    }
}

INSTANTIATE_TEST_SUITE_P(OnGrid, RegionLaws, testing::Values(5.0));
INSTANTIATE_TEST_SUITE_P(Anywhere, RegionLaws, testing::Values(0.0));

}  // namespace
}  // namespace bowfront
