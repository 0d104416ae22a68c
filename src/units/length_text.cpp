#include "bowfront/units/length_text.hpp"

#include <cmath>
#include <cstdint>
#include <numeric>

#include "bowfront/base/contract.hpp"
#include "bowfront/base/number_text.hpp"

namespace bowfront {
namespace {

constexpr double kMillimetresPerInch = 25.4;
constexpr int kFinestFraction = 64;
// Half of the last of the four decimals that would be printed otherwise.
constexpr double kSameAsFraction = 0.00005;
// Beyond this a count of 64ths is no longer a whole number in a double worth the name.
constexpr double kMostInches = 1e12;

}  // namespace

std::string millimetre_text(double millimetres) {
    return rounded_text(millimetres, 3) + " mm";
}

std::string inch_text(double millimetres) {
    BOWFRONT_EXPECTS(std::isfinite(millimetres));
    const double inches = millimetres / kMillimetresPerInch;
    const double size = std::abs(inches);
    const double parts = std::round(size * kFinestFraction);
    if (size > kMostInches || std::abs(size - parts / kFinestFraction) >= kSameAsFraction) {
        return rounded_text(inches, 4) + " in";
    }
    const auto count = static_cast<std::int64_t>(parts);
    const std::int64_t whole = count / kFinestFraction;
    const std::int64_t rest = count % kFinestFraction;
    std::string text = inches < 0 && count != 0 ? "-" : "";
    if (whole != 0 || rest == 0) {
        text += std::to_string(whole);
    }
    if (rest != 0) {
        const std::int64_t shared = std::gcd(rest, std::int64_t{kFinestFraction});
        text += whole != 0 ? " " : "";
        text += std::to_string(rest / shared) + '/' + std::to_string(kFinestFraction / shared);
    }
    return text + " in";
}

}  // namespace bowfront
