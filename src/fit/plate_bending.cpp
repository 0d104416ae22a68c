#include "bowfront/fit/plate_bending.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "bowfront/base/contract.hpp"

namespace bowfront::fit {
namespace {

constexpr double kPi = std::numbers::pi;
constexpr std::size_t kTerms = 120;

// sin(mπu/2a)/(mu) for odd m: how much of the m-th wave a patch of length u in the middle of a
// pane of length a loads.
std::array<double, kTerms> waves(double length, double patch) {
    std::array<double, kTerms> loaded{};
    for (std::size_t i = 0; i < kTerms; ++i) {
        const double m = 2 * static_cast<double>(i) + 1;
        loaded[i] = std::sin(m * kPi * patch / (2 * length)) / (m * patch);
    }
    return loaded;
}

}  // namespace

PlateCoefficients plate_coefficients(const LoadedPlate& plate) {
    BOWFRONT_EXPECTS(plate.patch_length > 0 && plate.patch_length <= plate.length);
    BOWFRONT_EXPECTS(plate.patch_height > 0 && plate.patch_height <= plate.height);
    BOWFRONT_EXPECTS(plate.poisson >= 0 && plate.poisson <= 0.5);
    const auto along = waves(plate.length, plate.patch_length);
    const auto up = waves(plate.height, plate.patch_height);
    double deflection = 0;  // times D over F
    double curved_along = 0;
    double curved_up = 0;
    for (std::size_t i = 0; i < kTerms; ++i) {
        const double m = (2 * static_cast<double>(i) + 1) / plate.length;
        for (std::size_t j = 0; j < kTerms; ++j) {
            const double n = (2 * static_cast<double>(j) + 1) / plate.height;
            const double both = m * m + n * n;
            const double term = 16 / std::pow(kPi, 6) * along[i] * up[j] / (both * both);
            deflection += term;
            curved_along += kPi * kPi * m * m * term;
            curved_up += kPi * kPi * n * n * term;
        }
    }
    const double shorter = std::min(plate.length, plate.height);
    const double moment = std::max(curved_along + plate.poisson * curved_up,
                                   curved_up + plate.poisson * curved_along);
    // D = E·t³/(12·(1 − ν²)); σ = 6·M/t².
    return {12 * (1 - plate.poisson * plate.poisson) * deflection / (shorter * shorter),
            6 * moment};
}

double stiffened_deflection(double small) {
    BOWFRONT_EXPECTS(small >= 0);
    constexpr double kStretch = 0.272;
    // The one real root of the cubic, by its hyperbolic form.
    const double root = std::sqrt(3 * kStretch);
    return 2 / root * std::sinh(std::asinh(1.5 * root * small) / 3);
}

}  // namespace bowfront::fit
