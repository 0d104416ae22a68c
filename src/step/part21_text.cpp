#include "step/part21_text.hpp"

#include <array>
#include <charconv>
#include <cstdint>

namespace bowfront::step {
namespace {

constexpr char32_t kReplacement = 0xFFFD;

/// A character and how many bytes of UTF-8 it took.
struct Decoded {
    char32_t character = kReplacement;
    std::size_t bytes = 1;
};

bool follows(std::string_view text, std::size_t at) {
    return at < text.size() && (static_cast<unsigned char>(text[at]) & 0xC0U) == 0x80U;
}

/// The character at `at`; a byte that begins none reads as the replacement character.
Decoded decoded(std::string_view text, std::size_t at) {
    const auto lead = static_cast<unsigned char>(text[at]);
    const std::size_t length = lead < 0x80                    ? 1
                               : lead >= 0xC2 && lead < 0xE0  ? 2
                               : lead >= 0xE0 && lead < 0xF0  ? 3
                               : lead >= 0xF0 && lead <= 0xF4 ? 4
                                                              : 0;
    if (length == 1) {
        return {lead, 1};
    }
    if (length == 0) {
        return {};
    }
    char32_t character = lead & (0x7FU >> length);
    for (std::size_t i = 1; i < length; ++i) {
        if (!follows(text, at + i)) {
            return {};
        }
        character = character << 6U | (static_cast<unsigned char>(text[at + i]) & 0x3FU);
    }
    return {character, length};
}

void append_utf8(std::string& out, char32_t character) {
    const auto tail = [&](unsigned shift) {
        out += static_cast<char>(0x80U | (character >> shift & 0x3FU));
    };
    if (character < 0x80) {
        out += static_cast<char>(character);
    } else if (character < 0x800) {
        out += static_cast<char>(0xC0U | character >> 6U);
        tail(0);
    } else if (character < 0x10000) {
        out += static_cast<char>(0xE0U | character >> 12U);
        tail(6);
        tail(0);
    } else {
        out += static_cast<char>(0xF0U | character >> 18U);
        tail(12);
        tail(6);
        tail(0);
    }
}

void append_hex(std::string& out, char32_t character, int digits) {
    constexpr std::string_view kDigits = "0123456789ABCDEF";
    for (int i = digits - 1; i >= 0; --i) {
        out += kDigits[character >> (4 * static_cast<unsigned>(i)) & 0xFU];
    }
}

/// Collects characters outside ASCII and writes a run of them as one escape.
class Run {
  public:
    explicit Run(std::string& out) : out_(out) {}
    void add(char32_t character) {
        const int wanted = character < 0x10000 ? 4 : 8;
        if (digits_ != wanted) {
            end();
            out_ += wanted == 4 ? "\\X2\\" : "\\X4\\";
            digits_ = wanted;
        }
        append_hex(out_, character, wanted);
    }
    void end() {
        if (digits_ != 0) {
            out_ += "\\X0\\";
            digits_ = 0;
        }
    }

  private:
    std::string& out_;
    int digits_ = 0;
};

}  // namespace

std::string printable(std::string_view name) {
    std::string out(name);
    for (char& c : out) {
        const auto byte = static_cast<unsigned char>(c);
        if (byte < 0x20 || byte == 0x7F) {
            c = ' ';
        }
    }
    return out;
}

std::string escaped(std::string_view text) {
    // Unbroken first: the kernel breaks by bytes, so also within a character.
    std::string unbroken;
    unbroken.reserve(text.size());
    bool in_string = false;
    for (const char c : text) {
        if (c == '\'') {
            in_string = !in_string;
        }
        if (!in_string || (c != '\n' && c != '\r')) {
            unbroken += c;
        }
    }
    std::string out;
    out.reserve(unbroken.size());
    Run run(out);
    for (std::size_t at = 0; at < unbroken.size();) {
        const Decoded next = decoded(unbroken, at);
        at += next.bytes;
        if (next.character < 0x80) {
            run.end();
            out += static_cast<char>(next.character);
        } else {
            run.add(next.character);
        }
    }
    return out;
}

std::string unescaped(std::string_view content) {
    std::string out;
    for (std::size_t at = 0; at < content.size();) {
        const std::string_view rest = content.substr(at);
        const std::size_t width = rest.starts_with("\\X2\\") ? 4 : rest.starts_with("\\X4\\") ? 8 : 0;
        const std::size_t end = width == 0 ? std::string_view::npos : rest.find("\\X0\\");
        if (end == std::string_view::npos) {
            out += content[at++];
            continue;
        }
        for (std::size_t digit = 4; digit + width <= end; digit += width) {
            std::uint32_t character = kReplacement;
            std::from_chars(rest.data() + digit, rest.data() + digit + width, character, 16);
            append_utf8(out, character);
        }
        at += end + 4;
    }
    return out;
}

}  // namespace bowfront::step
