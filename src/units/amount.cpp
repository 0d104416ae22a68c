#include "amount.hpp"

#include <charconv>
#include <cmath>

namespace bowfront {
namespace {

// A number of 12 digits times 3048 (tenths of a millimetre in ten thousand feet) stays below 2^53.
constexpr std::size_t kExactDigits = 12;
// Powers of ten up to this one are exact in a double.
constexpr int kExactPower = 22;
// Whole numbers of a fraction: the product of two of them stays within kExactDigits.
constexpr std::size_t kFractionDigits = 6;

bool is_digit(char c) noexcept {
    return c >= '0' && c <= '9';
}

std::size_t count_digits(std::string_view text, std::size_t from) noexcept {
    std::size_t at = from;
    while (at < text.size() && is_digit(text[at])) {
        ++at;
    }
    return at - from;
}

std::size_t count_spaces(std::string_view text, std::size_t from) noexcept {
    std::size_t at = from;
    while (at < text.size() && (text[at] == ' ' || text[at] == '\t')) {
        ++at;
    }
    return at - from;
}

double whole_number(std::string_view digits) noexcept {
    double value = 0;
    for (const char digit : digits) {
        value = value * 10 + (digit - '0');
    }
    return value;
}

// Exact up to kExactPower; std::pow promises no such thing.
double power_of_ten(int power) noexcept {
    double value = 1;
    for (int i = 0; i < power; ++i) {
        value *= 10;
    }
    return value;
}

// Digits without the zeros in front, which carry nothing.
std::string_view significant(std::string_view digits) noexcept {
    const std::size_t first = digits.find_first_not_of('0');
    return first == std::string_view::npos ? std::string_view{} : digits.substr(first);
}

struct Slash {
    std::string_view numerator;
    std::string_view denominator;
    std::size_t length = 0;  // 0 where the text goes on otherwise
};

// `5/16` at a place; spaces round the stroke are free.
Slash read_slash(std::string_view text, std::size_t from) {
    const std::size_t above = count_digits(text, from);
    std::size_t at = from + above;
    at += count_spaces(text, at);
    if (above == 0 || at >= text.size() || text[at] != '/') {
        return {};
    }
    ++at;
    at += count_spaces(text, at);
    const std::size_t below = count_digits(text, at);
    return {text.substr(from, above), text.substr(at, below), at + below - from};
}

AmountRead failed(std::string fault) {
    return {std::nullopt, 0, std::move(fault), false};
}

AmountRead fraction(double whole, bool has_whole, const Slash& slash, std::size_t length) {
    if (slash.denominator.empty()) {
        return failed("has a fraction with nothing to divide by");
    }
    if (slash.numerator.size() > kFractionDigits || slash.denominator.size() > kFractionDigits) {
        return failed("has a fraction of more than 6 digits");
    }
    const double above = whole_number(slash.numerator);
    const double below = whole_number(slash.denominator);
    if (below == 0) {
        return failed("divides by zero");
    }
    if (has_whole && above >= below) {
        return failed("has a fraction that is not under 1 after its whole number");
    }
    return {Amount{whole * below + above, below, true}, length, {}, false};
}

struct Decimal {
    std::string digits;  // all of them, without the point
    int scale = 0;       // times ten to this power
    std::size_t length = 0;
};

// The exponent at a place, `e-3`; nothing taken where there is none.
void read_exponent(std::string_view text, Decimal& decimal) {
    std::size_t at = decimal.length;
    if (at >= text.size() || (text[at] != 'e' && text[at] != 'E')) {
        return;
    }
    ++at;
    const bool negative = at < text.size() && text[at] == '-';
    if (at < text.size() && (text[at] == '-' || text[at] == '+')) {
        ++at;
    }
    const std::size_t count = count_digits(text, at);
    if (count == 0) {
        return;
    }
    constexpr double kMostExponent = 9999;  // far beyond any double, far below any overflow
    const double size = std::fmin(whole_number(text.substr(at, count)), kMostExponent);
    decimal.scale += (negative ? -1 : 1) * static_cast<int>(size);
    decimal.length = at + count;
}

Decimal read_decimal(std::string_view text, std::size_t from) {
    Decimal decimal;
    const std::size_t whole = count_digits(text, from);
    decimal.digits = text.substr(from, whole);
    decimal.length = from + whole;
    if (decimal.length < text.size() && text[decimal.length] == '.') {
        const std::size_t places = count_digits(text, decimal.length + 1);
        decimal.digits += text.substr(decimal.length + 1, places);
        if (!decimal.digits.empty()) {
            decimal.length += 1 + places;
            decimal.scale = -static_cast<int>(places);
        }
    }
    if (!decimal.digits.empty()) {
        read_exponent(text, decimal);
    }
    return decimal;
}

AmountRead from_decimal(std::string_view text, std::size_t from, const Decimal& decimal) {
    const std::string_view digits = significant(decimal.digits);
    if (digits.size() <= kExactDigits && decimal.scale <= 0 && -decimal.scale <= kExactPower) {
        return {Amount{whole_number(digits), power_of_ten(-decimal.scale), false},
                decimal.length,
                {},
                false};
    }
    double value = 0;
    const char* const end = text.data() + decimal.length;
    const auto result = std::from_chars(text.data() + from, end, value);
    if (result.ec != std::errc{} || !std::isfinite(value)) {
        AmountRead read = failed("is too large or too small a number to be held");
        read.too_large = true;
        return read;
    }
    return {Amount{value, 1, false}, decimal.length, {}, false};
}

}  // namespace

AmountRead read_amount(std::string_view text) {
    const std::size_t start = count_spaces(text, 0);
    const std::size_t whole = count_digits(text, start);
    if (const Slash only = read_slash(text, start); only.length != 0) {
        return fraction(0, false, only, start + only.length);
    }
    if (whole != 0) {
        std::size_t next = start + whole;
        const bool hyphen = next < text.size() && text[next] == '-';
        next += hyphen ? 1 : count_spaces(text, next);
        if (const Slash rest = read_slash(text, next); rest.length != 0 && next != start + whole) {
            if (whole > kFractionDigits) {
                return failed("has a fraction after a number of more than 6 digits");
            }
            return fraction(whole_number(text.substr(start, whole)), true, rest,
                            next + rest.length);
        }
    }
    const Decimal decimal = read_decimal(text, start);
    if (decimal.digits.empty()) {
        return failed("has no number where one is wanted");
    }
    return from_decimal(text, start, decimal);
}

}  // namespace bowfront
