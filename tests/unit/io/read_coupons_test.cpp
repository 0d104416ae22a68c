#include "bowfront/io/read_coupons.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <variant>
#include <vector>

#include "bowfront/base/error.hpp"
#include "case_text.hpp"

namespace bowfront::io {
namespace {

using ::testing::HasSubstr;
using ::testing::StartsWith;

std::vector<Coupon> coupons_in(std::string_view text) {
    return std::get<std::vector<Coupon>>(read_coupons(text, "coupons.csv"));
}

// The faults of a text, each as it is printed, joined by line breaks.
std::string told(std::string_view text) {
    std::string out;
    try {
        (void)read_coupons(text, "coupons.csv");
    } catch (const InputError& error) {
        for (const Diagnostic& fault : error.diagnostics()) {
            out += (out.empty() ? "" : "\n") + fault.text();
        }
    }
    return out;
}

constexpr std::string_view kHeader = "direction,before,after\n";

std::string below_header(std::string_view rows) {
    return std::string(kHeader) + std::string(rows);
}

TEST(Coupons, are_read_with_their_lines) {
    const auto coupons = coupons_in("direction,before,after\nalong,250,246.1\nacross,200,197\n");
    ASSERT_EQ(coupons.size(), 2U);
    EXPECT_EQ(coupons[0].direction, SheetDirection::along);
    EXPECT_EQ(coupons[0].before, 250);
    EXPECT_EQ(coupons[0].after, 246.1);
    EXPECT_EQ(coupons[0].line, 2U);
    EXPECT_EQ(coupons[1].direction, SheetDirection::across);
    EXPECT_EQ(coupons[1].line, 3U);
}

TEST(Coupons, take_lengths_in_the_units_of_a_case_file) {
    const auto coupons = coupons_in(
        "direction,before,after\n"
        "along,25 cm,246 mm\n"
        "along,9 27/32 in,\"9 11/16\"\"\"\n"
        "along, 0.82 ft ,\"246\"\n");
    ASSERT_EQ(coupons.size(), 3U);
    EXPECT_EQ(coupons[0].before, 250);
    EXPECT_EQ(coupons[0].after, 246);
    EXPECT_EQ(coupons[1].before, (9 + 27.0 / 32) * 25.4);
    EXPECT_EQ(coupons[1].after, (9 + 11.0 / 16) * 25.4);
    EXPECT_DOUBLE_EQ(coupons[2].before, 0.82 * 304.8);
    EXPECT_EQ(coupons[2].after, 246);
}

TEST(Coupons, read_the_same_however_an_editor_or_a_spreadsheet_saved_them) {
    const std::string plain = "direction,before,after\nalong,250,246\nacross,200,197\n";
    const std::string same[] = {
        "direction,before,after\r\nalong,250,246\r\nacross,200,197\r\n",
        "\xEF\xBB\xBF" "direction,before,after\nalong,250,246\nacross,200,197",
        "\"direction\",\"before\",\"after\"\n\"along\",\"250\",\"246\"\n\"across\",\"200\",\"197\"",
        "# two strips\n\n  \t\ndirection , before , after\n along,250 ,246\n # more\nacross,200,197\n",
        "direction,before,after\n,,\nalong,250,246\nacross,200,197\n,,\n\"\",,\n",
        "after,direction,before\n246,along,250\n197,across,200\n"};
    const auto expected = coupons_in(plain);
    for (const std::string& text : same) {
        const auto coupons = coupons_in(text);
        ASSERT_EQ(coupons.size(), expected.size()) << text;
        for (std::size_t i = 0; i < coupons.size(); ++i) {
            EXPECT_EQ(coupons[i].direction, expected[i].direction) << text;
            EXPECT_EQ(coupons[i].before, expected[i].before) << text;
            EXPECT_EQ(coupons[i].after, expected[i].after) << text;
        }
    }
}

TEST(Coupons, of_the_other_kind_are_test_arcs) {
    const auto measured =
        read_coupons("radius_on_form,chord,rise\n400,300,28.9\n16 in,300,27.4\n", "arcs.csv");
    const auto& arcs = std::get<std::vector<TestArc>>(measured);
    ASSERT_EQ(arcs.size(), 2U);
    EXPECT_EQ(arcs[0].radius_on_form, 400);
    EXPECT_EQ(arcs[0].chord, 300);
    EXPECT_EQ(arcs[0].rise, 28.9);
    EXPECT_EQ(arcs[1].radius_on_form, 406.4);
    EXPECT_EQ(arcs[1].line, 3U);
}

TEST(Coupons, of_the_example_are_read) {
    EXPECT_EQ(coupons_in(project_file("examples/pilot-boat/coupons.csv")).size(), 11U);
}

struct Wrong {
    std::string_view rows;  ///< below the header of coupons
    std::string_view told;
};

void PrintTo(const Wrong& wrong, std::ostream* out) {
    *out << wrong.rows;
}

class WrongRow : public ::testing::TestWithParam<Wrong> {};

TEST_P(WrongRow, is_told_with_its_place_and_what_would_be_right) {
    EXPECT_EQ(told(below_header(GetParam().rows)), GetParam().told);
}

#define WANTED "; a length in mm, such as 246.3, or with its unit, such as 9 11/16 in"

INSTANTIATE_TEST_SUITE_P(
    Coupons, WrongRow,
    ::testing::Values(
        Wrong{"alnog,250,246", "coupons.csv:2:1: BF-IN-004: \"alnog\" is not known here; did you "
                               "mean \"along\"?"},
        Wrong{"both,250,246", "coupons.csv:2:1: BF-IN-004: \"both\" is not known here; a direction "
                              "in the sheet: \"along\" or \"across\""},
        Wrong{"along,,246", "coupons.csv:2:7: BF-IN-004: the field is empty" WANTED},
        Wrong{"along,long,246",
              "coupons.csv:2:7: BF-IN-004: \"long\" has no number where one is wanted" WANTED},
        Wrong{"along,NaN,246",
              "coupons.csv:2:7: BF-IN-004: \"NaN\" has no number where one is wanted" WANTED},
        Wrong{"along,250 C,246",
              "coupons.csv:2:7: BF-IN-010: \"250 C\" has \"C\" for a unit" WANTED},
        Wrong{"along,\"250,5\",246",
              "coupons.csv:2:7: BF-IN-010: \"250,5\" has \",5\" for a unit" WANTED},
        Wrong{"along,1e999,246", "coupons.csv:2:7: BF-IN-009: \"1e999\" is too large or too small a "
                                 "number to be held" WANTED},
        Wrong{"along,1e308,246", "coupons.csv:2:7: BF-IN-004: \"1e308\" is out of range; more than "
                                 "0 mm, up to 20000 mm"},
        Wrong{"along,250,0", "coupons.csv:2:11: BF-IN-004: \"0\" is out of range; more than 0 mm, "
                             "up to 20000 mm"},
        Wrong{"along,-250,246", "coupons.csv:2:7: BF-IN-004: \"-250\" is out of range; more than 0 "
                                "mm, up to 20000 mm"},
        Wrong{"along,250,24.6", "coupons.csv:2:1: BF-IN-008: the row makes a shrink of 90.16 %; "
                                "-10 % to 20 %; measure again, or take the row out"},
        Wrong{"along,1e-300,246", "coupons.csv:2:1: BF-IN-008: the row makes a shrink beyond all "
                                  "measure; -10 % to 20 %; measure again, or take the row out"},
        Wrong{"along,250", "coupons.csv:2:1: BF-IN-002: the row has 2 fields; 3 as in the header; a "
                           "full stop, not a comma, inside a number"},
        Wrong{"along,250,0,246,1",
              "coupons.csv:2:1: BF-IN-002: the row has 5 fields; 3 as in the header; a full stop, "
              "not a comma, inside a number"},
        Wrong{"along,9 3/4\",246",
              "coupons.csv:2:12: BF-IN-002: a double quote inside a field; \"in\" for inches; or "
              "the whole field in quotes, each quote inside it doubled"},
        Wrong{"along,\"250,246", "coupons.csv:2:7: BF-IN-002: a quoted field has no end on its "
                                 "line; a closing double quote"},
        Wrong{"along,\"250\" mm,246",
              "coupons.csv:2:13: BF-IN-002: something stands after the end of a quoted field; a "
              "comma, or the end of the line; a quote inside a field is doubled"},
        Wrong{"", "coupons.csv:1:1: BF-IN-006: no row stands below the header; a row for each "
                  "thing that was measured"}));

TEST(WrongArc, is_told_like_a_coupon) {
    EXPECT_EQ(told("radius_on_form,chord,rise\n400,300,2.89\n400,20000,1e-300\n"),
              "coupons.csv:2:1: BF-IN-008: the row makes a springback of 873.545 %; -20 % to 50 %; "
              "measure again, or take the row out\n"
              "coupons.csv:3:1: BF-IN-008: the row makes a springback beyond all measure; -20 % to "
              "50 %; measure again, or take the row out");
}

TEST(WrongHeader, is_told_with_the_columns_that_are_meant) {
    EXPECT_EQ(told("direction,befor,after\nalong,250,246\n"),
              "coupons.csv:1:1: BF-IN-006: the column \"before\" is missing; all of \"direction\", "
              "\"before\" or \"after\"\n"
              "coupons.csv:1:11: BF-IN-005: the column \"befor\" is not known here; did you mean "
              "\"before\"?");
    EXPECT_THAT(told("direction,before,after,note\nalong,250,246,first\n"),
                HasSubstr("1:24: BF-IN-005: the column \"note\" is not known here"));
    EXPECT_THAT(told("direction,before,after,before\nalong,250,246,250\n"),
                HasSubstr("1:24: BF-IN-007: the column \"before\" stands a second time"));
    for (const char* text : {"direction;before;after\nalong;250;246\n", "along,250,246\n", "{}"}) {
        EXPECT_THAT(told(text), HasSubstr("BF-IN-005: \"")) << text;
        EXPECT_THAT(told(text), HasSubstr("with commas between")) << text;
    }
    for (const char* text : {"", "\n\n", "# nothing\n", ",,\n"}) {
        EXPECT_THAT(told(text), HasSubstr("BF-IN-006: the file has no header")) << text;
    }
}

TEST(Faults, of_a_coupons_file_are_told_all_at_once_in_its_order) {
    EXPECT_EQ(told("direction,befor,after\n"
                   "alnog,250,-1\n"
                   "along,\"250,246\n"
                   "along,250\n"
                   "across,250,246\n"),
              "coupons.csv:1:1: BF-IN-006: the column \"before\" is missing; all of \"direction\", "
              "\"before\" or \"after\"\n"
              "coupons.csv:1:11: BF-IN-005: the column \"befor\" is not known here; did you mean "
              "\"before\"?\n"
              "coupons.csv:2:1: BF-IN-004: \"alnog\" is not known here; did you mean \"along\"?\n"
              "coupons.csv:2:11: BF-IN-004: \"-1\" is out of range; more than 0 mm, up to 20000 mm\n"
              "coupons.csv:3:7: BF-IN-002: a quoted field has no end on its line; a closing double "
              "quote\n"
              "coupons.csv:4:1: BF-IN-002: the row has 2 fields; 3 as in the header; a full stop, "
              "not a comma, inside a number");
}

TEST(Bytes, that_are_no_text_are_told_with_their_place) {
    EXPECT_EQ(told(below_header(std::string_view("al\0ng,250,246", 13))),
              "coupons.csv:2:3: BF-IN-001: a zero byte; a text file saved as UTF-8");
    EXPECT_EQ(told(below_header("al\xFFng,250,246")),
              "coupons.csv:2:3: BF-IN-001: a byte that is not UTF-8; a text file saved as UTF-8");
    EXPECT_THAT(told("\xFF\xFE" "d\0i\0"), HasSubstr("BF-IN-001: the file is UTF-16"));
}

TEST(Bounds, are_held) {
    std::string rows = std::string(kHeader);
    for (std::size_t i = 0; i < kMostCoupons; ++i) {
        rows += "along,250,246\n";
    }
    EXPECT_EQ(coupons_in(rows).size(), kMostCoupons);
    EXPECT_EQ(told(rows + "along,250,246\n"),
              "coupons.csv:10002:1: BF-IN-009: the file has more than 10001 rows; no more, the "
              "header counted");
    EXPECT_EQ(told(std::string(kMostCouponBytes + 1, '#')),
              "coupons.csv: BF-IN-009: the file has 1048577 bytes; at most 1048576 (1 MiB)");
    EXPECT_EQ(told(below_header("along," + std::string(1000, '9') + ",246")),
              "coupons.csv:2:7: BF-IN-009: a field of 1000 bytes; at most 200");
    std::string commas(500'000, ',');
    EXPECT_EQ(told(below_header("along,250,246\n" + commas)), "");
    commas.insert(0, "along");
    EXPECT_THAT(told(below_header(commas)), HasSubstr("the row has 500001 fields"));
    commas.insert(0, "direction,");
    EXPECT_THAT(told(commas), StartsWith("coupons.csv:1:1: "));
}

TEST(Faults, of_a_hopeless_file_are_counted_after_the_first_thousand) {
    std::string rows = std::string(kHeader);
    for (int i = 0; i < 5000; ++i) {
        rows += "x,y,z\n";
    }
    EXPECT_THAT(told(rows), HasSubstr("14000 more faults are not listed"));
}

}  // namespace
}  // namespace bowfront::io
