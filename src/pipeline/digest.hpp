#pragma once
/// \file
/// The SHA-256 of a file's bytes (FIPS 180-4), for report.json.

#include <string>
#include <string_view>

namespace bowfront {

/// In lower-case hexadecimal, 64 characters.
[[nodiscard]] std::string sha256(std::string_view bytes);

}  // namespace bowfront
