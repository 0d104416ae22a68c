#pragma once
/// \file
/// A single new file.

#include <string>
#include <string_view>

namespace bowfront {

/// Writes a file that is not there yet, whole or not at all; never over an existing one.
/// @throws IoError where the name is taken or nothing can be written there
void write_new_file(const std::string& path, std::string_view bytes);

}  // namespace bowfront
