#pragma once
/// \file
/// Bending of a flat pane that rests on all four edges, free to turn and to slide there.

namespace bowfront::fit {

/// A rectangular pane and the rectangle in its middle that a load is spread over, mm.
struct LoadedPlate {
    double length = 0;        ///< between supports, > 0
    double height = 0;        ///< between supports, > 0
    double patch_length = 0;  ///< over 0 and at most the length
    double patch_height = 0;  ///< over 0 and at most the height
    double poisson = 0;       ///< 0 to 0.5
};

/// What a load F does in the middle of a pane of thickness t, modulus E and shorter side s.
struct PlateCoefficients {
    double deflection = 0;  ///< α: w = α·F·s²/(E·t³)
    double stress = 0;      ///< β: σ = β·F/t², the larger of both directions
};

/// The coefficients for small deflections, to better than 0.1 % of either for patches of at least a
/// hundredth of the sides.
/// Source:  Lévy's single series for a plate simply supported on four edges, loaded on a rectangle
///          in its middle (Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells; from
///          memory, held in the tests by Navier's double series and by printed tables)
/// Example: square, load spread all over, ν 0.3 -> α 0.0444, β 0.2874
/// @throws ContractError outside the ranges above
[[nodiscard]] PlateCoefficients plate_coefficients(const LoadedPlate& plate);

/// Deflection over thickness where the pane's middle surface takes part in carrying a load in its
/// middle: the x of x + A·x³ = `small`, A = 0.272. The edges slide in freely.
/// @param small  deflection over thickness by the theory of small deflections, ≥ 0
/// Source:  round plate on its rim, load in the middle, rim free to slide, ν 0.3: the work of the
///          middle surface for the shape of small deflections (Timoshenko and Woinowsky-Krieger
///          print the same A, from memory; it is computed anew in the tests)
/// Example: 8.0 -> 2.69
[[nodiscard]] double stiffened_deflection(double small);

}  // namespace bowfront::fit
