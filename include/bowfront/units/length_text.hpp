#pragma once
/// \file
/// Lengths as text for people to read.

#include <string>

namespace bowfront {

/// A length in millimetres, rounded to three decimals: `412.6 mm`.
/// @param millimetres  finite
/// @throws ContractError for NaN or infinity
[[nodiscard]] std::string millimetre_text(double millimetres);

/// A length in inches: whole inches and a fraction where it is a 64th within 0.00005 in
/// (`17 5/16 in`), else four decimals (`16.2441 in`).
/// @param millimetres  finite
/// @throws ContractError for NaN or infinity
[[nodiscard]] std::string inch_text(double millimetres);

}  // namespace bowfront
