#pragma once
/// \file
/// The lines on a pane beyond its sizes, for people.

#include <string>

#include "bowfront/fit/loading_path.hpp"
#include "bowfront/fit/sums.hpp"

namespace bowfront::report {

/// What its own radius, a push and being carried do to a pane, a line each; ends with a line break.
[[nodiscard]] std::string strength_text(const PaneSums<double>& pane);

/// A line for each state of the air; ends with a line break.
[[nodiscard]] std::string states_text(const PaneSums<double>& pane);

/// How a pane gets in; ends with a line break.
[[nodiscard]] std::string loading_text(const fit::LoadingPath& path);

}  // namespace bowfront::report
