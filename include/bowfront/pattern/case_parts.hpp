#pragma once
/// \file
/// The parts of a case and of its forms, as patterns and bodies in their places.

#include <string>
#include <vector>

#include "bowfront/fit/layout.hpp"
#include "bowfront/fit/sums.hpp"
#include "bowfront/model/case.hpp"
#include "bowfront/pattern/part.hpp"

namespace bowfront::pattern {

/// Frame, beads and panes, each standing where it does in the case: panes centred sideways and
/// standing in the base's grooves. X to the right, 0 at mid-width; Y away from the viewer, 0 on the
/// front's chord; Z up, 0 on the base's upper face.
/// @param c       free of objections
/// @param sums    `fit::solve(c)`
/// @param layout  `fit::layout(c, sums)`
[[nodiscard]] std::vector<Part> case_parts(const Case& c, const CaseSums<double>& sums,
                                           const fit::Layout& layout);

/// The ends of a pane as it stands in the case: lengths along its side's glazing line.
struct PaneSpan {
    double start = 0;
    double end = 0;
};
[[nodiscard]] PaneSpan pane_span(const PaneSums<double>& pane);

/// The part of base or top that a pane's edge stands in at its middle: the plate itself, or the
/// middle piece of that side's rail.
/// @param plate   `base` or `top`
/// @param layout  of that plate
[[nodiscard]] std::string plate_piece(const std::string& plate, const fit::PlateLayout& layout,
                                      const CaseSide& side);

/// The form of one pane: ribs, base, cross-members, skin, end rails, fences. X along the arc's
/// chord, Y along the form's axis, Z up with 0 on the base's upper face.
/// Empty where the form's arc is over half a turn (the check `form-sweep` then fails).
[[nodiscard]] std::vector<Part> form_parts(const Case& c, const PaneForm<double>& form);

}  // namespace bowfront::pattern
