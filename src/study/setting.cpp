#include "setting.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "bowfront/base/number_text.hpp"
#include "bowfront/model/values.hpp"
#include "bowfront/units/length_text.hpp"
#include "bowfront/units/quantity.hpp"

namespace bowfront::study {
namespace {

constexpr double kInch = 25.4;  // mm; international yard and pound agreement of 1959
// A value counts as on a step when it is nearer than this share of one.
constexpr double kOnStep = 1e-6;
constexpr int kDecimals = 6;  // a 64th is exact in six

std::string quoted(const std::string& text) {
    return '"' + text + '"';
}

// The unit behind the last digit of a text in quotes.
std::string unit_of(const std::string& spelling) {
    const std::size_t digit = spelling.find_last_of("0123456789");
    const std::size_t first =
        digit == std::string::npos ? digit : spelling.find_first_not_of(' ', digit + 1);
    const std::size_t end = spelling.size() - 1;  // the closing quote
    return first == std::string::npos || first >= end ? std::string()
                                                      : spelling.substr(first, end - first);
}

bool is_metric(const std::string& unit) {
    return unit == "mm" || unit == "cm" || unit == "m";
}

// How a number is written in the file.
struct Notation {
    std::string unit;
    double steps = 1;   // in one unit
    bool bare = false;  // as a JSON number

    [[nodiscard]] std::string shown(double number) const {
        return unit == "in" ? inch_text(number * kInch)
                            : rounded_text(number, kDecimals) + " " + unit;
    }
    [[nodiscard]] std::string json(double number) const {
        return bare ? rounded_text(number, kDecimals) : quoted(shown(number));
    }
};

Notation length_notation(const Case& c, const std::string& spelling, double steps) {
    constexpr double kInchSteps = 64;
    const bool text = !spelling.empty() && spelling.front() == '"';
    const bool metric = text ? is_metric(unit_of(spelling)) : c.units == LengthUnit::millimetre;
    if (metric) {
        return {"mm", steps, !text};
    }
    // Inches that the file leaves out read best as a fraction.
    return {"in", kInchSteps, !text && !spelling.empty()};
}

Notation notation(const Case& c, const std::string& spelling, const NumberPlace& place) {
    const auto ends_in = [&](char letter) {
        return spelling.size() > 1 && spelling[spelling.size() - 2] == letter;
    };
    switch (place.amount) {
        case Amount::length: return length_notation(c, spelling, place.steps);
        case Amount::angle:
            return {"deg", place.steps, spelling.empty() || spelling.front() != '"'};
        case Amount::ratio: return {"%", place.steps, false};
        case Amount::force: return {ends_in('f') ? "lbf" : "N", place.steps, false};
        case Amount::temperature:
        case Amount::temperature_difference: break;
    }
    return {ends_in('F') ? "F" : ends_in('K') ? "K" : "C", place.steps, false};
}

// What the file's number means, by the same reader that reads the file.
double inside(Amount amount, const Notation& notation, double number) {
    const std::string text = rounded_text(number, kDecimals) + " " + notation.unit;
    switch (amount) {
        case Amount::length: return parse_length(text).value();
        case Amount::angle: return parse_angle(text).value();
        case Amount::ratio: return parse_ratio(text).value();
        case Amount::temperature: return parse_temperature(text).value();
        case Amount::temperature_difference: return parse_temperature_difference(text).value();
        case Amount::force: break;
    }
    return parse_force(text).value();
}

// The number that the file would have for a value; all these scales are straight lines.
double outside(Amount amount, const Notation& notation, double value) {
    const double zero = inside(amount, notation, 0);
    const double one = inside(amount, notation, 1);
    return (value - zero) / (one - zero);
}

// The numbers over or under the one that stands there, nearest first: steps, or sizes.
struct Row {
    std::vector<double> sizes;
    double at = 0;  // steps from zero to the value that stands there, rounded towards it
    int way = 1;
    double steps = 1;
    std::size_t count = 0;

