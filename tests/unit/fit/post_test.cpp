#include "bowfront/fit/post.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <random>

#include "bowfront/geom/region.hpp"
#include "support/sample_case.hpp"

namespace bowfront::fit {
namespace {

using std::numbers::pi;

// Halving an interval of 200 mm sixty times ends at the rounding of coordinates under 1 m; both
// ways then differ by some dozen roundings, mm.
constexpr double kBisected = 1e-10;

Post post(PostSection section, double width, double depth) {
    Post post = sample::pilot_boat().frame.post;
    post.section.value = section;
    post.width.value = width;
    post.depth.value = depth;
    return post;
}

struct Line {
    double angle;    // of the tangent away from the corner
    double radius;   // 0: straight
    bool turns_left;

    // The point at a length from the corner, which is the origin.
    [[nodiscard]] Point at(double length) const {
        if (radius == 0) {
            return Point{std::cos(angle), std::sin(angle)} * length;
        }
        const double sense = turns_left ? 1 : -1;
        const Point centre =
            Point{-std::sin(angle), std::cos(angle)} * (sense * radius);
        const double turned = angle - sense * pi / 2 + sense * length / radius;
        return centre + Point{std::cos(turned), std::sin(turned)} * radius;
    }
};

double solved(const Post& post, CornerDirections directions, const Line& line) {
    Book<double> book;
    return length_in_post(
        post, post_faces(post.section.value, directions),
        LeavingLine<double>{line.angle, line.radius != 0, line.turns_left, line.radius, "front",
                            "x"},
        book);
}

// Whether a point lies outside a convex outline, counter-clockwise and of straights, or outside the
// circle of a round post. Sharper than `where`, which takes points within kJoint as on the edge.
bool outside(const Post& post, const Contour& outline, Point p) {
    if (post.section.value == PostSection::round) {
        return norm(p) > post.width.value / 2;
    }
    for (const Segment& edge : outline.segments()) {
        if (cross(edge.to - edge.from, p - edge.from) < 0) {
            return true;
        }
    }
    return false;
}

// Where the line leaves the outline, by walking and halving.
double walked(const Post& post, const Contour& outline, const Line& line) {
    double in = 0;
    double out = 0;
    while (!outside(post, outline, line.at(out))) {
        in = out;
        out += 0.25;
    }
    for (int step = 0; step < 60; ++step) {
        const double middle = (in + out) / 2;
        (outside(post, outline, line.at(middle)) ? out : in) = middle;
    }
    return in;
}

// Source: geometry: half the width along a straight; R·asin(w/2R) along an arc (design of fitted
// posts), worked a second way by tests/reference/pilot_boat_sums.py.
TEST(LengthInPost, of_a_fitted_post_is_half_its_width_or_a_little_more_on_an_arc) {
    const Post fitted = post(PostSection::fitted, 42, 42);
    const CornerDirections corner{0, pi / 2};
    EXPECT_EQ(solved(fitted, corner, {0, 0, true}), 21);
    constexpr double kTenDecimals = 1e-10;
    EXPECT_NEAR(solved(fitted, corner, {0, 420, true}), 21.0087598584, kTenDecimals);
}

// Source: geometry: the chord from the corner to the circle is half the diameter, 2R·asin(w/4R).
TEST(LengthInPost, of_a_round_post_is_the_arc_over_its_radius) {
    const Post round = post(PostSection::round, 42, 42);
    const double length = solved(round, {0, pi / 2}, {0, 420, true});
    EXPECT_NEAR(2 * 420 * std::sin(length / 840), 21, kBisected);
    EXPECT_EQ(solved(round, {0, pi / 2}, {0, 0, true}), 21);
}

TEST(LengthInPost, agrees_with_walking_the_line_out_of_the_outline) {
    std::mt19937_64 random(19);
    const auto draw = [&](double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(random);
    };
    for (int i = 0; i < 300; ++i) {
        const double width = draw(15, 60);
        const double depth = width * draw(1, 1.8);
        // A front that leaves to the right, dropping by up to 75 degrees, and a side going back.
        const CornerDirections corner{-draw(0, 1.3), pi / 2};
        const double radius = draw(2 * depth, 20 * depth);
        const Line lines[] = {{corner.next, 0, true},
                              {corner.next, radius, true},
                              {corner.previous, 0, true}};
        for (const PostSection section :
             {PostSection::fitted, PostSection::square, PostSection::round}) {
            const bool round = section == PostSection::round;
            const Post p = post(section, width, round ? width : depth);
            const Contour outline = post_outline(p, corner, {0, 0});
            for (const Line& line : lines) {
                ASSERT_NEAR(solved(p, corner, line), walked(p, outline, line), kBisected)
                    << "seed 19, case " << i << ", section " << static_cast<int>(section)
                    << ", radius " << line.radius;
            }
        }
    }
}

TEST(LengthInPost, is_the_same_at_both_ends_of_a_front) {
    const Post square = post(PostSection::square, 36, 50);
    for (const double turn : {0.1, 0.6, 1.2}) {
        const double left = solved(square, {-turn, pi / 2}, {-turn, 400, true});
        const double right = solved(square, {pi / 2, pi + turn}, {pi + turn, 400, false});
        EXPECT_NEAR(left, right, kBisected);
    }
}

// Source: geometry. Two strips, 42 wide and ending 21 past the corner, square to each other.
TEST(PostOutline, of_a_fitted_post_on_a_square_corner_is_a_square) {
    const Contour outline = post_outline(post(PostSection::fitted, 42, 42), {0, pi / 2}, {100, 50});
    EXPECT_NEAR(outline.area(), 42 * 42, kBisected);
    EXPECT_NEAR(outline.box().low.x, 79, kBisected);
    EXPECT_NEAR(outline.box().high.y, 71, kBisected);
    EXPECT_EQ(outline.size(), 4U);
}

// Source: geometry. At a corner where the front drops by an angle a, the post is the square of both
// sides' strips less what lies past either end: points of the unit plane tested one by one.
TEST(PostOutline, of_a_fitted_post_holds_the_points_of_its_definition) {
    const double drop = 0.6675;
    const Post fitted = post(PostSection::fitted, 40, 44);
    const Contour outline = post_outline(fitted, {-drop, pi / 2}, {0, 0});
    const auto within = [&](Point p) {
        for (const double angle : {-drop, pi / 2}) {
            const double u = p.x * std::cos(angle) + p.y * std::sin(angle);
            const double n = -p.x * std::sin(angle) + p.y * std::cos(angle);
            if (u > 20 || std::abs(n) > 22) {
                return false;
            }
        }
        return true;
    };
    int inside = 0;
    constexpr double kStep = 0.25;
    for (double x = -40 + kStep / 2; x < 40; x += kStep) {
        for (double y = -40 + kStep / 2; y < 40; y += kStep) {
            const bool expected = within({x, y});
            ASSERT_EQ(where(outline, {x, y}) != Side::outside, expected) << x << ' ' << y;
            inside += expected ? 1 : 0;
        }
    }
    // Counting squares misses at most half a square for each along the edge.
    EXPECT_NEAR(outline.area(), inside * kStep * kStep, outline.perimeter() * kStep / 2);
}

TEST(PostOutline, of_a_round_post_is_a_circle_and_of_a_square_one_a_box) {
    EXPECT_NEAR(post_outline(post(PostSection::round, 42, 42), {-0.3, pi / 2}, {7, 8}).area(),
                pi * 21 * 21, kBisected);
    const Contour box = post_outline(post(PostSection::square, 36, 50), {-0.3, pi / 2}, {0, 0});
    EXPECT_NEAR(box.area(), 36 * 50, kBisected);
    // Width runs along the straight side (Y), depth across it.
    EXPECT_NEAR(box.box().width(), 50, kBisected);
    EXPECT_NEAR(box.box().height(), 36, kBisected);
}

}  // namespace
}  // namespace bowfront::fit
