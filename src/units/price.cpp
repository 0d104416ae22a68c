#include "bowfront/units/price.hpp"

#include <array>
#include <cmath>

#include "amount.hpp"
#include "bowfront/base/quoted_text.hpp"

namespace bowfront {
namespace {

struct Spelling {
    std::string_view word;
    PriceUnit unit;
};

// The first spelling of each unit is the one that is printed.
constexpr std::array kSpellings = {Spelling{"m2", PriceUnit::square_metre},
                                   Spelling{"m\u00B2", PriceUnit::square_metre},
                                   Spelling{"ft2", PriceUnit::square_foot},
                                   Spelling{"ft\u00B2", PriceUnit::square_foot},
                                   Spelling{"sheet", PriceUnit::sheet},
                                   Spelling{"m3", PriceUnit::cubic_metre},
                                   Spelling{"m\u00B3", PriceUnit::cubic_metre},
                                   Spelling{"bf", PriceUnit::board_foot},
                                   Spelling{"board foot", PriceUnit::board_foot},
                                   Spelling{"board ft", PriceUnit::board_foot},
                                   Spelling{"each", PriceUnit::each},
                                   Spelling{"piece", PriceUnit::each}};

constexpr std::string_view kWanted =
    R"(a price with its unit, such as "62 /m2", "38 /sheet", "2400 /m3" or "9.50 /bf")";

constexpr double kFoot = 304.8;  // mm
constexpr double kInch = 25.4;   // mm
constexpr double kMetre = 1000;  // mm

std::string_view without_spaces_round(std::string_view text) noexcept {
    const std::size_t first = text.find_first_not_of(' ');
    if (first == std::string_view::npos) {
        return {};
    }
    return text.substr(first, text.find_last_not_of(' ') - first + 1);
}

PriceRead refused(QuantityFault::Kind kind, std::string_view text, std::string_view clause) {
    return PriceRead(QuantityFault{
        kind, text.empty() ? "the text is empty" : quoted_text(text) + ' ' + std::string(clause),
        std::string(kWanted)});
}

// A price in its two halves.
struct Halves {
    std::string_view amount;
    std::string_view word;  // what follows `/` or `per`; empty where neither stands there
};

// Without a `per` the last `/` counts: others belong to fractions.
Halves halves_of(std::string_view text) noexcept {
    constexpr std::string_view kPer = "per ";
    const std::size_t per = text.rfind(kPer);
    const std::size_t at = per != std::string_view::npos ? per : text.rfind('/');
    if (at == std::string_view::npos) {
        return {text, {}};
    }
    const std::size_t sign = at == per ? kPer.size() : 1;
    return {text.substr(0, at), without_spaces_round(text.substr(at + sign))};
}

}  // namespace

std::string_view price_unit_text(PriceUnit unit) noexcept {
    for (const Spelling& spelling : kSpellings) {
        if (spelling.unit == unit) {
            return spelling.word;
        }
    }
    return {};
}

Measure measure_of(PriceUnit unit) noexcept {
    switch (unit) {
        case PriceUnit::square_metre:
        case PriceUnit::square_foot:
            return Measure::area;
        case PriceUnit::cubic_metre:
        case PriceUnit::board_foot:
            return Measure::volume;
        case PriceUnit::sheet:
            return Measure::sheets;
        case PriceUnit::each:
            break;
    }
    return Measure::pieces;
}

double unit_size(PriceUnit unit) noexcept {
    switch (unit) {
        case PriceUnit::square_metre:
            return kMetre * kMetre;
        case PriceUnit::square_foot:
            return kFoot * kFoot;
        case PriceUnit::cubic_metre:
            return kMetre * kMetre * kMetre;
        case PriceUnit::board_foot:
            return kFoot * kFoot * kInch;
        case PriceUnit::sheet:
        case PriceUnit::each:
            break;
    }
    return 1;
}

PriceRead parse_price(std::string_view text) {
    using Kind = QuantityFault::Kind;
    const std::string_view trimmed = without_spaces_round(text);
    const Halves halves = halves_of(trimmed);
    const AmountRead read = read_amount(halves.amount);
    if (!read.amount) {
        return refused(read.too_large ? Kind::size : Kind::form, text,
                       text.empty() ? std::string_view() : std::string_view(read.fault));
    }
    const bool whole = without_spaces_round(halves.amount.substr(read.length)).empty();
    const std::string_view rest = without_spaces_round(trimmed.substr(read.length));
    for (const Spelling& spelling : kSpellings) {
        if (whole && spelling.word == halves.word) {
            const double amount = read.amount->numerator / read.amount->denominator;
            if (!std::isfinite(amount)) {
                return refused(Kind::size, text, "is too large to be held");
            }
            return PriceRead(Price{amount, spelling.unit});
        }
    }
    return refused(Kind::unit, text,
                   rest.empty() ? "does not say what it is the price of"
                                : "has " + quoted_text(rest) + " for what it is the price of");
}

}  // namespace bowfront
