#pragma once
/// \file
/// What the report says of a pane beyond its sizes: how it lives through the year, what its own
/// radius and a load do to it, and how it gets in.

#include <nlohmann/json.hpp>

#include "bowfront/fit/loading_path.hpp"
#include "bowfront/fit/sums.hpp"

namespace bowfront::report {

/// In every state of the air.
[[nodiscard]] nlohmann::ordered_json states_json(const PaneSums<double>& pane);

/// The bends of a pane of several pieces.
[[nodiscard]] nlohmann::ordered_json bends_json(const PaneSums<double>& pane);

/// @param pane  curved
[[nodiscard]] nlohmann::ordered_json radius_error_json(const PaneSums<double>& pane);

[[nodiscard]] nlohmann::ordered_json load_json(const LoadSums<double>& load);

/// @param path  of `pane`
[[nodiscard]] nlohmann::ordered_json loading_path_json(const Case& c, const PaneSums<double>& pane,
                                                       const fit::LoadingPath& path);

}  // namespace bowfront::report
