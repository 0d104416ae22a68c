#pragma once
/// \file
/// The JSON schemas that come with the program.

#include <optional>
#include <string_view>
#include <vector>

namespace bowfront::io {

/// Names of the schemas, in alphabetical order: `case` and others.
[[nodiscard]] std::vector<std::string_view> schema_names();

/// The text of a schema, as it stands in `schemas/NAME.schema.json`; none for an unknown name.
[[nodiscard]] std::optional<std::string_view> schema_text(std::string_view name) noexcept;

}  // namespace bowfront::io
