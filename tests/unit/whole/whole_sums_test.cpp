#include "bowfront/whole/whole_sums.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "bowfront/fit/checks.hpp"
#include "support/random_cases.hpp"
#include "support/sample_case.hpp"
#include "weighed_case.hpp"

namespace bowfront::whole {
namespace {

using std::numbers::pi;
using testing::ElementsAre;

constexpr unsigned kSeed = 20240611;
constexpr int kCases = 100;
// Some dozens of operations on masses under 1 t and lengths under 3 m.
constexpr double kRounding = 1e-9;
constexpr double kRelative = 1e-12;

Contents contents(double kilograms) {
    Contents out;
    out.mass = sample::given(kilograms, "/contents/mass");
    return out;
}

TEST(WholeSums, weigh_the_parts_by_their_groups) {
    const WeighedCase pilot_boat(sample::pilot_boat());
    double frame = 0;
    double glazing = 0;
    for (const Part& part : pilot_boat.parts) {
        (part.group == "frame" ? frame : glazing) += part.mass();
    }
    const auto& groups = pilot_boat.whole.groups;
    ASSERT_EQ(groups.size(), 2U);
    EXPECT_EQ(groups[0].first, "frame");
    EXPECT_NEAR(groups[0].second, frame, kRounding);
    EXPECT_EQ(groups[1].first, "glazing");
    EXPECT_NEAR(groups[1].second, glazing, kRounding);
    EXPECT_NEAR(pilot_boat.whole.empty->weight.mass, frame + glazing, kRounding);
    EXPECT_FALSE(pilot_boat.whole.loaded);
}

// A box whose weight can be worked out by hand: a straight front, everything symmetric, square
// posts, all of cherry. Density of cherry: specific gravity 0.50, Wood Handbook FPL-GTR-190, Table
// 5-3a, times 1120 kg/m³ at 12 % moisture content; of cast acrylic: 1190 kg/m³.
TEST(WholeSums, are_those_of_a_box_worked_out_by_hand) {
    Case c = sample::straight_front();
    c.frame.post.section.value = PostSection::square;
    const WeighedCase box(c);
    constexpr double kCherry = 560e-9;    // kg/mm³
    constexpr double kAcrylic = 1190e-9;  // kg/mm³
    constexpr double kWidth = 520 + 2 * 24;
    constexpr double kDepth = 240 + 2 * 24;
    // Each groove: the opening, 15 mm of post groove and a cutter's radius beyond it at both ends,
    // round ends of the groove's width.
    constexpr double kPast = 15 + 3.175 / 2;
    const auto groove = [](double side) {
        const double length = side - 42 + 2 * kPast;
        return (length - 4.8) * 4.8 + pi / 4 * 4.8 * 4.8;
    };
    const double grooves = 2 * groove(520) + 2 * groove(240);
    const double base = (kWidth * kDepth * 20 - grooves * 6) * kCherry;
    const double top = (kWidth * kDepth * 24 - grooves * 12) * kCherry;
    const double posts = 4 * (42 * 42 - 2 * 15 * 4.8) * 380 * kCherry;
    const auto pane = [](double side) { return (side - 42 + 2 * (15 - 3)) * 3 * 393.5; };
    const double panes = 2 * (pane(520) + pane(240)) * kAcrylic;
    const double mass = base + top + posts + panes;
    const Weight<double>& weight = box.whole.empty->weight;
    EXPECT_NEAR(weight.mass, mass, kRounding);
    EXPECT_NEAR(weight.x, 0, kRounding);
    EXPECT_NEAR(weight.y, 120, kRounding);
    const double base_moment = kCherry * (kWidth * kDepth * 20 * -10 - grooves * 6 * -3);
    const double top_moment =
        kCherry * (kWidth * kDepth * 24 * (380 + 12) - grooves * 12 * (380 + 6));
    const double moment = base_moment + top_moment + posts * 190 + panes * (393.5 / 2 - 6);
    EXPECT_NEAR(weight.z, moment / mass, kRounding);

    const Tipping<double>& tipping = box.whole.empty->tipping;
    EXPECT_NEAR(tipping.distance, kDepth / 2, kRounding);
    EXPECT_NEAR(tipping.direction, -pi / 2, kRounding);
    EXPECT_NEAR(tipping.angle, std::atan(144 / (moment / mass + 20)), kRounding);
    EXPECT_NEAR(tipping.force, mass * 9.80665 * 144 / (20 + 380 + 24), kRounding);
    EXPECT_NEAR(box.whole.height, 424, kRounding);
    const Edges<double>& edges = box.whole.empty->edges;
    EXPECT_NEAR(edges.left, kWidth / 2, kRounding);
    EXPECT_NEAR(edges.right, kWidth / 2, kRounding);
    EXPECT_NEAR(edges.front, kDepth / 2, kRounding);
    EXPECT_NEAR(edges.back, kDepth / 2, kRounding);
}

TEST(WholeSums, stand_contents_in_the_middle_at_half_height_where_not_told) {
    Case c = sample::straight_front();
    c.contents = contents(12);
    const WeighedCase box(c);
    ASSERT_TRUE(box.whole.contents);
    EXPECT_NEAR(box.whole.contents->x, 0, kRounding);
    EXPECT_NEAR(box.whole.contents->y, 120, kRounding);
    EXPECT_EQ(box.whole.contents->z, 190);
    const Weight<double>& empty = box.whole.empty->weight;
    const Weight<double>& loaded = box.whole.loaded->weight;
    EXPECT_NEAR(loaded.mass, empty.mass + 12, kRounding);
    EXPECT_NEAR(loaded.z * loaded.mass, empty.z * empty.mass + 12 * 190, kRounding);
    EXPECT_NEAR(loaded.y, 120, kRounding);
}

// A bow-front's area is its rectangle and a circular segment: r²/2·(θ − sin θ) in front of the
// chord, its centre c³/(12·A) from the arc's own centre (Machinery's Handbook, from memory).
TEST(WholeSums, take_the_middle_of_a_bowed_plan_s_area) {
    Case c = sample::pilot_boat();
    c.contents = contents(1);
    const double sweep = 2 * std::asin(260 / 420.0);
    const double segment = 420 * 420 / 2.0 * (sweep - std::sin(sweep));
    const double from_centre = 520.0 * 520 * 520 / (12 * segment);
    const double in_front = from_centre - std::sqrt(420.0 * 420 - 260 * 260);
    const double rectangle = 520 * 240;
    const double y = (rectangle * 120 - segment * in_front) / (rectangle + segment);
    EXPECT_NEAR(WeighedCase(c).whole.contents->y, y, kRounding);
}

TEST(WholeSums, take_contents_where_the_case_file_puts_them) {
    Case c = sample::pilot_boat();
    c.contents = contents(40);
    c.contents->height = sample::given(60.0, "/contents/height");
    c.contents->x = sample::given(200.0, "/contents/x");
    c.contents->y = sample::given(210.0, "/contents/y");
    const WeighedCase there(c);
    EXPECT_EQ(there.whole.contents->x, 200);
    EXPECT_EQ(there.whole.contents->y, 210);
    EXPECT_EQ(there.whole.contents->z, 60);
    EXPECT_GT(there.whole.loaded->weight.x, 100);
    c.contents->x->value = -200;
    const WeighedCase mirrored(c);
    EXPECT_NEAR(mirrored.whole.loaded->weight.x, -there.whole.loaded->weight.x, kRounding);
    EXPECT_NEAR(mirrored.whole.loaded->weight.y, there.whole.loaded->weight.y, kRounding);
    EXPECT_NEAR(mirrored.whole.loaded->tipping.angle, there.whole.loaded->tipping.angle, kRounding);
    EXPECT_NEAR(mirrored.whole.loaded->edges.left, there.whole.loaded->edges.right, kRounding);
}

TEST(WholeSums, count_no_part_whose_density_is_not_known) {
    const Case c = sample::pilot_boat();
    WeighedCase weighed(c);
    const double frame = weighed.whole.groups[0].second;
    for (Part& part : weighed.parts) {
        part.density = part.id == "pane-front" ? 0 : part.density;
    }
    const WholeSums<double> sums = whole_sums(c, weighed.layout, weighed.parts);
    EXPECT_THAT(sums.unknown, ElementsAre("pane-front"));
    EXPECT_EQ(sums.unknown_parts, 1);
    EXPECT_NEAR(sums.groups[0].second, frame, kRounding);
    EXPECT_LT(sums.groups[1].second, weighed.whole.groups[1].second);
    EXPECT_FALSE(sums.empty);
    EXPECT_FALSE(sums.loaded);
}

TEST(WholeSums, leave_the_form_out) {
    const Case c = sample::pilot_boat();
    WeighedCase weighed(c);
    std::vector<Part> all = weighed.parts;
    for (Part& part : pattern::form_parts(c, weighed.sums.forms.at(0))) {
        all.push_back(std::move(part));
    }
    ASSERT_GT(all.size(), weighed.parts.size());
    EXPECT_EQ(whole_sums(c, weighed.layout, all).empty->weight.mass,
              weighed.whole.empty->weight.mass);
}

TEST(WholeSums, count_each_instance_of_a_part) {
    const Case c = sample::pilot_boat();
    WeighedCase weighed(c);
    const double one = weighed.parts.back().mass();
    weighed.parts.back().placements.push_back({.origin = {0, 0, 100}});
    const WholeSums<double> sums = whole_sums(c, weighed.layout, weighed.parts);
    EXPECT_NEAR(sums.empty->weight.mass, weighed.whole.empty->weight.mass + one, kRounding);
    EXPECT_GT(sums.empty->weight.z, weighed.whole.empty->weight.z);
}

void expect_same(const Standing<double>& plain, const Standing<Traced>& traced) {
    EXPECT_EQ(plain.weight.mass, traced.weight.mass.value());
    EXPECT_EQ(plain.weight.x, traced.weight.x.value());
    EXPECT_EQ(plain.weight.z, traced.weight.z.value());
    EXPECT_EQ(plain.tipping.angle, traced.tipping.angle.value());
    EXPECT_EQ(plain.tipping.force, traced.tipping.force.value());
    EXPECT_EQ(plain.edges.back, traced.edges.back.value());
    EXPECT_EQ(plain.people, traced.people ? std::optional(traced.people->value()) : std::nullopt);
}

TEST(WholeSums, are_the_same_traced) {
    Case c = sample::beaded();
    c.contents = contents(30);
    const WeighedCase weighed(c);
    Workings workings;
    const WholeSums<Traced> traced = whole_sums(c, weighed.layout, weighed.parts, workings);
    expect_same(*weighed.whole.empty, *traced.empty);
    expect_same(*weighed.whole.loaded, *traced.loaded);
    const std::string told = explain(workings, "whole/loaded/tipping/angle");
    EXPECT_THAT(told, testing::HasSubstr("atan(d_l/(Z_l + t_b))"));
    EXPECT_THAT(told, testing::HasSubstr("parts/base/density"));
}

TEST(Lifters, are_as_many_as_the_guideline_says) {
    EXPECT_EQ(lifters(0), 1);
    EXPECT_EQ(lifters(23), 1);
    EXPECT_EQ(lifters(23.1), 2);
    EXPECT_EQ(lifters(30.6), 2);  // two thirds of 46 kg is 30.67 kg
    EXPECT_EQ(lifters(30.7), 3);
    EXPECT_EQ(lifters(34.5), 3);  // half of 69 kg
    EXPECT_EQ(lifters(34.6), 4);
    EXPECT_EQ(lifters(46), 4);
    EXPECT_EQ(lifters(46.1), std::nullopt);
}

TEST(DirectionText, names_the_eighths) {
    EXPECT_EQ(direction_text(0), "right");
    EXPECT_EQ(direction_text(pi / 2), "back");
    EXPECT_EQ(direction_text(-pi / 2), "front");
    EXPECT_EQ(direction_text(pi), "left");
    EXPECT_EQ(direction_text(-pi), "left");
    EXPECT_EQ(direction_text(-3 * pi / 4), "front left");
    EXPECT_EQ(direction_text(pi / 4 + 0.3), "back right");
}

class RandomWholes : public testing::Test, public sample::RandomCases {
  protected:
    RandomWholes() : sample::RandomCases(kSeed) {}
};

TEST_F(RandomWholes, weigh_what_their_parts_weigh_and_balance_inside_their_base) {
    for (int i = 0; i < kCases; ++i) {
        const Case c = sound();
        const WeighedCase weighed(c);
        const Standing<double>& empty = weighed.whole.empty.value();
        double mass = 0;
        for (const Part& part : weighed.parts) {
            mass += part.mass() * part.count();
        }
        EXPECT_NEAR(empty.weight.mass, mass, kRelative * mass) << "seed " << kSeed << ", " << i;
        const Box box = weighed.layout.base.outline->box();
        EXPECT_GT(empty.weight.x, box.low.x);
        EXPECT_LT(empty.weight.x, box.high.x);
        EXPECT_GT(empty.weight.y, box.low.y);
        EXPECT_LT(empty.weight.y, box.high.y);
        EXPECT_GT(empty.weight.z, -c.frame.base.thickness.value);
        EXPECT_LT(empty.weight.z, c.frame.clear_height.value + c.frame.top.thickness.value);
        EXPECT_GT(empty.tipping.distance, 0);
        EXPECT_LE(empty.tipping.distance, std::min({empty.edges.left, empty.edges.right,
                                                    empty.edges.front, empty.edges.back}) +
                                              kRounding);
        // Left and right are alike in every one of these plans.
        EXPECT_NEAR(empty.weight.x, 0, kRounding * 1000);
    }
}

// Every length of a case, larger by a factor.
void scale(Case& c, double k) {
    const auto all = [k](auto&... lengths) { ((lengths.value *= k), ...); };
    all(c.plan.width, c.plan.depth);
    if (c.plan.front && c.plan.front->measure != ArcMeasure::sweep) {
        all(c.plan.front->value);
    }
    Frame& frame = c.frame;
    all(frame.clear_height, frame.base.thickness, frame.base.margin, frame.top.thickness,
        frame.top.margin, frame.post.width, frame.post.depth, frame.groove.width,
        frame.groove.base_depth, frame.groove.top_depth, frame.groove.post_depth, frame.bead_width,
        c.fit.end_clearance, c.fit.top_clearance, c.fit.loading_clearance, c.cutter.diameter);
    for (PaneSpec& pane : c.panes) {
        all(pane.thickness);
    }
}

TEST_F(RandomWholes, grow_as_the_cube_of_their_size) {
    for (int i = 0; i < kCases; ++i) {
        Case c = sound();
        c.contents = contents(draw(0.5, 40));
        const WeighedCase one(c);
        const double k = draw(0.5, 3);
        scale(c, k);
        c.contents->mass.value *= k * k * k;
        const WeighedCase other(c);
        const Standing<double>& small = one.whole.loaded.value();
        const Standing<double>& large = other.whole.loaded.value();
        // The booleans of areas take edges closer than 1e-7 mm as one.
        constexpr double kSame = 1e-7;
        EXPECT_NEAR(large.weight.mass / (k * k * k) / small.weight.mass, 1, kSame) << i;
        EXPECT_NEAR(large.weight.y / k, small.weight.y, kSame * 1000) << i;
        EXPECT_NEAR(large.weight.z / k, small.weight.z, kSame * 1000) << i;
        EXPECT_NEAR(large.tipping.angle, small.tipping.angle, kSame) << i;
        EXPECT_NEAR(large.tipping.force / (k * k * k) / small.tipping.force, 1, kSame) << i;
    }
}

}  // namespace
}  // namespace bowfront::whole
