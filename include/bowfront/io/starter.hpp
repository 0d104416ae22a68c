#pragma once
/// \file
/// A case file to begin with.

#include <string>
#include <string_view>
#include <vector>

namespace bowfront::io {

/// The starters: shapes, as the plan names them, and ways to open a case, as `access-hinged-door`.
[[nodiscard]] std::vector<std::string_view> starter_shapes();

/// A case file with comments that say what each value is, ready to be changed.
/// @param shape  one of `starter_shapes`
/// @throws ContractError for another shape
[[nodiscard]] std::string starter(std::string_view shape);

}  // namespace bowfront::io
