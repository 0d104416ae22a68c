#pragma once
/// \file
/// A finding that does not pass, as people read it on the terminal.

#include <string>

#include "bowfront/base/finding.hpp"

namespace bowfront::report {

/// A change with what it leaves and brings.
[[nodiscard]] std::string change_text(const Change& change);

/// What misses which limit, what that means, and what to do: a line for each change that was found.
[[nodiscard]] std::string finding_text(const Finding& finding);

}  // namespace bowfront::report
