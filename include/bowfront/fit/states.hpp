#pragma once
/// \file
/// The conditions that a case is built in and lives in, and what they do to frame and panes.
///
/// Timber moves across its grain with the moisture of the air, sheets with temperature and
/// moisture. A base whose depth lies across the grain takes the posts apart that way only, and a
/// round glazing line on it becomes an ellipse. Along the grain timber stands still.

#include <array>
#include <string_view>

#include "bowfront/figure/book.hpp"
#include "bowfront/forming/arc.hpp"
#include "bowfront/model/case.hpp"

namespace bowfront {

/// The states: as built, and the corners of the service range.
enum class AirState { built, cold_dry, cold_damp, warm_dry, warm_damp };
inline constexpr std::array kAirStates{AirState::built, AirState::cold_dry, AirState::cold_damp,
                                       AirState::warm_dry, AirState::warm_damp};

/// `built`, `cold-dry`, `cold-damp`, `warm-dry`, `warm-damp`.
[[nodiscard]] std::string_view state_text(AirState state) noexcept;

/// Size in a state over size as built, of base or top.
template <class N>
struct PlateFactors {
    N width;      ///< along X
    N depth;      ///< along Y
    N thickness;  ///< across the board's face: also of its grooves' depths
};

/// Size in a state over size as built, of the timber of a case.
template <class N>
struct TimberFactors {
    N moisture;            ///< content, %; not a factor
    PlateFactors<N> base;
    PlateFactors<N> top;
    N post;        ///< of a post's section, either way; its length stands still
    N post_least;  ///< of the same, the less of what it may be by how the rings lie
    N post_most;   ///< and the more
};

/// What each state does to the timber of a case, in the order of kAirStates; all
/// factors 1 as built.
template <class N>
using TimberStates = std::array<TimberFactors<N>, kAirStates.size()>;

namespace fit {

/// Temperature and humidity of a state, as the case gives them.
struct Air {
    const Sourced<double>& temperature;  ///< °C
    const Sourced<double>& humidity;     ///< 0 to 1
};
[[nodiscard]] Air air_of(const Service& service, AirState state) noexcept;

/// Size over size as built of timber across its grain, from one moisture content to another.
/// @param coefficient  per 1 % of moisture content, > 0
/// @param from, to     moisture content, %
/// Source:  Wood Handbook FPL-GTR-190, chapter 13: ΔD = D·C·(M_F − M_I), for 6 to 14 %; outside it
///          the general form ΔD = D·(M_F − M_I)/(3000/S − 30 + M_I), with 3000/S = 1/C + 20 (the
///          general form from memory, not verified)
/// Example: oak 100 mm, C 0.00365, 6 to 12 % -> 102.19 mm
[[nodiscard]] double movement(double coefficient, double from, double to);

/// What each state does to the timber.
template <class N>
[[nodiscard]] TimberStates<N> timber_states(const Case& c, Book<N>& book);

/// Size of a pane in a state over its size as built.
/// Source:  (1 + α·ΔT)·(1 + ε(RH₂))/(1 + ε(RH₁)), ε by the sheet library's curve
template <class N>
[[nodiscard]] std::array<N, kAirStates.size()> sheet_factors(const Case& c, const SheetSpec& sheet,
                                                             Book<N>& book);

/// Length of an arc whose plan is stretched by a factor along its chord and another along its rise.
/// Source:  geometry: the arc becomes a piece of an ellipse; integrated to 1e-14 relative where
///          the factors are within a tenth of each other
[[nodiscard]] double stretched_arc(double radius, double sweep, double along_chord,
                                   double along_rise);
/// The same where the chord runs askew to the two ways of stretching.
/// @param chord_heading  of the chord, rad from X
[[nodiscard]] double stretched_arc(double radius, double sweep, double along_x, double along_y,
                                   double chord_heading);

}  // namespace fit
}  // namespace bowfront
