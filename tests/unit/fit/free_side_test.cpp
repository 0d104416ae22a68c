// Sides that follow an ellipse or a line through points.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "bowfront/fit/checks.hpp"
#include "bowfront/fit/sums.hpp"
#include "support/run_case.hpp"
#include "support/sample_case.hpp"

namespace bowfront::fit {
namespace {

using sample::case_with_front;
using sample::curve_piece;
using sample::ellipse_piece;
using std::numbers::pi;
using ::testing::HasSubstr;

double figure_of(const Case& c, const std::string& path) {
    Workings workings;
    (void)solve(c, workings);
    const Figure* const figure = workings.find(path);
    EXPECT_NE(figure, nullptr) << path;
    return figure == nullptr ? 0 : figure->value;
}

// Source: Abramowitz and Stegun, Handbook of Mathematical Functions, table 17.1: the complete
// elliptic integral E(m) is 1.21105 6028 at m = 0.75; an ellipse of half axes a and a/2 has the
// perimeter 4·a·E.
constexpr double kPerimeterOver4a = 1.211056028;
constexpr double kTable = 1e-9;  // of its last digit, relative

TEST(EllipticSide, is_as_long_as_the_elliptic_integral_says) {
    for (const double from : {0.0, pi / 2, pi, -pi / 2}) {
        const Case c = case_with_front({ellipse_piece(600, 300, from, from + pi / 2, 1e-4)});
        EXPECT_NEAR(figure_of(c, "plan/front/piece-1/developed"), 600 * kPerimeterOver4a,
                    600 * kTable);
        // Its arcs lie within 1e-4 mm of it all along: they are longer or shorter by far less.
        EXPECT_NEAR(solve(c).sides.front().length, 600 * kPerimeterOver4a, 1e-4);
    }
}

TEST(EllipticSide, stands_on_its_chord) {
    const CaseSums<double> sums = solve(case_with_front({ellipse_piece(400, 250, 0, pi / 2)}));
    EXPECT_NEAR(sums.sides.front().chord, std::hypot(400, 250), 1e-7);
    EXPECT_NEAR(sums.sides.front().turned(), pi / 2, 1e-8);
    // One bend, tightest at the end of the long axis, where the radius is b²/a.
    const PaneSums<double>& pane = sums.panes.front();
    ASSERT_EQ(pane.bends.size(), 1U);
    EXPECT_GT(pane.bends[0].radius, 250.0 * 250 / 400 - 1);
    EXPECT_GT(pane.path.size(), 5U);
}

// The same ellipse run the other way bows in.
TEST(EllipticSide, bows_as_its_angles_run) {
    EXPECT_EQ(solve(case_with_front({ellipse_piece(400, 250, 0.2, 1.4)})).sides[0].bow(), Bow::out);
    EXPECT_EQ(solve(case_with_front({ellipse_piece(400, 250, 1.4, 0.2)})).sides[0].bow(), Bow::in);
}

// An ellipse with two like half axes is a circle: the arc's own figures.
TEST(EllipticSide, of_a_circle_is_the_arc) {
    const PaneSums<double> round =
        solve(case_with_front({ellipse_piece(420, 420, 0.3, 1.5)})).panes.front();
    const PaneSums<double> arc =
        solve(case_with_front({sample::arc_piece(420, 1.2)})).panes.front();
    constexpr double kFitted = 1e-7;  // of points worked out by sine and cosine, mm
    EXPECT_NEAR(round.length, arc.length, kFitted);
    EXPECT_NEAR(round.blank_length, arc.blank_length, kFitted);
    EXPECT_NEAR(round.rise, arc.rise, kFitted);
}

// Source: a parabola y = x²/(2p) from its vertex to x is p/2·(u·√(1+u²) + asinh u) long, u = x/p:
// handbooks of mathematics, arc length of the parabola.
TEST(CurvedSide, through_points_of_a_parabola_is_as_long_as_the_parabola) {
    constexpr double kParameter = 500;
    std::vector<std::array<double, 2>> points;
    for (int i = -20; i <= 20; ++i) {
        const double x = 20.0 * i;
        points.push_back({x, x * x / (2 * kParameter)});
    }
    const double u = 400 / kParameter;
    const double length = kParameter * (u * std::sqrt(1 + u * u) + std::asinh(u));
    // The line runs out straight at its ends, where a parabola does not: by 20 mm of it alone.
    EXPECT_NEAR(figure_of(case_with_front({curve_piece(points)}), "plan/front/piece-1/developed"),
                length, 2e-3);
}

TEST(CurvedSide, bends_to_both_sides_of_its_inflections) {
    const Case c = case_with_front(
        {curve_piece({{0, 0}, {150, -60}, {300, -70}, {450, 0}, {600, 40}, {750, 0}})});
    const PaneSums<double> pane = solve(c).panes.front();
    ASSERT_EQ(pane.bends.size(), 2U);
    EXPECT_EQ(pane.bends[0].bow, Bow::out);
    EXPECT_EQ(pane.bends[1].bow, Bow::in);
    EXPECT_NEAR(pane.bends[0].end, pane.bends[1].start, 1e-9);
}

TEST(CurvedSide, is_told_what_is_wrong_with_its_points) {
    const auto objection = [](PieceSpec piece) {
        const auto told = fit::objections(case_with_front({std::move(piece)}));
        return told.empty() ? Objection{} : told.front();
    };
    EXPECT_THAT(objection(curve_piece({{0, 0}, {300, 0}})).found, HasSubstr("through 2 points"));
    EXPECT_THAT(objection(curve_piece({{0, 0}, {300, 0}, {300, 0}, {400, 50}})).found,
                HasSubstr("points 2 and 3"));
    EXPECT_THAT(objection(curve_piece({{0, 0}, {300, 0}, {150, 200}, {150, -200}})).found,
                HasSubstr("crosses itself"));
    EXPECT_THAT(objection(ellipse_piece(300, 200, 1, 1)).found, HasSubstr("does not run"));
    EXPECT_THAT(objection(ellipse_piece(300, 200, 0, 7)).wanted, HasSubstr("360"));
    EXPECT_THAT(objection(ellipse_piece(300, 200, 0, 1, 5)).found, HasSubstr("5 mm"));
}

}  // namespace
}  // namespace bowfront::fit
