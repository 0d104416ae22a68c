#include "bowfront/materials/timber.hpp"

#include <algorithm>

#include "bowfront/base/contract.hpp"
#include "materials/timber_entries.hpp"

namespace bowfront {

std::optional<Property> Timber::density() const {
    if (!specific_gravity) {
        return std::nullopt;
    }
    // Water weighs 1000 kg/m3, and timber at 12 % carries 12 % of its ovendry mass in water.
    constexpr double kMassPerGravity = 1000 * 1.12;
    Property density =
        property(kMassPerGravity * specific_gravity->value, "kg/m3",
                 sourcing::computed("1120 kg/m3 x specific gravity, 12 % moisture content"));
    density.note = specific_gravity->certainty == Certainty::remembered
                       ? "from a specific gravity that is from memory"
                       : "";
    return density;
}

std::span<const Timber> timbers() noexcept {
    return kTimbers;
}

const Timber* find_timber(std::string_view name) noexcept {
    const auto found = std::find_if(kTimbers.begin(), kTimbers.end(),
                                    [&](const Timber& timber) { return timber.name == name; });
    return found == kTimbers.end() ? nullptr : &*found;
}

double movement_coefficient(double shrinkage) {
    BOWFRONT_EXPECTS(shrinkage > 0 && shrinkage < 0.5);
    return coefficient_of_shrinkage(shrinkage);
}

double equilibrium_moisture(double celsius, double humidity) {
    BOWFRONT_EXPECTS(celsius >= -1.1 && celsius <= 132.2);
    BOWFRONT_EXPECTS(humidity >= 0.05 && humidity <= 0.95);
    const double t = celsius;
    const double w = 349 + 1.29 * t + 0.0135 * t * t;
    const double k = 0.805 + 0.000736 * t - 0.00000273 * t * t;
    const double k1 = 6.27 - 0.00938 * t - 0.000303 * t * t;
    const double k2 = 1.91 + 0.0407 * t - 0.000293 * t * t;
    const double kh = k * humidity;
    const double bound = k1 * kh;
    const double twice_bound = k1 * k2 * kh * kh;
    return 1800 / w * (kh / (1 - kh) + (bound + 2 * twice_bound) / (1 + bound + twice_bound));
}

}  // namespace bowfront
