#include "bowfront/base/quoted_text.hpp"

namespace bowfront {
namespace {

constexpr int kMostCharacters = 48;

unsigned byte_of(char c) noexcept {
    return static_cast<unsigned char>(c);
}

bool between(std::string_view text, std::size_t at, unsigned low, unsigned high) noexcept {
    return at < text.size() && byte_of(text[at]) >= low && byte_of(text[at]) <= high;
}

bool continues(std::string_view text, std::size_t at) noexcept {
    return between(text, at, 0x80, 0xBF);
}

// `prefix` is `\u00` for a character, `\x` for a byte that is none.
void append_escaped(std::string& out, std::string_view prefix, unsigned byte) {
    constexpr std::string_view kDigits = "0123456789abcdef";
    out += prefix;
    out += kDigits[byte >> 4];
    out += kDigits[byte & 0xF];
}

// One character of one byte, or a byte that begins none.
void append_byte(std::string& out, char c, bool is_character) {
    switch (c) {
        case '"':
            out += "\\\"";
            return;
        case '\\':
            out += "\\\\";
            return;
        case '\n':
            out += "\\n";
            return;
        case '\r':
            out += "\\r";
            return;
        case '\t':
            out += "\\t";
            return;
        default:
            break;
    }
    if (!is_character || byte_of(c) < 0x20 || byte_of(c) == 0x7F) {
        append_escaped(out, is_character ? "\\u00" : "\\x", byte_of(c));
    } else {
        out += c;
    }
}

}  // namespace

std::size_t utf8_length(std::string_view text) noexcept {
    if (text.empty()) {
        return 0;
    }
    const unsigned lead = byte_of(text[0]);
    if (lead < 0x80) {
        return 1;
    }
    if (lead >= 0xC2 && lead <= 0xDF) {
        return continues(text, 1) ? 2 : 0;
    }
    if (lead >= 0xE0 && lead <= 0xEF) {
        const unsigned low = lead == 0xE0 ? 0xA0 : 0x80;
        const unsigned high = lead == 0xED ? 0x9F : 0xBF;
        return between(text, 1, low, high) && continues(text, 2) ? 3 : 0;
    }
    if (lead >= 0xF0 && lead <= 0xF4) {
        const unsigned low = lead == 0xF0 ? 0x90 : 0x80;
        const unsigned high = lead == 0xF4 ? 0x8F : 0xBF;
        return between(text, 1, low, high) && continues(text, 2) && continues(text, 3) ? 4 : 0;
    }
    return 0;
}

std::string quoted_text(std::string_view text) {
    std::string out = "\"";
    for (int shown = 0; !text.empty(); ++shown) {
        if (shown == kMostCharacters) {
            out += "…";
            break;
        }
        const std::size_t length = utf8_length(text);
        // U+0080 to U+009F are control characters of two bytes: some terminals obey them.
        const bool control = length == 2 && byte_of(text[0]) == 0xC2 && byte_of(text[1]) < 0xA0;
        if (control) {
            append_escaped(out, "\\u00", byte_of(text[1]));
        } else if (length > 1) {
            out += text.substr(0, length);
        } else {
            append_byte(out, text[0], length == 1);
        }
        text.remove_prefix(length == 0 ? 1 : length);
    }
    return out + '"';
}

}  // namespace bowfront
