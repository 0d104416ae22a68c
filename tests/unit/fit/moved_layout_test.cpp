#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "bowfront/fit/layout.hpp"
#include "support/sample_case.hpp"

namespace bowfront::fit {
namespace {

/// Coordinates of a few hundred mm, a few operations each.
constexpr double kRounding = 1e-9;

constexpr TimberFactors<double> kStill{0, {1, 1, 1}, {1, 1, 1}, 1, 1, 1};

struct Built {
    Case c = sample::pilot_boat();
    CaseSums<double> sums = solve(c);
    Layout frame = layout(c, sums);
};

double area(const PostLayout& post) {
    double sum = 0;
    for (const Region& region : post.section) {
        sum += region.area();
    }
    return sum;
}

TEST(MovedLayout, is_the_same_where_nothing_moves) {
    const Built built;
    const Layout moved = layout_in(built.frame, kStill);
    for (const CaseSide corner : kFourSides) {
        const PostLayout& is = moved.posts[index(corner)];
        const PostLayout& was = built.frame.posts[index(corner)];
        EXPECT_NEAR(area(is), area(was), kRounding * area(was));
        EXPECT_NEAR(distance(is.at, was.at), 0, kRounding);
    }
    for (std::size_t i = 0; i < moved.base.grooves.size(); ++i) {
        const double was = built.frame.base.grooves[i].band.area();
        EXPECT_NEAR(moved.base.grooves[i].band.area(), was, kRounding * was);
    }
}

// Areas grow by the product of both stretches, but for what an arc is off an ellipse: the round ends,
// 2 % of a groove's area, by the 0.4 % that the stretches differ by.
TEST(MovedLayout, stretches_areas_by_both_factors) {
    const Built built;
    TimberFactors<double> factors = kStill;
    factors.base = {1.002, 1.006, 1};
    factors.post = 1.003;
    const Layout moved = layout_in(built.frame, factors);
    constexpr double kEllipse = 0.02 * 0.004;
    for (std::size_t i = 0; i < moved.base.grooves.size(); ++i) {
        const double was = built.frame.base.grooves[i].band.area();
        EXPECT_NEAR(moved.base.grooves[i].band.area() / was, 1.002 * 1.006, kEllipse)
            << side_text(moved.base.grooves[i].side);
    }
    for (const CaseSide corner : kFourSides) {
        const PostLayout& post = moved.posts[index(corner)];
        const double was = area(built.frame.posts[index(corner)]);
        EXPECT_NEAR(area(post), 1.003 * 1.003 * was, kRounding * was);
        EXPECT_NEAR(post.at.x, 1.002 * built.frame.posts[index(corner)].at.x, kRounding);
        EXPECT_NEAR(post.at.y, 1.006 * built.frame.posts[index(corner)].at.y, kRounding);
    }
}

double length_of(const std::vector<Segment>& chain) {
    double length = 0;
    for (const Segment& s : chain) {
        length += s.length();
    }
    return length;
}

// The openings on the drawn frame of each state against the sums', which integrate along the ellipse.
TEST(MovedLayout, leaves_the_openings_that_the_sums_say) {
    Case c = sample::pilot_boat();
    c.frame.post.sawn.value = PostSawn::rift;  // all posts move alike, as they are drawn
    const CaseSums<double> sums = solve(c);
    const Layout frame = layout(c, sums);
    Book<double> book;
    const TimberStates<double> timber = timber_states(c, book);
    for (const PaneSums<double>& pane : sums.panes) {
        for (std::size_t i = 0; i < kAirStates.size(); ++i) {
            const Layout moved = layout_in(frame, timber[i]);
            const double side = length_of(moved.line.sides[index(pane.side)]);
            const double in_posts = (pane.start_in_post + pane.end_in_post) * timber[i].post;
            // An arc is off the ellipse by a twentieth of its movement; base and top move alike.
            const double ellipse =
                kRounding + (pane.curved ? std::abs(side - pane.side_length) / 20 : 0);
            EXPECT_NEAR(side - in_posts, pane.states[i].opening_least, ellipse)
                << side_text(pane.side) << ' ' << i;
        }
    }
}

}  // namespace
}  // namespace bowfront::fit
