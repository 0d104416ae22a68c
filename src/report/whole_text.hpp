#pragma once
/// \file
/// The lines on the case as one thing and on its cost, for people.

#include <string>

#include "bowfront/whole/cost.hpp"
#include "bowfront/whole/whole_sums.hpp"

namespace bowfront::report {

/// Mass, centre of gravity, tipping, lifting; ends with a line break.
[[nodiscard]] std::string whole_text(const whole::WholeSums<double>& sums);

/// A line for each material; ends with a line break.
[[nodiscard]] std::string cost_text(const whole::CostSums<double>& sums);

}  // namespace bowfront::report
