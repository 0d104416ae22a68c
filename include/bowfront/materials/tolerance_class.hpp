#pragma once
/// \file
/// General tolerances of ISO 2768-1.

#include <optional>
#include <string_view>

namespace bowfront {

/// The tolerance classes of ISO 2768-1.
enum class ToleranceClass { fine, medium, coarse, very_coarse };

/// Where the figures come from, for reports.
inline constexpr std::string_view kGeneralToleranceSource =
    "ISO 2768-1:1989, Tables 1 to 3, as reproduced in three places that agree";

/// The letter of a class: `f`, `m`, `c` or `v`.
[[nodiscard]] std::string_view class_letter(ToleranceClass tolerance_class) noexcept;

/// The class of a letter, or nothing.
[[nodiscard]] std::optional<ToleranceClass> find_tolerance_class(std::string_view letter) noexcept;

/// Permissible deviation of a length, either way.
/// @param size  nominal, mm; > 0
/// @returns  mm; nothing where the standard gives none: below 0.5 mm (a tolerance is then stated
///           with the dimension), above 4000 mm, class f above 2000 mm, class v up to 3 mm
/// @throws   ContractError when the size is not above 0
/// Source:   ISO 2768-1:1989, Table 1
[[nodiscard]] std::optional<double> linear_tolerance(ToleranceClass tolerance_class, double size);

/// Permissible deviation of an external radius or a chamfer's height, either way.
/// @param size  nominal, mm; > 0
/// @returns  mm; nothing below 0.5 mm
/// @throws   ContractError when the size is not above 0
/// Source:   ISO 2768-1:1989, Table 2
[[nodiscard]] std::optional<double> radius_tolerance(ToleranceClass tolerance_class, double size);

/// Permissible deviation of an angle, either way.
/// @param shorter_leg  length of the shorter side of the angle, mm; > 0
/// @returns  rad
/// @throws   ContractError when the length is not above 0
/// Source:   ISO 2768-1:1989, Table 3
[[nodiscard]] double angular_tolerance(ToleranceClass tolerance_class, double shorter_leg);

}  // namespace bowfront
