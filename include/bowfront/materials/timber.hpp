#pragma once
/// \file
/// Timbers for frames, and how much moisture they take from the air.

#include <optional>
#include <span>
#include <string_view>

#include "bowfront/materials/property.hpp"

namespace bowfront {

/// A timber. Strength values are averages of small clear specimens at 12 % moisture content, not
/// values to design by without a reserve.
struct Timber {
    std::string_view name;   ///< key in case files, `cherry`
    std::string_view title;  ///< for people, `black cherry (Prunus serotina)`
    /// Movement across the grain per 1 % of moisture content, as a ratio of width, 6 to 14 %.
    std::optional<Property> radial_coefficient{};
    std::optional<Property> tangential_coefficient{};
    std::optional<Property> radial_shrinkage{};  ///< green to ovendry, ratio
    std::optional<Property> tangential_shrinkage{};
    std::optional<Property> specific_gravity{};           ///< ovendry mass over volume at 12 %
    std::optional<Property> modulus{};                    ///< in bending, MPa
    std::optional<Property> modulus_of_rupture{};         ///< MPa
    std::optional<Property> compression_parallel{};       ///< MPa
    std::optional<Property> compression_perpendicular{};  ///< MPa
    std::optional<Property> shear{};                      ///< along the grain, MPa
    std::optional<Property> hardness{};                   ///< side hardness, N

    /// Density at 12 % moisture content, kg/m3; nothing where the specific gravity is not known.
    /// Source: definition, 1000 kg/m3 x 1.12 x specific gravity
    [[nodiscard]] std::optional<Property> density() const;
};

/// Every timber of the library, in the order of the listing.
[[nodiscard]] std::span<const Timber> timbers() noexcept;

/// The timber of that name, or null.
[[nodiscard]] const Timber* find_timber(std::string_view name) noexcept;

/// Movement per 1 % of moisture content that belongs to a total shrinkage.
///
/// C = 1 / (3000/S - 20) with S in percent; it meets the single-species rows of the Wood Handbook,
/// FPL-GTR-190, Tables 4-3 and 13-5, to one in their last digit.
/// @param shrinkage  green to ovendry, ratio; 0 < shrinkage < 0.5
/// @returns  ratio of width per 1 % of moisture content
/// @throws   ContractError outside this range
/// Example:  0.071 (black cherry, tangential) -> 0.00248
[[nodiscard]] double movement_coefficient(double shrinkage);

/// Moisture content that timber comes to in air of a temperature and humidity.
///
/// Real timber differs by its species and by whether it dries or takes up moisture.
/// @param celsius   -1.1 to 132.2 degC
/// @param humidity  relative humidity as a ratio, 0.05 to 0.95
/// @returns  moisture content in percent of the ovendry mass
/// @throws   ContractError outside these ranges, which are those of the handbook's table
/// Source:   Wood Handbook, FPL-GTR-282, equation 4-5, constants for degC
/// Example:  20 degC, 0.5 -> 9.271
[[nodiscard]] double equilibrium_moisture(double celsius, double humidity);

}  // namespace bowfront
