#pragma once
/// \file
/// What the report says of the case as one thing, and of its cost.

#include <nlohmann/json.hpp>

#include "bowfront/whole/cost.hpp"
#include "bowfront/whole/whole_sums.hpp"

namespace bowfront::report {

/// Mass, centre of gravity, tipping, lifting.
[[nodiscard]] nlohmann::ordered_json whole_json(const whole::WholeSums<double>& sums);

[[nodiscard]] nlohmann::ordered_json cost_json(const whole::CostSums<double>& sums);

}  // namespace bowfront::report
