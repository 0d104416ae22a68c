#pragma once
/// \file
/// What the sides of a general chain are made of.

#include "bowfront/model/plan.hpp"

namespace bowfront {

/// Whether an ellipse or a line through points is among the pieces of the side of a place.
[[nodiscard]] bool has_free_piece(const Plan& plan, std::size_t place);

}  // namespace bowfront
