#include "dxf/tag_reader.hpp"

#include <charconv>
#include <cmath>
#include <utility>

#include "bowfront/base/error.hpp"

namespace bowfront::dxf {
namespace {

constexpr int kComment = 999;
constexpr double kFarthest = 1e9;  // a thousand kilometres, in mm
constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

std::string_view trimmed(std::string_view text) {
    constexpr std::string_view kBlank = " \t\r\v\f";
    const std::size_t first = text.find_first_not_of(kBlank);
    if (first == std::string_view::npos) {
        return {};
    }
    return text.substr(first, text.find_last_not_of(kBlank) - first + 1);
}

// The number that is the whole of the text, a plus sign allowed.
template <class Number>
bool parse(std::string_view text, Number& number) {
    text = trimmed(text);
    if (text.size() > 1 && text.front() == '+' && text[1] != '-') {
        text.remove_prefix(1);
    }
    const auto result = std::from_chars(text.data(), text.data() + text.size(), number);
    return result.ec == std::errc{} && result.ptr == text.data() + text.size();
}

}  // namespace

std::string shown(std::string_view value) {
    constexpr std::size_t kMost = 40;
    std::string text = "'";
    for (const char c : value.substr(0, kMost)) {
        text += c >= ' ' && c <= '~' ? c : '?';
    }
    text += value.size() > kMost ? "...'" : "'";
    return text;
}

std::string_view Tag::word() const {
    return trimmed(value);
}

TagReader::TagReader(std::string_view text, std::string name)
    : rest_(text), name_(std::move(name)) {
    if (rest_.starts_with(kByteOrderMark)) {
        rest_.remove_prefix(kByteOrderMark.size());
    }
}

const Tag& TagReader::peek() {
    if (!has_next_) {
        advance();
    }
    return next_;
}

Tag TagReader::take() {
    const Tag tag = peek();
    has_next_ = false;
    return tag;
}

std::string_view TagReader::take_line() {
    if (rest_.empty()) {
        fail(Code::input_syntax, line_ + 1, "the text ends before the drawing does", "0 and EOF");
    }
    const std::size_t end = rest_.find('\n');
    std::string_view line = rest_.substr(0, end);
    rest_.remove_prefix(end == std::string_view::npos ? rest_.size() : end + 1);
    ++line_;
    if (line.ends_with('\r')) {
        line.remove_suffix(1);
    }
    return line;
}

void TagReader::advance() {
    do {
        const std::string_view code = take_line();
        if (!parse(code, next_.code)) {
            fail(Code::input_syntax, line_, shown(code) + " is no group code", "a whole number");
        }
        next_.value = take_line();
        next_.line = line_;
    } while (next_.code == kComment);
    has_next_ = true;
}

int TagReader::integer(const Tag& tag) const {
    int number = 0;
    if (!parse(tag.value, number)) {
        fail(Code::input_syntax, tag.line, shown(tag.value) + " is no whole number");
    }
    return number;
}

double TagReader::real(const Tag& tag) const {
    double number = 0;
    if (!parse(tag.value, number) || !std::isfinite(number)) {
        fail(Code::input_syntax, tag.line, shown(tag.value) + " is no number",
             "digits with a decimal point, of a size that can be held");
    }
    if (std::abs(number) > kFarthest) {
        fail(Code::input_limit, tag.line, shown(tag.value) + " is too large", "at most 1e9");
    }
    return number;
}

void TagReader::fail(Code code, std::size_t line, std::string found, std::string wanted) const {
    constexpr std::size_t kFirstColumn = 1;
    throw InputError(
        {Diagnostic{code, name_, line, kFirstColumn, {}, std::move(found), std::move(wanted)}});
}

}  // namespace bowfront::dxf
