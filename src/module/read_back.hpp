#pragma once
/// \file
/// A STEP file held against what it was written from.

#include <string>
#include <vector>

#include "bowfront/step/step.hpp"

namespace bowfront::module {

/// What the file should hold: an instance for each placement of each item.
/// @return empty where names, groups, counts, volumes and boxes are equal; else the first difference
[[nodiscard]] std::string difference(const step::Assembly& written,
                                     const std::vector<step::ReadInstance>& read);

}  // namespace bowfront::module
