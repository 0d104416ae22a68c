#pragma once
/// \file
/// How a check ends.

#include <string_view>

namespace bowfront {

/// How a check ended. `fail`: the nominal breaks the limit. `warn`: only the worst case does.
enum class Status { pass, warn, fail };

/// `pass`, `warn` or `fail`.
[[nodiscard]] std::string_view status_text(Status status) noexcept;

}  // namespace bowfront
