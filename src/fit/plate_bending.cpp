#include "bowfront/fit/plate_bending.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <utility>

#include "bowfront/base/contract.hpp"

namespace bowfront::fit {
namespace {

constexpr double kPi = std::numbers::pi;

// A plate with its waves along the shorter side a: lengths over a, the patch u by v.
struct Proportions {
    double a;  // mm
    double b;  // over a, ≥ 1
    double u;  // over a
    double v;  // over a
};

// Deflection and curvatures in the middle, times D over F.
struct Middle {
    double deflection = 0;       // mm²
    double curved_across = 0;    // along the shorter side
    double curved_lengthwise = 0;
};

// Fine patches need short waves: with three for each time that the patch goes into the side, what
// is left out is less than a thousandth.
std::size_t terms_of(const Proportions& p) {
    constexpr double kFewest = 20;
    constexpr double kMost = 2000;
    return static_cast<std::size_t>(std::min(kMost, kFewest + std::ceil(3 / std::min(p.u, p.v))));
}

// Sums over odd m. With α = mπb/2, γ = mπv/4, all hyperbolic functions are put together from
// exp(−2α), exp(−2γ) and exp(2γ − 2α), which fall by a constant ratio from term to term, as the
// sines go on by their recurrence: no term costs a function, and none overflows.
Middle middle_of(const Proportions& p) {
    double all = std::exp(-kPi * p.b);
    double patch = std::exp(-kPi * p.v / 2);
    double rest = std::exp(-kPi * (p.b - p.v / 2));
    const double all_ratio = all * all;
    const double patch_ratio = patch * patch;
    const double rest_ratio = rest * rest;
    const double turn = kPi * p.u / 2;
    double wave = std::sin(turn);
    double wave_before = -wave;  // m = −1
    const double doubled = 2 * std::cos(2 * turn);
    Middle sum;
    const std::size_t terms = terms_of(p);
    for (std::size_t i = 0; i < terms; ++i) {
        const double m = 2 * static_cast<double>(i) + 1;
        const double whole = 1 + all;
        const double c = (patch + rest) / whole;  // cosh(α − 2γ)/cosh α
        const double k = c + m * kPi * p.v / 4 * (patch - rest) / whole +
                         m * kPi * p.b / 2 * (rest - all * patch) / (whole * whole);
        const double share = wave / (m * m * m);
        sum.deflection += share / (m * m) * (1 - k);
        sum.curved_across += share * (1 - k);
        sum.curved_lengthwise += share * (k - c);
        all *= all_ratio;
        patch *= patch_ratio;
        rest *= rest_ratio;
        wave_before = std::exchange(wave, doubled * wave - wave_before);
    }
    const double load = 4 / (kPi * kPi * kPi * p.u * p.v);
    return {load / (kPi * kPi) * sum.deflection * p.a * p.a, load * sum.curved_across,
            load * sum.curved_lengthwise};
}

}  // namespace

PlateCoefficients plate_coefficients(const LoadedPlate& plate) {
    BOWFRONT_EXPECTS(plate.patch_length > 0 && plate.patch_length <= plate.length);
    BOWFRONT_EXPECTS(plate.patch_height > 0 && plate.patch_height <= plate.height);
    BOWFRONT_EXPECTS(plate.poisson >= 0 && plate.poisson <= 0.5);
    const double shorter = std::min(plate.length, plate.height);
    const bool upright = plate.length <= plate.height;
    const double u = upright ? plate.patch_length : plate.patch_height;
    const double v = upright ? plate.patch_height : plate.patch_length;
    const Middle middle = middle_of(
        {shorter, std::max(plate.length, plate.height) / shorter, u / shorter, v / shorter});
    const double moment =
        std::max(middle.curved_across + plate.poisson * middle.curved_lengthwise,
                 middle.curved_lengthwise + plate.poisson * middle.curved_across);
    // D = E·t³/(12·(1 − ν²)); σ = 6·M/t².
    return {12 * (1 - plate.poisson * plate.poisson) * middle.deflection / (shorter * shorter),
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
