#include "bowfront/base/quoted_text.hpp"

#include <gtest/gtest.h>

#include <string>

namespace bowfront {
namespace {

TEST(QuotedText, leaves_plain_words_alone) {
    EXPECT_EQ(quoted_text("pilot boat"), "\"pilot boat\"");
    EXPECT_EQ(quoted_text("Räder, 20 °C"), "\"Räder, 20 °C\"");
    EXPECT_EQ(quoted_text(""), "\"\"");
}

TEST(QuotedText, lets_no_control_reach_a_terminal) {
    EXPECT_EQ(quoted_text("a\nb\t\"c\"\\"), R"("a\nb\t\"c\"\\")");
    EXPECT_EQ(quoted_text("\x1b[31m"), R"("\u001b[31m")");
    EXPECT_EQ(quoted_text("\x7f"), R"("\u007f")");
    EXPECT_EQ(quoted_text("\u009B"), R"("\u009b")");
    EXPECT_EQ(quoted_text(std::string_view("\0", 1)), R"("\u0000")");
    EXPECT_EQ(quoted_text("\xff\xc3"), R"("\xff\xc3")");
}

TEST(QuotedText, is_cut_between_characters) {
    std::string long_text;
    std::string first;
    for (int i = 0; i < 60; ++i) {
        long_text += "é";
        if (i < 48) {
            first += "é";
        }
    }
    EXPECT_EQ(quoted_text(long_text), '"' + first + "…\"");
    EXPECT_EQ(quoted_text(first), '"' + first + '"');
}

// Source: RFC 3629, section 4, the syntax of UTF-8 byte sequences
TEST(Utf8Length, follows_the_standard) {
    EXPECT_EQ(utf8_length("a"), 1U);
    EXPECT_EQ(utf8_length("é"), 2U);
    EXPECT_EQ(utf8_length("…"), 3U);
    EXPECT_EQ(utf8_length("\U0001F6A2"), 4U);
    EXPECT_EQ(utf8_length("\xF4\x8F\xBF\xBF"), 4U);
    for (const std::string_view bad :
         {"", "\x80", "\xC0\x80", "\xC1\xBF", "\xC3", "\xC3(", "\xE0\x80\x80", "\xED\xA0\x80",
          "\xE2\x80", "\xF0\x80\x80\x80", "\xF4\x90\x80\x80", "\xF5\x80\x80\x80", "\xFF"}) {
        EXPECT_EQ(utf8_length(bad), 0U) << quoted_text(bad);
    }
}

}  // namespace
}  // namespace bowfront
