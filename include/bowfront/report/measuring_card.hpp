#pragma once
/// \file
/// The order of work, with the places where measuring comes before cutting, and the card that is
/// filled in there.

#include <string>
#include <vector>

#include "bowfront/fit/sums.hpp"
#include "bowfront/model/case.hpp"

namespace bowfront::report {

/// One step of the work.
struct WorkStep {
    std::string step;
    std::string hold;  ///< what to measure before going on; empty where nothing is
};

/// The steps of a case in their order. What can't be changed any more comes first, and what is
/// easily fitted to it last: a bent pane before the grooves that it stands in.
[[nodiscard]] std::vector<WorkStep> order_of_work(const Case& c, const CaseSums<double>& sums);

/// A file of measurements to fill in (schemas/measured.schema.json): every size of every pane,
/// `null` until it is measured, with the design's size as a comment.
/// @param sums  `fit::solve(c)`
[[nodiscard]] std::string measuring_card(const Case& c, const CaseSums<double>& sums);

}  // namespace bowfront::report
