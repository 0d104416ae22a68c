#pragma once
/// \file
/// The library of materials as text for people.

#include <string>
#include <string_view>
#include <vector>

#include "bowfront/materials/board.hpp"
#include "bowfront/materials/sheet.hpp"
#include "bowfront/materials/timber.hpp"

namespace bowfront {

/// Every name of the library, sheets before timbers before boards; each is there once.
[[nodiscard]] std::vector<std::string_view> material_names();

/// All materials, a line each, with the values that choose between them. Ends with a line break.
[[nodiscard]] std::string list_materials();

/// Every value of a material with unit, range, status and source, then the notes, in aligned
/// columns. Ends with a line break.
[[nodiscard]] std::string describe(const Sheet& sheet);
[[nodiscard]] std::string describe(const Timber& timber);
[[nodiscard]] std::string describe(const Board& board);

}  // namespace bowfront
