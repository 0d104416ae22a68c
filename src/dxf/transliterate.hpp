#pragma once
/// \file
/// Text for readers that know ASCII only.

#include <string>
#include <string_view>

namespace bowfront::dxf {

/// The nearest ASCII text: `é` becomes `e`, `ß` becomes `ss`, `ø` becomes `o`, white space and
/// control characters become a space, and what has no near letter (or is not UTF-8) becomes `?`.
[[nodiscard]] std::string transliterate(std::string_view utf8);

}  // namespace bowfront::dxf
