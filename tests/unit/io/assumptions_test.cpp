// What is assumed where a case file is silent.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "bowfront/io/defaults.hpp"
#include "case_text.hpp"

namespace bowfront::io {
namespace {

using ::testing::HasSubstr;

/// A bow-front of which the file says no more than it must.
constexpr std::string_view kTerse = R"({
  "bowfront": 1, "name": "dredger",
  "plan": { "shape": "bow-front", "width": 520, "depth": 240, "front": { "radius": 420 } },
  "frame": { "timber": "cherry", "clear_height": 380,
    "base": { "thickness": 20, "margin": 24 }, "top": { "thickness": 24, "margin": 24 },
    "post": { "width": 42 },
    "groove": { "width": 4.8, "depth": { "base": 6, "top": 12, "post": 15 } } },
  "panes": [ { "side": "front", "sheet": "cast-acrylic", "thickness": 3 } ]
})";

ReadCase terse() {
    return read_case(kTerse, "case.json");
}

ReadCase terse_with(std::string_view words, std::string_view others) {
    return read_case(with(std::string(kTerse), words, others), "case.json");
}

std::string assumed_text(const ReadCase& read) {
    std::string out;
    for (const Assumption& entry : read.assumed) {
        out += entry.pointer + " = " + entry.value + '\n';
    }
    return out;
}

TEST(Assumptions, are_all_listed_in_order) {
    EXPECT_EQ(assumed_text(terse()), R"(/units = mm
/frame/base/build = plate
/frame/base/grain = width
/frame/base/sawn = flat
/frame/top/build = plate
/frame/top/grain = width
/frame/top/sawn = flat
/frame/loading = slide-in
/frame/post/depth = the post's width
/frame/post/section = fitted
/frame/post/hold = groove
/frame/post/sawn = any
/frame/post/joint = butt
/panes/0/bend = heat
/panes/0/blank = allow-shrink
/sheets/cast-acrylic/shrink/along = 1.5 %
/sheets/cast-acrylic/shrink/across = 1.5 %
/sheets/cast-acrylic/shrink/spread/along = 0.5 %
/sheets/cast-acrylic/shrink/spread/across = 0.5 %
/sheets/cast-acrylic/springback/radius = 0 %
/sheets/cast-acrylic/springback/spread = 1 %
/fit/end_clearance = 3 mm
/fit/top_clearance = 4 mm
/fit/least_engagement = the larger of 3 mm and the pane's thickness
/tolerance/cut = m
/tolerance/groove_depth = m
/tolerance/groove_width = 0.1 mm
/tolerance/opening = m
/tolerance/sheet_thickness = the tolerance of the sheet's own standard
/webs/web = 4 mm
/webs/cheek = 6 mm
/webs/floor = 1/3
/form/skin/thickness = 3 mm
/form/cover/thickness = 0.6 mm
/form/overrun = 60 mm
/form/overhang = 20 mm
/form/ribs/thickness = 18 mm
/form/ribs/depth = 70 mm
/form/ribs/max_spacing = 180 mm
/form/ribs/foot = 60 mm
/form/fence/depth = 25 mm
/form/fence/clearance = 1 mm
/form/joint_allowance = 0.2 mm
/service/built_at/temperature = 20 C
/service/built_at/humidity = 50 %
/service/temperature/0 = 15 C
/service/temperature/1 = 28 C
/service/humidity/0 = 35 %
/service/humidity/1 = 60 %
/service/push = 100 N
/cutter/diameter = 3.175 mm
/cutter/spacing = 8 mm
/shop/step = 0.5 mm, or 1/32 in where the file is in inches
/shop/allowance/length = 25 mm
/shop/allowance/width = 6 mm
/shop/allowance/thickness = 3 mm
/stand/fixed = none
)");
}

