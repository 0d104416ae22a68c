#include "value_kinds.hpp"

#include "case_parts.hpp"

#include <charconv>
#include <cmath>
#include <numbers>

#include "bowfront/base/number_text.hpp"
#include "bowfront/base/quoted_text.hpp"
#include "bowfront/io/nearest.hpp"
#include "bowfront/units/quantity.hpp"

namespace bowfront::io {
namespace {

constexpr std::size_t kMostCharacters = 200;

std::string degree_text(double radians) {
    return rounded_text(radians / std::numbers::pi * 180, 3) + " deg";
}
std::string celsius_text(double celsius) {
    return rounded_text(celsius, 2) + " C";
}
std::string newton_text(double newtons) {
    return rounded_text(newtons, 2) + " N";
}
std::string kilogram_text(double kilograms) {
    return rounded_text(kilograms, 3) + " kg";
}

template <class ToText>
std::string range_text(const Range& range, const ToText& text) {
    if (range.at_low == Range::Low::open) {
        return "more than " + text(range.low) + ", up to " + text(range.high);
    }
    return text(range.low) + " to " + text(range.high);
}

template <class ToText>
std::optional<double> within(Reading& reading, const Value& value, double number,
                             const Range& range, const ToText& text) {
    if (!range.holds(number)) {
        reading.refuse(value, Code::input_value, text(number) + " is out of range",
                       range_text(range, text));
        return std::nullopt;
    }
    return number;
}

void refuse(Reading& reading, const Value& value, const QuantityFault& fault) {
    const Code code = fault.kind == QuantityFault::Kind::unit   ? Code::input_unit
                      : fault.kind == QuantityFault::Kind::size ? Code::input_limit
                                                                : Code::input_value;
    reading.refuse(value, code, fault.found, fault.wanted);
}

// The number of a quantity; a fault of its text becomes a fault of the file.
std::optional<double> taken(Reading& reading, const Value& value, const Quantity& quantity) {
    if (quantity) {
        return quantity.value();
    }
    refuse(reading, value, quantity.fault());
    return std::nullopt;
}

bool is_number(const Value& value) noexcept {
    return value.node->kind == JsonNode::Kind::number;
}
bool is_text(const Value& value) noexcept {
    return value.node->kind == JsonNode::Kind::text;
}

// Whether a value is a text, as a quantity that always carries its unit has to be.
template <class Parse>
bool has_text(Reading& reading, const Value& value, std::string_view what, const Parse& parse) {
    if (is_number(value)) {
        const std::string wanted = parse({}).fault().wanted;
        reading.refuse(value, Code::input_unit, "a bare number, " + value.node->text, wanted);
        return false;
    }
    if (!is_text(value)) {
        reading.refuse_type(value, what);
        return false;
    }
    return true;
}

// A quantity that always carries its unit.
std::optional<double> with_unit(Reading& reading, const Value& value, std::string_view what,
                                Quantity (*parse)(std::string_view)) {
    return has_text(reading, value, what, parse)
               ? taken(reading, value, parse(value.node->text))
               : std::nullopt;
}

}  // namespace

std::optional<double> LengthIn::operator()(Reading& reading, const Value& value) const {
    const bool inches = reading.unit() == LengthUnit::inch;
    if (!is_number(value) && !is_text(value)) {
        reading.refuse_type(value, inches
                                       ? R"(a number of inches, or a text such as "18 mm")"
                                       : R"(a number of millimetres, or a text such as "3/4 in")");
        return std::nullopt;
    }
    const std::string text = value.node->text + (!is_number(value) ? "" : inches ? " in" : " mm");
    const auto length = taken(reading, value, parse_length(text));
    return length ? within(reading, value, *length, range,
                           [&reading](double x) { return reading.length_text(x); })
                  : std::nullopt;
}

std::optional<double> AngleIn::operator()(Reading& reading, const Value& value) const {
    if (!is_number(value) && !is_text(value)) {
        reading.refuse_type(value, R"(a number of degrees, or a text such as "1.2 rad")");
        return std::nullopt;
    }
    const std::string text = value.node->text + (is_number(value) ? " deg" : "");
    const auto angle = taken(reading, value, parse_angle(text));
    return angle ? within(reading, value, *angle, range, degree_text) : std::nullopt;
}

std::optional<double> RatioIn::operator()(Reading& reading, const Value& value) const {
    const auto ratio =
        with_unit(reading, value, R"(a ratio as a text, such as "1.5 %")", parse_ratio);
    return ratio ? within(reading, value, *ratio, range, percent_text) : std::nullopt;
}

std::optional<double> TemperatureIn::operator()(Reading& reading, const Value& value) const {
    const auto celsius =
        with_unit(reading, value, R"(a temperature as a text, such as "20 C")", parse_temperature);
    return celsius ? within(reading, value, *celsius, range, celsius_text) : std::nullopt;
}

std::optional<double> TemperatureDifferenceIn::operator()(Reading& reading,
                                                          const Value& value) const {
    const auto kelvin =
        with_unit(reading, value, R"(a difference of temperatures as a text, such as "5 C")",
                  parse_temperature_difference);
    return kelvin ? within(reading, value, *kelvin, range, celsius_text) : std::nullopt;
}

std::optional<double> ForceIn::operator()(Reading& reading, const Value& value) const {
    const auto newtons =
        with_unit(reading, value, R"(a force as a text, such as "100 N")", parse_force);
    return newtons ? within(reading, value, *newtons, range, newton_text) : std::nullopt;
}

std::optional<double> MassIn::operator()(Reading& reading, const Value& value) const {
    const auto kilograms =
        with_unit(reading, value, R"(a mass as a text, such as "12 kg")", parse_mass);
    return kilograms ? within(reading, value, *kilograms, range, kilogram_text) : std::nullopt;
}

std::optional<Price> PriceIn::operator()(Reading& reading, const Value& value) const {
    // More than anything for a case costs in any currency.
    constexpr double kMost = 1e9;
    if (!has_text(reading, value, R"(a price as a text, such as "62 /m2")", parse_price)) {
        return std::nullopt;
    }
    const PriceRead price = parse_price(value.node->text);
    if (!price) {
        refuse(reading, value, price.fault());
        return std::nullopt;
    }
    const auto amount = within(reading, value, price.value().amount, {0, kMost},
                               [](double x) { return rounded_text(x, 2); });
    return amount ? std::optional(price.value()) : std::nullopt;
}

std::optional<int> CountIn::operator()(Reading& reading, const Value& value) const {
    const std::string wanted = "a whole number from 1 to " + std::to_string(most);
    if (!is_number(value)) {
        reading.refuse_type(value, wanted);
        return std::nullopt;
    }
    double number = 0;
    const std::string& text = value.node->text;
    const auto result = std::from_chars(text.data(), text.data() + text.size(), number);
    if (result.ec != std::errc{} || number < 1 || number > most || number != std::floor(number)) {
        reading.refuse(value, Code::input_value, quoted_text(text) + " is no such count", wanted);
        return std::nullopt;
    }
    return static_cast<int>(number);
}

std::string line_fault(std::string_view text) {
    if (text.empty()) {
        return "the text is empty";
    }
    std::size_t characters = 0;
    while (!text.empty()) {
        const auto first = static_cast<unsigned char>(text[0]);
        const std::size_t length = utf8_length(text);
        const bool control =
            first < 0x20 || first == 0x7F ||
            (length == 2 && first == 0xC2 && static_cast<unsigned char>(text[1]) < 0xA0);
        if (control) {
            return "the text holds a control character";
        }
        text.remove_prefix(length == 0 ? 1 : length);
        ++characters;
    }
    return characters > kMostCharacters
               ? "the text has " + std::to_string(characters) + " characters"
               : std::string();
}

std::optional<std::string> TextLine::operator()(Reading& reading, const Value& value) const {
    if (!is_text(value)) {
        reading.refuse_type(value, std::string(what) + " as a text");
        return std::nullopt;
    }
    if (std::string fault = line_fault(value.node->text); !fault.empty()) {
        reading.refuse(value, Code::input_value, std::move(fault),
                       std::string(what) + " of 1 to " + std::to_string(kMostCharacters) +
                           " characters on one line");
        return std::nullopt;
    }
    return value.node->text;
}

std::optional<ToleranceSpec> ToleranceIn::operator()(Reading& reading, const Value& value) const {
    constexpr std::string_view kWanted =
        R"(a class of ISO 2768-1 ("f", "m", "c" or "v") or a length such as "0.2 mm")";
    if (!is_number(value) && !is_text(value)) {
        reading.refuse_type(value, kWanted);
        return std::nullopt;
    }
    if (is_text(value)) {
        if (const auto by_class = find_tolerance_class(value.node->text)) {
            return ToleranceSpec{by_class, 0};
        }
        if (value.node->text.find_first_of("0123456789") == std::string::npos) {
            reading.refuse(value, Code::input_value,
                           quoted_text(value.node->text) + " is no class and no length",
                           std::string(kWanted));
            return std::nullopt;
        }
    }
    const auto length = LengthIn{kNotNegative}(reading, value);
    return length ? std::optional(ToleranceSpec{std::nullopt, *length}) : std::nullopt;
}

std::optional<std::size_t> word_index(Reading& reading, const Value& value, std::string_view what,
                                      std::span<const std::string_view> words) {
    const std::string wanted = std::string(what) + ": " + listed(words);
    if (!is_text(value)) {
        reading.refuse_type(value, wanted);
        return std::nullopt;
    }
    const std::string& text = value.node->text;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (words[i] == text) {
            return i;
        }
    }
    const std::string meant = nearest(text, words);
    reading.refuse(value, Code::input_value, quoted_text(text) + " is not known here",
                   meant.empty() ? wanted : "did you mean " + quoted_text(meant) + "?");
    return std::nullopt;
}

