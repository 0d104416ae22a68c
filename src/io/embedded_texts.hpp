#pragma once
/// \file
/// Files as they were when the program was built; src/cmake/embed.cmake writes the tables.

#include <span>
#include <string_view>

namespace bowfront::io {

struct EmbeddedText {
    std::string_view name;  ///< of the file, up to its first full stop
    std::string_view text;
};

/// `schemas/*.schema.json`, in alphabetical order.
[[nodiscard]] std::span<const EmbeddedText> embedded_schemas() noexcept;

/// `src/io/starters/*.json`, in alphabetical order.
[[nodiscard]] std::span<const EmbeddedText> embedded_starters() noexcept;

}  // namespace bowfront::io