TEST(Assumptions, stand_in_the_case_with_their_reason) {
    const Case dredger = terse().value;
    EXPECT_EQ(*dredger.fit.end_clearance, 3);
    EXPECT_EQ(*dredger.fit.top_clearance, 4);
    EXPECT_EQ(*dredger.fit.loading_clearance, 1);
    EXPECT_FALSE(dredger.fit.least_engagement);
    EXPECT_EQ(*dredger.webs.web, 4);
    EXPECT_EQ(*dredger.webs.cheek, 6);
    EXPECT_EQ(*dredger.webs.floor, 1.0 / 3);
    EXPECT_EQ(dredger.tolerance.cut->by_class, ToleranceClass::medium);
    EXPECT_EQ(dredger.tolerance.groove_width->value, 0.1);
    EXPECT_FALSE(dredger.tolerance.sheet_thickness);
    EXPECT_EQ(*dredger.frame.post.depth, 42);
    EXPECT_EQ(*dredger.service.built_humidity, 0.5);
    EXPECT_EQ(*dredger.service.humidity[1], 0.6);
    EXPECT_FALSE(dredger.oven);
    EXPECT_EQ(dredger.fit.end_clearance.origin.kind, Origin::Kind::assumed);
    EXPECT_EQ(dredger.fit.end_clearance.origin.source, "common practice, no source");
    EXPECT_EQ(dredger.fit.end_clearance.origin.line, 0U);
}

TEST(Assumptions, say_that_a_shrink_was_not_measured) {
    EXPECT_THAT(assumed_at(terse(), "/sheets/cast-acrylic/shrink/along").why,
                HasSubstr("not measured: "));
}

TEST(Assumptions, of_a_given_value_are_none) {
    const ReadCase read = terse_with("\"panes\":", "\"webs\": { \"web\": 5 }, \"panes\":");
    EXPECT_EQ(assumed_at(read, "/webs/web").value, "");
    EXPECT_EQ(assumed_at(read, "/webs/cheek").value, "6 mm");
    EXPECT_EQ(*read.value.webs.web, 5);
}

TEST(Assumptions, of_a_clearance_follow_the_loading) {
    const ReadCase drops =
        terse_with("\"clear_height\"", "\"loading\": \"lift-and-drop\", \"clear_height\"");
    EXPECT_EQ(assumed_at(drops, "/fit/loading_clearance").value, "1 mm");
    EXPECT_EQ(assumed_at(drops, "/fit/top_clearance").value, "");
    EXPECT_EQ(assumed_at(terse(), "/fit/loading_clearance").value, "");
}

TEST(Assumptions, of_a_bead_are_made_where_there_is_a_rabbet) {
    EXPECT_EQ(assumed_at(terse(), "/frame/bead/width").value, "");
    const ReadCase beaded =
        terse_with("\"clear_height\"", "\"loading\": \"beaded\", \"clear_height\"");
    EXPECT_EQ(assumed_at(beaded, "/frame/bead/width").value, "8 mm");
    EXPECT_EQ(assumed_at(beaded, "/frame/post/hold").value, "rabbet");
    EXPECT_EQ(*beaded.value.frame.post.hold, Hold::rabbet);
    const ReadCase rabbet = terse_with("\"width\": 42", "\"width\": 42, \"hold\": \"rabbet\"");
    EXPECT_EQ(assumed_at(rabbet, "/frame/bead/width").value, "8 mm");
}

TEST(Assumptions, of_rails_are_made_where_there_are_some) {
    EXPECT_EQ(assumed_at(terse(), "/frame/base/inset").value, "");
    const ReadCase rails = terse_with("\"thickness\": 20, \"margin\": 24",
                                      "\"thickness\": 20, \"margin\": 30, \"build\": \"rails\"");
    EXPECT_EQ(assumed_at(rails, "/frame/base/inset").value, "the base's margin");
    EXPECT_EQ(*rails.value.frame.base.build.inset, 30);
    EXPECT_EQ(assumed_at(rails, "/frame/base/board_width").value, "150 mm");
    EXPECT_EQ(assumed_at(rails, "/frame/base/corner").value, "mitre");
    EXPECT_EQ(assumed_at(rails, "/frame/base/run_out").value, "12 deg");
    EXPECT_THAT(assumed_at(rails, "/frame/base/run_out").why, HasSubstr("Wood Handbook"));
    EXPECT_EQ(assumed_at(rails, "/frame/base/grain").value, "");  // it runs along each rail
    EXPECT_EQ(assumed_at(rails, "/frame/top/inset").value, "");
}

