#pragma once
/// \file
/// Pieces of edges put together to outlines, and outlines to areas.

#include <vector>

#include "bowfront/geom/region.hpp"
#include "geom/overlay.hpp"

namespace bowfront {

/// Whether as many pieces arrive at every vertex as leave it.
[[nodiscard]] bool closed(const std::vector<Piece>& pieces);

/// The areas bounded by pieces that have the area on their left, in the order that `unite`
/// promises. Outlines that touch themselves are parted there; slivers are dropped.
/// @throws ContractError unless the pieces are closed
[[nodiscard]] std::vector<Region> stitch(const std::vector<Piece>& pieces);

}  // namespace bowfront
