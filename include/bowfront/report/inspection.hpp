#pragma once
/// \file
/// What people and programs are told of a case that was measured.

#include <string>
#include <vector>

#include "bowfront/model/case.hpp"
#include "bowfront/study/inspect.hpp"

namespace bowfront::report {

/// The inspection as JSON: `{"bowfront_inspection": 1, ...}`. Units as in report.json.
/// @throws ContractError where a number is not finite
[[nodiscard]] std::string inspection_json(const Case& c, const std::vector<Assumption>& assumed,
                                          const study::Inspection& inspection);

/// The same in words: verdict, each pane as made, the states of the air, what does not hold and
/// what can still be done.
[[nodiscard]] std::string inspection_text(const Case& c, const std::vector<Assumption>& assumed,
                                          const study::Inspection& inspection);

}  // namespace bowfront::report
