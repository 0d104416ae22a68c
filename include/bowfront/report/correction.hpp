#pragma once
/// \file
/// What a person is told of a case file that was corrected.

#include <string>
#include <vector>

#include "bowfront/base/change.hpp"
#include "bowfront/base/finding.hpp"

namespace bowfront::report {

/// A change that was made, and the check that it was made for.
struct MadeChange {
    const std::string& check;
    const Change& change;
};

/// The changes in the order in which they were made, the verdicts before and after, and what does
/// not pass even so, the worst first.
/// @param file   where the corrected case was written; not told where nothing was made
[[nodiscard]] std::string correction_text(const std::vector<Finding>& before,
                                          const std::vector<Finding>& after,
                                          const std::vector<MadeChange>& made,
                                          const std::string& file);

}  // namespace bowfront::report
