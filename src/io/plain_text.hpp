#pragma once
/// \file
/// Whether the bytes of a file are a text at all.

#include <optional>
#include <string_view>

#include "faults.hpp"

namespace bowfront::io {

/// The text without a byte order mark; nothing, after one fault, where the bytes are not UTF-8 or
/// hold a zero byte.
[[nodiscard]] std::optional<std::string_view> plain_text(std::string_view bytes,
                                                         Faults& faults);

}  // namespace bowfront::io
