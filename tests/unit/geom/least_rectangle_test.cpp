#include "bowfront/geom/least_rectangle.hpp"

#include <gtest/gtest.h>

#include <numbers>

#include "bowfront/base/contract.hpp"
#include "support/random_curves.hpp"

namespace bowfront {
namespace {

using std::numbers::pi;
using testing_support::Draw;

/// The search's share of the area.
constexpr double kShare = 1e-12;
/// A side of such a rectangle: at a smooth least the turn is only found to the square root of that.
constexpr double kSide = 1e-5;

Contour turned(const Contour& contour, double angle) {
    return contour.moved({.angle = angle, .shift = {40, -7}, .mirrored = false});
}

/// An annular sector round the origin whose middle points down.
Contour sector(double outer, double inner, double angle) {
    const double middle = -pi / 2;
    const double half = angle / 2;
    const std::vector<Segment> arcs{
        arc_segment({}, outer, middle - half, half), arc_segment({}, outer, middle, half),
        arc_segment({}, inner, middle + half, -half), arc_segment({}, inner, middle, -half)};
    return Contour::from_segments(std::vector<Segment>{arcs[0],
                                                       arcs[1],
                                                       {arcs[1].to, arcs[2].from},
                                                       arcs[2],
                                                       arcs[3],
                                                       {arcs[3].to, arcs[0].from}});
}

TEST(LeastRectangle, of_a_rectangle_is_itself_however_it_lies) {
    const Contour plate = Contour::rectangle({0, 0}, {520, 240});
    for (const double angle : {0.0, 0.01, 0.7, pi / 4, 1.5, 2.9, -1.1}) {
        const EnclosingRectangle found = least_rectangle(turned(plate, angle));
        EXPECT_NEAR(found.length, 520, 520 * kShare * 10) << angle;
        EXPECT_NEAR(found.width, 240, 520 * kShare * 10) << angle;
        // What it says brings the outline to lie along X.
        const Contour along = turned(plate, angle).moved({found.angle, {}, false});
        EXPECT_NEAR(along.box().width(), found.length, kShare * 520 * 10);
        EXPECT_LE(std::abs(found.angle), pi / 2);
    }
    EXPECT_EQ(least_rectangle(plate).angle, 0);
    EXPECT_NEAR(std::abs(least_rectangle(Contour::rectangle({0, 0}, {240, 520})).angle), pi / 2, 0);
}

// Source: geometry of the square, 100/√2.
TEST(LeastRectangle, of_a_square_on_its_corner_turns_it) {
    const Contour square =
        Contour::polygon(std::vector<Point>{{0, 0}, {50, 50}, {0, 100}, {-50, 50}});
    const EnclosingRectangle found = least_rectangle(square);
    EXPECT_NEAR(found.length, 70.711, 0.0005);
    EXPECT_NEAR(found.width, 70.711, 0.0005);
    EXPECT_NEAR(std::abs(found.angle), pi / 4, kShare);
}

TEST(LeastRectangle, of_a_circle_is_its_box) {
    const EnclosingRectangle found = least_rectangle(Contour::circle({3, 4}, 50));
    EXPECT_NEAR(found.area(), 100 * 100, 1e4 * kShare * 10);
    EXPECT_EQ(found.angle, 0);
}

// Source: Freeman and Shapira, Determining the minimum-area encasing rectangle for an arbitrary
// closed curve, 1975: of a convex polygon it has a side in common with it.
TEST(LeastRectangle, of_a_polygon_lies_along_one_of_its_sides) {
    constexpr unsigned kCases = 60;
    for (unsigned seed = 0; seed < kCases; ++seed) {
        SCOPED_TRACE(seed);
        Draw draw(seed);
        std::vector<Point> corners;
        const int count =
            static_cast<int>(seed % 2 == 0 ? draw.between(3, 9) : draw.between(40, 200));
        for (int i = 0; i < count; ++i) {
            const double angle = 2 * pi * (i + draw.between(0.1, 0.9)) / count;
            corners.push_back({300 * std::cos(angle), 280 * std::sin(angle)});
        }
        const Contour polygon = Contour::polygon(corners);
        double least = HUGE_VAL;
        for (const Segment& side : polygon.segments()) {
            const Point along = side.to - side.from;
            const Box box = turned(polygon, -std::atan2(along.y, along.x)).box();
            least = std::min(least, box.width() * box.height());
        }
        EXPECT_NEAR(least_rectangle(polygon).area(), least, least * kShare * 10);
    }
}

TEST(LeastRectangle, of_an_outline_of_arcs_is_no_larger_than_any_that_is_tried) {
    constexpr unsigned kCases = 30;
    for (unsigned seed = 0; seed < kCases; ++seed) {
        SCOPED_TRACE(seed);
        Draw draw(seed);
        std::vector<Vertex> vertices;
        const int count = static_cast<int>(draw.between(4, 14));
        for (int i = 0; i < count; ++i) {
            const double angle = 2 * pi * (i + draw.between(0.1, 0.9)) / count;
            vertices.push_back({direction(angle) * 300, draw.between(0.02, 0.6)});
        }
        const Contour plate(vertices);
        const double found = least_rectangle(plate).area();
        for (int i = 0; i < 2000; ++i) {
            const Box box = turned(plate, pi / 2 * i / 2000).box();
            ASSERT_LE(found, box.width() * box.height() * (1 + kShare * 10)) << i;
        }
    }
}

TEST(LeastRectangle, of_a_sector_is_no_larger_than_any_that_is_tried) {
    for (const double angle : {0.1, 0.5, 1.2, 2.0, 3.0, 3.3, 4.5, 6.0}) {
        for (const double inner : {20.0, 150.0, 280.0}) {
            SCOPED_TRACE(testing::Message() << angle << ' ' << inner);
            const Contour plate = sector(300, inner, angle);
            const EnclosingRectangle found = least_rectangle(plate);
            for (int i = 0; i < 3000; ++i) {
                const Box box = turned(plate, pi / 2 * i / 3000).box();
                ASSERT_LE(found.area(), box.width() * box.height() * (1 + kShare * 10)) << i;
            }
            const EnclosingRectangle askew = least_rectangle(turned(plate, 0.6));
            EXPECT_NEAR(askew.length, found.length, kSide);
            EXPECT_NEAR(askew.width, found.width, kSide);
        }
    }
}

// Source: geometry. A slender sector, upright, is 2R·sin(φ/2) by R − r·cos(φ/2); along one of its
// generators it is less.
TEST(LeastRectangle, of_a_slender_sector_lies_along_its_edge) {
    const double angle = 0.5;
    const Contour slender = sector(300, 20, angle);
    const EnclosingRectangle found = least_rectangle(slender);
    EXPECT_NEAR(std::abs(found.angle), pi / 2 - angle / 2, 1e-9);
    EXPECT_LT(found.area(),
              0.98 * 2 * 300 * std::sin(angle / 2) * (300 - 20 * std::cos(angle / 2)));
}

TEST(LeastRectangle, needs_an_outline) {
    EXPECT_THROW((void)least_rectangle(Contour()), ContractError);
}

}  // namespace
}  // namespace bowfront
