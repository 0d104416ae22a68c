#include "syntax.hpp"

#include <algorithm>
#include <array>

#include "bowfront/base/quoted_text.hpp"
#include "json_tokens.hpp"

namespace bowfront::io {
namespace {

using Kind = JsonToken::Kind;

bool is_digit(char c) noexcept {
    return c >= '0' && c <= '9';
}

std::size_t skip_digits(std::string_view text, std::size_t at) noexcept {
    while (at < text.size() && is_digit(text[at])) {
        ++at;
    }
    return at;
}

// The grammar of RFC 8259, section 6.
bool is_number(std::string_view word) noexcept {
    std::size_t at = word.starts_with('-') ? 1 : 0;
    const std::size_t whole = skip_digits(word, at) - at;
    if (whole == 0 || (whole > 1 && word[at] == '0')) {
        return false;
    }
    at += whole;
    if (at < word.size() && word[at] == '.') {
        const std::size_t end = skip_digits(word, at + 1);
        if (end == at + 1) {
            return false;
        }
        at = end;
    }
    if (at < word.size() && (word[at] == 'e' || word[at] == 'E')) {
        ++at;
        if (at < word.size() && (word[at] == '+' || word[at] == '-')) {
            ++at;
        }
        const std::size_t end = skip_digits(word, at);
        if (end == at) {
            return false;
        }
        at = end;
    }
    return at == word.size();
}

// The four digits of \uXXXX, or -1.
long hex_value(std::string_view digits) noexcept {
    if (digits.size() != 4) {
        return -1;
    }
    long value = 0;
    for (const char c : digits) {
        constexpr std::string_view kDigits = "0123456789abcdef";
        const char small = c >= 'A' && c <= 'F' ? static_cast<char>(c - 'A' + 'a') : c;
        const std::size_t digit = kDigits.find(small);
        if (digit == std::string_view::npos) {
            return -1;
        }
        value = value * 16 + static_cast<long>(digit);
    }
    return value;
}

constexpr std::string_view kEscapesWanted =
    R"(one of \" \\ \/ \b \f \n \r \t or \u and four digits)";
constexpr std::string_view kPairWanted = R"(a character over U+FFFF as a pair \uD8xx\uDCxx)";

struct Clauses {
    std::string found;
    std::string wanted;
};

// `\uXXXX` at an offset inside a text; moves the offset past it.
std::optional<Clauses> check_unicode(std::string_view spelling, std::size_t& at) {
    constexpr std::size_t kLength = 6;
    const long first = hex_value(spelling.substr(at + 2, 4));
    if (first < 0) {
        return Clauses{"a text has \\u without four hexadecimal digits",
                       std::string(kEscapesWanted)};
    }
    at += kLength;
    if (first >= 0xDC00 && first <= 0xDFFF) {
        return Clauses{"a text has half of a character", std::string(kPairWanted)};
    }
    if (first >= 0xD800 && first <= 0xDBFF) {
        const bool escaped = spelling.substr(std::min(at, spelling.size())).starts_with("\\u");
        const long second = escaped ? hex_value(spelling.substr(at + 2, 4)) : -1;
        if (second < 0xDC00 || second > 0xDFFF) {
            return Clauses{"a text has half of a character", std::string(kPairWanted)};
        }
        at += kLength;
    }
    return std::nullopt;
}

std::optional<Clauses> check_text(std::string_view spelling) {
    constexpr std::string_view kEscapes = "\"\\/bfnrt";
    for (std::size_t at = 1; at + 1 < spelling.size();) {
        const auto byte = static_cast<unsigned char>(spelling[at]);
        if (byte == '\n' || byte == '\r') {
            return Clauses{"a text is not closed on its line", "a closing double quote"};
        }
        if (byte < 0x20) {
            return Clauses{"a text holds a control character",
                           R"(a space, or an escape such as \t)"};
        }
        if (byte != '\\') {
            ++at;
        } else if (spelling[at + 1] == 'u') {
            if (auto fault = check_unicode(spelling, at)) {
                return fault;
            }
        } else if (kEscapes.find(spelling[at + 1]) != std::string_view::npos) {
            at += 2;
        } else {
            return Clauses{"a text has " + quoted_text(spelling.substr(at, 2)) + " in it",
                           std::string(kEscapesWanted)};
        }
    }
    return std::nullopt;
}

Clauses describe_word(std::string_view word) {
    constexpr std::array<std::string_view, 7> kNoNumbers = {
        "NaN", "nan", "Infinity", "-Infinity", "+Infinity", "inf", "-inf"};
    if (std::find(kNoNumbers.begin(), kNoNumbers.end(), word) != kNoNumbers.end()) {
        return {quoted_text(word) + " is not a number", "a number that can be measured"};
    }
    if (word.starts_with('\'')) {
        return {"a single quote stands where a value is wanted", "texts stand in double quotes"};
    }
    if (is_digit(word.front()) || word.front() == '-' || word.front() == '+' ||
        word.front() == '.') {
        return {quoted_text(word) + " is not how JSON writes a number",
                R"(a plain number such as 18 or 17.5, or a text such as "17 5/16 in")"};
    }
    return {quoted_text(word) + " stands without quotes",
            "a number, a text in double quotes, true, false, null, a list or an object"};
}

std::string describe(const JsonToken& token) {
    if (token.kind == Kind::end) {
        return "the file ends";
    }
    return (token.kind == Kind::text
                ? std::string(token.spelling.size() <= 50 ? token.spelling
                                                          : std::string_view("a text"))
                : quoted_text(token.spelling)) +
           " stands";
}

enum class Expect { value, item_or_close, key_or_close, key, colon, comma_or_close, nothing };

// Follows the words of a text and says where they leave the grammar.
class Grammar {
  public:
    // Takes one word; what is wrong with it, if anything is.
    std::optional<Clauses> take(const JsonToken& token) {
        if (token.kind == Kind::unclosed) {
            return token.spelling.starts_with('"')
                       ? Clauses{"a text is not closed", "a closing double quote"}
                       : Clauses{"a comment is not closed", "*/ at its end"};
        }
        if (token.kind == Kind::text) {
            if (auto fault = check_text(token.spelling)) {
                return fault;
            }
        }
        switch (expect_) {
            case Expect::value:
            case Expect::item_or_close:
                return take_value(token);
            case Expect::key:
            case Expect::key_or_close:
                return take_key(token);
            case Expect::colon:
                return take_colon(token);
            case Expect::comma_or_close:
                return take_comma(token);
            case Expect::nothing:
                break;
        }
        return token.kind == Kind::end
                   ? std::nullopt
                   : std::optional(Clauses{describe(token) + " after the end of the case",
                                           "one object and nothing more"});
    }