std::string listed(std::span<const std::string_view> words) {
    std::string out;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (i != 0) {
            out += i + 1 == words.size() ? " or " : ", ";
        }
        out += quoted_text(words[i]);
    }
    return out;
}

std::string percent_text(double ratio) {
    return rounded_text(ratio * 100, 3) + " %";
}

std::optional<int> VersionIn::operator()(Reading& reading, const Value& value) const {
    if (value.node->kind != JsonNode::Kind::number) {
        reading.refuse_type(value, "the number 1");
        return std::nullopt;
    }
    double number = 0;
    const std::string& text = value.node->text;
    std::from_chars(text.data(), text.data() + text.size(), number);
    if (number != 1) {
        reading.refuse(value, Code::input_value,
                       std::string(what) + " of version " + text + " can't be read", "version 1");
        return std::nullopt;
    }
    return 1;
}

std::optional<CaseSide> SideIn::operator()(Reading& reading, const Value& value) const {
    if (!names_known(reading.faults())) {
        return std::nullopt;  // told already
    }
    const std::vector<CaseSide> sides = sides_of(plan);
    std::vector<std::string_view> names;
    for (const CaseSide& side : sides) {
        names.push_back(side_text(side));
    }
    const auto index = word_index(reading, value, "a side", names);
    return index ? std::optional(sides[*index]) : std::nullopt;
}

}  // namespace bowfront::io
