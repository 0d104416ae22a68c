#pragma once
/// \file
/// A frame's build and its timber, as people read them.

#include <string>

#include "bowfront/fit/build_sums.hpp"
#include "bowfront/fit/timber_list.hpp"
#include "bowfront/model/case.hpp"

namespace bowfront::report {

/// Base and top of rails, piece by piece; nothing of boards.
[[nodiscard]] std::string build_text(const Case& c, const BuildSums<double>& build);

/// The timber to buy, with rough sizes, board feet and what of it is cut away.
[[nodiscard]] std::string timber_text(const Case& c, const TimberList<double>& timber);

}  // namespace bowfront::report
