#pragma once
/// \file
/// A value of the case file that could be another one, and the values that it could take.

#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "bowfront/study/advice.hpp"

namespace bowfront::study {

/// One value that a setting could take.
struct Rung {
    std::string to;     ///< as JSON text
    std::string shown;  ///< for people
    double relative = 0;  ///< how far it is from the value that stands there, against that value
};

/// Values in one direction, the nearest first.
struct Ladder {
    std::size_t count = 0;
    std::function<Rung(std::size_t)> rung;
    std::function<void(Case&, std::size_t)> put;
};

struct Setting {
    std::string pointer;
    std::string name;   ///< with its article: `the end clearance`
    Touches touches = Touches::size;
    std::string from;   ///< as JSON text
    std::string shown;  ///< for people
    bool given = true;  ///< stands in the file
    std::vector<Ladder> ladders;
    enum class Of { number, word } of = Of::number;
};

/// What a number of the case file is.
enum class Amount { length, angle, ratio, temperature, temperature_difference, force };

/// Where a number stands, and how far it may be changed.
struct NumberPlace {
    std::string pointer;
    std::string name;
    Touches touches = Touches::size;
    Amount amount = Amount::length;
    double steps = 10;  ///< in one unit: 10 for steps of 0.1 mm; 64 in inches, whatever is said here
    double low = 0;     ///< the least and the most that it may become, in the units of the case
    double high = 0;
    std::vector<double> sizes = {};  ///< millimetres, rising: only these, where any
    std::optional<double> assumed = {};  ///< what counts where the case holds no such number
};

/// The number of the case at a JSON pointer; nothing where the case has none there.
[[nodiscard]] std::optional<double> number_at(const Case& c, const std::string& pointer);

/// Puts a number at a JSON pointer, and with it what follows it by the file's rules.
void put_number(Case& c, const std::string& pointer, double value);

/// The number at a place with all it could become; nothing where the case has none there.
[[nodiscard]] std::optional<Setting> number_setting(const Case& c, const CaseFile& file,
                                                    const NumberPlace& place);

/// One word in place of another.
struct Option {
    std::string to;     ///< as JSON text
    std::string shown;  ///< for people
    std::function<void(Case&)> put;
};

/// Where a word stands, as the case has it, and the words that could stand there.
struct WordPlace {
    std::string pointer;
    std::string name;
    Touches touches = Touches::method;
    std::string from;   ///< as JSON text, where the file does not say it
    std::string shown;  ///< for people
    std::vector<Option> options;
};

[[nodiscard]] Setting word_setting(const CaseFile& file, WordPlace place);

/// The settings that a finding may depend on; which of them help is for the sums to say.
[[nodiscard]] std::vector<Setting> settings_for(const Case& c, const Finding& finding,
                                                const CaseFile& file);

}  // namespace bowfront::study
