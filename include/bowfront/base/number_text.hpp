#pragma once
/// \file
/// The one door through which numbers become text. Independent of the locale.

#include <string>

namespace bowfront {

/// Shortest text that reads back to the same number; `-0` is written `0`.
/// @param value  finite
/// @throws ContractError for NaN or infinity, so that none can reach an output
[[nodiscard]] std::string number_text(double value);

/// Text with a fixed number of decimals; a result that rounds to zero carries no sign.
/// @param value     finite
/// @param decimals  0 to 17
/// @throws ContractError outside these ranges
[[nodiscard]] std::string fixed_text(double value, int decimals);

/// Text with at most `decimals` decimals and no trailing zeros (`12.50` gives `12.5`).
/// @param value     finite
/// @param decimals  0 to 17
/// @throws ContractError outside these ranges
[[nodiscard]] std::string rounded_text(double value, int decimals);

}  // namespace bowfront
