#pragma once
/// \file
/// A STEP file held against what it was written from.

#include <string>
#include <vector>

#include "bowfront/step/step.hpp"

namespace bowfront::module {

/// What the file should hold: an instance for each placement of each item.
/// @return the first difference in names, groups, counts, volumes or boxes; empty where there is
///         none
[[nodiscard]] std::string difference(const step::Assembly& written,
                                     const std::vector<step::ReadInstance>& read);

}  // namespace bowfront::module
