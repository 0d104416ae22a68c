#pragma once
/// \file
/// The number in front of a unit, kept as a fraction so that a conversion rounds once.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace bowfront {

/// A number as numerator and denominator. Decimals of up to 12 digits and fractions are held as two
/// whole numbers, so that the factor of any unit here can be multiplied in without rounding.
struct Amount {
    double numerator = 0;
    double denominator = 1;
    bool is_fraction = false;  ///< written with a `/`
};

/// What came of reading an amount at the start of a text.
struct AmountRead {
    std::optional<Amount> amount;
    std::size_t length = 0;  ///< bytes taken, leading spaces included
    std::string fault;       ///< a clause to put after the quoted text; where there is no amount
    bool too_large = false;  ///< the fault is the number's size
};

/// Reads `17`, `17.5`, `.5`, `1e3`, `3/4`, `17 5/16` or `17-5/16`; without a sign.
[[nodiscard]] AmountRead read_amount(std::string_view text);

}  // namespace bowfront
