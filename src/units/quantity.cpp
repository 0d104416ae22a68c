#include "bowfront/units/quantity.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <span>

#include "amount.hpp"
#include "bowfront/base/quoted_text.hpp"

namespace bowfront {
namespace {

// (amount − offset / offset_divisor) · numerator / denominator, all whole numbers.
struct Unit {
    std::string_view word;
    double numerator;
    double denominator = 1;
    double offset = 0;
    double offset_divisor = 1;
};

constexpr std::array kFeet = {Unit{"ft", 3048, 10}, Unit{"foot", 3048, 10}, Unit{"feet", 3048, 10},
                              Unit{"'", 3048, 10}};
constexpr std::array kInches = {Unit{"in", 254, 10}, Unit{"inch", 254, 10}, Unit{"inches", 254, 10},
                                Unit{"\"", 254, 10}};
constexpr std::array kMetric = {Unit{"mm", 1}, Unit{"cm", 10}, Unit{"m", 1000}};
// Degrees come out in half turns, so that 90° is exactly half of π.
constexpr std::array kDegrees = {Unit{"deg", 1, 180}, Unit{"degree", 1, 180},
                                 Unit{"degrees", 1, 180}};
constexpr std::array kRadians = {Unit{"rad", 1}};
constexpr std::array kTemperatures = {Unit{"C", 1},
                                      Unit{"degC", 1},
                                      Unit{"deg C", 1},
                                      Unit{"F", 5, 9, 32},
                                      Unit{"degF", 5, 9, 32},
                                      Unit{"deg F", 5, 9, 32},
                                      Unit{"K", 1, 1, 27315, 100}};
constexpr std::array kDifferences = {Unit{"C", 1},    Unit{"degC", 1},    Unit{"deg C", 1},
                                     Unit{"F", 5, 9}, Unit{"degF", 5, 9}, Unit{"deg F", 5, 9},
                                     Unit{"K", 1}};
constexpr std::array kRatios = {Unit{"%", 1, 100}};
constexpr std::array kForces = {Unit{"N", 1}, Unit{"kN", 1000},
                                Unit{"lbf", 44482216152605, 1e13}};
constexpr std::array kMasses = {Unit{"kg", 1}, Unit{"g", 1, 1000}, Unit{"lb", 45359237, 1e8},
                                Unit{"lbs", 45359237, 1e8}, Unit{"oz", 45359237, 16e8}};
constexpr std::array kTimes = {Unit{"s", 1}, Unit{"min", 60}, Unit{"h", 3600}};

constexpr std::string_view kLengthWanted =
    R"(a length with its unit, such as "18 mm", "3/4 in" or "2 ft 3 1/2 in")";
constexpr std::string_view kAngleWanted =
    R"(an angle with its unit, such as "90 deg" or "1.2 rad")";
constexpr std::string_view kTemperatureWanted =
    R"(a temperature with its unit, such as "20 C", "68 F" or "293 K")";
constexpr std::string_view kDifferenceWanted =
    R"(a difference of temperatures with its unit, such as "5 C" or "9 F")";
constexpr std::string_view kRatioWanted =
    R"(a ratio with its unit, such as "1.5 %", or a fraction, such as "1/3")";
constexpr std::string_view kForceWanted = R"(a force with its unit, such as "100 N" or "25 lbf")";
constexpr std::string_view kMassWanted = R"(a mass with its unit, such as "12 kg" or "26 lb")";
constexpr std::string_view kTimeWanted = R"(a time with its unit, such as "12 min" or "30 s")";

struct Spelling {
    std::string_view from;
    std::string_view to;
};

// What keyboards and word processors put for the plain signs.
constexpr std::array kSpellings = {
    Spelling{"\u00B0", "deg"}, Spelling{"\u2032", "'"},  Spelling{"\u2019", "'"},
    Spelling{"\u2033", "\""},  Spelling{"\u201D", "\""}, Spelling{"\u2212", "-"},
    Spelling{"\u2044", "/"},   Spelling{"\u00A0", " "},  Spelling{"\u202F", " "}};

std::string plain(std::string_view text) {
    std::string out;
    while (!text.empty()) {
        std::size_t taken = 1;
        std::string_view put = text.substr(0, 1);
        for (const Spelling& spelling : kSpellings) {
            if (text.starts_with(spelling.from)) {
                taken = spelling.from.size();
                put = spelling.to;
                break;
            }
        }
        out += put;
        text.remove_prefix(taken);
    }
    return out;
}

std::string_view without_spaces_round(std::string_view text) noexcept {
    constexpr std::string_view kSpaces = " \t";
    const std::size_t first = text.find_first_not_of(kSpaces);
    if (first == std::string_view::npos) {
        return {};
    }
    return text.substr(first, text.find_last_not_of(kSpaces) - first + 1);
}

const Unit* find_unit(std::span<const Unit> units, std::string_view word) noexcept {
    for (const Unit& unit : units) {
        if (unit.word == word) {
            return &unit;
        }
    }
    return nullptr;
}

double in_units_of_the_code(const Amount& amount, const Unit& unit) noexcept {
    const double above = amount.numerator * unit.offset_divisor - unit.offset * amount.denominator;
    const double below = amount.denominator * unit.offset_divisor;
    return (above * unit.numerator) / (below * unit.denominator);
}

// One reading of a text: the sign, then what follows it.
class Reader {
  public:
    Reader(std::string_view text, std::string_view wanted)
        : shown_(text), wanted_(wanted), plain_(plain(text)), rest_(without_spaces_round(plain_)) {
        if (!rest_.empty() && (rest_.front() == '-' || rest_.front() == '+')) {
            negative_ = rest_.front() == '-';
            rest_.remove_prefix(1);
        }
    }

