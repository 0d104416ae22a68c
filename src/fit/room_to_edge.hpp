#pragma once
/// \file
/// How far an outline keeps from an edge that it must not pass.

#include "bowfront/geom/region.hpp"

namespace bowfront::fit {

/// From `outline` to `edge`, mm; where corners or middles of its segments lie on the wrong side of
/// the edge, how far the furthest of them does, negative.
/// @param wrong  inside or outside of `edge`
[[nodiscard]] double room_to_edge(const Contour& outline, const Contour& edge, Side wrong);

}  // namespace bowfront::fit
