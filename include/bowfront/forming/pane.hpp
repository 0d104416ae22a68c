#pragma once
/// \file
/// From the pane that is wanted to the blank that is cut, and from a blank to the pane that comes
/// of it: shrink, thickening, bending.

#include "bowfront/figure/book.hpp"
#include "bowfront/materials/sheet.hpp"
#include "bowfront/model/case.hpp"

namespace bowfront {

/// Shrink of one direction of a pane, ratios.
template <class N>
struct Shrink {
    N nominal;
    N spread;  ///< ±
};

namespace forming {

/// Flat size to cut so that heating brings it to `formed`.
/// @param shrink  under 1
/// Source:  definition of shrink as loss over the length before heating: L₀ = L/(1 − s)
/// Example: 1000 mm at 2 % -> 1020.408 mm
template <class N>
[[nodiscard]] N blank_for(N formed, N shrink) {
    return formed / (1 - shrink);
}

/// Size that a blank comes to when heated; the inverse of `blank_for`.
template <class N>
[[nodiscard]] N formed_from(N blank, N shrink) {
    return blank * (1 - shrink);
}

/// What a blank's cut alone may be off, ±, where a formed size may be off by that and by the spread of
/// the shrink: the inverse of the limits added, δ·(1 − s) + L₀·Δs.
/// Source:  geometry of `formed_from`
/// Example: 3.543 mm for 550.972 mm of blank at 1.5 ± 0.5 % -> 0.8 mm
[[nodiscard]] inline double cut_of_blank(double formed_limit, double blank, double shrink,
                                         double spread) {
    return (formed_limit - blank * spread) / (1 - shrink);
}

/// Thickness after heating, at constant volume.
/// Source:  t₁ = t/((1 − s_L)·(1 − s_W))
/// Example: cast sheet, 2 % both ways -> 4.12 % thicker
template <class N>
[[nodiscard]] N thickened(N thickness, N shrink_length, N shrink_width) {
    return thickness / ((1 - shrink_length) * (1 - shrink_width));
}

/// Strain in the face of a sheet that is flexed from one radius to another (curvatures in 1/mm,
/// 0 for flat).
/// Source: bending of a thin strip: ε = t/2·abs(1/R₁ − 1/R₂)
/// Example: R 300 -> 250 mm, 3 mm -> 0.1 %
template <class N>
[[nodiscard]] N flexing_strain(N thickness, N curvature_from, N curvature_to) {
    using std::abs;
    return thickness / 2 * abs(curvature_from - curvature_to);
}

}  // namespace forming
}  // namespace bowfront
