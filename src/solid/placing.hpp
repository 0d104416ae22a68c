#pragma once
/// \file
/// A placement as the kernel's transformation.

#include <TopLoc_Location.hxx>

#include "bowfront/pattern/part.hpp"

namespace bowfront::solid {

/// @throws ContractError where the axes are not unit vectors square to each other
[[nodiscard]] TopLoc_Location location(const Placement& placement);

}  // namespace bowfront::solid
