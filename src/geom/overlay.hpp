#pragma once
/// \file
/// Areas laid over each other: their edges cut at every meeting into pieces that share nothing
/// but ends, and for each piece what lies on its two sides.

#include <cstddef>
#include <vector>

#include "bowfront/geom/region.hpp"

namespace bowfront {

/// How close points are one point, and edges one edge, when areas are added or taken away, mm.
/// Above the error of the meeting of two edges at a shallow angle, under anything a cutter makes.
inline constexpr double kSliver = 1e-7;

/// A piece of an edge between two numbered vertices.
struct Piece {
    std::size_t from = 0;
    std::size_t to = 0;
    Segment segment;

    [[nodiscard]] Piece reversed() const { return {to, from, segment.reversed()}; }
};

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
[[nodiscard]] std::vector<Border> overlay(const std::vector<Region>& first,
                                          const std::vector<Region>& second);

}  // namespace bowfront
