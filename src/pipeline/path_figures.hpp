#pragma once
/// \file
/// The ways in of a design's panes among its figures.

#include "bowfront/pipeline/design.hpp"

namespace bowfront {

/// Enters every figure of `panes/SIDE/loading_path`.
/// @param sums  of the design, with their workings
void add_path_figures(const Design& design, const CaseSums<Traced>& sums, Workings& workings);

}  // namespace bowfront
