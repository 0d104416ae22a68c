#pragma once
/// \file
/// All parts of a design: the case's and its forms'.

#include <vector>

#include "bowfront/pattern/part.hpp"
#include "bowfront/pipeline/design.hpp"

namespace bowfront {

[[nodiscard]] std::vector<Part> all_parts(const Design& design);

}  // namespace bowfront