TEST(Assumptions, of_a_form_are_made_where_a_pane_is_heated) {
    const ReadCase cold =
        terse_with("\"thickness\": 3 }", "\"thickness\": 3, \"bend\": \"cold\" }");
    EXPECT_EQ(assumed_at(cold, "/form/overrun").value, "");
    EXPECT_EQ(assumed_at(cold, "/panes/0/blank").value, "");
    EXPECT_EQ(assumed_at(cold, "/sheets/cast-acrylic/shrink/along").value, "");
    EXPECT_EQ(*cold.value.form.overrun, 60);
    const ReadCase flat =
        terse_with("\"bow-front\", \"width\": 520, \"depth\": 240, \"front\": { \"radius\": 420 }",
                   "\"rectangle\", \"width\": 520, \"depth\": 240");
    EXPECT_EQ(assumed_at(flat, "/form/overrun").value, "");
    EXPECT_EQ(assumed_at(flat, "/panes/0/bend").value, "");
}

TEST(Assumptions, of_an_extrusion_are_made_where_it_matters) {
    EXPECT_EQ(assumed_at(terse(), "/panes/0/along").value, "");
    const ReadCase extruded = terse_with("cast-acrylic", "extruded-acrylic");
    EXPECT_EQ(assumed_at(extruded, "/panes/0/along").value, "length");
    EXPECT_EQ(assumed_at(extruded, "/sheets/extruded-acrylic/shrink/across").value, "-0.5 %");
}

TEST(Assumptions, of_a_trim_are_made_where_something_is_trimmed) {
    EXPECT_EQ(assumed_at(terse(), "/panes/0/blank/trim").value, "");
    const ReadCase own =
        terse_with("\"thickness\": 3 }", "\"thickness\": 3, \"blank\": \"trim-after\" }");
    EXPECT_EQ(assumed_at(own, "/panes/0/blank/trim").value, "10 mm");
    const ReadCase shared = terse_with("\"panes\":", "\"blank\": \"trim-after\", \"panes\":");
    EXPECT_EQ(assumed_at(shared, "/blank/trim").value, "10 mm");
    EXPECT_EQ(*shared.value.panes[0].blank.trim, 10);
}

TEST(Assumptions, of_an_oven_are_made_where_there_is_one) {
    const ReadCase oven =
        terse_with("\"panes\":", "\"oven\": { \"inside\": [900, 600, 400] }, \"panes\":");
    EXPECT_EQ(assumed_at(oven, "/oven/accuracy").value, "5 C");
    EXPECT_EQ(*oven.value.oven->accuracy, 5);
}

TEST(Assumptions, of_a_stock_s_count_are_made_for_each) {
    const ReadCase stock = terse_with(
        "\"panes\":",
        R"("stock": [ { "material": "plywood", "thickness": 18, "size": [1220, 2440], "count": 1 },
           { "material": "plywood", "thickness": 3, "size": [1220, 2440] } ], "panes":)");
    EXPECT_EQ(assumed_at(stock, "/stock/0/count").value, "");
    EXPECT_EQ(assumed_at(stock, "/stock/1/count").value, "as many as needed");
}

TEST(Defaults, stand_once_each) {
    std::vector<std::string_view> pointers;
    for (const Default& row : case_defaults()) {
        pointers.push_back(row.pointer);
        EXPECT_FALSE(row.value.empty());
        EXPECT_FALSE(row.why.empty());
    }
    std::sort(pointers.begin(), pointers.end());
    EXPECT_EQ(std::adjacent_find(pointers.begin(), pointers.end()), pointers.end());
}

}  // namespace
}  // namespace bowfront::io
