// How shelves are read.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "case_text.hpp"

namespace bowfront::io {
namespace {

using ::testing::HasSubstr;
using ::testing::SizeIs;

std::string with_shelf(const std::string& keys) {
    return pilot_boat_with("\"fit\":", "\"shelves\": [ { " + keys + " } ],\n  \"fit\":");
}

constexpr const char* kWhole =
    R"("height": 120, "material": "float-glass", "thickness": 6, "load": "11 lb")";

TEST(Shelves, are_read_with_their_defaults) {
    const ReadCase read = read_case(with_shelf(kWhole), "case.json");
    ASSERT_THAT(read.value.shelves, SizeIs(1));
    const ShelfSpec& shelf = read.value.shelves[0];
    EXPECT_EQ(*shelf.height, 120);
    EXPECT_EQ(*shelf.material, "float-glass");
    EXPECT_EQ(shelf.sheet, find_sheet("float-glass"));
    EXPECT_DOUBLE_EQ(*shelf.load, 11 * 0.45359237);
    EXPECT_EQ(*shelf.clearance, 3);
    EXPECT_EQ(*shelf.support, ShelfSupport::pins);
    EXPECT_EQ(shelf.pointer, "/shelves/0");
    EXPECT_EQ(assumed_at(read, "/shelves/0/clearance").value, "3 mm");
}

TEST(Shelves, can_be_of_boards_timbers_and_the_file_s_own_sheets) {
    const auto of = [](std::string_view material, std::string_view text = {}) {
        const std::string file = with(text.empty() ? with_shelf(kWhole) : std::string(text),
                                      "\"float-glass\"", "\"" + std::string(material) + "\"");
        return read_case(file, "case.json").value.shelves.at(0);
    };
    EXPECT_EQ(of("plywood").board, find_board("plywood"));
    EXPECT_EQ(of("white-oak").timber, find_timber("white-oak"));
    const std::string own =
        with(with_shelf(kWhole),
             "\"fit\":", R"("sheets": { "batch-7": { "like": "cast-acrylic" } }, "fit":)");
    EXPECT_EQ(of("batch-7", own).sheet, find_sheet("cast-acrylic"));
}

TEST(Shelves, tell_what_is_wrong_with_them) {
    EXPECT_THAT(fault_text(with(with_shelf(kWhole), "\"11 lb\"", "5")),
                HasSubstr("BF-IN-010 /shelves/0/load: a bare number, 5; a mass with its unit"));
    EXPECT_THAT(fault_text(with(with_shelf(kWhole), "\"11 lb\"", "\"2000 kg\"")),
                HasSubstr("BF-IN-004 /shelves/0/load: 2000 kg is out of range; 0 kg to 1000 kg"));
    EXPECT_THAT(fault_text(with(with_shelf(kWhole), "float-glass", "float-gloss")),
                HasSubstr("did you mean \"float-glass\"?"));
    EXPECT_THAT(fault_text(with(with_shelf(kWhole), "float-glass", "mdf")),
                HasSubstr("BF-IN-004 /shelves/0/material: \"mdf\" is not known here"));
    EXPECT_THAT(fault_text(with_shelf(R"("height": 120)")),
                HasSubstr("BF-IN-006 /shelves/0/material"));
    EXPECT_THAT(fault_text(with_shelf(std::string(kWhole) + R"(, "support": "strings")")),
                HasSubstr("\"pins\" or \"rails\""));
}

}  // namespace
}  // namespace bowfront::io
