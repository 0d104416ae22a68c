#pragma once
/// \file
/// What the report says of shelves.

#include <nlohmann/json.hpp>
#include <string>

#include "bowfront/fit/shelf.hpp"

namespace bowfront::report {

/// A list with an item for each shelf.
[[nodiscard]] nlohmann::ordered_json shelves_json(const Case& c, const fit::Shelves& shelves);

/// A paragraph for each shelf; empty for a case without.
[[nodiscard]] std::string shelves_text(const Case& c, const fit::Shelves& shelves);

}  // namespace bowfront::report
