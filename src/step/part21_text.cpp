#include "step/part21_text.hpp"

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

/// The text without line breaks in its strings. The kernel breaks them by bytes, so also within a
/// character.
std::string in_one_piece(std::string_view text) {
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
    return unbroken;
}

/// Whether a comma or a closing bracket follows, blanks aside.
bool seems_an_end(std::string_view rest) {
    const auto next = rest.find_first_not_of(" \r\n");
    return next != std::string_view::npos && (rest[next] == ',' || rest[next] == ')');
}

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
    const std::string unbroken = in_one_piece(text);
    std::string out;
    out.reserve(unbroken.size());
    Run run(out);
    bool in_string = false;
    for (std::size_t at = 0; at < unbroken.size();) {
        const std::string_view rest = std::string_view(unbroken).substr(at);
        const bool doubled = in_string && rest.starts_with("''");
        if (doubled && seems_an_end(rest.substr(2))) {
            run.add(U'\'');
            at += 2;
            continue;
        }
        const Decoded next = decoded(unbroken, at);
        if (next.character < 0x80) {
            run.end();
            out += rest.substr(0, doubled ? 2 : 1);
        } else {
            run.add(next.character);
        }
        in_string = in_string != (rest.front() == '\'' && !doubled);
        at += doubled ? 2 : next.bytes;
    }
    return out;
}

}  // namespace bowfront::step
