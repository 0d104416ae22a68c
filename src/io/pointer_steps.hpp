#pragma once
/// \file
/// The steps of a JSON pointer (RFC 6901).

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace bowfront::io {

/// A step with `~1` and `~0` read as `/` and `~`.
[[nodiscard]] std::string unescaped(std::string_view step);

/// A step as the index of a list; nothing where it is none.
[[nodiscard]] std::optional<std::size_t> index_of(std::string_view step) noexcept;

}  // namespace bowfront::io
