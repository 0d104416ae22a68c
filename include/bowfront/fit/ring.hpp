#pragma once
/// \file
/// Base or top as a ring of rails that follows the glazing line: its pieces, in plan.

#include <optional>
#include <string>
#include <vector>

#include "bowfront/fit/plan.hpp"
#include "bowfront/geom/contour.hpp"
#include "bowfront/model/case.hpp"

namespace bowfront::fit {

/// One piece of a ring: a whole straight rail, or a segment of a curved one.
struct RailPiece {
    CaseSide side;
    int number = 0;      ///< of the pieces of its rail, from 1; 0 for a whole rail
    std::string name;    ///< `front`, or `front-2` where the rail is of several pieces
    Contour outline;     ///< in plan, counter-clockwise
    bool curved = false;
    Point grain;         ///< unit vector along the grain, the way the side runs
    double length = 0;   ///< extent along the grain, mm
    double width = 0;    ///< extent across the grain, mm: the board that it takes
    double run_out = 0;  ///< most angle between the grain and a curved edge, rad
};

/// A ring of rails. The pieces lie side by side and cover it.
struct Ring {
    Contour inner;                  ///< the inner edge, counter-clockwise
    std::vector<RailPiece> pieces;  ///< side by side, each side from start to end
    std::vector<Segment> joints;    ///< between neighbours, from the outer to the inner edge
};

/// The ring of rails of a plate; empty where its inner edge does not close inside its outer edge, a
/// curved rail can't be cut into as many pieces as asked, or a piece would cross itself.
///
/// A straight rail is one piece with its grain along the side. A curved rail is cut square to its
/// arc into equal shares of the glazing line's sweep: the fewest for which each piece comes out of a
/// board of the plate's width and its grain, which runs along the piece's chord, keeps to the
/// limit of run-out; where no number keeps both, the fewest that keep the latter. Mitred corners are
/// cut straight from the outer to the inner corner, square to the line where sides go on smoothly.
/// At a butt corner the straight rail runs through, of two alike the longer one, and the other one
/// is cut along its inner edge. Corners that turn by less than 30° or to the right, and those where
/// such a cut finds no way to the outer edge, are mitred all the same.
/// @param outer  the outer edge, in the order of the line's sides
/// @param build  of rails
/// Source: geometry; the choice of pieces is one of this tool
[[nodiscard]] std::optional<Ring> ring(const GlazingLine& line, const SideChains& outer,
                                       const Build& build);

}  // namespace bowfront::fit
