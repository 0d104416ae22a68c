#include <gmock/gmock.h>

#include <cmath>
#include <numbers>

#include "bowfront/geom/region.hpp"

namespace bowfront {
namespace {

using std::numbers::pi;
using testing::ElementsAre;
using testing::IsEmpty;

/// Meetings are given to within the distance at which ends are one point.
MATCHER_P(At, point, "") {
    return distance(arg, point) <= kJoint;
}

constexpr Point kP{3, 4};

TEST(Meetings, of_straights) {
    const Segment line{{0, 0}, {10, 0}};
    EXPECT_THAT(meetings(line, {{5, -5}, {5, 5}}), ElementsAre(At(Point{5, 0})));
    EXPECT_THAT(meetings(line, {{5, 5}, {5, 0}}), ElementsAre(At(Point{5, 0})));
    EXPECT_THAT(meetings(line, {{10, 0}, {12, 7}}), ElementsAre(At(Point{10, 0})));
    EXPECT_THAT(meetings(line, {{5, 1}, {5, 5}}), IsEmpty());
    EXPECT_THAT(meetings(line, {{0, 1}, {10, 1}}), IsEmpty());
    EXPECT_THAT(meetings(line, {{11, 0}, {15, 0}}), IsEmpty());
}

TEST(Meetings, of_straights_that_share_a_stretch_are_its_ends) {
    const Segment line{{0, 0}, {10, 0}};
    EXPECT_THAT(meetings(line, {{15, 0}, {4, 0}}), ElementsAre(At(Point{4, 0}), At(Point{10, 0})));
    EXPECT_THAT(meetings(line, {{7, 0}, {4, 0}}), ElementsAre(At(Point{4, 0}), At(Point{7, 0})));
    // Apart by less than an end's width, they cross somewhere between.
    EXPECT_THAT(meetings(line, {{2, 1e-10}, {8, -1e-10}}),
                ElementsAre(At(Point{2, 0}), At(Point{8, 0})));
    EXPECT_THAT(meetings(line, line.reversed()), ElementsAre(At(line.from), At(line.to)));
}

TEST(Meetings, of_a_straight_and_an_arc) {
    const Segment arc{{-5, 0}, {5, 0}, 1};  // the lower half of a circle
    EXPECT_THAT(meetings({{-9, -3}, {9, -3}}, arc),
                ElementsAre(At(Point{-4, -3}), At(Point{4, -3})));
    EXPECT_THAT(meetings({{0, -3}, {9, -3}}, arc), ElementsAre(At(Point{4, -3})));
    EXPECT_THAT(meetings({{-9, 3}, {9, 3}}, arc), IsEmpty());
    EXPECT_THAT(meetings({{-9, -5}, {9, -5}}, arc), ElementsAre(At(Point{0, -5})));
    EXPECT_THAT(meetings({{-9, -5.001}, {9, -5.001}}, arc), IsEmpty());
    EXPECT_THAT(meetings({{5, -9}, {5, 9}}, arc), ElementsAre(At(Point{5, 0})));
    EXPECT_THAT(meetings({{-5, 0}, {5, 0}}, arc), ElementsAre(At(Point{-5, 0}), At(Point{5, 0})));
}

TEST(Meetings, of_arcs) {
    const Segment a = arc_segment({0, 0}, 5, -pi / 2, pi);
    EXPECT_THAT(meetings(a, arc_segment({6, 0}, 5, pi / 2, pi)),
                ElementsAre(At(Point{3, -4}), At(kP)));
    EXPECT_THAT(meetings(a, arc_segment({6, 0}, 5, pi / 2, pi / 2)), ElementsAre(At(kP)));
    EXPECT_THAT(meetings(a, arc_segment({12, 0}, 7, pi / 2, pi)), ElementsAre(At(Point{5, 0})));
    EXPECT_THAT(meetings(a, arc_segment({2, 0}, 3, -pi / 2, pi)), ElementsAre(At(Point{5, 0})));
    EXPECT_THAT(meetings(a, arc_segment({0, 0}, 4, -pi / 2, pi)), IsEmpty());
    EXPECT_THAT(meetings(a, arc_segment({1, 0}, 2, -pi / 2, pi)), IsEmpty());
    EXPECT_THAT(meetings(a, arc_segment({20, 0}, 7, pi / 2, pi)), IsEmpty());
}

TEST(Meetings, of_arcs_that_share_a_stretch_are_its_ends) {
    const Segment a = arc_segment({0, 0}, 5, 0, pi / 2);
    EXPECT_THAT(meetings(a, arc_segment({0, 0}, 5, pi / 4, pi / 2)),
                ElementsAre(At(direction(pi / 4) * 5), At(Point{0, 5})));
    EXPECT_THAT(meetings(a, arc_segment({0, 0}, 5, pi / 3, -pi / 6)),
                ElementsAre(At(direction(pi / 6) * 5), At(direction(pi / 3) * 5)));
    // The two halves of a circle share their ends and nothing else.
    const Segment half = arc_segment({0, 0}, 5, 0, pi);
    EXPECT_THAT(meetings(half, arc_segment({0, 0}, 5, 0, -pi)),
                ElementsAre(At(Point{5, 0}), At(Point{-5, 0})));
}

// A pane's edge of 1 km radius, crossed and touched: the radius must not cost the digits.
TEST(Meetings, of_very_flat_arcs) {
    const double radius = 1e6;
    const double half = 0.5e3;
    const double sagitta = radius - std::sqrt(radius * radius - half * half);
    const Segment arc{{-half, 0}, {half, 0}, sagitta / half};
    EXPECT_THAT(meetings(arc, {{100, -1}, {100, 1}}),
                ElementsAre(At(Point{100, radius - sagitta - std::sqrt(radius * radius - 1e4)})));
    EXPECT_THAT(meetings(arc, {{-half, -sagitta}, {half, -sagitta}}),
                ElementsAre(At(Point{0, -sagitta})));
    const Segment straight_but_for_rounding{{-half, 0}, {half, 0}, 1e-15};
    EXPECT_THAT(meetings(straight_but_for_rounding, {{100, -1}, {100, 1}}),
                ElementsAre(At(Point{100, 0})));
    // Its mirror image, shifted so that the two cross twice at a thousandth of a rad.
    const Segment mirrored{{-half + 200, -0.1}, {half + 200, -0.1}, -arc.bulge};
    for (const Point p : meetings(arc, mirrored)) {
        EXPECT_LE(arc.distance_to(p), kJoint);
        EXPECT_LE(mirrored.distance_to(p), kJoint);
    }
    EXPECT_THAT(meetings(arc, mirrored), testing::SizeIs(2));
}

}  // namespace
}  // namespace bowfront