    [[nodiscard]] double number(std::size_t place) const {
        return sizes.empty() ? (at + way * static_cast<double>(place + 1)) / steps : sizes[place];
    }
};

Row row(const NumberPlace& place, const Notation& written, double now, int way) {
    constexpr double kMostRungs = 4000;
    Row row;
    row.way = way;
    row.steps = written.steps;
    if (!place.sizes.empty()) {
        for (const double size : place.sizes) {
            if (way * (size - now) > kOnStep && size >= place.low && size <= place.high) {
                row.sizes.push_back(outside(place.amount, written, size));
            }
        }
        if (way < 0) {
            std::reverse(row.sizes.begin(), row.sizes.end());
        }
        row.count = row.sizes.size();
        return row;
    }
    const auto steps_to = [&](double value) {
        return outside(place.amount, written, value) * written.steps;
    };
    const double at = steps_to(now);
    row.at = way > 0 ? std::floor(at + kOnStep) : std::ceil(at - kOnStep);
    const double end = way > 0 ? std::floor(steps_to(place.high) + kOnStep)
                               : std::ceil(steps_to(place.low) - kOnStep);
    row.count = static_cast<std::size_t>(std::clamp(way * (end - row.at), 0.0, kMostRungs));
    return row;
}

Ladder ladder(const NumberPlace& place, const Notation& written, double now, int way) {
    const Row numbers = row(place, written, now, way);
    const auto value = [amount = place.amount, written, numbers](std::size_t at) {
        return inside(amount, written, numbers.number(at));
    };
    Ladder ladder;
    ladder.count = numbers.count;
    ladder.rung = [written, numbers, value, now](std::size_t at) {
        // From nothing any change is a whole one.
        const double share = now == 0 ? 1 : std::abs(value(at) - now) / std::abs(now);
        return Rung{written.json(numbers.number(at)), written.shown(numbers.number(at)), share};
    };
    ladder.put = [pointer = place.pointer, value](Case& c, std::size_t at) {
        put_number(c, pointer, value(at));
    };
    return ladder;
}

// The size of a stock item that a pointer names; null where it names none.
template <class AnyCase>
auto stock_size(AnyCase& c, const std::string& pointer) -> decltype(c.stock.front().size.data()) {
    for (auto& item : c.stock) {
        for (std::size_t i = 0; i < item.size.size(); ++i) {
            if (pointer == item.pointer + "/size/" + std::to_string(i)) {
                return &item.size[i];
            }
        }
    }
    return nullptr;
}

}  // namespace

std::optional<double> number_at(const Case& c, const std::string& pointer) {
    if (const double* const size = stock_size(c, pointer)) {
        return *size;
    }
    std::optional<double> found;
    visit_values(c, [&](double value, const Origin& origin) {
        if (!found && origin.pointer == pointer) {
            found = value;
        }
    });
    return found;
}

void put_number(Case& c, const std::string& pointer, double value) {
    if (double* const size = stock_size(c, pointer)) {
        *size = value;
        return;
    }
    visit_values(c, [&](double& number, const Origin& origin) {
        if (origin.pointer == pointer) {
            number = value;
        }
    });
    if (pointer == "/oven/set" && c.oven) {
        c.oven->set = Sourced<double>{value, {Origin::Kind::given, pointer, 0, {}}};
    }
    if (pointer == "/frame/post/width" && !c.frame.post.depth.given()) {
        c.frame.post.depth.value = value;
    }
    for (Plate* const plate : {&c.frame.base, &c.frame.top}) {
        if (pointer == plate->margin.origin.pointer && !plate->build.inset.given()) {
            plate->build.inset.value = value;
        }
    }
}

std::optional<Setting> number_setting(const Case& c, const CaseFile& file,
                                      const NumberPlace& place) {
    auto now = number_at(c, place.pointer);
    now = now ? now : place.assumed;
    if (!now) {
        return std::nullopt;
    }
    const std::string spelling = file.spelling ? file.spelling(place.pointer) : std::string();
    const Notation written = notation(c, spelling, place);
    const double number = outside(place.amount, written, *now);
    Setting setting{place.pointer,
                    place.name,
                    place.touches,
                    spelling.empty() ? written.json(number) : spelling,
                    written.shown(number),
                    !spelling.empty() || !file.spelling,
                    {},
                    Setting::Of::number};
    for (const int way : {1, -1}) {
        setting.ladders.push_back(ladder(place, written, *now, way));
    }
    return setting;
}

Setting word_setting(const CaseFile& file, WordPlace place) {
    const std::string spelling = file.spelling ? file.spelling(place.pointer) : std::string();
    Setting setting{std::move(place.pointer),
                    std::move(place.name),
                    place.touches,
                    spelling.empty() ? std::move(place.from) : spelling,
                    std::move(place.shown),
                    !spelling.empty() || !file.spelling,
                    {},
                    Setting::Of::word};
    for (Option& option : place.options) {
        setting.ladders.push_back({1,
                                   [to = option.to, shown = option.shown](std::size_t) {
                                       return Rung{to, shown, 1};
                                   },
                                   [put = option.put](Case& c, std::size_t) { put(c); }});
    }
    return setting;
}

}  // namespace bowfront::study
