#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "case_text.hpp"

namespace bowfront::io {
namespace {

using testing::HasSubstr;

std::string holding(const std::string& section) {
    return pilot_boat_with("\"cutter\":", section + ",\n  \"cutter\":");
}

Case read(const std::string& section) {
    return read_case(holding(section), "case.json").value;
}

TEST(Contents, are_none_where_the_file_leaves_them_out) {
    EXPECT_FALSE(read_case(pilot_boat(), "case.json").value.contents);
}

TEST(Contents, are_read_with_their_place) {
    const Case c =
        read(R"("contents": { "mass": "26 lb", "height": "6 in", "x": -20, "y": "90 mm" })");
    ASSERT_TRUE(c.contents);
    EXPECT_DOUBLE_EQ(*c.contents->mass, 26 * 0.45359237);
    EXPECT_TRUE(c.contents->mass.given());
    EXPECT_DOUBLE_EQ(**c.contents->height, 152.4);
    EXPECT_EQ(**c.contents->x, -20);
    EXPECT_EQ(**c.contents->y, 90);
}

TEST(Contents, stand_at_half_height_where_it_is_not_given) {
    const ReadCase file = read_case(holding(R"("contents": { "mass": "12 kg" })"), "case.json");
    EXPECT_FALSE(file.value.contents->height);
    EXPECT_EQ(assumed_at(file, "/contents/height").value, "half the clear height");
}

TEST(Contents, need_a_mass_with_its_unit) {
    EXPECT_THAT(fault_text(holding(R"("contents": { "height": 150 })")),
                HasSubstr("BF-IN-006 /contents/mass"));
    EXPECT_THAT(fault_text(holding(R"("contents": { "mass": 12 })")),
                HasSubstr("BF-IN-010 /contents/mass: a bare number, 12; a mass with its unit, "
                          "such as \"12 kg\" or \"26 lb\""));
    EXPECT_THAT(fault_text(holding(R"("contents": { "mass": "12 mm" })")),
                HasSubstr("BF-IN-010 /contents/mass"));
    EXPECT_THAT(fault_text(holding(R"("contents": { "mass": "0 kg" })")),
                HasSubstr("BF-IN-004 /contents/mass: 0 kg is out of range; more than 0 kg, up to "
                          "5000 kg"));
}

TEST(Contents, must_not_stand_out_of_the_case) {
    EXPECT_THAT(fault_text(holding(R"("contents": { "mass": "12 kg", "height": 381 })")),
                HasSubstr("BF-IN-008 /contents/height: contents whose centre of gravity lies 381 "
                          "mm up stand out of a clear height of 380 mm; up to 380 mm"));
    EXPECT_EQ(fault_text(holding(R"("contents": { "mass": "12 kg", "height": 380 })")), "");
}

TEST(Stand, is_free_unless_the_file_says_what_it_is_fixed_to) {
    EXPECT_EQ(*read_case(pilot_boat(), "case.json").value.stand.fixed, Fixing::none);
    EXPECT_EQ(*read(R"("stand": { "fixed": "wall" })").stand.fixed, Fixing::wall);
    EXPECT_EQ(*read(R"("stand": { "fixed": "floor" })").stand.fixed, Fixing::floor);
    EXPECT_THAT(fault_text(holding(R"("stand": { "fixed": true })")),
                HasSubstr("BF-IN-003 /stand/fixed: true or false stands here; what the case is "
                          "fixed to: \"none\", \"wall\" or \"floor\""));
}

}  // namespace
}  // namespace bowfront::io
