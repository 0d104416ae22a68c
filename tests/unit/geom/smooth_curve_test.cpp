#include "bowfront/geom/smooth_curve.hpp"

#include <gtest/gtest.h>

#include <array>
#include <numbers>

#include "bowfront/base/contract.hpp"
#include "support/random_curves.hpp"

namespace bowfront {
namespace {

using std::numbers::pi;
using testing_support::Draw;
using testing_support::random_curve;

/// What the curve promises of its lengths, as a share of them.
constexpr double kLengthShare = 1e-10;
/// Rounding of a few operations on coordinates under 1 m, mm.
constexpr double kRounding = 1e-12;

EllipticArc ellipse(double semi_x, double semi_y, double from = 0, double to = 2 * pi) {
    return {.centre = {30, -20},
            .semi_x = semi_x,
            .semi_y = semi_y,
            .rotation = 0.3,
            .from = from,
            .to = to};
}

/// Source: complete elliptic integral of the second kind; the standard library's.
double perimeter_of_ellipse(double larger, double smaller) {
    const double k = std::sqrt(1 - smaller * smaller / (larger * larger));
    return 4 * larger * std::comp_ellint_2(k);
}

/// A length by inscribed polygons of 64 to 2048 sides for each analytic piece, with the errors of
/// second, fourth, ... order taken out in turn. Source: Romberg's extrapolation.
double length_by_polygons(const SmoothCurve& curve) {
    const auto inscribed = [&](double from, double to, int sides) {
        double sum = 0;
        Point before = curve.at(from);
        for (int i = 1; i <= sides; ++i) {
            const Point next = curve.at(i < sides ? from + (to - from) * i / sides : to);
            sum += distance(before, next);
            before = next;
        }
        return sum;
    };
    double total = 0;
    const auto pieces = curve.pieces();
    for (std::size_t i = 1; i < pieces.size(); ++i) {
        std::array<double, 6> row{};
        for (std::size_t k = 0; k < row.size(); ++k) {
            row[k] = inscribed(pieces[i - 1], pieces[i], 64 << k);
        }
        for (std::size_t order = 1; order < row.size(); ++order) {
            for (std::size_t k = row.size() - 1; k >= order; --k) {
                row[k] += (row[k] - row[k - 1]) / (std::pow(4, static_cast<double>(order)) - 1);
            }
        }
        total += row.back();
    }
    return total;
}

// Source: Abramowitz and Stegun, Handbook of Mathematical Functions, table 17.1: E(m) to nine
// decimals for m = 0.25, 0.5 and 0.75, with m = 1 − b²/a²; the perimeter is 4·a·E.
TEST(Ellipse, has_the_perimeter_of_the_handbook) {
    constexpr double kNineDecimals = 0.5e-9;
    const double a = 1;
    EXPECT_NEAR(SmoothCurve(ellipse(a, std::sqrt(0.75))).length() / 4, 1.467462209, kNineDecimals);
    EXPECT_NEAR(SmoothCurve(ellipse(a, std::sqrt(0.5))).length() / 4, 1.350643881, kNineDecimals);
    EXPECT_NEAR(SmoothCurve(ellipse(a, 0.5)).length() / 4, 1.211056028, kNineDecimals);
}

TEST(Ellipse, has_the_perimeter_of_the_elliptic_integral) {
    for (const double smaller : {300.0, 299.9, 150.0, 30.0, 3.0, 0.1}) {
        const double expected = perimeter_of_ellipse(300, smaller);
        EXPECT_NEAR(SmoothCurve(ellipse(300, smaller)).length(), expected, expected * kLengthShare);
        EXPECT_NEAR(SmoothCurve(ellipse(smaller, 300)).length(), expected, expected * kLengthShare);
    }
}

// Source: incomplete elliptic integral of the second kind; the standard library's. Run from the end
// of the smaller half axis the length is b·E(φ, m).
TEST(Ellipse, has_the_length_of_the_elliptic_integral_up_to_every_angle) {
    const SmoothCurve arc(ellipse(90, 260, 0, 1.9));
    const double k = std::sqrt(1 - 90.0 * 90 / (260.0 * 260));
    for (int i = 0; i <= 40; ++i) {
        const double t = i / 40.0;
        EXPECT_NEAR(arc.length_to(t), 260 * std::ellint_2(k, 1.9 * t), 600 * kLengthShare) << t;
    }
}

TEST(Ellipse, bends_most_at_the_ends_of_its_long_axis) {
    const SmoothCurve whole(ellipse(300, 150, 0.5, 0.5 + 2 * pi));
    const TightestBend bend = whole.tightest();
    EXPECT_NEAR(bend.radius(), 150.0 * 150 / 300, 300 * kRounding);
    EXPECT_NEAR(bend.parameter, (pi - 0.5) / (2 * pi), kRounding);
    EXPECT_GT(bend.curvature, 0);
    // A part without such an end bends most at its own end, and clockwise it turns to the right.
    const SmoothCurve part(ellipse(300, 150, 2.4, 0.6));
    EXPECT_EQ(part.tightest().parameter, 1);
    EXPECT_LT(part.tightest().curvature, 0);
    EXPECT_TRUE(whole.inflections().empty());
    EXPECT_FALSE(whole.self_crossing());
}

TEST(Ellipse, of_equal_axes_is_a_circle) {
    const SmoothCurve circle(ellipse(420, 420, 0.2, 1.4));
    EXPECT_NEAR(circle.length(), 420 * 1.2, 420 * kLengthShare);
    for (const double t : {0.0, 0.3, 1.0}) {
        EXPECT_NEAR(distance(circle.at(t), {30, -20}), 420, 500 * kRounding);
        EXPECT_NEAR(circle.curvature(t) * 420, 1, kRounding);
    }
}

TEST(SmoothCurve, has_the_length_that_polygons_tend_to) {
    constexpr unsigned kCases = 60;
    for (unsigned seed = 0; seed < kCases; ++seed) {
        SCOPED_TRACE(seed);
        Draw draw(seed);
        const SmoothCurve curve = random_curve(draw);
        // The polygons' thousands of sides are each rounded to 1e-13 mm.
        constexpr double kPolygons = 1e-9;
        EXPECT_NEAR(curve.length(), length_by_polygons(curve), kPolygons);
    }
}

TEST(SmoothCurve, finds_the_parameter_of_a_length) {
    constexpr unsigned kCases = 60;
    for (unsigned seed = 0; seed < kCases; ++seed) {
        SCOPED_TRACE(seed);
        Draw draw(seed);
        const SmoothCurve curve = random_curve(draw);
        EXPECT_EQ(curve.length_to(0), 0);
        EXPECT_EQ(curve.length_to(1), curve.length());
        EXPECT_EQ(curve.parameter_at(0), 0);
        EXPECT_EQ(curve.parameter_at(curve.length()), 1);
        double before = 0;
        for (int i = 1; i < 50; ++i) {
            const double length = curve.length() * i / 50;
            const double t = curve.parameter_at(length);
            EXPECT_GT(t, before);
            EXPECT_NEAR(curve.length_to(t), length, curve.length() * 1e-14);
            before = t;
        }
    }
}

TEST(SmoothCurve, has_the_tangent_and_curvature_of_its_places) {
    constexpr unsigned kCases = 60;
    constexpr double kStep = 1e-4;
    for (unsigned seed = 0; seed < kCases; ++seed) {
        SCOPED_TRACE(seed);
        Draw draw(seed);
        const SmoothCurve curve = random_curve(draw);
        // Differences over a step are off by the step's square times the third derivative, which is
        // under 1e5 of the speed here, and by what the kink of the third derivative in a knot does.
        constexpr double kByDifference = 1e-3;
        for (int i = 1; i < 20; ++i) {
            const double t = i / 20.0;
            const Point a = curve.at(t - kStep);
            const Point b = curve.at(t);
            const Point c = curve.at(t + kStep);
            const Point mean = (c - a) * (1 / distance(a, c));
            EXPECT_NEAR(distance(curve.tangent(t), mean), 0, kByDifference) << t;
            // The circle through three points. Source: 4·area over the product of the sides.
            const double circle =
                2 * cross(b - a, c - a) / (distance(a, b) * distance(b, c) * distance(a, c));
            EXPECT_NEAR(curve.curvature(t), circle,
                        kByDifference * (std::abs(curve.curvature(t)) + 0.1))
                << t;
        }
    }
}

TEST(SmoothCurve, bends_nowhere_more_than_at_its_tightest) {
    constexpr unsigned kCases = 100;
    for (unsigned seed = 0; seed < kCases; ++seed) {
        SCOPED_TRACE(seed);
        Draw draw(seed);
        const SmoothCurve curve = random_curve(draw);
        const TightestBend bend = curve.tightest();
        EXPECT_DOUBLE_EQ(curve.curvature(bend.parameter), bend.curvature);
        for (int i = 0; i <= 5000; ++i) {
            const double here = std::abs(curve.curvature(i / 5000.0));
            ASSERT_LE(here, std::abs(bend.curvature) * (1 + kRounding)) << i;
        }
    }
}

TEST(SmoothCurve, turns_the_other_way_behind_each_inflection) {
    constexpr unsigned kCases = 100;
    std::size_t all = 0;
    for (unsigned seed = 0; seed < kCases; ++seed) {
        SCOPED_TRACE(seed);
        Draw draw(seed);
        const SmoothCurve curve = random_curve(draw);
        const std::vector<double> found = curve.inflections();
        all += found.size();
        // What turns between two of them turns one way; and then the other.
        std::vector<double> ends{0};
        ends.insert(ends.end(), found.begin(), found.end());
        ends.push_back(1);
        double last = 0;
        for (std::size_t i = 1; i < ends.size(); ++i) {
            const double way = curve.curvature((ends[i - 1] + ends[i]) / 2);
            EXPECT_LT(way * last, way == 0 ? 1 : last == 0 ? 1 : 0);
            for (int k = 1; k < 200; ++k) {
                const double t = ends[i - 1] + (ends[i] - ends[i - 1]) * k / 200;
                ASSERT_GE(curve.curvature(t) * std::copysign(1.0, way), -kRounding) << t;
            }
            last = way;
        }
    }
    EXPECT_GT(all, kCases / 2);
}

TEST(SmoothCurve, keeps_its_measures_when_moved_mirrored_or_reversed) {
    constexpr unsigned kCases = 60;
    for (unsigned seed = 0; seed < kCases; ++seed) {
        SCOPED_TRACE(seed);
        Draw draw(seed);
        const SmoothCurve curve = random_curve(draw);
        const Motion motion{.angle = draw.between(-4, 4),
                            .shift = {draw.between(-500, 500), draw.between(-500, 500)},
                            .mirrored = draw.heads()};
        const SmoothCurve there = curve.moved(motion);
        const SmoothCurve back = curve.reversed();
        const double side = motion.mirrored ? -1 : 1;
        EXPECT_NEAR(there.length(), curve.length(), curve.length() * kLengthShare);
        EXPECT_NEAR(back.length(), curve.length(), curve.length() * kLengthShare);
        for (int i = 0; i <= 20; ++i) {
            const double t = i / 20.0;
            // Curvature is a quotient of products of coordinates of the hodograph.
            const double bending = kRounding * 100 * (1 + std::abs(curve.curvature(t)));
            EXPECT_NEAR(distance(there.at(t), motion(curve.at(t))), 0, 10 * kRounding);
            EXPECT_NEAR(there.curvature(t), side * curve.curvature(t), bending);
            EXPECT_NEAR(distance(back.at(1 - t), curve.at(t)), 0, 10 * kRounding);
            EXPECT_NEAR(back.curvature(1 - t), -curve.curvature(t), bending);
        }
    }
}

TEST(SmoothCurve, holds_callers_to_the_ranges) {
    const SmoothCurve curve(ellipse(300, 150));
    EXPECT_THROW((void)curve.at(-0.1), ContractError);
    EXPECT_THROW((void)curve.tangent(1.1), ContractError);
    EXPECT_THROW((void)curve.curvature(std::nan("")), ContractError);
    EXPECT_THROW((void)curve.length_to(1.1), ContractError);
    EXPECT_THROW((void)curve.parameter_at(curve.length() * 1.001), ContractError);
    EXPECT_THROW((void)SmoothCurve(ellipse(0, 150)), ContractError);
    EXPECT_THROW((void)SmoothCurve(ellipse(300, 150, 1, 1)), ContractError);
    EXPECT_THROW((void)SmoothCurve(ellipse(300, 150, 0, 6.3)), ContractError);
    EXPECT_THROW((void)SmoothCurve(FreeLine{{{0, 0}}}), ContractError);
    EXPECT_THROW((void)SmoothCurve(FreeLine{{{0, 0}, {10, 0}, {10, 0}}}), ContractError);
    EXPECT_THROW(
        (void)SmoothCurve(FreeLine{.points = {{0, 0}, {10, 0}}, .start_direction = Point{}}),
        ContractError);
}

}  // namespace
}  // namespace bowfront
