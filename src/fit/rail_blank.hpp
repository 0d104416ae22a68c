#pragma once
/// \file
/// Rails before they are cut into pieces: their edges, and what mitres and butts make of these.

#include <vector>

#include "bowfront/fit/ring.hpp"

namespace bowfront::fit {

/// A piece that is shorter than this on either edge is none, mm. A choice of this tool.
inline constexpr double kLeastEdge = 1;

/// What bounds a rail: from its start to its end along either edge.
struct Edges {
    std::vector<Segment> outer;
    std::vector<Segment> inner;
};

/// What a butt joint adds to the outer edge of the rail that runs through.
struct Tails {
    std::vector<Segment> before;
    std::vector<Segment> after;
};

/// A rail on its way to its pieces.
struct RailBlank {
    Edges edges;
    Tails tails;
};

[[nodiscard]] double length_of(const std::vector<Segment>& chain);

/// Whether a side, or an edge beside it, is a straight.
[[nodiscard]] bool straight(const std::vector<Segment>& chain);

/// Puts tails before the outer edge of a rail's first piece and behind that of its last.
void add_tails(std::vector<Segment>& first, std::vector<Segment>& last, const Tails& tails);

/// Out along the outer edge, back along the inner one: counter-clockwise.
[[nodiscard]] Contour outline_of(const Edges& edges);

/// Whether an outline goes once round, counter-clockwise. Pieces that all do lie side by side, for
/// together they go once round the ring.
[[nodiscard]] bool goes_round(const Contour& outline);

/// The rails of a ring, one a side, their corners mitred or, where asked for and where it can be,
/// butted.
/// @param outer  the outer edge, in the order of the line's sides
/// @param inner  the inner edge
[[nodiscard]] std::vector<RailBlank> rail_blanks(const GlazingLine& line, const SideChains& outer,
                                                 const SideChains& inner, RailCorner corner);

}  // namespace bowfront::fit
