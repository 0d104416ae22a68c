#include "dxf/transliterate.hpp"

#include <array>
#include <cstdint>

namespace bowfront::dxf {
namespace {

constexpr char32_t kFirstLatin = 0xA0;
constexpr char32_t kNotText = 0xFFFD;

// U+00A0 to U+017F: the letters of the European languages that are written in Latin script.
constexpr std::array<std::string_view, 224> kLatin = {
    " ",    "!",    "?",    "?",  "?",  "?",  "|",  "?",  "?", "(c)", "a",  "<<", "?", "-",
    "(R)",  "?",    " deg", "+-", "^2", "^3", "'",  "u",  "?", ".",   "?",  "^1", "o", ">>",
    " 1/4", " 1/2", " 3/4", "?",  "A",  "A",  "A",  "A",  "A", "A",   "AE", "C",  "E", "E",
    "E",    "E",    "I",    "I",  "I",  "I",  "D",  "N",  "O", "O",   "O",  "O",  "O", "x",
    "O",    "U",    "U",    "U",  "U",  "Y",  "Th", "ss", "a", "a",   "a",  "a",  "a", "a",
    "ae",   "c",    "e",    "e",  "e",  "e",  "i",  "i",  "i", "i",   "d",  "n",  "o", "o",
    "o",    "o",    "o",    "/",  "o",  "u",  "u",  "u",  "u", "y",   "th", "y",  "A", "a",
    "A",    "a",    "A",    "a",  "C",  "c",  "C",  "c",  "C", "c",   "C",  "c",  "D", "d",
    "D",    "d",    "E",    "e",  "E",  "e",  "E",  "e",  "E", "e",   "E",  "e",  "G", "g",
    "G",    "g",    "G",    "g",  "G",  "g",  "H",  "h",  "H", "h",   "I",  "i",  "I", "i",
    "I",    "i",    "I",    "i",  "I",  "i",  "IJ", "ij", "J", "j",   "K",  "k",  "k", "L",
    "l",    "L",    "l",    "L",  "l",  "L",  "l",  "L",  "l", "N",   "n",  "N",  "n", "N",
    "n",    "'n",   "NG",   "ng", "O",  "o",  "O",  "o",  "O", "o",   "OE", "oe", "R", "r",
    "R",    "r",    "R",    "r",  "S",  "s",  "S",  "s",  "S", "s",   "S",  "s",  "T", "t",
    "T",    "t",    "T",    "t",  "U",  "u",  "U",  "u",  "U", "u",   "U",  "u",  "U", "u",
    "U",    "u",    "W",    "w",  "Y",  "y",  "Y",  "Z",  "z", "Z",   "z",  "Z",  "z", "s",
};

// Dashes and quotation marks of U+2010 to U+201F, which word processors put in by themselves.
constexpr char32_t kFirstPunctuation = 0x2010;
constexpr std::array<std::string_view, 16> kPunctuation = {
    "-", "-", "-", "-", "-", "-", "|", "_", "'", "'", ",", "'", "\"", "\"", ",,", "\"",
};

bool continues(char byte) {
    return (static_cast<unsigned char>(byte) & 0xC0U) == 0x80U;
}

// Bytes of the character that `lead` begins; 0 where no character begins so.
std::size_t character_length(unsigned char lead) {
    if (lead < 0x80) {
        return 1;
    }
    if (lead < 0xC2 || lead > 0xF4) {
        return 0;
    }
    return lead < 0xE0 ? 2 : lead < 0xF0 ? 3 : 4;
}

// Takes one character off the front of `rest`, which must not be empty.
char32_t take_character(std::string_view& rest) {
    const auto lead = static_cast<unsigned char>(rest.front());
    const std::size_t length = character_length(lead);
    bool whole = length != 0 && length <= rest.size();
    for (std::size_t i = 1; whole && i < length; ++i) {
        whole = continues(rest[i]);
    }
    if (!whole) {
        rest.remove_prefix(1);
        return kNotText;
    }
    constexpr std::array<unsigned, 5> kLeadBits = {0, 0x7F, 0x1F, 0x0F, 0x07};
    char32_t character = lead & kLeadBits[length];
    for (std::size_t i = 1; i < length; ++i) {
        character = character << 6U | (static_cast<unsigned char>(rest[i]) & 0x3FU);
    }
    rest.remove_prefix(length);
    return character;
}

}  // namespace

std::string transliterate(std::string_view utf8) {
    std::string ascii;
    ascii.reserve(utf8.size());
    while (!utf8.empty()) {
        const char32_t character = take_character(utf8);
        if (character < ' ') {
            ascii += ' ';
        } else if (character <= '~') {
            ascii += static_cast<char>(character);
        } else if (character >= kFirstLatin && character < kFirstLatin + kLatin.size()) {
            ascii += kLatin[character - kFirstLatin];
        } else if (character >= kFirstPunctuation &&
                   character < kFirstPunctuation + kPunctuation.size()) {
            ascii += kPunctuation[character - kFirstPunctuation];
        } else {
            ascii += '?';
        }
    }
    return ascii;
}

}  // namespace bowfront::dxf
