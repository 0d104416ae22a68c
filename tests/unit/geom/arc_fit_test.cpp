#include "bowfront/geom/arc_fit.hpp"

#include <gtest/gtest.h>

#include <numbers>

#include "bowfront/base/contract.hpp"
#include "bowfront/geom/region.hpp"
#include "support/random_curves.hpp"

namespace bowfront {
namespace {

using std::numbers::pi;
using testing_support::Draw;
using testing_support::random_curve;

constexpr unsigned kCases = 24;
/// Rounding of a few operations on coordinates under 1 m, mm.
constexpr double kRounding = 1e-12;
/// How far the direction may jump in a joint, rad.
constexpr double kJointAngle = 1e-9;

/// The front of a case: half an ellipse, 520 mm wide and 90 mm deep.
EllipticArc elliptic_front() {
    return {.centre = {}, .semi_x = 260, .semi_y = 90, .rotation = 0, .from = pi, .to = 2 * pi};
}

double distance_to(const std::vector<Segment>& chain, Point p) {
    double least = HUGE_VAL;
    for (const Segment& segment : chain) {
        least = std::min(least, segment.distance_to(p));
    }
    return least;
}

double turn_of(const std::vector<Segment>& chain) {
    double sum = 0;
    for (const Segment& segment : chain) {
        sum += std::abs(segment.sweep());
    }
    return sum;
}

TEST(ArcFit, stays_within_the_chord_error) {
    for (unsigned seed = 0; seed < kCases; ++seed) {
        for (const double error : {2.0, 0.1, 0.003}) {
            SCOPED_TRACE(testing::Message() << seed << ' ' << error);
            Draw draw(seed);
            const SmoothCurve curve = random_curve(draw);
            if (curve.tightest().radius() <= error) {
                continue;
            }
            const ArcFit fit = fit_arcs(curve, error);
            double most = 0;
            constexpr int kPlaces = 1500;
            for (int i = 0; i <= kPlaces; ++i) {
                const Point p = curve.at(static_cast<double>(i) / kPlaces);
                most = std::max(most, distance_to(fit.chain, p));
            }
            EXPECT_LE(most, error);
            EXPECT_LE(fit.deviation, error);
            // What is reported is no less than what a dense walk finds, but for what the fit states
            // that it may miss.
            EXPECT_LE(most, fit.deviation * 1.01 + kRounding);
        }
    }
}

TEST(ArcFit, has_no_place_far_from_the_curve) {
    for (unsigned seed = 0; seed < kCases; ++seed) {
        SCOPED_TRACE(seed);
        Draw draw(seed);
        const SmoothCurve curve = random_curve(draw);
        constexpr double kError = 0.5;
        const ArcFit fit = fit_arcs(curve, kError);
        constexpr int kPlaces = 3000;
        std::vector<Point> walk;
        for (int i = 0; i <= kPlaces; ++i) {
            walk.push_back(curve.at(static_cast<double>(i) / kPlaces));
        }
        const double step = 3 * curve.length() / kPlaces;
        for (const Segment& segment : fit.chain) {
            for (const double share : {0.2, 0.5, 0.8}) {
                double least = HUGE_VAL;
                for (const Point& p : walk) {
                    least = std::min(least, distance(p, segment.at(share)));
                }
                // Beside the place that is nearest the walk has one within half a step.
                EXPECT_LE(least, std::hypot(kError, step / 2));
            }
        }
    }
}

TEST(ArcFit, runs_on_smoothly_from_end_to_end) {
    for (unsigned seed = 0; seed < kCases; ++seed) {
        for (const double error : {0.1, 1e-4}) {
            SCOPED_TRACE(testing::Message() << seed << ' ' << error);
            Draw draw(seed);
            const SmoothCurve curve = random_curve(draw);
            const auto chain = fit_arcs(curve, error).chain;
            EXPECT_EQ(chain.front().from, curve.at(0));
            EXPECT_EQ(chain.back().to, curve.at(1));
            EXPECT_LT(distance(chain.front().tangent(0), curve.tangent(0)), kJointAngle);
            EXPECT_LT(distance(chain.back().tangent(1), curve.tangent(1)), kJointAngle);
            for (std::size_t i = 1; i < chain.size(); ++i) {
                EXPECT_EQ(chain[i - 1].to, chain[i].from);
                EXPECT_LT(distance(chain[i - 1].tangent(1), chain[i].tangent(0)), kJointAngle);
                EXPECT_LE(std::abs(chain[i].bulge), 1);
            }
        }
    }
}

TEST(ArcFit, needs_no_fewer_arcs_for_a_smaller_error) {
    for (unsigned seed = 0; seed < kCases / 2; ++seed) {
        SCOPED_TRACE(seed);
        Draw draw(seed);
        const SmoothCurve curve = random_curve(draw);
        std::size_t before = 1;
        for (double error = 1; error > 1e-4; error *= 0.8) {
            // Of two arcs that are of one circle by chance one is made.
            const std::size_t now = fit_arcs(curve, error).chain.size();
            EXPECT_GE(now + 1, before) << error;
            before = now;
        }
    }
}

// Source: Meek and Walton, Approximating smooth planar curves by arc splines, 1995: the error goes
// with the cube of the spacing, so a thousandth of it takes ten times as many arcs.
TEST(ArcFit, takes_arcs_with_the_cube_root_of_the_error) {
    for (unsigned seed = 0; seed < kCases / 2; ++seed) {
        SCOPED_TRACE(seed);
        Draw draw(seed);
        const SmoothCurve curve = random_curve(draw);
        const auto arcs = [&](double error) {
            return static_cast<double>(fit_arcs(curve, error).chain.size());
        };
        EXPECT_NEAR(arcs(1e-5) / arcs(1e-2), 10, 3);
    }
}

TEST(ArcFit, turns_by_no_more_than_a_quarter_turn_at_once) {
    // Nearly a circle: one biarc would be near enough, but would turn by some 150 degrees.
    const EllipticArc bow{
        .centre = {}, .semi_x = 300, .semi_y = 290, .rotation = 0, .from = 0.3, .to = 2.9};
    const auto chain = fit_arcs(SmoothCurve(bow), 20).chain;
    EXPECT_EQ(chain.size(), 4);
    for (std::size_t i = 0; i + 1 < chain.size(); i += 2) {
        EXPECT_LE(chain[i].sweep() + chain[i + 1].sweep(), pi / 2 + kJointAngle);
    }
}

TEST(ArcFit, of_an_elliptic_front_takes_a_few_dozen_arcs) {
    const ArcFit fit = fit_arcs(SmoothCurve(elliptic_front()), 0.01);
    EXPECT_EQ(fit.chain.size(), 39);
    // It is the same to the left and to the right.
    for (std::size_t i = 0; i < fit.chain.size(); ++i) {
        const Segment& left = fit.chain[i];
        const Segment& right = fit.chain[fit.chain.size() - 1 - i];
        // The cuts are found to the rounding of a share of some hundred steps.
        EXPECT_NEAR(distance(left.from, {-right.to.x, right.to.y}), 0, 1e-9);
    }
}

// Along a chain that keeps a distance d from the curve the length differs by ∫κ·d, at most the
// deviation times the turn; what the chain runs to and fro is of the second order and allowed for
// by one rad more.
TEST(ArcFit, has_the_developed_length_in_the_limit) {
    for (unsigned seed = 0; seed < kCases; ++seed) {
        SCOPED_TRACE(seed);
        Draw draw(seed);
        const SmoothCurve curve = random_curve(draw);
        for (const double error : {1e-2, 1e-3, 1e-4}) {
            const ArcFit fit = fit_arcs(curve, error);
            EXPECT_EQ(fit.developed, curve.length());
            EXPECT_NEAR(fit.length, Path{fit.chain}.length(), fit.length * kRounding);
            EXPECT_NEAR(fit.length, fit.developed, error * (turn_of(fit.chain) + 1)) << error;
        }
    }
}

TEST(ArcFit, of_a_moved_or_mirrored_curve_is_the_chain_moved) {
    for (unsigned seed = 0; seed < kCases; ++seed) {
        SCOPED_TRACE(seed);
        Draw draw(seed);
        const SmoothCurve curve = random_curve(draw);
        const Motion motion{.angle = draw.between(-4, 4),
                            .shift = {draw.between(-500, 500), draw.between(-500, 500)},
                            .mirrored = seed % 2 == 0};
        const Path here = Path{fit_arcs(curve, 0.02).chain}.moved(motion);
        const auto there = fit_arcs(curve.moved(motion), 0.02).chain;
        ASSERT_EQ(there.size(), here.segments.size());
        // Cuts are shares of some hundred steps of cube roots of small differences of curvature: a
        // part in 1e9 of the length.
        constexpr double kCut = 1e-6;
        for (std::size_t i = 0; i < there.size(); ++i) {
            EXPECT_NEAR(distance(there[i].to, here.segments[i].to), 0, kCut);
            EXPECT_NEAR(there[i].bulge, here.segments[i].bulge, kCut);
        }
        EXPECT_NEAR(Path{there}.length(), here.length(), 1e-9);
    }
}

TEST(ArcFit, is_the_same_whichever_way_the_curve_is_run) {
    for (unsigned seed = 0; seed < kCases; ++seed) {
        SCOPED_TRACE(seed);
        Draw draw(seed);
        const SmoothCurve curve = random_curve(draw);
        const auto forth = fit_arcs(curve, 0.02).chain;
        const auto back = fit_arcs(curve.reversed(), 0.02).chain;
        ASSERT_EQ(back.size(), forth.size());
        for (std::size_t i = 0; i < forth.size(); ++i) {
            EXPECT_NEAR(distance(back[i].from, forth[forth.size() - 1 - i].to), 0, 1e-6);
        }
        EXPECT_NEAR(Path{back}.length(), Path{forth}.length(), 1e-9);
    }
}

TEST(ArcFit, of_a_circle_is_its_arcs) {
    for (const double radius : {37.7, 420.0, 1234.5}) {
        for (const double from : {0.0, 0.3, -2.1, 3.9}) {
            SCOPED_TRACE(testing::Message() << radius << ' ' << from);
            EllipticArc circle{.centre = {5, 7},
                               .semi_x = radius,
                               .semi_y = radius,
                               .rotation = 0,
                               .from = from,
                               .to = from + 2 * pi};
            // Cut in four, so that two and two make half a turn.
            const ArcFit round = fit_arcs(SmoothCurve(circle), kFinestChordError);
            EXPECT_EQ(round.chain.size(), 2);
            EXPECT_NEAR(round.length, 2 * pi * radius, 1e-9);
            circle.to = from + 1.2;
            const ArcFit part = fit_arcs(SmoothCurve(circle), kFinestChordError);
            ASSERT_EQ(part.chain.size(), 1);
            EXPECT_NEAR(part.chain[0].radius(), radius, 1e-9);
            EXPECT_NEAR(part.deviation, 0, 1e-9);
        }
    }
}

TEST(ArcFit, of_a_straight_line_is_a_straight) {
    const SmoothCurve line(FreeLine{{{0, 0}, {30, 10}, {150, 50}, {600, 200}}});
    const ArcFit fit = fit_arcs(line, kFinestChordError);
    ASSERT_EQ(fit.chain.size(), 1);
    EXPECT_TRUE(fit.chain[0].straight());
}

// Source: Pappus; a band of even width has the area of its width times the length of its middle.
TEST(ArcFit, makes_a_groove) {
    const ArcFit fit = fit_arcs(SmoothCurve(elliptic_front()), 0.01);
    const Contour groove = band(fit.chain, 4.8, BandEnd::square, BandEnd::square);
    EXPECT_NEAR(groove.area(), 4.8 * fit.length, 1e-9);
}

TEST(ArcFit, holds_callers_to_the_ranges) {
    const SmoothCurve curve(elliptic_front());
    EXPECT_THROW((void)fit_arcs(curve, 0.9 * kFinestChordError), ContractError);
    EXPECT_THROW((void)fit_arcs(curve, 32), ContractError);  // 90²/260 is 31.2 mm
    EXPECT_NO_THROW((void)fit_arcs(curve, 31));
}

}  // namespace
}  // namespace bowfront
