#pragma once
/// \file
/// What the report says of a frame's build and of the timber that it takes.

#include <nlohmann/json.hpp>

#include "bowfront/fit/build_sums.hpp"
#include "bowfront/fit/timber_list.hpp"
#include "bowfront/model/case.hpp"

namespace bowfront::report {

/// How base and top are built.
[[nodiscard]] nlohmann::ordered_json build_json(const Case& c, const BuildSums<double>& build);

/// The timber to buy.
[[nodiscard]] nlohmann::ordered_json timber_json(const Case& c, const TimberList<double>& timber);

}  // namespace bowfront::report
