#pragma once
/// \file
/// The parts of shelves.

#include <vector>

#include "bowfront/fit/shelf.hpp"
#include "bowfront/pattern/part.hpp"

namespace bowfront::pattern {

/// Shelves and rails, each in its place, as `case_parts` has it.
/// @param shelves  of the case, without objections
[[nodiscard]] std::vector<Part> shelf_parts(const Case& c, const fit::Shelves& shelves);

/// Scribes the bores of the shelves' pins on the posts' sections, and notes their heights. Bores
/// are drilled by hand, square to a post's length: they are in no solid.
/// @param parts  of the case; posts are found by their ids
void mark_pins(const Case& c, const fit::Shelves& shelves, std::vector<Part>& parts);

}  // namespace bowfront::pattern
