#include "bowfront/fit/layout.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "bowfront/fit/checks.hpp"
#include "support/sample_case.hpp"

namespace bowfront::fit {
namespace {

using std::numbers::pi;

// Some dozens of operations on coordinates under 1 m, mm; areas are up to 2e5 times as large.
constexpr double kRounding = 1e-10;
constexpr double kAreaRounding = 1e-8;

Layout laid_out(const Case& c) { return layout(c, solve(c)); }

double area(const Contour& contour) { return contour.area(); }

double area_of_arc_over(double chord, double radius) {
    const double sweep = 2 * std::asin(chord / (2 * radius));
    return radius * radius / 2 * (sweep - std::sin(sweep));
}

TEST(GlazingLine, runs_counter_clockwise_through_the_corner_points) {
    const Case c = sample::pilot_boat();
    const GlazingLine line = glazing_line(c.plan);
    EXPECT_EQ(line.corners[index(CaseSide::front)], (Point{-260, 0}));
    EXPECT_EQ(line.corners[index(CaseSide::right)], (Point{260, 0}));
    EXPECT_EQ(line.corners[index(CaseSide::back)], (Point{260, 240}));
    EXPECT_EQ(line.corners[index(CaseSide::left)], (Point{-260, 240}));
    std::vector<Segment> all;
    for (const auto& side : line.sides) {
        all.insert(all.end(), side.begin(), side.end());
    }
    // Plan of 520 by 240 and the segment of the circle before it.
    EXPECT_NEAR(Contour::from_segments(all).area(), 520 * 240 + area_of_arc_over(520, 420),
                kAreaRounding);
    // The crown bows towards −Y by the rise (sums done a second way).
    constexpr double kTenDecimals = 1e-10;
    EXPECT_NEAR(Contour::from_segments(all).box().low.y, -90.1515499506, kTenDecimals);
}

TEST(GlazingLine, leaves_each_corner_along_its_sides_tangents) {
    const Case c = sample::pilot_boat();
    const GlazingLine line = glazing_line(c.plan);
    for (const CaseSide side : kFourSides) {
        const auto& chain = line.sides[index(side)];
        const Point start = direction(line.directions[index(side)].next);
        EXPECT_NEAR(distance(start, chain.front().tangent(0)), 0, kRounding);
        const Point end = direction(line.directions[line.next(index(side))].previous);
        EXPECT_NEAR(distance(end, chain.back().tangent(1) * -1), 0, kRounding);
    }
}

TEST(Stretch, takes_the_piece_between_two_lengths_and_runs_on_past_the_ends) {
    const Case c = sample::pilot_boat();
    const auto front = glazing_line(c.plan).sides[index(CaseSide::front)];
    double whole = 0;
    for (const Segment& s : front) {
        whole += s.length();
    }
    for (const auto& [from, to] :
         {std::pair{10.0, 500.0}, std::pair{-15.0, 20.0}, std::pair{200.0, whole + 30}}) {
        double length = 0;
        for (const Segment& s : stretch(front, from, to)) {
            length += s.length();
            EXPECT_NEAR(s.radius(), 420, kRounding);
        }
        EXPECT_NEAR(length, to - from, kRounding);
        EXPECT_NEAR(distance(stretch(front, from, to).front().from, point_at(front, from)), 0,
                    kRounding);
    }
}

// Source: the plate's definition: every straight and arc set out square to itself by the margin and
// extended to where it meets its neighbours. For the pilot boat: sides at x = ±284, back at
// y = 264, and the circle of R + 24 about the front's centre; all worked out on their own here.
TEST(SetOut, keeps_the_margin_from_every_side) {
    const Case c = sample::pilot_boat();
    const auto plate = set_out(glazing_line(c.plan), 24);
    ASSERT_TRUE(plate.has_value());
    const Box box = plate->box();
    EXPECT_NEAR(box.low.x, -284, kRounding);
    EXPECT_NEAR(box.high.x, 284, kRounding);
    EXPECT_NEAR(box.high.y, 264, kRounding);
    const double centre = std::sqrt(420.0 * 420 - 260 * 260);
    EXPECT_NEAR(box.low.y, centre - 444, kRounding);
    // Where the circle meets the sides.
    const double corner = centre - std::sqrt(444.0 * 444 - 284 * 284);
    EXPECT_NEAR(plate->area(), 568 * (264 - corner) + area_of_arc_over(568, 444), kAreaRounding);
}

TEST(SetOut, of_a_rectangle_is_a_larger_rectangle) {
    const Case c = sample::straight_front();
    const auto plate = set_out(glazing_line(c.plan), 30);
    ASSERT_TRUE(plate.has_value());
    EXPECT_NEAR(plate->area(), 580 * 300, kAreaRounding);
}

TEST(SetOut, goes_the_long_way_round_a_front_of_more_than_half_a_turn) {
    Case c = sample::pilot_boat();
    c.plan.front = FrontArc{ArcMeasure::sweep, sample::given(4.4, "/plan/front/sweep")};
    const auto plate = set_out(glazing_line(c.plan), 24);
    ASSERT_TRUE(plate.has_value());
    const double radius = 260 / std::sin(2.2) + 24;
    const double centre = 260 / std::tan(2.2);  // in front of the chord: negative
    const double corner = centre + std::sqrt(radius * radius - 284 * 284);
    const double minor = 2 * std::asin(284 / radius);
    const double major = radius * radius / 2 * (2 * pi - minor + std::sin(minor));
    EXPECT_NEAR(plate->area(), 568 * (264 - corner) + major, kAreaRounding);
}

TEST(PostGroove, is_straight_along_the_tangent_where_the_line_enters) {
    const Case c = sample::pilot_boat();
    const auto sums = solve(c);
    const Layout frame = layout(c, sums);
    const PostLayout& post = frame.posts[index(CaseSide::front)];
    ASSERT_EQ(post.grooves.size(), 2U);
    const PostGroove& groove = post.grooves[0];
    EXPECT_EQ(groove.side, CaseSide::front);
    EXPECT_EQ(groove.end, PaneEdge::start);
    // The line leaves the post R·asin(w/2R) from the corner; the bottom stands where the line is
    // 15 mm further in, and square to the tangent at the mouth that is R·sin(15/R).
    const auto& front = frame.line.sides[index(CaseSide::front)];
    EXPECT_NEAR(distance(groove.mouth, point_at(front, 420 * std::asin(21.0 / 420))), 0, kRounding);
    EXPECT_NEAR(groove.depth, 420 * std::sin(15.0 / 420), kRounding);
    EXPECT_NEAR(dot(groove.inward, groove.interior), 0, kRounding);
    // The inside of the case lies towards the arc's centre.
    const Point centre{0, std::sqrt(420.0 * 420 - 260 * 260)};
    EXPECT_NEAR(dot(groove.interior, (centre - groove.mouth) * (1.0 / 420)), 1, kRounding);
}

TEST(PostSection, loses_what_its_grooves_take) {
    const Case c = sample::straight_front();
    const Layout frame = laid_out(c);
    for (const PostLayout& post : frame.posts) {
        ASSERT_EQ(post.section.size(), 1U);
        // A square of 42 mm less two grooves of 4.8 by 15 mm that don't meet.
        EXPECT_NEAR(post.section.front().area(), 42 * 42 - 2 * 4.8 * 15, kAreaRounding);
    }
}

TEST(PostSection, of_a_rabbet_is_open_towards_the_inside) {
    Case c = sample::straight_front();
    c.frame.post.hold.value = Hold::rabbet;
    const Layout frame = laid_out(c);
    const PostLayout& post = frame.posts[index(CaseSide::front)];
    ASSERT_EQ(post.section.size(), 1U);
    // Two rabbets of 15 mm from each face, from 2.4 mm outside the glazing line to the post's
    // inner face at 21: each takes 23.4 by 15, and they share 15 by 15 in the inner corner.
    EXPECT_NEAR(post.section.front().area(), 42 * 42 - (2 * 23.4 * 15 - 15 * 15), kAreaRounding);
}

TEST(PlateGroove, follows_the_line_and_runs_under_the_posts_with_round_ends) {
    const Case c = sample::pilot_boat();
    const auto sums = solve(c);
    const Layout frame = layout(c, sums);
    ASSERT_EQ(frame.base.grooves.size(), 4U);
    for (const PlateGroove& groove : frame.base.grooves) {
        const auto& pane = *sums.pane(groove.side);
        double opening = 0;
        for (const Segment& s : groove.opening) {
            opening += s.length();
        }
        EXPECT_NEAR(opening, pane.opening_length, kRounding);
        // Past the post groove's bottom by one cutter radius, crown to crown; two half circles of
        // the groove's own width, whose centres stand half a width from the crowns as the crow
        // flies. An arc's band is as large as a straight one of the same length.
        const double line = pane.opening_length + 2 * (15 + 3.175 / 2);
        const double cap = pane.curved ? 420 * 2 * std::asin(2.4 / 840) : 2.4;
        EXPECT_NEAR(area(groove.band), (line - 2 * cap) * 4.8 + pi * 2.4 * 2.4, kAreaRounding)
            << side_text(groove.side);
        EXPECT_FALSE(groove.bead.has_value());
    }
}

TEST(PlateGroove, of_a_beaded_pane_makes_room_for_the_bead) {
    const Layout frame = laid_out(sample::beaded());
    const auto& back = frame.base.grooves[3];
    ASSERT_EQ(back.side, CaseSide::back);
    ASSERT_TRUE(back.bead.has_value());
    // 478 mm of opening and a cutter radius at each end, 4.8 mm of rabbet and 8 mm of bead.
    EXPECT_NEAR(area(*back.bead), (478 + 3.175) * (4.8 + 8), kAreaRounding);
}

TEST(Layout, leaves_out_the_grooves_of_an_open_side) {
    Case c = sample::pilot_boat();
    c.panes.pop_back();  // the back
    const Layout frame = laid_out(c);
    EXPECT_EQ(frame.base.grooves.size(), 3U);
    EXPECT_EQ(frame.posts[index(CaseSide::back)].grooves.size(), 1U);
    EXPECT_EQ(frame.posts[index(CaseSide::front)].grooves.size(), 2U);
}

// A bow-front is its own mirror image: so is every outline of its frame.
TEST(Layout, of_a_symmetrical_case_is_symmetrical) {
    for (const PostSection section :
         {PostSection::fitted, PostSection::square, PostSection::round}) {
        Case c = sample::pilot_boat();
        c.frame.post.section.value = section;
        const auto sums = solve(c);
        const Layout frame = layout(c, sums);
        const Motion mirror{0, {}, true};
        const auto expect_mirrored = [&](CaseSide left, CaseSide right) {
            const Region& a = frame.posts[index(left)].section.front();
            const Region b = frame.posts[index(right)].section.front().moved(mirror);
            EXPECT_NEAR(a.area(), b.area(), kAreaRounding);
            const auto rest = subtract({a}, {b});
            double left_over = 0;
            for (const Region& piece : rest) {
                left_over += piece.area();
            }
            // Outlines 1e-10 mm apart enclose at most that times their length.
            EXPECT_NEAR(left_over, 0, kAreaRounding);
        };
        expect_mirrored(CaseSide::front, CaseSide::right);
        expect_mirrored(CaseSide::left, CaseSide::back);
        const auto& left = *sums.pane(CaseSide::left);
        const auto& right = *sums.pane(CaseSide::right);
        EXPECT_NEAR(left.opening_length, right.opening_length, kRounding);
        EXPECT_NEAR(left.start_in_post, right.end_in_post, kRounding);
        const auto& front = *sums.pane(CaseSide::front);
        EXPECT_NEAR(front.start_in_post, front.end_in_post, kRounding);
    }
}

}  // namespace
}  // namespace bowfront::fit
