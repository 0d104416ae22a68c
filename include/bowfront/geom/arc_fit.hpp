#pragma once
/// \file
/// A smooth curve as a chain of straights and true arcs, within a stated error: what grooves,
/// patterns, cutters and solids are made of.

#include <vector>

#include "bowfront/geom/contour.hpp"
#include "bowfront/geom/smooth_curve.hpp"

namespace bowfront {

/// The finest chord error that a curve is followed to, mm: a thousandth of what any cutter holds.
inline constexpr double kFinestChordError = 1e-6;

/// A chain in the place of a curve.
struct ArcFit {
    /// From the curve's start to its end; direction runs on in every joint to under 1e-9 rad.
    std::vector<Segment> chain;
    double deviation = 0;  ///< greatest distance between chain and curve, mm
    double length = 0;     ///< of the chain, mm
    double developed = 0;  ///< of the curve, mm
};

/// The curve as a chain of biarcs, each a pair of arcs that run into one another.
///
/// Each biarc begins and ends on the curve, along the curve's tangents, and turns by no more than a
/// quarter turn. The curve is first halved by its length, again and again, until they are near.
/// Then it is cut where they stray about alike, into the fewest that are near, down to half of what
/// halving took; where none of these will do it stays halved. So a smaller error never gives fewer
/// biarcs, and their number grows with the cube root of 1/error. Arcs of one circle are joined, up
/// to half a turn, and what is straight but for 1e-7 mm in a metre becomes a straight.
///
/// @param chord_error  how far chain and curve may lie apart, mm; at least `kFinestChordError`
/// @throws ContractError for a smaller error, or a curve that bends to a radius of no more than it
/// Source:  biarcs with equal legs: Bolton, Biarc curves, Computer-Aided Design 7 (1975); their
///          error goes with the change of curvature and the cube of their length: Meek and Walton,
///          Approximating smooth planar curves by arc splines, Journal of Computational and Applied
///          Mathematics 59 (1995)
/// Example: half an ellipse 520 mm wide and 90 mm deep, within 0.01 mm -> 39 arcs
[[nodiscard]] ArcFit fit_arcs(const SmoothCurve& curve, double chord_error);

}  // namespace bowfront
