#pragma once
/// \file
/// Areas laid over each other, and what covers the two sides of each piece of their edges.

#include <vector>

#include "bowfront/geom/region.hpp"
#include "geom/cutting.hpp"

namespace bowfront {

/// What covers the two sides of a piece: for each of the two operands, whether any of its areas.
struct Cover {
    bool first = false;
    bool second = false;
};

/// A piece of an edge where one or more areas end.
struct Border {
    Piece piece;
    Cover left;
    Cover right;
};

/// All borders of two groups of areas, which may overlap within a group as well, in the order of
/// the input's edges; each place once, however many edges run there.
/// @param reach  how close points are one point and edges one edge, mm
[[nodiscard]] std::vector<Border> overlay(const std::vector<Region>& first,
                                          const std::vector<Region>& second, double reach);

}  // namespace bowfront
