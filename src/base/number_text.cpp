#include "bowfront/base/number_text.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "bowfront/base/contract.hpp"

namespace bowfront {
namespace {

// The longest fixed text of a double: 309 digits before the point, the point, 17 decimals, a sign.
constexpr std::size_t kLongest = 340;

std::string fixed(double value, int decimals) {
    std::array<char, kLongest> buffer{};
    const auto result = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value,
                                      std::chars_format::fixed, decimals);
    std::string text(buffer.data(), result.ptr);
    const bool is_zero = std::all_of(text.begin(), text.end(),
                                     [](char c) { return c == '-' || c == '0' || c == '.'; });
    if (is_zero && text.front() == '-') {
        text.erase(text.begin());
    }
    return text;
}

}  // namespace

std::string number_text(double value) {
    BOWFRONT_EXPECTS(std::isfinite(value));
    std::array<char, kLongest> buffer{};
    const double shown = value == 0 ? 0.0 : value;
    const auto result = std::to_chars(buffer.data(), buffer.data() + buffer.size(), shown);
    return {buffer.data(), result.ptr};
}

std::string fixed_text(double value, int decimals) {
    BOWFRONT_EXPECTS(std::isfinite(value) && decimals >= 0 && decimals <= 17);
    return fixed(value, decimals);
}

std::string rounded_text(double value, int decimals) {
    std::string text = fixed_text(value, decimals);
    if (text.find('.') != std::string::npos) {
        text.erase(text.find_last_not_of('0') + 1);
        if (text.back() == '.') {
            text.pop_back();
        }
    }
    return text;
}

}  // namespace bowfront
