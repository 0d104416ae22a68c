#include "shop_size_text.hpp"

#include <cmath>

#include "bowfront/base/number_text.hpp"
#include "bowfront/units/length_text.hpp"

namespace bowfront::report {
namespace {

constexpr int kDecimals = 3;
constexpr double kShown = 0.005;  // mm: less is exact to anybody with a saw
constexpr double kSixtyFourth = 25.4 / 64;
constexpr double kWhole = 1e-9;

bool by_inches(double step) {
    const double parts = step / kSixtyFourth;
    return std::abs(parts - std::round(parts)) < kWhole;
}

}  // namespace

std::string shop_size_text(double size, double step) {
    return by_inches(step) ? inch_text(size) : rounded_text(size, kDecimals) + " mm";
}

std::string over_text(const study::ShopSize& size) {
    const double over = size.over();
    if (std::abs(over) < kShown) {
        return "exact";
    }
    return fixed_text(std::abs(over), 2) + " mm " + (over > 0 ? "over" : "under");
}

std::string shop_sizes_text(const study::ShopSize& first, const study::ShopSize& second,
                            double step) {
    const std::string sizes =
        shop_size_text(first.size, step) + " x " + shop_size_text(second.size, step);
    const std::string one = over_text(first);
    const std::string other = over_text(second);
    return sizes + " (" + (one == other ? one : one + "; " + other) + ")";
}

}  // namespace bowfront::report
