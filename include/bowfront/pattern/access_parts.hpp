#pragma once
/// \file
/// What a case's opening asks for: grooves and bores in the frame, panes that open, pegs, a stop.

#include <string>
#include <vector>

#include "bowfront/fit/access.hpp"
#include "bowfront/pattern/part.hpp"

namespace bowfront::pattern {

/// Cuts what the opening asks for into base, top and posts, and adds its own parts, shut.
/// @param c       with `access`
/// @param sums    `fit::solve_access(c)`
/// @param access  `fit::access_layout` of the same
/// @param parts   `case_parts` of the same case
void add_access_parts(const Case& c, const AccessSums<double>& sums,
                      const fit::AccessLayout& access, std::vector<Part>& parts);

/// The id of what is lifted off or out, or turned, by hand: `top`, `pane-back`, `pane-back-start`.
[[nodiscard]] std::string moved_part(const Access& access);

/// The parts of a case with its door open.
/// @param access  with a pin
[[nodiscard]] std::vector<Part> with_open_door(const Access& way, const fit::AccessLayout& access,
                                               std::vector<Part> parts);

}  // namespace bowfront::pattern
