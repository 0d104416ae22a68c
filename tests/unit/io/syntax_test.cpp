// What the reader says of a text that is no JSON, and of one that no reader should follow.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

#include "case_text.hpp"

namespace bowfront::io {
namespace {

using ::testing::AllOf;
using ::testing::ElementsAre;
using ::testing::Field;
using ::testing::HasSubstr;

struct Broken {
    std::string_view name;
    std::string_view text;
    std::string_view told;
};

class BrokenText : public ::testing::TestWithParam<Broken> {};

TEST_P(BrokenText, is_told_in_plain_words_with_its_place) {
    EXPECT_EQ(fault_text(GetParam().text), GetParam().told);
}

INSTANTIATE_TEST_SUITE_P(
    Json, BrokenText,
    ::testing::Values(
        Broken{"empty", "",
               "case.json:1:1: BF-IN-002: the file ends; a case, which is an object in braces"},
        Broken{"comment_alone", "// nothing\n",
               "case.json:2:1: BF-IN-002: the file ends; a case, which is an object in braces"},
        Broken{"missing_comma", "{\"a\": 1\n \"b\": 2}",
               "case.json:2:2: BF-IN-002: \"b\" stands after a value; \",\" before the next key, "
               "or \"}\""},
        Broken{"trailing_comma", "{\"a\": 1,\n}",
               "case.json:2:1: BF-IN-002: \"}\" stands after a comma; a key in double quotes"},
        Broken{"trailing_comma_in_list", "{\"a\": [1, ]}",
               "case.json:1:11: BF-IN-002: \"]\" stands after a comma; a value"},
        Broken{"no_value", "{\"a\": }", "case.json:1:7: BF-IN-002: \"}\" stands; a value"},
        Broken{"no_colon", "{\"a\" 1}",
               "case.json:1:6: BF-IN-002: \"1\" stands after a key; \":\" and the key's value"},
        Broken{"bare_key", "{a: 1}",
               "case.json:1:2: BF-IN-002: the key \"a\" stands without quotes; a key in double "
               "quotes"},
        Broken{"single_quotes", "{\"a\": 'x'}",
               "case.json:1:7: BF-IN-002: a single quote stands where a value is wanted; texts "
               "stand in double quotes"},
        Broken{"nan", "{\"a\": NaN}",
               "case.json:1:7: BF-IN-002: \"NaN\" is not a number; a number that can be measured"},
        Broken{"infinity", "{\"a\": -Infinity}",
               "case.json:1:7: BF-IN-002: \"-Infinity\" is not a number; a number that can be "
               "measured"},
        Broken{"bare_fraction", "{\"a\": 3/4}",
               "case.json:1:7: BF-IN-002: \"3/4\" is not how JSON writes a number; a plain number "
               "such as 18 or 17.5, or a text such as \"17 5/16 in\""},
        Broken{"bare_unit", "{\"a\": 18mm}",
               "case.json:1:7: BF-IN-002: \"18mm\" is not how JSON writes a number; a plain number "
               "such as 18 or 17.5, or a text such as \"17 5/16 in\""},
        Broken{"word", "{\"a\": cherry}",
               "case.json:1:7: BF-IN-002: \"cherry\" stands without quotes; a number, a text in "
               "double quotes, true, false, null, a list or an object"},
        Broken{"too_large", "{\"a\": 1e999}",
               "case.json:1:7: BF-IN-009: \"1e999\" is too large a number to be held; a number "
               "that can be measured"},
        Broken{"open_text", "{\"a\": \"x",
               "case.json:1:7: BF-IN-002: a text is not closed; a closing double quote"},
        Broken{
            "text_over_lines", "{\"a\": \"x\n\"}",
            "case.json:1:7: BF-IN-002: a text is not closed on its line; a closing double quote"},
        Broken{"escape", R"({"a": "\q"})",
               "case.json:1:7: BF-IN-002: a text has \"\\\\q\" in it; one of \\\" \\\\ \\/ \\b \\f "
               "\\n \\r \\t or \\u and four digits"},
        Broken{"half_escape", R"({"a": "\u12"})",
               "case.json:1:7: BF-IN-002: a text has \\u without four hexadecimal digits; one of "
               "\\\" \\\\ \\/ \\b \\f \\n \\r \\t or \\u and four digits"},
        Broken{"half_character", R"({"a": "\ud800"})",
               "case.json:1:7: BF-IN-002: a text has half of a character; a character over U+FFFF "
               "as a pair \\uD8xx\\uDCxx"},
        Broken{"open_comment", "{ /* x",
               "case.json:1:3: BF-IN-002: a comment is not closed; */ at its end"},
        Broken{"more_after_the_end", "{} {}",
               "case.json:1:4: BF-IN-002: \"{\" stands after the end of the case; one object and "
               "nothing more"},
        Broken{"open_object", "{\"a\": 1",
               "case.json:1:8: BF-IN-002: the file ends after a value; \",\" before the next key, "
               "or \"}\""},
        Broken{"wrong_bracket", "{\"a\": [1}",
               "case.json:1:9: BF-IN-002: \"}\" stands after a value; \",\" before the next item, "
               "or \"]\""},
        Broken{"utf16", "\xFF\xFE{",
               "case.json:1:1: BF-IN-001: the file is UTF-16; a file saved as UTF-8"},
        Broken{"latin1",
               "{\n\"name\": \"R\xE4"
               "der\"}",
               "case.json:2:11: BF-IN-001: a byte that is not UTF-8; a text file saved as UTF-8"},
        Broken{"list", "[]",
               "case.json:1:1: BF-IN-003: a list stands here; an object with \"$schema\", "
               "\"bowfront\", \"name\", \"units\", \"plan\", \"frame\", \"panes\", \"blank\", "
               "\"sheets\", \"fit\", \"tolerance\", \"webs\", \"form\", \"oven\", \"service\", "
                "\"stock\", \"cutter\", \"shop\", \"shelves\", \"contents\", \"stand\", "
                "\"prices\" or \"access\""}),
    [](const ::testing::TestParamInfo<Broken>& row) { return std::string(row.param.name); });

TEST(HostileText, with_a_zero_byte_is_refused) {
    EXPECT_EQ(fault_text(std::string_view("{\"a\": \0}", 8)),
              "case.json:1:7: BF-IN-001: a zero byte; a text file saved as UTF-8");
}

TEST(HostileText, is_read_to_a_stated_size_and_no_further) {
    EXPECT_EQ(fault_text(std::string(std::size_t{50} << 20, ' ')),
              "case.json: BF-IN-009: the file has 52428800 bytes; at most 4194304 (4 MiB)");
    const std::string padded = pilot_boat() + std::string(kMostBytes - pilot_boat().size(), '\n');
    EXPECT_EQ(fault_text(padded), "");
}

TEST(HostileText, is_read_to_a_stated_depth_and_no_further) {
    const std::string deep = std::string(10'000, '[') + std::string(10'000, ']');
    EXPECT_EQ(fault_text(deep),
              "case.json:1:65: BF-IN-009: lists and objects are nested more than 64 deep; at most "
              "that deep");
    EXPECT_THAT(fault_text(std::string(64, '[') + std::string(64, ']')), HasSubstr("BF-IN-003"));
    EXPECT_THAT(fault_text(std::string(3'000'000, '{')), HasSubstr("BF-IN-002"));
}

TEST(HostileText, is_read_to_a_stated_number_of_values_and_no_further) {
    std::string many = "{\"a\": [1";
    for (std::size_t i = 0; i < kMostValues; ++i) {
        many += ",1";
    }
    EXPECT_EQ(fault_text(many + "]}"),
              "case.json:1:200004: BF-IN-009: the file holds more than 100000 values; at most that "
              "many");
}

TEST(HostileText, with_many_faults_tells_the_first_thousand) {
    std::string many = "{\"a0\": 1";
    for (int i = 1; i < 50'000; ++i) {
        many += ",\n\"a" + std::to_string(i) + "\": 1";
    }
    const auto faults = faults_of(many + "}");
    ASSERT_EQ(faults.size(), kMostFaults + 1);
    EXPECT_EQ(faults.back().text(),
              "case.json: BF-IN-009: 49005 more faults are not listed; mend those above first");
}

// Keys that never stood there before, then again each: the place of the first is found at once.
TEST(HostileText, with_many_repeated_keys_is_read_in_time) {
    std::string keys;
    for (int i = 0; i < 40'000; ++i) {
        keys += ",\"key number " + std::to_string(i) + "\": 1";
    }
    const auto faults = faults_of("{\"a\": 1" + keys + keys + "}");
    ASSERT_EQ(faults.size(), kMostFaults + 1);
    EXPECT_EQ(faults.front().code, Code::input_duplicate_key);
}

TEST(RepeatedKey, is_told_at_its_second_place) {
    const std::string text = pilot_boat_with("\"depth\": 240,", "\"width\": 99, \"depth\": 240,");
    EXPECT_EQ(fault_text(text),
              "case.json:5:49: BF-IN-007 /plan/width: the key \"width\" stands a second time; once "
              "in an object; the first is on line 5");
}

TEST(RepeatedKey, is_the_same_key_however_it_is_spelt) {
    const std::string text =
        pilot_boat_with("\"depth\": 240,", "\"\\u0064epth\": 1, \"depth\": 2,");
    EXPECT_THAT(faults_of(text),
                ElementsAre(AllOf(Field(&Diagnostic::code, Code::input_duplicate_key),
                                  Field(&Diagnostic::pointer, "/plan/depth"))));
}

TEST(RepeatedKey, does_not_hide_other_faults) {
    const std::string text = with(
        pilot_boat_with("\"depth\": 240,", "\"depth\": 240, \"depth\": true,"), "420", "\"x\"");
    EXPECT_THAT(faults_of(text), ElementsAre(Field(&Diagnostic::code, Code::input_duplicate_key),
                                             Field(&Diagnostic::pointer, "/plan/front/radius")));
}

TEST(CaseText, may_have_comments_and_a_byte_order_mark) {
    const std::string text = "\xEF\xBB\xBF// a note\n/* and\nmore */" + pilot_boat() + "// end";
    EXPECT_EQ(fault_text(text), "");
    EXPECT_EQ(fault_text("\xEF\xBB\xBF{,}"),
              "case.json:1:2: BF-IN-002: \",\" stands; a key in double quotes, or \"}\"");
}

TEST(CaseText, may_have_the_line_ends_of_any_system) {
    std::string text;
    for (const char c : pilot_boat_with("420", "\"x\"")) {
        text += c == '\n' ? "\r\n" : std::string(1, c);
    }
    const auto faults = faults_of(text);
    ASSERT_EQ(faults.size(), 1U);
    EXPECT_EQ(faults[0].line, 5U);
    EXPECT_EQ(faults[0].column, 84U);
}

}  // namespace
}  // namespace bowfront::io
