#include "step/part21_text.hpp"

namespace bowfront::step {
namespace {

TEST(Part21Text, escapes_what_is_not_ascii) {
    // ISO 10303-21, 6.4.3.3: hex of each 16-bit or 32-bit character between the directives.
    EXPECT_EQ(escaped("A('Möwe')"), "A('M\\X2\\00F6\\X0\\we')");
    EXPECT_EQ(escaped("A('玻璃 🚢')"), "A('\\X2\\73BB7483\\X0\\ \\X4\\0001F6A2\\X0\\')");
    EXPECT_EQ(escaped("A('é🚢é')"), "A('\\X2\\00E9\\X0\\\\X4\\0001F6A2\\X0\\\\X2\\00E9\\X0\\')");
}

TEST(Part21Text, takes_bytes_that_are_no_utf8_for_the_replacement_character) {
    EXPECT_EQ(escaped("A('\xFF')"), "A('\\X2\\FFFD\\X0\\')");
    EXPECT_EQ(escaped("A('\xC3')"), "A('\\X2\\FFFD\\X0\\')");
    EXPECT_EQ(escaped("A('\xE7\x8E')"), "A('\\X2\\FFFDFFFD\\X0\\')");
}

TEST(Part21Text, joins_strings_that_were_broken_even_within_a_character) {
    EXPECT_EQ(escaped("A('M\xC3\n\xB6we',\n'')"), "A('M\\X2\\00F6\\X0\\we',\n'')");
}

TEST(Part21Text, leaves_empty_strings_and_doubled_apostrophes_but_for_seeming_ends) {
    EXPECT_EQ(escaped("A('','',('') )"), "A('','',('') )");
    EXPECT_EQ(escaped("A('it''s','''x''')"), "A('it''s','''x''')");
    EXPECT_EQ(escaped("A('the ''M'', a')"), "A('the ''M\\X2\\0027\\X0\\, a')");
    EXPECT_EQ(escaped("A('a'' )b')"), "A('a\\X2\\0027\\X0\\ )b')");
}

TEST(Part21Text, has_no_control_characters_in_names) {
    EXPECT_EQ(printable("a\tb\nc\x7F"), "a b c ");
    EXPECT_EQ(printable("Möwe"), "Möwe");
}

}  // namespace
}  // namespace bowfront::step
