#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <functional>

#include "bowfront/fit/checks.hpp"
#include "numbers_in.hpp"
#include "support/sample_case.hpp"

namespace bowfront::fit {
namespace {

using sample::given;
using testing::HasSubstr;

TEST(Objections, are_none_to_sound_cases) {
    for (const auto& make : {sample::pilot_boat, sample::straight_front, sample::lift_and_drop,
                             sample::beaded}) {
        const auto found = objections(make());
        EXPECT_TRUE(found.empty()) << found.front().found;
    }
}

/// One thing that can't be built, and what would do instead.
struct Impossible {
    const char* name;
    const char* pointer;
    const char* found;  ///< part of the sentence
    std::function<void(Case&)> spoil;

    friend void PrintTo(const Impossible& shown, std::ostream* out) { *out << shown.name; }
};

class EachObjection : public testing::TestWithParam<Impossible> {};

TEST_P(EachObjection, names_the_place_and_what_would_do) {
    Case c = sample::pilot_boat();
    GetParam().spoil(c);
    const auto found = objections(c);
    ASSERT_FALSE(found.empty());
    EXPECT_EQ(found.front().pointer, GetParam().pointer);
    EXPECT_THAT(found.front().found, HasSubstr(GetParam().found));
    EXPECT_FALSE(found.front().wanted.empty());
}

void front(Case& c, ArcMeasure measure, double value) {
    c.plan.front = FrontArc{measure, given(value, "/plan/front/x")};
}

INSTANTIATE_TEST_SUITE_P(
    All, EachObjection,
    testing::Values(
        Impossible{"chord_longer_than_the_diameter", "/plan/front/radius", "520 mm",
                   [](Case& c) { front(c, ArcMeasure::radius, 259); }},
        Impossible{"more_than_a_full_turn", "/plan/front/sweep", "360 degrees",
                   [](Case& c) { front(c, ArcMeasure::sweep, 6.3); }},
        Impossible{"arc_shorter_than_its_chord", "/plan/front/length", "not longer than its chord",
                   [](Case& c) { front(c, ArcMeasure::length, 520); }},
        Impossible{"bow_front_without_a_front", "/plan/front", "no front arc",
                   [](Case& c) { c.plan.front.reset(); }},
        Impossible{"posts_that_fill_a_side", "/plan/depth", "leave no opening",
                   [](Case& c) { c.plan.depth.value = 59; }},
        Impossible{"groove_through_the_base", "/frame/groove/depth/base", "goes through",
                   [](Case& c) { c.frame.groove.base_depth.value = 20; }},
        Impossible{"groove_through_the_top", "/frame/groove/depth/top", "goes through",
                   [](Case& c) { c.frame.groove.top_depth.value = 24; }},
        Impossible{"groove_out_of_the_edge", "/frame/base/margin", "out of the board's edge",
                   [](Case& c) { c.frame.base.margin.value = 2.4; }},
        Impossible{"opening_past_the_table_of_tolerances", "/tolerance/cut", "no tolerance",
                   [](Case& c) {
                       c.plan.width.value = 5000;
                       front(c, ArcMeasure::rise, 100);
                   }},
        Impossible{"ribs_in_one_another", "/form/ribs/max_spacing", "in one another",
                   [](Case& c) { c.form.rib_spacing.value = 17; }},
        Impossible{"hundreds_of_ribs", "/form/ribs/max_spacing", "ribs",
                   [](Case& c) {
                       c.form.rib_thickness.value = 1;
                       c.form.rib_spacing.value = 1.5;
                   }},
        Impossible{"form_narrower_than_its_boards", "/form/ribs/thickness", "too narrow",
                   [](Case& c) { c.form.rib_thickness.value = 80; }},
        Impossible{"bent_glass", "/panes/0/sheet", "glass can't be bent",
                   [](Case& c) { c.sheets.at("cast-acrylic").like = find_sheet("float-glass"); }},
        Impossible{"size_and_blank_both", "/panes/1/size", "as cut",
                   [](Case& c) {
                       c.panes[1].blank.method.value = BlankMethod::as_cut;
                       c.panes[1].blank.length = given(222.0, "/panes/1/blank/length");
                       c.panes[1].blank.width = given(393.5, "/panes/1/blank/width");
                       c.panes[1].height = given(393.5, "/panes/1/size/height");
                   }},
        Impossible{"radius_within_the_form", "/plan/front", "too small",
                   [](Case& c) {
                       front(c, ArcMeasure::radius, 260);
                       c.form.skin.value = 270;
                   }},
        Impossible{"clearance_eats_the_pane", "/panes/0", "leave nothing",
                   [](Case& c) { c.fit.top_clearance.value = 400; }},
        Impossible{"grooves_deeper_than_half_a_post", "/frame/groove/depth/post",
                   "deeper than half the post",
                   [](Case& c) { c.frame.groove.post_depth.value = 21.5; }},
        Impossible{"grooves_that_cut_a_post_apart", "/frame/groove", "apart",
                   [](Case& c) {
                       c.frame.groove.post_depth.value = 20;
                       c.frame.groove.width.value = 6;
                   }},
        Impossible{"groove_wider_than_its_post", "/frame/groove/width", "no cheek on one side",
                   [](Case& c) {
                       c.frame.post.width.value = 10;
                       c.frame.post.depth.value = 10;
                       c.frame.groove.width.value = 11;
                       c.frame.groove.post_depth.value = 4;
                   }}),
    [](const auto& each) { return each.param.name; });

TEST(Objections, say_what_the_last_value_would_have_to_be) {
    Case c = sample::pilot_boat();
    front(c, ArcMeasure::radius, 250);
    EXPECT_EQ(objections(c).front().wanted, "the radius must be at least 260 mm");
    c.plan.front->value.value = numbers_in(objections(c).front().wanted)[0];
    EXPECT_TRUE(objections(c).empty());
}

TEST(Objections, are_told_all_at_once) {
    Case c = sample::pilot_boat();
    front(c, ArcMeasure::radius, 250);
    c.frame.groove.base_depth.value = 25;
    c.frame.groove.top_depth.value = 25;
    EXPECT_EQ(objections(c).size(), 3U);
}

}  // namespace
}  // namespace bowfront::fit
