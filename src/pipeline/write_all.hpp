#pragma once
/// \file
/// Writing to a file descriptor until all is written.

#include <string_view>

namespace bowfront {

/// @returns false, with the reason in errno, where not all could be written
[[nodiscard]] bool write_all(int file, std::string_view bytes);

}  // namespace bowfront
