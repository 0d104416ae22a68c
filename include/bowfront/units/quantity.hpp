#pragma once
/// \file
/// Quantities as people write them: `2 ft 3 1/2 in`, `177 C`, `1.5 %`.
///
/// Text comes in, a number in the units of the code comes out (mm, rad, °C, K, plain ratios, N, kg,
/// s), or a clause that says what is wrong; nothing is thrown for a user's text and the locale has
/// no say.
/// Spaces between number and unit are free. A number is a whole number, a decimal (`17.5`, `.5`,
/// `1e3`), a fraction (`3/4`) or both (`17 5/16`, `17-5/16`). Decimals of up to 12 digits and
/// fractions are rounded once: the result is the double nearest to the true value.

#include <optional>
#include <string>
#include <string_view>
#include <utility>

namespace bowfront {

/// Why a text is no quantity.
struct QuantityFault {
    enum class Kind {
        form,  ///< it can't be read as a number with a unit
        unit,  ///< it has no unit, or one that is not known for this quantity
        size   ///< its number is too large to be held
    } kind = Kind::form;
    std::string found;   ///< what was wrong, as a clause
    std::string wanted;  ///< what would be right, as a clause
};

/// A number, or the reason why there is none.
class Quantity {
  public:
    explicit Quantity(double value) noexcept : value_(value) {}
    explicit Quantity(QuantityFault fault) noexcept : fault_(std::move(fault)) {}

    [[nodiscard]] explicit operator bool() const noexcept { return value_.has_value(); }
    /// @throws std::bad_optional_access where there is a fault instead
    [[nodiscard]] double value() const { return value_.value(); }
    /// Empty where there is a value.
    [[nodiscard]] const QuantityFault& fault() const noexcept { return fault_; }

  private:
    std::optional<double> value_;
    QuantityFault fault_;
};

/// A length, mm. Units `mm`, `cm`, `m`, `in` (also `inch`, `inches`, `"`), `ft` (also `foot`,
/// `feet`, `'`); feet may be followed by inches.
/// Source: 1 in = 25.4 mm, international yard and pound agreement of 1959
/// Example: `17 5/16 in` -> 439.7375 mm
[[nodiscard]] Quantity parse_length(std::string_view text);

/// An angle, rad. Units `deg` (also `°`, `degrees`) and `rad`.
/// Example: `90 deg` -> π/2
[[nodiscard]] Quantity parse_angle(std::string_view text);

/// A temperature, °C. Units `C`, `F` (each also with `°` or `deg` before it) and `K`.
/// Example: `350 F` -> 176.667 °C
[[nodiscard]] Quantity parse_temperature(std::string_view text);

/// A difference of temperatures, K; units as for a temperature.
/// Example: `15 F` -> 8.333 K
[[nodiscard]] Quantity parse_temperature_difference(std::string_view text);

/// A ratio as a plain number. Unit `%`, or a fraction without a unit (`1/3`).
/// Example: `1.5 %` -> 0.015
[[nodiscard]] Quantity parse_ratio(std::string_view text);

/// A force, N. Units `N`, `kN` and `lbf`.
/// Source: 1 lbf = 0.45359237 kg · 9.80665 m/s², both by definition
/// Example: `25 lbf` -> 111.2055 N
[[nodiscard]] Quantity parse_force(std::string_view text);

/// A mass, kg. Units `kg`, `g`, `lb` (also `lbs`) and `oz`.
/// Source: 1 lb = 0.45359237 kg, international yard and pound agreement of 1959; 1 oz = 1/16 lb
/// Example: `12 lb` -> 5.44310844 kg
[[nodiscard]] Quantity parse_mass(std::string_view text);

/// A time, s. Units `s`, `min`, `h`.
/// Example: `12 min` -> 720 s
[[nodiscard]] Quantity parse_time(std::string_view text);

}  // namespace bowfront
