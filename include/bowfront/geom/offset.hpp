#pragma once
/// \file
/// Areas grown or shrunk by a distance, exactly: arcs stay arcs, about the same centres.

#include <vector>

#include "bowfront/geom/region.hpp"

namespace bowfront {

/// How an outline that is set off goes round a corner that points towards where it is going: a
/// corner of an area that grows, an inside corner of one that shrinks. At all other corners its
/// sides are cut short where they meet.
enum class OffsetCorner {
    round,  ///< an arc about the corner: every point lies at the distance from the area
    mitre,  ///< on along the tangents until they meet, as far as `kMostMitre`
};

/// A mitred corner's point lies at most this many times the distance from the corner that it is
/// set off from; a sharper corner is rounded. A choice of this tool: four reaches corners of 29°.
inline constexpr double kMostMitre = 4;

/// Areas set off by a distance, mm: outwards where it is over 0, inwards where under. What the
/// areas of an operand overlap counts once. Sides that vanish, outlines that split, holes that
/// close or run together are followed; where nothing is left the result is empty. Results are in
/// the order and to the accuracy of `unite`: within 1e-9 mm, but where edges come within 1e-7 mm of
/// each other they are taken as one. Source:  geometry: an area grown by d is the area, the bands
/// of width d along its edges, and the
///          sectors of radius d about its corners; shrunk by d, what bands and sectors within
///          leave.
/// Example: a square of 100 mm by 10 mm -> area 10000 + 400·10 + π·10² = 14314.159265 mm²
/// @throws ContractError as `unite`
[[nodiscard]] std::vector<Region> offset(const std::vector<Region>& areas, double by,
                                         OffsetCorner corners = OffsetCorner::round);

/// The same for what one outline runs round, whichever way it runs.
[[nodiscard]] std::vector<Region> offset(const Contour& outline, double by,
                                         OffsetCorner corners = OffsetCorner::round);

}  // namespace bowfront
