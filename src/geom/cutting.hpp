#pragma once
/// \file
/// Edges of areas cut at every meeting into pieces that share nothing but ends.

#include <cstddef>
#include <vector>

#include "bowfront/geom/contour.hpp"

namespace bowfront {

/// How close points are one point, and edges one edge, when areas are added or taken away, mm.
/// Above the error of the meeting of two edges at a shallow angle, under anything a cutter makes.
inline constexpr double kSliver = 1e-7;

/// An edge of one of several areas.
struct Edge {
    Segment segment;
    std::size_t area = 0;  ///< its number
};

/// A piece of an edge between two numbered vertices.
struct Piece {
    std::size_t from = 0;
    std::size_t to = 0;
    Segment segment;

    [[nodiscard]] Piece reversed() const { return {to, from, segment.reversed()}; }
};

/// A piece and the area whose edge it is part of.
struct OwnPiece {
    Piece piece;
    std::size_t area = 0;
};

/// All edges cut wherever two come within `reach`, mm, of each other at an end, a crossing or a
/// touching point, in the order of the edges. Vertices lie more than `reach` apart; where edges
/// run over each other, their pieces there have the same vertices. Closed chains stay closed.
[[nodiscard]] std::vector<OwnPiece> cut_at_meetings(const std::vector<Edge>& edges, double reach);

}  // namespace bowfront