  private:
    static bool is_mark(const JsonToken& token, char mark) noexcept {
        return token.kind == Kind::mark && token.spelling.front() == mark;
    }

    void close() {
        open_.pop_back();
        expect_ = open_.empty() ? Expect::nothing : Expect::comma_or_close;
    }

    std::optional<Clauses> take_value(const JsonToken& token) {
        const bool first_item = expect_ == Expect::item_or_close;
        if (is_mark(token, '{') || is_mark(token, '[')) {
            open_ += token.spelling.front();
            expect_ = token.spelling.front() == '{' ? Expect::key_or_close : Expect::item_or_close;
            return std::nullopt;
        }
        if (first_item && is_mark(token, ']')) {
            close();
            return std::nullopt;
        }
        if (token.kind == Kind::word) {
            if (!is_number(token.spelling) && token.spelling != "true" &&
                token.spelling != "false" && token.spelling != "null") {
                return describe_word(token.spelling);
            }
        } else if (token.kind != Kind::text) {
            const bool trailing =
                is_mark(token, ']') && !first_item && !open_.empty() && open_.back() == '[';
            return Clauses{describe(token) + (trailing ? " after a comma" : ""),
                           open_.empty() ? "a case, which is an object in braces" : "a value"};
        }
        expect_ = open_.empty() ? Expect::nothing : Expect::comma_or_close;
        return std::nullopt;
    }

    std::optional<Clauses> take_key(const JsonToken& token) {
        const bool first = expect_ == Expect::key_or_close;
        if (first && is_mark(token, '}')) {
            close();
            return std::nullopt;
        }
        if (token.kind == Kind::text) {
            expect_ = Expect::colon;
            return std::nullopt;
        }
        if (token.kind == Kind::word) {
            return Clauses{"the key " + quoted_text(token.spelling) + " stands without quotes",
                           "a key in double quotes"};
        }
        const bool trailing = is_mark(token, '}');
        return Clauses{describe(token) + (trailing ? " after a comma" : ""),
                       first ? R"(a key in double quotes, or "}")" : "a key in double quotes"};
    }

    std::optional<Clauses> take_colon(const JsonToken& token) {
        if (!is_mark(token, ':')) {
            return Clauses{describe(token) + " after a key", R"(":" and the key's value)"};
        }
        expect_ = Expect::value;
        return std::nullopt;
    }

    std::optional<Clauses> take_comma(const JsonToken& token) {
        const bool in_object = open_.back() == '{';
        if (is_mark(token, ',')) {
            expect_ = in_object ? Expect::key : Expect::value;
            return std::nullopt;
        }
        if (is_mark(token, in_object ? '}' : ']')) {
            close();
            return std::nullopt;
        }
        return Clauses{describe(token) + " after a value",
                       in_object ? R"("," before the next key, or "}")"
                                 : R"("," before the next item, or "]")"};
    }

    Expect expect_ = Expect::value;
    std::string open_;  // the brackets that are open, outermost first
};

}  // namespace

std::optional<SyntaxFault> find_syntax_fault(std::string_view text) {
    JsonTokens tokens(text);
    Grammar grammar;
    for (;;) {
        const JsonToken token = tokens.next();
        if (auto clauses = grammar.take(token)) {
            return SyntaxFault{token.place, std::move(clauses->found), std::move(clauses->wanted)};
        }
        if (token.kind == Kind::end) {
            return std::nullopt;
        }
    }
}

SyntaxFault number_too_large(std::string_view text, std::size_t offset) {
    JsonTokens tokens(text);
    JsonToken token = tokens.next();
    while (token.kind != Kind::end && token.begin + token.spelling.size() <= offset) {
        token = tokens.next();
    }
    return {token.place, quoted_text(token.spelling) + " is too large a number to be held",
            "a number that can be measured"};
}

}  // namespace bowfront::io
