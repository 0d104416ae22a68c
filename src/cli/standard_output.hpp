#pragma once
/// \file
/// Standard output, checked: a product that was not written is an error.

#include <string_view>

namespace bowfront::cli {

/// Writes the product of a command to standard output.
/// @throws IoError where it can't be written in full
void print(std::string_view text);

}  // namespace bowfront::cli
