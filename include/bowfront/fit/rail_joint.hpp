#pragma once
/// \file
/// The loose tongue that keeps two rails in line where they are glued end to end or mitred.

#include "bowfront/model/case.hpp"

namespace bowfront {

/// A tongue in a slot routed into both pieces. It lies in the middle of the floor under the grooves,
/// so that it never meets a groove's bottom.
template <class N>
struct RailTongue {
    N floor;       ///< timber under the grooves, mm
    N thickness;   ///< of the tongue, mm
    N from_face;   ///< from the face without grooves to the slot, mm
    N reach;       ///< into each piece, mm
};

/// A tongue takes this share of the thickness that it lies in. Common practice, no source.
inline constexpr double kTongueShare = 1.0 / 3;

/// The thinnest tongue, mm: a thinner one breaks before the glue does. Common practice, no source.
inline constexpr double kLeastTongue = 3;

/// A tongue reaches into each piece by this many times its thickness. Common practice, no source.
inline constexpr double kTongueReach = 3;

/// The tongue of rails of one thickness over grooves of one depth.
/// @param thickness  of the rails, mm
/// @param depth      of their grooves, mm, under the thickness
/// Source:  a third of what it lies in, in its middle: common practice, no source
/// Example: rails of 20 mm with grooves of 8 mm -> 4 mm thick, 4 mm from the face
template <class N>
[[nodiscard]] RailTongue<N> rail_tongue(const N& thickness, const N& depth) {
    RailTongue<N> tongue;
    tongue.floor = thickness - depth;
    tongue.thickness = tongue.floor * kTongueShare;
    tongue.from_face = (tongue.floor - tongue.thickness) / 2;
    tongue.reach = tongue.thickness * kTongueReach;
    return tongue;
}

}  // namespace bowfront
