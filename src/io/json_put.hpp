#pragma once
/// \file
/// Puts a value into a JSON tree where a pointer says.

#include <string_view>

#include "json_node.hpp"

namespace bowfront::io {

/// The value at a pointer; objects and keys on the way that are missing are made. An entry of
/// "sheets" that is made is like the library's sheet of that name.
/// @returns  null where the way leads past the end of a list, or through a value that holds none
[[nodiscard]] JsonNode* put(JsonNode& root, std::string_view pointer);

}  // namespace bowfront::io