    // The next amount, signed; none after a fault.
    std::optional<Amount> amount() {
        if (without_spaces_round(rest_).empty()) {
            fault_ = {QuantityFault::Kind::form,
                      shown_.empty() ? "the text is empty" : says("has no number"),
                      {}};
            return std::nullopt;
        }
        AmountRead read = read_amount(rest_);
        if (!read.amount) {
            fault_ = {read.too_large ? QuantityFault::Kind::size : QuantityFault::Kind::form,
                      says(read.fault),
                      {}};
            return std::nullopt;
        }
        rest_ = without_spaces_round(rest_.substr(read.length));
        if (negative_) {
            read.amount->numerator = -read.amount->numerator;
        }
        return read.amount;
    }

    // All that follows the amount as a unit.
    const Unit* unit(std::span<const Unit> units) {
        const Unit* const found = find_unit(units, rest_);
        if (found == nullptr) {
            refuse_unit(rest_);
        }
        return found;
    }

    void refuse_unit(std::string_view word) {
        fault_ = {
            QuantityFault::Kind::unit,
            word.empty() ? says("has no unit") : says("has " + quoted_text(word) + " for a unit"),
            {}};
    }

    Quantity result(double value) {
        if (!std::isfinite(value)) {
            fault_ = {QuantityFault::Kind::size, says("is too large to be held"), {}};
            return failed();
        }
        return Quantity(value == 0 ? 0.0 : value);
    }

    Quantity failed() {
        fault_.wanted = wanted_;
        return Quantity(fault_);
    }

    [[nodiscard]] std::string_view rest() const noexcept { return rest_; }
    void skip(std::size_t count) { rest_ = without_spaces_round(rest_.substr(count)); }

  private:
    [[nodiscard]] std::string says(const std::string& clause) const {
        return quoted_text(shown_) + ' ' + clause;
    }

    std::string_view shown_;
    std::string_view wanted_;
    std::string plain_;
    std::string_view rest_;
    bool negative_ = false;
    QuantityFault fault_;
};

Quantity parse(std::string_view text, std::span<const Unit> units, std::string_view wanted) {
    Reader reader(text, wanted);
    const auto amount = reader.amount();
    const Unit* const unit = amount ? reader.unit(units) : nullptr;
    return unit != nullptr ? reader.result(in_units_of_the_code(*amount, *unit)) : reader.failed();
}

// The length of the longest feet unit that the text begins with and that ends there as a word.
std::size_t feet_at_start(std::string_view text) noexcept {
    const std::size_t word =
        text.starts_with('\'') ? 1 : std::min(text.find_first_of(" \t0123456789."), text.size());
    return find_unit(kFeet, text.substr(0, word)) != nullptr ? word : 0;
}

}  // namespace

Quantity parse_length(std::string_view text) {
    Reader reader(text, kLengthWanted);
    const auto first = reader.amount();
    if (!first) {
        return reader.failed();
    }
    const std::size_t feet = feet_at_start(reader.rest());
    if (feet == 0 || feet == reader.rest().size()) {
        for (const std::span<const Unit> units :
             {std::span<const Unit>(kMetric), std::span<const Unit>(kInches),
              std::span<const Unit>(kFeet)}) {
            if (const Unit* const unit = find_unit(units, reader.rest())) {
                return reader.result(in_units_of_the_code(*first, *unit));
            }
        }
        reader.refuse_unit(reader.rest());
        return reader.failed();
    }
    reader.skip(feet);
    const auto inches = reader.amount();
    const Unit* const unit = inches ? reader.unit(kInches) : nullptr;
    if (unit == nullptr) {
        return reader.failed();
    }
    constexpr double kInchesPerFoot = 12;
    const Amount sum{first->numerator * kInchesPerFoot * inches->denominator +
                         inches->numerator * first->denominator,
                     first->denominator * inches->denominator, true};
    return reader.result(in_units_of_the_code(sum, *unit));
}

Quantity parse_angle(std::string_view text) {
    Reader reader(text, kAngleWanted);
    const auto amount = reader.amount();
    if (!amount) {
        return reader.failed();
    }
    if (const Unit* const radians = find_unit(kRadians, reader.rest())) {
        return reader.result(in_units_of_the_code(*amount, *radians));
    }
    const Unit* const degrees = reader.unit(kDegrees);
    return degrees != nullptr
               ? reader.result(in_units_of_the_code(*amount, *degrees) * std::numbers::pi)
               : reader.failed();
}

Quantity parse_temperature(std::string_view text) {
    return parse(text, kTemperatures, kTemperatureWanted);
}

Quantity parse_temperature_difference(std::string_view text) {
    return parse(text, kDifferences, kDifferenceWanted);
}

Quantity parse_ratio(std::string_view text) {
    Reader reader(text, kRatioWanted);
    const auto amount = reader.amount();
    if (!amount) {
        return reader.failed();
    }
    if (amount->is_fraction && reader.rest().empty()) {
        return reader.result(amount->numerator / amount->denominator);
    }
    const Unit* const unit = reader.unit(kRatios);
    return unit != nullptr ? reader.result(in_units_of_the_code(*amount, *unit)) : reader.failed();
}

Quantity parse_force(std::string_view text) {
    return parse(text, kForces, kForceWanted);
}

Quantity parse_mass(std::string_view text) {
    return parse(text, kMasses, kMassWanted);
}

Quantity parse_time(std::string_view text) {
    return parse(text, kTimes, kTimeWanted);
}

}  // namespace bowfront
