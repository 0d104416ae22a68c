#pragma once
/// \file
/// The edge of a form's ribs where a pane has several pieces: its straights and bends, turned so
/// that hot sheet drapes over them.

#include <vector>

#include "bowfront/forming/form.hpp"
#include "bowfront/geom/contour.hpp"

namespace bowfront::forming {

/// The edge of a form's ribs, seen along the form's axis, Y up; as the edge of an arc runs, from
/// the right over the top to the left, the pane's start on the right. Set off to its right it is
/// the face's, set off to its left it lies in the wood.
struct FormProfile {
    std::vector<Segment> edge;
    /// Where each piece of the form begins and ends, along the edge from its right end: the bend
    /// lines between them. One less than there are pieces.
    std::vector<double> bend_lines;
};

/// The ends stand level where no part of the edge then leans in under itself; else the edge is
/// turned by as much less as that takes, and where it must lean in, alike at both ends. The middle
/// of its width stands over X = 0, its lowest point `foot` over Y = 0.
/// @param form  of a pane of several pieces
/// Source:  geometry: parallels of straights and arcs, under the face by skin and cover
[[nodiscard]] FormProfile form_profile(const FormSizes<double>& form, const FormSpec& spec);

/// A chain set off to its right by a distance, tangents kept; negative to its left.
/// @throws ContractError where that leaves nothing of an arc
[[nodiscard]] std::vector<Segment> set_off(const std::vector<Segment>& chain, double right);

}  // namespace bowfront::forming
