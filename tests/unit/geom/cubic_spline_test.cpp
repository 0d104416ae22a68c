#include "bowfront/geom/cubic_spline.hpp"

#include <gtest/gtest.h>

#include <functional>
#include <numbers>

#include "bowfront/geom/smooth_curve.hpp"
#include "support/random_curves.hpp"

namespace bowfront {
namespace {

using std::numbers::pi;
using testing_support::Draw;
using testing_support::random_line;

/// Rounding of a few operations on coordinates under 1 m, mm.
constexpr double kRounding = 1e-12;

/// A line that is known otherwise, by a parameter.
struct KnownLine {
    std::function<Point(double)> at;
    std::function<Point(double)> direction;
};

SmoothCurve through(const KnownLine& line, double from, double to, int steps) {
    FreeLine free;
    for (int i = 0; i <= steps; ++i) {
        free.points.push_back(line.at(from + (to - from) * i / steps));
    }
    free.start_direction = line.direction(from);
    free.end_direction = line.direction(to);
    return SmoothCurve(free);
}

/// Fresnel's integrals ∫cos(π/2·u²), ∫sin(π/2·u²) from 0 to t.
/// Source: Abramowitz and Stegun, 7.3.11 and 7.3.13, power series
Point fresnel(double t) {
    const double half = pi / 2 * t * t;
    Point sum;
    double term = t;
    for (int n = 0; n < 40; ++n) {
        (n % 2 == 0 ? sum.x : sum.y) += (n % 4 < 2 ? term : -term) / (2 * n + 1);
        term *= half / (n + 1);
    }
    return sum;
}

Point fresnel_direction(double t) {
    return direction(pi / 2 * t * t);
}

TEST(CubicSpline, runs_through_its_points_as_smoothly_as_promised) {
    constexpr unsigned kCases = 60;
    for (unsigned seed = 0; seed < kCases; ++seed) {
        SCOPED_TRACE(seed);
        Draw draw(seed);
        const FreeLine line = random_line(draw);
        const CubicSpline spline(line);
        const std::vector<double> knots = spline.knots();
        ASSERT_EQ(knots.size(), line.points.size());
        EXPECT_EQ(knots.front(), 0);
        EXPECT_EQ(knots.back(), 1);
        for (std::size_t i = 0; i < knots.size(); ++i) {
            EXPECT_EQ(spline.derivatives(knots[i]).at, line.points[i]);
        }
        constexpr double kHair = 1e-9;
        for (std::size_t i = 1; i + 1 < knots.size(); ++i) {
            const auto before = spline.derivatives(knots[i] - kHair);
            const auto after = spline.derivatives(knots[i] + kHair);
            // Over two hairs a derivative changes by that much of the next one, 1e6 mm at the most.
            EXPECT_NEAR(distance(before.at, after.at), 0, 1e-5);
            EXPECT_NEAR(distance(before.first, after.first), 0, 1e-3);
            EXPECT_NEAR(distance(before.second, after.second), 0, 1e-1);
        }
    }
}

TEST(CubicSpline, starts_and_ends_as_it_is_told) {
    constexpr unsigned kCases = 60;
    for (unsigned seed = 0; seed < kCases; ++seed) {
        SCOPED_TRACE(seed);
        Draw draw(seed);
        const FreeLine line = random_line(draw);
        const SmoothCurve curve(line);
        const auto expect_end = [&](double t, const std::optional<Point>& given) {
            if (given) {
                EXPECT_NEAR(distance(curve.tangent(t), *given * (1 / norm(*given))), 0, kRounding);
            } else {
                EXPECT_NEAR(curve.curvature(t), 0, kRounding);
            }
        };
        expect_end(0, line.start_direction);
        expect_end(1, line.end_direction);
    }
}

// Source: the cubic through equally spaced points 0, 1, 0 with no curvature at its ends rises with
// slope 3/2 and falls again: y = 3/2·u − 1/2·u³ up to the middle.
TEST(CubicSpline, is_the_natural_spline) {
    const CubicSpline spline(FreeLine{{{-2, 0}, {0, 1}, {2, 0}}});
    EXPECT_NEAR(distance(spline.derivatives(0.25).at, {-1, 0.75 - 0.0625}), 0, kRounding);
    EXPECT_NEAR(distance(spline.derivatives(0.75).at, {1, 0.75 - 0.0625}), 0, kRounding);
    EXPECT_NEAR(spline.derivatives(0).first.y, 1.5 * 2, kRounding);
}

TEST(CubicSpline, spaces_its_points_as_it_is_told) {
    FreeLine line{{{0, 0}, {90, 0}, {90, 40}, {100, 40}}};
    const auto chords = CubicSpline(line).knots();
    EXPECT_NEAR(chords[1], 90.0 / 140, kRounding);
    EXPECT_NEAR(chords[2], 130.0 / 140, kRounding);
    line.spacing = PointSpacing::centripetal;
    const auto roots = CubicSpline(line).knots();
    const double whole = std::sqrt(90) + std::sqrt(40) + std::sqrt(10);
    EXPECT_NEAR(roots[1], std::sqrt(90) / whole, kRounding);
    EXPECT_NEAR(roots[2], (std::sqrt(90) + std::sqrt(40)) / whole, kRounding);
}

// Source: Floater and Surazhsky, Parameterization for curve interpolation, 2006: with chord lengths
// the error falls with the fourth power of the distances, however unevenly the points are spaced.
TEST(CubicSpline, comes_to_a_circle_with_the_fourth_power_of_the_spacing) {
    const auto strays = [](int steps) {
        FreeLine line;
        for (int i = 0; i <= steps; ++i) {
            const double u = static_cast<double>(i) / steps;
            line.points.push_back(direction(pi * (u + 0.06 * std::sin(3 * pi * u))) * 300);
        }
        line.start_direction = Point{0, 1};
        line.end_direction = Point{0, -1};
        const SmoothCurve curve(line);
        double most = 0;
        for (int i = 0; i <= 4000; ++i) {
            most = std::max(most, std::abs(norm(curve.at(i / 4000.0)) - 300));
        }
        return most;
    };
    const double coarse = strays(20);
    const double fine = strays(40);
    const double finest = strays(80);
    EXPECT_LT(coarse, 0.2);
    // 16 in the limit.
    EXPECT_GT(coarse / fine, 12);
    EXPECT_NEAR(fine / finest, 16, 3);
}

// Source: length of the parabola y = x²/(4f) from its vertex to x = c, elementary:
// c/2·√(1 + u²) + f·asinh(u) with u = c/(2f).
TEST(CubicSpline, comes_to_the_length_of_a_parabola) {
    const double f = 180;
    const double c = 260;
    const KnownLine parabola{[&](double x) {
                                 return Point{x, x * x / (4 * f)};
                             },
                             [&](double x) {
                                 return Point{1, x / (2 * f)};
                             }};
    const double u = c / (2 * f);
    const double expected = 2 * (c / 2 * std::sqrt(1 + u * u) + f * std::asinh(u));
    const double coarse = std::abs(through(parabola, -c, c, 20).length() - expected);
    const double fine = std::abs(through(parabola, -c, c, 40).length() - expected);
    EXPECT_LT(coarse, 1e-3);
    // Fourth order, 16 in the limit.
    EXPECT_NEAR(coarse / fine, 16, 4);
}

// Source: Abramowitz and Stegun, table 7.7: C(1) = 0.7798934, S(1) = 0.4382591. Along the clothoid
// the curvature is π·t for the length t.
TEST(CubicSpline, comes_to_the_clothoid) {
    constexpr double kSevenDecimals = 0.5e-7;
    EXPECT_NEAR(distance(fresnel(1), {0.7798934, 0.4382591}), 0, 2 * kSevenDecimals);
    const double scale = 300;
    const KnownLine clothoid{[&](double t) { return fresnel(t) * scale; }, fresnel_direction};
    const double coarse = std::abs(through(clothoid, -1, 1, 20).length() - 2 * scale);
    const SmoothCurve curve = through(clothoid, -1, 1, 40);
    const double fine = std::abs(curve.length() - 2 * scale);
    EXPECT_LT(coarse, 5e-3);
    EXPECT_NEAR(coarse / fine, 16, 4);
    ASSERT_EQ(curve.inflections().size(), 1);
    EXPECT_NEAR(curve.inflections()[0], 0.5, 1e-9);
    // The second derivative is right to the square of the spacing of 15 mm: π²/2·0.05² is 1 %.
    EXPECT_NEAR(curve.curvature(1) * scale, pi, 0.01 * pi);
    EXPECT_NEAR(curve.tightest().radius(), scale / pi, 0.01 * scale / pi);
}

TEST(CubicSpline, through_points_in_a_row_is_straight) {
    const SmoothCurve curve(FreeLine{{{0, 0}, {30, 10}, {150, 50}, {600, 200}}});
    EXPECT_NEAR(curve.length(), std::hypot(600, 200), 600 * kRounding);
    EXPECT_GT(curve.tightest().radius(), curve.length() / kStraightTurn);
    EXPECT_TRUE(curve.inflections().empty());
    EXPECT_FALSE(curve.self_crossing());
    const SmoothCurve level(FreeLine{{{0, 5}, {30, 5}}});
    EXPECT_TRUE(std::isinf(level.tightest().radius()));
}

TEST(CurveCrossing, is_found_where_a_line_loops) {
    const SmoothCurve loop(
        FreeLine{{{0, 0}, {200, 0}, {300, 80}, {200, 160}, {100, 80}, {200, -60}}});
    const auto found = loop.self_crossing();
    ASSERT_TRUE(found);
    EXPECT_NEAR(distance(loop.at(found->first), loop.at(found->second)), 0, 4 * kCrossing);
    EXPECT_GT(found->second - found->first, 0.2);
}

// Two pieces that turn so far that they meet again behind the point that joins them.
TEST(CurveCrossing, is_found_in_neighbouring_pieces) {
    FreeLine line{{{289, 77}, {77, 134}, {205, 54}}};
    line.start_direction = direction(-0.5);
    line.end_direction = direction(-1.7);
    const SmoothCurve curve(line);
    const auto found = curve.self_crossing();
    ASSERT_TRUE(found);
    EXPECT_NEAR(distance(curve.at(found->first), curve.at(found->second)), 0, 4 * kCrossing);
}

TEST(CurveCrossing, is_none_where_a_line_only_closes) {
    const std::vector<Point> ring{{0, 0}, {100, 0}, {150, 80}, {50, 160}, {-50, 80}, {0, 0}};
    EXPECT_FALSE(SmoothCurve(FreeLine{ring}).self_crossing());
    // But where it touches itself on the way it is.
    const std::vector<Point> eight{{0, 0}, {100, 60}, {200, 0}, {100, -60}, {0, 0}, {-90, 60}};
    EXPECT_TRUE(SmoothCurve(FreeLine{eight}).self_crossing());
}

TEST(CurveCrossing, begins_where_a_line_comes_down_to_touch_itself) {
    // Out along X, round, and down to the height g over the way out before it goes up again.
    const auto line = [](double g) {
        return SmoothCurve(FreeLine{{{0, 0},
                                     {200, 0},
                                     {400, 0},
                                     {500, 150},
                                     {300, 250},
                                     {100, 150},
                                     {200, g},
                                     {330, 120}}});
    };
    double touching = -40;
    double clear = 60;
    ASSERT_TRUE(line(touching).self_crossing());
    ASSERT_FALSE(line(clear).self_crossing());
    while (clear - touching > kCrossing / 10) {
        const double middle = (touching + clear) / 2;
        (line(middle).self_crossing() ? touching : clear) = middle;
    }
    const SmoothCurve curve = line(clear);
    double least = HUGE_VAL;
    constexpr int kPlaces = 2000;
    for (int i = 0; i <= kPlaces; ++i) {
        for (int j = 0; j <= kPlaces; ++j) {
            least = std::min(
                least, distance(curve.at(0.25 * i / kPlaces), curve.at(0.75 + 0.25 * j / kPlaces)));
        }
    }
    // The walks' places lie some 0.2 mm apart on lines that touch, so one pair stands within that
    // along the line, and far less across it.
    EXPECT_LT(least, 0.15);
    EXPECT_GT(least, kCrossing / 2);
}

TEST(CurveCrossing, agrees_with_a_fine_polygon) {
    constexpr unsigned kCases = 240;
    constexpr int kSides = 400;
    int crossed = 0;
    for (unsigned seed = 0; seed < kCases; ++seed) {
        SCOPED_TRACE(seed);
        Draw draw(seed);
        FreeLine line;
        // Few points with strong turns at the ends, or more without.
        const int count = seed % 2 == 0 ? 3 : 6;
        for (int i = 0; i < count; ++i) {
            line.points.push_back({draw.between(0, 300) + 40 * i, draw.between(0, 300)});
        }
        if (count == 3) {
            line.start_direction = direction(draw.between(-4, 4));
            line.end_direction = direction(draw.between(-4, 4));
        }
        const SmoothCurve curve(line);
        std::vector<Point> polygon;
        for (int i = 0; i <= kSides; ++i) {
            polygon.push_back(curve.at(static_cast<double>(i) / kSides));
        }
        const auto side = [&](std::size_t i, Point p) {
            return cross(polygon[i + 1] - polygon[i], p - polygon[i]);
        };
        bool expected = false;
        for (std::size_t i = 0; i + 1 < polygon.size(); ++i) {
            for (std::size_t j = i + 2; j + 1 < polygon.size(); ++j) {
                expected = expected || (side(i, polygon[j]) * side(i, polygon[j + 1]) < 0 &&
                                        side(j, polygon[i]) * side(j, polygon[i + 1]) < 0);
            }
        }
        EXPECT_EQ(curve.self_crossing().has_value(), expected);
        crossed += expected ? 1 : 0;
    }
    EXPECT_GT(crossed, 40);
    EXPECT_LT(crossed, 200);
}

}  // namespace
}  // namespace bowfront
