#pragma once
/// \file
/// A finding that does not pass, as people read it on the terminal.

#include <string>

#include "bowfront/base/finding.hpp"

namespace bowfront::report {

/// Two lines: what misses which limit, and what to do.
[[nodiscard]] std::string finding_text(const Finding& finding);

}  // namespace bowfront::report
