#pragma once
/// \file
/// The numbers that an advice names, in order: a test follows it as a maker would.

#include <cstdlib>
#include <string>
#include <vector>

namespace bowfront::fit {

[[nodiscard]] inline std::vector<double> numbers_in(const std::string& text) {
    std::vector<double> numbers;
    const char* at = text.c_str();
    while (*at != '\0') {
        char* end = nullptr;
        const bool digit = *at >= '0' && *at <= '9';
        const double number = digit ? std::strtod(at, &end) : 0;
        if (digit) {
            numbers.push_back(number);
            at = end;
        } else {
            ++at;
        }
    }
    return numbers;
}

}  // namespace bowfront::fit
