#include "bowfront/materials/tolerance_class.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <iterator>
#include <numbers>

#include "bowfront/base/contract.hpp"

namespace bowfront {
namespace {

constexpr std::array<std::string_view, 4> kLetters{"f", "m", "c", "v"};

constexpr std::size_t index(ToleranceClass tolerance_class) {
    return static_cast<std::size_t>(tolerance_class);
}

constexpr double kLeastSize = 0.5;  // mm; the standard gives nothing below
constexpr double kNone = 0;         // the standard leaves the place empty

// Each range runs from above the last one's end to its own end, that included.
constexpr std::array<double, 8> kLinearEnds{3, 6, 30, 120, 400, 1000, 2000, 4000};
constexpr std::array<std::array<double, 8>, 4> kLinear{{
    {0.05, 0.05, 0.1, 0.15, 0.2, 0.3, 0.5, kNone},
    {0.1, 0.1, 0.2, 0.3, 0.5, 0.8, 1.2, 2.0},
    {0.2, 0.3, 0.5, 0.8, 1.2, 2.0, 3.0, 4.0},
    {kNone, 0.5, 1.0, 1.5, 2.5, 4.0, 6.0, 8.0},
}};

constexpr std::array<double, 2> kRadiusEnds{3, 6};
constexpr std::array<std::array<double, 3>, 4> kRadius{{
    {0.2, 0.5, 1.0},
    {0.2, 0.5, 1.0},
    {0.4, 1.0, 2.0},
    {0.4, 1.0, 2.0},
}};

constexpr std::array<double, 4> kAngleEnds{10, 50, 120, 400};
constexpr std::array<std::array<double, 5>, 4> kAngleMinutes{{
    {60, 30, 20, 10, 5},
    {60, 30, 20, 10, 5},
    {90, 60, 30, 20, 10},
    {180, 120, 60, 30, 20},
}};

// Which range a size falls in; the number of ends where it is above them all.
template <std::size_t n>
std::size_t range_of(const std::array<double, n>& ends, double size) {
    const auto end = std::lower_bound(ends.begin(), ends.end(), size);
    return static_cast<std::size_t>(std::distance(ends.begin(), end));
}

}  // namespace

std::string_view class_letter(ToleranceClass tolerance_class) noexcept {
    return kLetters[index(tolerance_class)];
}

std::optional<ToleranceClass> find_tolerance_class(std::string_view letter) noexcept {
    for (const auto each : {ToleranceClass::fine, ToleranceClass::medium, ToleranceClass::coarse,
                            ToleranceClass::very_coarse}) {
        if (class_letter(each) == letter) {
            return each;
        }
    }
    return std::nullopt;
}

std::optional<double> linear_tolerance(ToleranceClass tolerance_class, double size) {
    BOWFRONT_EXPECTS(size > 0 && std::isfinite(size));
    if (size < kLeastSize || size > kLinearEnds.back()) {
        return std::nullopt;
    }
    const double tolerance = kLinear[index(tolerance_class)][range_of(kLinearEnds, size)];
    return tolerance > kNone ? std::optional(tolerance) : std::nullopt;
}

std::optional<double> radius_tolerance(ToleranceClass tolerance_class, double size) {
    BOWFRONT_EXPECTS(size > 0 && std::isfinite(size));
    if (size < kLeastSize) {
        return std::nullopt;
    }
    return kRadius[index(tolerance_class)][range_of(kRadiusEnds, size)];
}

double angular_tolerance(ToleranceClass tolerance_class, double shorter_leg) {
    BOWFRONT_EXPECTS(shorter_leg > 0 && std::isfinite(shorter_leg));
    constexpr double kMinute = std::numbers::pi / (180.0 * 60.0);
    return kAngleMinutes[index(tolerance_class)][range_of(kAngleEnds, shorter_leg)] * kMinute;
}

}  // namespace bowfront
