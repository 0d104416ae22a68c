#pragma once
/// \file
/// A design's build and its timber among its figures.

#include "bowfront/pipeline/design.hpp"

namespace bowfront {

/// The pieces of solid timber among parts.
[[nodiscard]] std::vector<TimberPiece> timber_pieces(const std::vector<Part>& parts);

/// Enters every figure of `frame` and `timber`.
void add_build_figures(const Design& design, const std::vector<Part>& parts, Workings& workings);

}  // namespace bowfront
