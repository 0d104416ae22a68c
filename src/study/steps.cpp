#include "bowfront/study/steps.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "bowfront/base/contract.hpp"
#include "bowfront/base/error.hpp"
#include "bowfront/base/number_text.hpp"
#include "bowfront/base/quoted_text.hpp"

namespace bowfront::study {
namespace {

constexpr int kMostDecimals = 9;
constexpr double kLargest = 1e9;  // with the decimals, within the whole numbers that a double holds
                                  // apart from its neighbours' halves

[[noreturn]] void refuse(std::string found, std::string wanted) {
    throw InputError({{Code::input_value, {}, 0, 0, {}, "--vary: " + std::move(found),
                       std::move(wanted)}});
}

double parsed(std::string_view text) {
    double number = 0;
    const std::string_view digits = text.starts_with('+') ? text.substr(1) : text;
    const auto result = std::from_chars(digits.data(), digits.data() + digits.size(), number);
    if (digits.empty() || result.ec != std::errc{} ||
        result.ptr != digits.data() + digits.size() || !std::isfinite(number)) {
        refuse(quoted_text(text) + " is not a number", "POINTER=FROM:TO:STEP, each a decimal");
    }
    if (std::abs(number) >= kLargest) {
        refuse(quoted_text(text) + " is too large", "numbers under a thousand million");
    }
    return number;
}

// How many decimals a number needs to be written in full.
int decimals_of(double number, std::string_view text) {
    for (int decimals = 0; decimals <= kMostDecimals; ++decimals) {
        const std::string written = fixed_text(number, decimals);
        double back = 0;
        std::from_chars(written.data(), written.data() + written.size(), back);
        if (back == number) {
            return decimals;
        }
    }
    refuse(quoted_text(text) + " has too many decimals",
           "at most " + std::to_string(kMostDecimals));
}

}  // namespace

Steps::Steps(std::string_view from, std::string_view to, std::string_view step) {
    const std::array<std::string_view, 3> texts = {from, to, step};
    std::array<double, 3> numbers{};
    for (std::size_t i = 0; i < texts.size(); ++i) {
        numbers[i] = parsed(texts[i]);
        decimals_ = std::max(decimals_, decimals_of(numbers[i], texts[i]));
    }
    const double scale = std::pow(10.0, decimals_);
    const auto whole = [scale](double number) { return std::llround(number * scale); };
    from_ = whole(numbers[0]);
    step_ = whole(numbers[2]);
    const std::int64_t way = whole(numbers[1]) - from_;
    if (step_ == 0) {
        refuse("the step is 0", "a step that leads from " + std::string(from) + " to " +
                                    std::string(to));
    }
    if (way != 0 && (way > 0) != (step_ > 0)) {
        refuse("a step of " + std::string(step) + " never leads from " + std::string(from) +
                   " to " + std::string(to),
               "a step of the other sign");
    }
    const std::int64_t steps = way / step_;
    if (steps >= static_cast<std::int64_t>(kMostVariants)) {
        refuse("there are " + std::to_string(steps + 1) + " numbers from " + std::string(from) +
                   " to " + std::string(to),
               "at most " + std::to_string(kMostVariants));
    }
    count_ = static_cast<std::size_t>(steps) + 1;
}

double Steps::number(std::size_t place) const {
    BOWFRONT_EXPECTS(place < count_);
    // A whole number below 2^53 over a power of ten that is exact: rounded once, as a decimal is
    // when it is read.
    return static_cast<double>(from_ + static_cast<std::int64_t>(place) * step_) /
           std::pow(10.0, decimals_);
}

std::string Steps::text(std::size_t place) const {
    return rounded_text(number(place), decimals_);
}

}  // namespace bowfront::study
