#pragma once
/// \file
/// The kinds of value that a case file holds: what each takes, and what it says of one it refuses.
///
/// Each is a callable from a Value to what it means, or nothing after a fault has been recorded.

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "bowfront/units/price.hpp"
#include "reading.hpp"

namespace bowfront::io {

/// Numbers from `low` to `high`, both allowed unless `low` is open.
struct Range {
    double low = 0;
    double high = 0;
    enum class Low { closed, open } at_low = Low::closed;

    [[nodiscard]] bool holds(double value) const noexcept {
        return value <= high && (at_low == Low::open ? value > low : value >= low);
    }
};

/// The longest length of anything in a case, mm: larger ones are slips of the unit.
inline constexpr double kLongest = 20'000;
inline constexpr Range kPositive{0, kLongest, Range::Low::open};
inline constexpr Range kNotNegative{0, kLongest};
/// Of a place to either side.
inline constexpr Range kAnywhere{-kLongest, kLongest};

/// mm. A bare number is in the file's unit.
struct LengthIn {
    using Result = double;
    Range range = kPositive;
    [[nodiscard]] std::optional<double> operator()(Reading& reading, const Value& value) const;
};

/// rad. A bare number is in degrees.
struct AngleIn {
    using Result = double;
    Range range;
    [[nodiscard]] std::optional<double> operator()(Reading& reading, const Value& value) const;
};

/// A plain number; the file has to give a unit.
struct RatioIn {
    using Result = double;
    Range range;
    [[nodiscard]] std::optional<double> operator()(Reading& reading, const Value& value) const;
};

/// °C; the file has to give a unit.
struct TemperatureIn {
    using Result = double;
    Range range;
    [[nodiscard]] std::optional<double> operator()(Reading& reading, const Value& value) const;
};

/// K; the file has to give a unit.
struct TemperatureDifferenceIn {
    using Result = double;
    Range range;
    [[nodiscard]] std::optional<double> operator()(Reading& reading, const Value& value) const;
};

/// N; the file has to give a unit.
struct ForceIn {
    using Result = double;
    Range range;
    [[nodiscard]] std::optional<double> operator()(Reading& reading, const Value& value) const;
};

/// kg; the file has to give a unit.
struct MassIn {
    using Result = double;
    Range range;
    [[nodiscard]] std::optional<double> operator()(Reading& reading, const Value& value) const;
};

/// A price with what it is for one of; the file has to say it.
struct PriceIn {
    using Result = Price;
    [[nodiscard]] std::optional<Price> operator()(Reading& reading, const Value& value) const;
};

/// A whole number.
struct CountIn {
    using Result = int;
    int most = 100'000;
    [[nodiscard]] std::optional<int> operator()(Reading& reading, const Value& value) const;
};

/// A text of 1 to 200 characters, none of them a control character.
struct TextLine {
    using Result = std::string;
    std::string_view what;  ///< for messages: `a name for the case`
    [[nodiscard]] std::optional<std::string> operator()(Reading& reading, const Value& value) const;
};

/// What is wrong with a text as a TextLine, as a clause; empty where nothing is.
[[nodiscard]] std::string line_fault(std::string_view text);

/// A tolerance: a class letter or ± a length.
struct ToleranceIn {
    using Result = ToleranceSpec;
    [[nodiscard]] std::optional<ToleranceSpec> operator()(Reading& reading,
                                                          const Value& value) const;
};

/// The index of a text among the words that are taken; a fault names the nearest.
[[nodiscard]] std::optional<std::size_t> word_index(Reading& reading, const Value& value,
                                                    std::string_view what,
                                                    std::span<const std::string_view> words);

/// A word that stands for a value of an enumeration.
template <class Enum>
struct Word {
    std::string_view word;
    Enum meaning;
};

/// One of some words.
template <class Enum, std::size_t N>
struct WordOf {
    using Result = Enum;
    std::string_view what;  ///< for messages: `a loading`
    std::array<Word<Enum>, N> words;

    [[nodiscard]] std::optional<Enum> operator()(Reading& reading, const Value& value) const {
        std::vector<std::string_view> taken;
        for (const Word<Enum>& word : words) {
            taken.push_back(word.word);
        }
        const auto index = word_index(reading, value, what, taken);
        return index ? std::optional(words[*index].meaning) : std::nullopt;
    }
};

/// Words joined for a message: `"a", "b" or "c"`.
[[nodiscard]] std::string listed(std::span<const std::string_view> words);

/// A ratio in percent, for messages.
[[nodiscard]] std::string percent_text(double ratio);

/// The version of a file's format; there is one so far.
struct VersionIn {
    using Result = int;
    std::string_view what;  ///< for messages: `a case file`
    [[nodiscard]] std::optional<int> operator()(Reading& reading, const Value& value) const;
};

inline const WordOf<LengthUnit, 2> kUnits{"the unit of bare lengths",
                                          {{{"mm", LengthUnit::millimetre},
                                            {"in", LengthUnit::inch}}}};

/// A side of a plan, by its name.
struct SideIn {
    using Result = CaseSide;
    const Plan& plan;
    [[nodiscard]] std::optional<CaseSide> operator()(Reading& reading, const Value& value) const;
};

}  // namespace bowfront::io
