#pragma once
/// \file
/// Derivations of figures, for programs and for people.

#include <string>

#include "bowfront/base/finding.hpp"
#include "bowfront/figure/workings.hpp"

namespace bowfront::report {

/// The derivation of a figure down to its leaves as JSON: path, symbol, value and unit, formula
/// with symbols and with numbers, origin, and the same of each input.
/// @throws ContractError where there is no figure of that path
[[nodiscard]] std::string derivation_json(const Workings& workings, const std::string& path);

/// A check with its limit, and the derivation of its value where it has one.
[[nodiscard]] std::string check_derivation(const Finding& finding, const Workings& workings,
                                           bool as_json);

}  // namespace bowfront::report
