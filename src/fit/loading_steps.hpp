#pragma once
/// \file
/// A way in, told in steps.

#include <string>
#include <vector>

#include "bowfront/fit/loading_path.hpp"

namespace bowfront::fit {

/// `12.3 degrees`.
[[nodiscard]] std::string degrees(double angle);

/// What to do with a pane that can move as its loading asks, in order, one sentence each.
/// @param states  its passages
[[nodiscard]] std::vector<std::string> loading_steps(const Case& c, const PaneSums<double>& pane,
                                                     const std::vector<PassageInState>& states);

}  // namespace bowfront::fit
