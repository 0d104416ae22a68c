#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <numbers>

#include "case_text.hpp"

namespace bowfront::io {
namespace {

using testing::HasSubstr;

std::string holding(const std::string& access) {
    return pilot_boat_with("\"cutter\":", "\"access\": " + access + ",\n  \"cutter\":");
}

ReadCase read(const std::string& access) {
    return read_case(holding(access), "case.json");
}

TEST(Access, is_none_where_the_file_leaves_it_out) {
    EXPECT_FALSE(read_case(pilot_boat(), "case.json").value.access);
}

TEST(Access, by_the_top_is_held_by_pegs_unless_told_otherwise) {
    const ReadCase file = read(R"({ "kind": "lift-off-top", "headroom": "2 ft" })");
    const auto* const top = file.value.access->as<LiftOffTop>();
    ASSERT_NE(top, nullptr);
    EXPECT_EQ(*top->held, TopHeld::pegs);
    EXPECT_EQ(*top->peg_diameter, 6);
    EXPECT_DOUBLE_EQ(**top->headroom, 609.6);
    EXPECT_EQ(assumed_at(file, "/access/held").value, "pegs");
    EXPECT_EQ(assumed_at(file, "/access/peg/length").value, "24 mm");
    EXPECT_EQ(file.value.panes.size(), 4U);
}

TEST(Access, lists_no_pegs_where_none_are_used) {
    const ReadCase file = read(R"({ "kind": "lift-off-top", "held": "panes" })");
    EXPECT_EQ(assumed_at(file, "/access/peg/length").value, "");
    EXPECT_EQ(assumed_at(file, "/access/overlap").value, "");
}

TEST(Access, by_a_side_takes_its_pane_from_the_others) {
    const ReadCase file = read(
        R"({ "kind": "lift-out-pane", "side": "back", "groove": { "depth": { "top": 13 } } })");
    const Case& c = file.value;
    EXPECT_EQ(c.panes.size(), 3U);
    EXPECT_EQ(c.pane(CaseSide::back), nullptr);
    EXPECT_FALSE(c.is_open(CaseSide::back));
    ASSERT_TRUE(c.access_pane);
    EXPECT_EQ(c.access_pane->sheet, "cast-acrylic");
    EXPECT_EQ(c.access_pane->pointer, "/panes/3");
    const auto* const pane = c.access->as<LiftOutPane>();
    ASSERT_NE(pane, nullptr);
    EXPECT_EQ(*pane->groove.width, 5);  // the pane's 3 and 2
    EXPECT_EQ(*pane->groove.base_depth, 5);
    EXPECT_EQ(*pane->groove.top_depth, 13);
    EXPECT_EQ(assumed_at(file, "/access/groove/width").value, "the pane's thickness and 2 mm");
}

TEST(Access, by_a_door_is_read_with_its_angle) {
    const Case c =
        read(R"({ "kind": "hinged-door", "side": "left", "hinge": "end", "angle": 120 })").value;
    const auto* const door = c.access->as<PivotDoor>();
    ASSERT_NE(door, nullptr);
    EXPECT_EQ(*door->hinge, HingeEnd::end);
    EXPECT_DOUBLE_EQ(*door->angle, 2 * std::numbers::pi / 3);
    EXPECT_EQ(c.access->side, CaseSide::left);
}

TEST(Access, by_sliding_panes_has_a_web) {
    const Case c = read(R"({ "kind": "sliding-pair", "side": "back", "groove": { "web": 7 } })").value;
    ASSERT_NE(c.access->as<SlidingPair>(), nullptr);
    EXPECT_EQ(*c.access->as<SlidingPair>()->web, 7);
    EXPECT_EQ(access_text(*c.access), "sliding-pair");
}

struct Refused {
    const char* access;
    const char* fault;
};

class RefusedAccess : public testing::TestWithParam<Refused> {};

TEST_P(RefusedAccess, names_place_and_cure) {
    EXPECT_THAT(fault_text(holding(GetParam().access)), HasSubstr(GetParam().fault));
}

INSTANTIATE_TEST_SUITE_P(
    Access, RefusedAccess,
    testing::Values(
        Refused{R"({ "kind": "trap-door" })", "BF-IN-004 /access/kind"},
        Refused{R"({ })", "BF-IN-006 /access"},
        Refused{R"({ "kind": "hinged-door" })", "BF-IN-006 /access"},
        Refused{R"({ "kind": "hinged-door", "side": "back", "overlap": 20 })",
                "BF-IN-008 /access/overlap: \"overlap\" means nothing for this kind of opening; no "
                "\"overlap\""},
        Refused{R"({ "kind": "lift-off-top", "side": "back" })", "BF-IN-008 /access/side"},
        Refused{R"({ "kind": "lift-off-top", "held": "screws-from-below" })",
                "BF-IN-008 /access/held: screws from below are reached only from inside the closed "
                "case"},
        Refused{R"({ "kind": "lift-out-pane", "side": "front" })",
                "BF-IN-008 /access/side: the front is curved; a flat side"},
        Refused{R"({ "kind": "lift-out-pane", "side": "back", "groove": { "web": 6 } })",
                "BF-IN-008 /access/groove/web: one pane has one groove"},
        Refused{R"({ "kind": "lift-out-pane", "side": "back", "groove": { "width": 3 } })",
                "BF-IN-008 /access/groove/width: a pane of 3 mm in a groove of 3 mm"},
        Refused{R"({ "kind": "lift-out-pane", "side": "back", "groove": { "depth": { "top": 24 } } })",
                "BF-IN-008 /access/groove/depth/top: a groove 24 mm deep goes through a top of 24 "
                "mm"},
        Refused{R"({ "kind": "sliding-pair", "side": "back", "groove": { "depth": { "top": 6 } } })",
                "BF-IN-008 /access/groove/depth/top: a pane that is lifted over"},
        Refused{R"({ "kind": "hinged-door", "side": "back", "angle": 20 })",
                "BF-IN-004 /access/angle"}));

TEST(Access, by_the_top_wants_panes_that_slide_in) {
    const std::string beaded =
        with(holding(R"({ "kind": "lift-off-top" })"), "\"slide-in\"", "\"beaded\"");
    EXPECT_THAT(fault_text(beaded), HasSubstr("BF-IN-008 /access/kind: with this loading"));
}

TEST(Access, wants_a_pane_on_its_side) {
    const std::string open =
        with(holding(R"({ "kind": "hinged-door", "side": "back" })"),
             ",\n    { \"side\": \"back\",  \"sheet\": \"cast-acrylic\", \"thickness\": 3 }", "");
    EXPECT_THAT(fault_text(open), HasSubstr("BF-IN-008 /access/side: the back has no pane"));
}

TEST(Access, leaves_the_pane_no_size_of_its_own) {
    const std::string sized =
        with(holding(R"({ "kind": "hinged-door", "side": "back" })"),
             "{ \"side\": \"back\",  \"sheet\": \"cast-acrylic\", \"thickness\": 3 }",
             R"({ "side": "back", "sheet": "cast-acrylic", "thickness": 3, "size": { "length": 400 } })");
    EXPECT_THAT(fault_text(sized),
                HasSubstr("BF-IN-008 /access/side: the pane of the back has a size of its own"));
}

}  // namespace
}  // namespace bowfront::io
