#include "bowfront/geom/contour.hpp"

#include <gtest/gtest.h>

#include <numbers>
#include <random>

#include "bowfront/base/contract.hpp"

namespace bowfront {
namespace {

using std::numbers::pi;

/// Rounding of a few operations on coordinates under 1 m, mm.
constexpr double kRounding = 1e-12;
/// Half the last digit of areas and lengths published with four decimals.
constexpr double kFourDecimals = 0.5e-4;

double radians(double degrees) {
    return degrees * pi / 180;
}

/// An annular sector round the origin, counter-clockwise.
Contour annular_sector(double inner, double outer, double angle) {
    const Segment out = arc_segment({0, 0}, outer, 0, angle);
    const Segment back = arc_segment({0, 0}, inner, angle, -angle);
    const std::vector<Segment> all{out, {out.to, back.from}, back, {back.to, out.from}};
    return Contour::from_segments(all);
}

Contour rounded_plate(double width, double height, double radius) {
    const double bulge = std::tan(pi / 8);
    return Contour({{{radius, 0}},
                    {{width - radius, 0}, bulge},
                    {{width, radius}},
                    {{width, height - radius}, bulge},
                    {{width - radius, height}},
                    {{radius, height}, bulge},
                    {{0, height - radius}},
                    {{0, radius}, bulge}});
}

Contour slot(double length, double width) {
    const double half = width / 2;
    return Contour(
        {{{half, 0}}, {{length - half, 0}, 1}, {{length - half, width}}, {{half, width}, 1}});
}

// Bulges of 45°, 90°, 120° and 180°; radius and sagitta from chord and bulge.
// Source: public DXF reference, LWPOLYLINE group 42 (FACTS 7.1).
TEST(Segment, keeps_the_bulge_identities) {
    constexpr double kEightDecimals = 0.5e-8;
    EXPECT_NEAR(arc_segment({}, 100, 0.3, radians(45)).bulge, 0.19891237, kEightDecimals);
    EXPECT_NEAR(arc_segment({}, 100, 0.3, radians(90)).bulge, 0.41421356, kEightDecimals);
    EXPECT_NEAR(arc_segment({}, 100, 0.3, radians(120)).bulge, 0.57735027, kEightDecimals);
    EXPECT_EQ(arc_segment({}, 100, 0.3, radians(180)).bulge, 1);
    EXPECT_EQ(arc_segment({}, 100, 0.3, radians(-180)).bulge, -1);

    const Segment arc = arc_segment({7, -3}, 250, 0.4, radians(-70));
    EXPECT_NEAR(arc.radius(), 250, kRounding);
    EXPECT_NEAR(distance(arc.centre(), {7, -3}), 0, kRounding);
    EXPECT_NEAR(arc.sweep(), radians(-70), kRounding);
    EXPECT_NEAR(arc.length(), 250 * radians(70), kRounding);
    const double sagitta = distance(arc.at(0.5), (arc.from + arc.to) * 0.5);
    EXPECT_NEAR(sagitta, std::abs(arc.bulge) * distance(arc.from, arc.to) / 2, kRounding);
}

TEST(Segment, lies_to_the_right_of_its_chord_when_it_turns_left) {
    const Segment arc{{0, 0}, {10, 0}, 1};
    EXPECT_NEAR(distance(arc.at(0.5), {5, -5}), 0, kRounding);
    EXPECT_NEAR(distance(arc.tangent(0), {0, -1}), 0, kRounding);
    EXPECT_NEAR(distance(arc.tangent(1), {0, 1}), 0, kRounding);
    EXPECT_EQ(arc.at(0), arc.from);
    EXPECT_EQ(arc.at(1), arc.to);
}

TEST(Segment, parts_add_up_and_stay_on_the_arc) {
    const Segment arc = arc_segment({3, 4}, 80, 1, radians(150));
    const Segment first = arc.part(0, 0.3);
    const Segment rest = arc.part(0.3, 1);
    EXPECT_NEAR(first.length() + rest.length(), arc.length(), kRounding);
    EXPECT_NEAR(first.sweep(), 0.3 * arc.sweep(), kRounding);
    EXPECT_NEAR(distance(rest.centre(), arc.centre()), 0, kRounding);
    EXPECT_EQ(first.to, rest.from);
}

// A chord of 1 m with a sagitta of s is longer than its chord by 8s²/(3c): 1e-6 mm of sagitta has
// a radius of 1.25e11 mm, and passing by the centre would lose every digit.
TEST(Segment, stays_exact_when_nearly_straight) {
    const double sagitta = 1e-6;
    const Segment arc{{0, 0}, {1000, 0}, 2 * sagitta / 1000};
    EXPECT_NEAR(arc.length(), 1000, kRounding);
    EXPECT_NEAR(arc.at(0.5).y, -sagitta, kRounding * sagitta);
    EXPECT_NEAR(arc.distance_to({500, 2}), 2 + sagitta, kRounding);
    EXPECT_NEAR(arc.distance_to({500, -sagitta}), 0, kRounding * sagitta);
    EXPECT_NEAR(arc.box().low.y, -sagitta, kRounding * sagitta);
    EXPECT_NEAR(arc.nearest({250, 0}), 0.25, kRounding);
    const Contour sliver({{{0, 0}, arc.bulge}, {{1000, 0}}});
    EXPECT_NEAR(sliver.area(), 2.0 / 3 * 1000 * sagitta, kRounding);
    EXPECT_NEAR(sliver.centroid().y, -0.4 * sagitta, kRounding * sagitta);
}

TEST(Segment, measures_distance_to_its_body_and_its_ends) {
    const Segment arc = arc_segment({0, 0}, 10, 0, radians(90));
    EXPECT_NEAR(arc.distance_to({0, 0}), 10, kRounding);
    EXPECT_NEAR(arc.distance_to({20, 20}), std::hypot(20, 20) - 10, kRounding);
    EXPECT_NEAR(arc.distance_to({10, -3}), 3, kRounding);
    EXPECT_NEAR(arc.distance_to({-5, 10}), 5, kRounding);
    EXPECT_NEAR(arc.reversed().distance_to({-5, 10}), 5, kRounding);
    EXPECT_NEAR(arc.distance_to({-10, -10}), std::hypot(20, 10), kRounding);
    const Segment line{{0, 0}, {10, 0}};
    EXPECT_NEAR(line.distance_to({4, -3}), 3, kRounding);
    EXPECT_NEAR(line.distance_to({13, 4}), 5, kRounding);
}

TEST(Segment, distance_and_box_agree_with_a_fine_walk) {
    std::mt19937 random(20240611);
    std::uniform_real_distribution<double> place(-50, 50);
    std::uniform_real_distribution<double> bend(-1, 1);
    constexpr int kSteps = 2000;
    for (int round = 0; round < 200; ++round) {
        const Segment arc{
            {place(random), place(random)}, {place(random), place(random)}, bend(random)};
        const Point p{place(random), place(random)};
        double least = HUGE_VAL;
        Box walked;
        for (int i = 0; i <= kSteps; ++i) {
            const Point q = arc.at(static_cast<double>(i) / kSteps);
            least = std::min(least, distance(p, q));
            walked.add(q);
        }
        // Between two steps the walk misses at most half a step, and a box at most its sagitta.
        const double step = arc.length() / kSteps;
        ASSERT_LE(arc.distance_to(p), least + kRounding) << round;
        ASSERT_GE(arc.distance_to(p), least - step) << round;
        ASSERT_NEAR(distance(p, arc.at(arc.nearest(p))), arc.distance_to(p), 1e-6 * step) << round;
        const Box box = arc.box();
        ASSERT_NEAR(box.low.x, walked.low.x, step * step) << round;
        ASSERT_NEAR(box.low.y, walked.low.y, step * step) << round;
        ASSERT_NEAR(box.high.x, walked.high.x, step * step) << round;
        ASSERT_NEAR(box.high.y, walked.high.y, step * step) << round;
    }
}

TEST(Segment, has_no_radius_when_straight) {
    const Segment line{{0, 0}, {10, 0}};
    EXPECT_THROW((void)line.radius(), ContractError);
    EXPECT_THROW((void)line.centre(), ContractError);
    EXPECT_THROW((void)arc_segment({}, 10, 0, 3.2), ContractError);
    EXPECT_THROW((void)arc_segment({}, 0, 0, 1), ContractError);
}

// Closed forms, to four decimals: (R² − r²)·φ/2 and (R + r)·φ + 2·(R − r), ...
TEST(Contour, measures_the_trial_shapes) {
    const Contour sector = annular_sector(276, 316, radians(100));
    EXPECT_NEAR(sector.area(), 20664.6983, kFourDecimals);
    EXPECT_NEAR(sector.perimeter(), 1113.2349, kFourDecimals);
    const Contour plate = rounded_plate(400, 300, 10);
    EXPECT_NEAR(plate.area(), 119914.1593, kFourDecimals);
    EXPECT_NEAR(plate.perimeter(), 1382.8319, kFourDecimals);
    EXPECT_NEAR(slot(100, 12).area(), 1169.0973, kFourDecimals);
    EXPECT_NEAR(slot(100, 12).perimeter(), 213.6991, kFourDecimals);
}

TEST(Contour, finds_the_centroid_with_its_arcs) {
    EXPECT_NEAR(distance(rounded_plate(400, 300, 10).centroid(), {200, 150}), 0, kRounding * 100);
    // Half disc: 4r/(3π) from its straight edge. Annular sector: 2/3·(R³ − r³)/(R² − r²)·sin α/α.
    const Contour half_disc({{{-30, 0}}, {{30, 0}, 1}});
    EXPECT_NEAR(distance(half_disc.centroid(), {0, 40 / pi}), 0, kRounding * 10);
    const double alpha = radians(50);
    const double reach = 2.0 / 3 * (std::pow(316, 3) - std::pow(276, 3)) /
                         (std::pow(316, 2) - std::pow(276, 2)) * std::sin(alpha) / alpha;
    const Point found = annular_sector(276, 316, 2 * alpha).centroid();
    EXPECT_NEAR(distance(found, direction(alpha) * reach), 0, kRounding * 1000);
}

// Coordinates near 10 m are rounded to 2e-12 mm; times a perimeter of 0.2 m that is 4e-10 mm². The
// products of such coordinates are rounded to 1e-8 mm².
TEST(Contour, keeps_its_area_far_from_the_origin) {
    constexpr double kFarRounding = 4e-10;
    for (const double angle : {0.1, 0.7, 1.3, 2.9}) {
        const Motion motion{.angle = angle, .shift = {9876.54321, 8765.4321}, .mirrored = false};
        EXPECT_NEAR(slot(100, 12).moved(motion).area(), slot(100, 12).area(), kFarRounding);
    }
}

TEST(Contour, turns_its_sense_round_in_a_mirror) {
    const Contour sector = annular_sector(276, 316, radians(100));
    const Motion motion{.angle = 0.7, .shift = {-40, 15}, .mirrored = true};
    const Contour mirrored = sector.moved(motion);
    EXPECT_NEAR(mirrored.area(), -sector.area(), 1e-9);
    EXPECT_NEAR(mirrored.counter_clockwise().area(), sector.area(), 1e-9);
    EXPECT_NEAR(mirrored.perimeter(), sector.perimeter(), 1e-9);
    EXPECT_NEAR(distance(mirrored.centroid(), motion(sector.centroid())), 0, 1e-9);
    EXPECT_NEAR(distance(motion({1, 0}), Point{-40, 15} - direction(0.7)), 0, kRounding);
}

TEST(Contour, runs_the_other_way_from_the_same_vertex) {
    const Contour sector = annular_sector(276, 316, radians(100));
    EXPECT_EQ(sector.reversed().vertices().front().at, sector.vertices().front().at);
    EXPECT_EQ(sector.reversed().reversed().vertices(), sector.vertices());
    EXPECT_NEAR(sector.reversed().area(), -sector.area(), 1e-9);
}

TEST(Contour, boxes_a_circle_exactly) {
    const Box box = Contour::circle({10, 20}, 5).box();
    EXPECT_NEAR(box.low.x, 5, kRounding);
    EXPECT_NEAR(box.low.y, 15, kRounding);
    EXPECT_NEAR(box.high.x, 15, kRounding);
    EXPECT_NEAR(box.high.y, 25, kRounding);
    EXPECT_NEAR(Contour::circle({10, 20}, 5).area(), 25 * pi, kRounding * 100);
    EXPECT_TRUE(Contour().box().empty());
}

TEST(Contour, joins_segments_and_splits_long_arcs) {
    const double three_quarters = std::tan(radians(270) / 4);
    const std::vector<Segment> pac{
        {{0, 0}, {10, 0}}, {{10, kJoint / 2}, {0, -10}, three_quarters}, {{0, -10}, {0, 0}}};
    const Contour joined = Contour::from_segments(pac);
    EXPECT_EQ(joined.size(), 4U);
    EXPECT_NEAR(joined.area(), 75 * pi, 1e-7);
    const std::vector<Segment> open{{{0, 0}, {10, 0}}, {{10, 0}, {0, 10}}, {{0, 10}, {0, 1e-3}}};
    EXPECT_THROW((void)Contour::from_segments(open), ContractError);
}

TEST(Contour, expects_a_shape) {
    EXPECT_THROW((void)Contour::rectangle({0, 0}, {0, 1}), ContractError);
    EXPECT_THROW((void)Contour::circle({0, 0}, 0), ContractError);
    EXPECT_THROW((void)Contour::polygon(std::vector<Point>{{0, 0}, {1, 0}}), ContractError);
    EXPECT_THROW((void)Contour().centroid(), ContractError);
    EXPECT_EQ(Contour().area(), 0);
}

TEST(Path, moves_and_measures) {
    const Path path{{{{0, 0}, {10, 0}}, {{10, 0}, {20, 0}, 1}}};
    EXPECT_NEAR(path.length(), 10 + 5 * pi, kRounding);
    EXPECT_NEAR(path.box().low.y, -5, kRounding);
    const Path mirrored = path.moved({.angle = 0, .shift = {0, 0}, .mirrored = true});
    EXPECT_NEAR(mirrored.box().low.x, -20, kRounding);
    EXPECT_NEAR(mirrored.box().low.y, -5, kRounding);
}

TEST(Direction, is_exact_at_quarter_turns) {
    EXPECT_EQ(direction(pi / 2), (Point{0, 1}));
    EXPECT_EQ(direction(pi), (Point{-1, 0}));
    EXPECT_EQ(direction(3 * pi / 2), (Point{0, -1}));
    EXPECT_EQ(direction(2 * pi), (Point{1, 0}));
    EXPECT_EQ(direction(-pi / 2), (Point{0, -1}));
}

}  // namespace
}  // namespace bowfront
