#include "bowfront/geom/region.hpp"

#include <gmock/gmock.h>

#include <cmath>
#include <numbers>

#include "bowfront/base/contract.hpp"

namespace bowfront {
namespace {

using std::numbers::pi;
using testing::SizeIs;

/// Rounding of areas under 1 m² worked out from coordinates of 1 m, mm².
constexpr double kAreaRounding = 1e-8;
/// Rounding of coordinates and lengths under 1 m, mm.
constexpr double kRounding = 1e-11;

Region rectangle(double x0, double y0, double x1, double y1) {
    return {Contour::rectangle({x0, y0}, {x1, y1}), {}};
}

Region disc(Point centre, double radius) {
    return {Contour::circle(centre, radius), {}};
}

Region groove(Point from, Point to, double width) {
    return {band({{from, to}}, width, BandEnd::round, BandEnd::round), {}};
}

double total_area(const std::vector<Region>& regions) {
    double total = 0;
    for (const Region& region : regions) {
        total += region.area();
    }
    return total;
}

/// Two discs of radius r at a distance d share 2r²·acos(d/2r) − d/2·√(4r² − d²).
double lens_area(double r, double d) {
    return 2 * r * r * std::acos(d / (2 * r)) - d / 2 * std::sqrt(4 * r * r - d * d);
}

TEST(Region, weighs_its_holes) {
    Region plate = rectangle(0, 0, 100, 60);
    plate.holes.push_back(Contour::circle({75, 30}, 10).reversed());
    EXPECT_NEAR(plate.area(), 6000 - 100 * pi, kAreaRounding);
    EXPECT_NEAR(plate.perimeter(), 320 + 20 * pi, kRounding);
    EXPECT_NEAR(plate.centroid().x, (6000 * 50 - 100 * pi * 75) / (6000 - 100 * pi), kRounding);
    EXPECT_NEAR(plate.centroid().y, 30, kRounding);
    const Motion motion{.angle = 1, .shift = {5, 6}, .mirrored = true};
    const Region mirrored = plate.moved(motion);
    EXPECT_NEAR(mirrored.outer.area(), 6000, kAreaRounding);
    EXPECT_NEAR(mirrored.holes.front().area(), -100 * pi, kAreaRounding);
    EXPECT_NEAR(distance(mirrored.centroid(), motion(plate.centroid())), 0, kRounding);
}

TEST(Where, tells_inside_edge_and_outside) {
    Region plate = rectangle(0, 0, 100, 60);
    plate.holes.push_back(Contour::circle({75, 30}, 10).reversed());
    EXPECT_EQ(where(plate, {10, 10}), Side::inside);
    EXPECT_EQ(where(plate, {0, 10}), Side::on_edge);
    EXPECT_EQ(where(plate, {100, 60}), Side::on_edge);
    EXPECT_EQ(where(plate, {-1, 60}), Side::outside);
    EXPECT_EQ(where(plate, {75, 30}), Side::outside);
    EXPECT_EQ(where(plate, {75, 20}), Side::on_edge);
    EXPECT_EQ(where(plate, {85 + 0.9 * kJoint, 30}), Side::on_edge);
    EXPECT_EQ(where(plate, {85 + 2 * kJoint, 30}), Side::inside);
    // Level with vertices, on the chords of arcs, and where an arc bites into its outline.
    const Contour bitten({{{0, 0}}, {{40, 0}, -1}, {{40, 40}}, {{0, 40}}});
    EXPECT_EQ(where(bitten, {40, 20}), Side::outside);
    EXPECT_EQ(where(bitten, {30, 20}), Side::outside);
    EXPECT_EQ(where(bitten, {19, 20}), Side::inside);
    EXPECT_EQ(where(bitten, {20, 20}), Side::on_edge);
    EXPECT_EQ(where(bitten, {-5, 0}), Side::outside);
    EXPECT_EQ(where(bitten, {45, 0}), Side::outside);
    EXPECT_EQ(where(Contour::circle({0, 0}, 10), {0, 0}), Side::inside);
    EXPECT_EQ(where(Contour::circle({0, 0}, 10).reversed(), {0, 5}), Side::inside);
}

TEST(Unite, of_nothing_is_nothing) {
    EXPECT_THAT(unite({}), SizeIs(0));
    EXPECT_THAT(subtract({}, {disc({0, 0}, 5)}), SizeIs(0));
    EXPECT_THAT(intersect({disc({0, 0}, 5)}, {}), SizeIs(0));
}

TEST(Unite, keeps_what_stands_apart_largest_first) {
    const auto found = unite({disc({50, 0}, 5), rectangle(0, 0, 20, 20), disc({-50, 0}, 5)});
    ASSERT_THAT(found, SizeIs(3));
    EXPECT_NEAR(found[0].area(), 400, kAreaRounding);
    EXPECT_NEAR(found[1].box().low.x, -55, kRounding);
    EXPECT_NEAR(found[2].box().low.x, 45, kRounding);
    EXPECT_EQ(found[1].outer.vertices(), Contour::circle({-50, 0}, 5).vertices());
}

TEST(Intersect, of_two_discs_is_a_lens) {
    const std::vector<Region> a{disc({0, 0}, 50)};
    const std::vector<Region> b{disc({60, 0}, 50)};
    const auto lens = intersect(a, b);
    ASSERT_THAT(lens, SizeIs(1));
    EXPECT_EQ(lens[0].outer.size(), 2U);
    EXPECT_NEAR(lens[0].area(), lens_area(50, 60), kAreaRounding);
    EXPECT_NEAR(lens[0].perimeter(), 4 * 50 * std::acos(60.0 / 100), kRounding);
    EXPECT_NEAR(total_area(unite({a[0], b[0]})), 5000 * pi - lens_area(50, 60), kAreaRounding);
    const auto moon = subtract(a, b);
    ASSERT_THAT(moon, SizeIs(1));
    EXPECT_NEAR(moon[0].area(), 2500 * pi - lens_area(50, 60), kAreaRounding);
}

TEST(Subtract, cuts_a_groove_into_an_edge) {
    // From the middle of a plate out over its edge: a half disc and a rectangle are gone.
    const auto found = subtract({rectangle(0, 0, 100, 100)}, {groove({50, 50}, {150, 50}, 12)});
    ASSERT_THAT(found, SizeIs(1));
    EXPECT_EQ(found[0].outer.size(), 8U);
    EXPECT_NEAR(found[0].area(), 10000 - 44 * 12 - 18 * pi, kAreaRounding);
}

TEST(Subtract, leaves_a_hole_where_the_tool_lies_inside) {
    const auto found = subtract({disc({0, 0}, 100)}, {groove({-30, 0}, {30, 0}, 12)});
    ASSERT_THAT(found, SizeIs(1));
    ASSERT_THAT(found[0].holes, SizeIs(1));
    EXPECT_LT(found[0].holes[0].area(), 0);
    EXPECT_NEAR(found[0].area(), 10000 * pi - 48 * 12 - 36 * pi, kAreaRounding);
    EXPECT_EQ(found[0].outer.vertices(), Contour::circle({0, 0}, 100).vertices());
}

TEST(Subtract, parts_a_plate_cut_right_through) {
    const auto found = subtract({rectangle(0, 0, 100, 100)}, {groove({-20, 30}, {120, 30}, 10)});
    ASSERT_THAT(found, SizeIs(2));
    EXPECT_NEAR(found[0].area(), 6500, kAreaRounding);
    EXPECT_NEAR(found[1].area(), 2500, kAreaRounding);
}

TEST(Subtract, takes_tools_that_overlap_once) {
    // Two grooves crossing at a right angle share a square.
    const auto found = subtract({rectangle(-50, -50, 50, 50)},
                                {groove({-30, 0}, {30, 0}, 8), groove({0, -30}, {0, 30}, 8)});
    ASSERT_THAT(found, SizeIs(1));
    ASSERT_THAT(found[0].holes, SizeIs(1));
    EXPECT_EQ(found[0].holes[0].size(), 12U);
    EXPECT_NEAR(found[0].area(), 10000 - 2 * (52 * 8 + 16 * pi) + 64, kAreaRounding);
    // The same tool twice is one tool.
    EXPECT_NEAR(total_area(subtract({disc({0, 0}, 9)}, {disc({0, 0}, 3), disc({0, 0}, 3)})),
                72 * pi, kAreaRounding);
}

TEST(Subtract, of_itself_is_nothing) {
    const Region slot = groove({0, 0}, {70, 20}, 12);
    EXPECT_THAT(subtract({slot}, {slot}), SizeIs(0));
    EXPECT_THAT(intersect({slot}, {slot}), SizeIs(1));
    EXPECT_NEAR(total_area(unite({slot, slot})), slot.area(), kAreaRounding);
    EXPECT_THAT(subtract({disc({0, 0}, 9)}, {rectangle(-10, -10, 10, 10)}), SizeIs(0));
}

TEST(Unite, swallows_a_shared_edge_and_its_vertices) {
    const auto found = unite({rectangle(0, 0, 50, 40), rectangle(50, 0, 90, 40)});
    ASSERT_THAT(found, SizeIs(1));
    EXPECT_EQ(found[0].outer.size(), 4U);
    EXPECT_NEAR(found[0].area(), 3600, kAreaRounding);
    EXPECT_THAT(intersect({rectangle(0, 0, 50, 40)}, {rectangle(50, 0, 90, 40)}), SizeIs(0));
    // Half discs of one circle become the circle, of two half turns again.
    const Contour upper({{{-30, 0}}, {{30, 0}, 1}});
    const Contour lower({{{-30, 0}, 1}, {{30, 0}}});
    const auto whole = unite({{upper, {}}, {lower, {}}});
    ASSERT_THAT(whole, SizeIs(1));
    EXPECT_EQ(whole[0].outer.size(), 2U);
    EXPECT_NEAR(whole[0].area(), 900 * pi, kAreaRounding);
}

TEST(Unite, shares_part_of_an_arc) {
    // A disc in a bore of the same radius: nothing of the seam is left.
    const auto plate = subtract({rectangle(-50, -50, 50, 50)}, {disc({0, 0}, 30)});
    const auto filled =
        unite({plate[0], disc({0, 0}, 30).moved({.angle = 0.7, .shift = {}, .mirrored = false})});
    ASSERT_THAT(filled, SizeIs(1));
    EXPECT_THAT(filled[0].holes, SizeIs(0));
    EXPECT_EQ(filled[0].outer.size(), 4U);
    EXPECT_NEAR(filled[0].area(), 10000, kAreaRounding);
}

TEST(Unite, keeps_areas_apart_that_touch_at_a_corner) {
    const auto found = unite({rectangle(0, 0, 10, 10), rectangle(10, 10, 20, 20)});
    ASSERT_THAT(found, SizeIs(2));
    EXPECT_NEAR(found[0].area(), 100, kAreaRounding);
    EXPECT_NEAR(found[1].area(), 100, kAreaRounding);
    const auto discs = unite({disc({0, 0}, 10), disc({20, 0}, 10)});
    ASSERT_THAT(discs, SizeIs(2));
}

TEST(Subtract, keeps_holes_apart_that_touch_at_a_corner) {
    const auto found = subtract({rectangle(0, 0, 100, 100)},
                                {rectangle(20, 20, 40, 40), rectangle(40, 40, 60, 60)});
    ASSERT_THAT(found, SizeIs(1));
    ASSERT_THAT(found[0].holes, SizeIs(2));
    EXPECT_NEAR(found[0].area(), 9200, kAreaRounding);
}

TEST(Subtract, makes_a_hole_of_a_disc_that_touches_the_edge_inside) {
    const auto found = subtract({disc({0, 0}, 50)}, {disc({20, 0}, 30)});
    ASSERT_THAT(found, SizeIs(1));
    ASSERT_THAT(found[0].holes, SizeIs(1));
    EXPECT_NEAR(found[0].area(), 1600 * pi, kAreaRounding);
    const auto plate = subtract({rectangle(0, 0, 100, 100)}, {disc({20, 50}, 20)});
    ASSERT_THAT(plate, SizeIs(1));
    EXPECT_THAT(plate[0].holes, SizeIs(1));
    EXPECT_NEAR(plate[0].area(), 10000 - 400 * pi, kAreaRounding);
}

TEST(Subtract, keeps_an_island_in_a_hole) {
    const auto ring = subtract({disc({0, 0}, 50)}, {disc({0, 0}, 40)});
    const auto found = unite({ring[0], disc({0, 0}, 20)});
    ASSERT_THAT(found, SizeIs(2));
    EXPECT_THAT(found[0].holes, SizeIs(1));
    EXPECT_NEAR(found[0].area(), 900 * pi, kAreaRounding);
    const auto cut = subtract(found, {disc({0, 0}, 10)});
    ASSERT_THAT(cut, SizeIs(2));
    EXPECT_THAT(cut[0].holes, SizeIs(1));
    EXPECT_THAT(cut[1].holes, SizeIs(1));
    EXPECT_NEAR(total_area(cut), 1200 * pi, kAreaRounding);
}

TEST(Subtract, rounds_a_corner_without_a_trace_of_the_tool) {
    // What a radius leaves of a square corner, taken away: lines run tangent into the arc.
    const Region corner = subtract({rectangle(0, 0, 10, 10)}, {disc({10, 10}, 10)}).front();
    const auto found = subtract({rectangle(0, 0, 100, 80)}, {corner});
    ASSERT_THAT(found, SizeIs(1));
    EXPECT_EQ(found[0].outer.size(), 5U);
    EXPECT_NEAR(found[0].area(), 8000 - (100 - 25 * pi), kAreaRounding);
}

TEST(Unite, joins_across_the_first_vertex) {
    const std::vector<Point> points{{5, 0}, {10, 0}, {10, 10}, {0, 10}, {0, 0}};
    const auto found = unite({{Contour::polygon(points), {}}});
    ASSERT_THAT(found, SizeIs(1));
    EXPECT_EQ(found[0].outer.size(), 4U);
    EXPECT_NEAR(found[0].area(), 100, kAreaRounding);
}

TEST(Subtract, leaves_no_arc_of_more_than_half_a_turn) {
    const auto found = subtract({disc({0, 0}, 50)}, {rectangle(0, -60, 60, 0)});
    ASSERT_THAT(found, SizeIs(1));
    EXPECT_EQ(found[0].outer.size(), 4U);
    EXPECT_NEAR(found[0].area(), 2500 * pi * 3 / 4, kAreaRounding);
    for (const Vertex& vertex : found[0].outer.vertices()) {
        EXPECT_LE(std::abs(vertex.bulge), 1);
    }
}

TEST(Unite, untangles_an_outline_that_crosses_itself) {
    // A five-pointed star in one stroke: its core is run round twice, and covered like its points.
    std::vector<Point> tips;
    for (int i = 0; i < 5; ++i) {
        tips.push_back(direction(pi / 2 + i * 4 * pi / 5) * 50);
    }
    const auto star = unite({{Contour::polygon(tips), {}}});
    ASSERT_THAT(star, SizeIs(1));
    EXPECT_EQ(star[0].outer.size(), 10U);
    // Ten triangles between the centre, a tip at R and an inner corner at r = R·cos 72°/cos 36°.
    const double inner = 50 * std::cos(2 * pi / 5) / std::cos(pi / 5);
    EXPECT_NEAR(star[0].area(), 5 * 50 * inner * std::sin(pi / 5), kAreaRounding);
}

TEST(Unite, leaves_out_an_edge_run_both_ways) {
    // A rectangle with a spur, and one with a slit in from its side.
    const auto spur =
        unite({{Contour::polygon(std::vector<Point>{
                    {0, 0}, {50, 0}, {50, 20}, {80, 20}, {50, 20}, {50, 40}, {0, 40}}),
                {}}});
    const auto slit =
        unite({{Contour::polygon(std::vector<Point>{
                    {0, 0}, {50, 0}, {50, 20}, {20, 20}, {50, 20}, {50, 40}, {0, 40}}),
                {}}});
    for (const auto& found : {spur, slit}) {
        ASSERT_THAT(found, SizeIs(1));
        EXPECT_EQ(found[0].outer.size(), 4U);
        EXPECT_NEAR(found[0].area(), 2000, kAreaRounding);
    }
}

TEST(Unite, drops_slivers) {
    const double nearly = 1e-8;
    const auto found = unite({rectangle(0, 0, 50, 40), rectangle(50 + nearly, 0, 90, 40)});
    ASSERT_THAT(found, SizeIs(1));
    EXPECT_EQ(found[0].outer.size(), 4U);
    EXPECT_THAT(subtract({rectangle(0, 0, 50, 40)}, {rectangle(0, 0, 50 - nearly, 40)}), SizeIs(0));
    // Its short side is more than a sliver, half of it is not.
    const std::vector<Point> wedge{{0, 0}, {100, 0}, {100, 1.5e-7}};
    EXPECT_THAT(unite({{Contour::polygon(wedge), {}}}), SizeIs(0));
}

TEST(Touch, is_told_where_the_gap_is_none) {
    const Contour plate = Contour::rectangle({0, 0}, {100, 100});
    EXPECT_TRUE(touch(plate, Contour::rectangle({100, 20}, {120, 40})));   // edge to edge
    EXPECT_TRUE(touch(plate, Contour::rectangle({100, 100}, {120, 120})));  // corner to corner
    EXPECT_TRUE(touch(plate, Contour::circle({120, 50}, 20)));
    EXPECT_FALSE(touch(plate, Contour::circle({50, 50}, 49)));  // inside
    for (int x = -20; x <= 120; x += 7) {
        for (int y = -20; y <= 120; y += 7) {
            const Contour disc = Contour::circle({static_cast<double>(x), static_cast<double>(y)}, 9);
            EXPECT_EQ(touch(plate, disc), gap(plate, disc) == 0) << x << ' ' << y;
            EXPECT_EQ(touch(disc, plate), touch(plate, disc)) << x << ' ' << y;
        }
    }
}

TEST(Gap, measures_between_edges) {
    const Contour plate = Contour::rectangle({0, 0}, {100, 100});
    EXPECT_NEAR(gap(plate, Contour::rectangle({103, 104}, {120, 120})), 5, kRounding);
    EXPECT_NEAR(gap(plate, Contour::circle({120, 50}, 15)), 5, kRounding);
    EXPECT_NEAR(gap(plate, Contour::circle({50, 50}, 42)), 8, kRounding);
    EXPECT_NEAR(gap(plate, Contour::circle({50, 48}, 40)), 8, kRounding);
    EXPECT_NEAR(gap(plate, Contour::circle({50, 52}, 40)), 8, kRounding);
    EXPECT_EQ(gap(plate, Contour::circle({110, 50}, 15)), 0);
    EXPECT_EQ(gap(plate, Contour::circle({115, 50}, 15)), 0);
    EXPECT_NEAR(gap(Contour::circle({0, 0}, 10), Contour::circle({30, 40}, 15)), 25, kRounding);
    EXPECT_NEAR(gap(Contour::circle({0, 0}, 50), Contour::circle({6, 8}, 15)), 25, kRounding);
    EXPECT_NEAR(gap(Contour::circle({1, 2}, 50), Contour::circle({1, 2}, 15)), 35, kRounding);
    EXPECT_NEAR(gap(Contour::circle({0, 200}, 50), plate), 50, kRounding);
}

}  // namespace
}  // namespace bowfront
