#pragma once
/// \file
/// Volumes that timber is sold by and densities are told for.

namespace bowfront {

/// A cubic metre, mm³.
inline constexpr double kCubicMetre = 1e9;

/// A board foot: a board of one foot by one foot by one inch, 144 in³, in mm³; exact, with the inch
/// at 25.4 mm.
/// Source: NIST Handbook 130, uniform regulation for the method of sale, hardwood lumber; the
///         handbook's place from memory, not verified
inline constexpr double kBoardFoot = 2'359'737.216;

}  // namespace bowfront
