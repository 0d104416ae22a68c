#pragma once
/// \file
/// The sheets that panes are cut from: plastics that can be formed, and flat glass.

#include <optional>
#include <span>
#include <string_view>

#include "bowfront/materials/property.hpp"

namespace bowfront {

enum class SheetKind { cast_acrylic, extruded_acrylic, polycarbonate, petg, float_glass };

/// Temperatures of forming on a buck, in degC.
struct Forming {
    Property core_min;  ///< the middle of the sheet must reach it before it is bent
    Property set;       ///< what the oven is set to
    Property face_max;  ///< the sheet's face must stay below it
    /// Where the sheet must be dried before forming: the oven temperature of drying.
    std::optional<Property> drying;
};

/// Growth of a sheet in air of one humidity.
struct MoisturePoint {
    double humidity = 0;  ///< relative humidity as a ratio, 0 to 1
    double growth = 0;    ///< growth of length as a ratio, against the dry sheet
};

/// Growth over humidity as published: points of rising humidity, the first at 0.
struct MoistureCurve {
    std::span<const MoisturePoint> points;
    std::string_view source;
    Certainty certainty = Certainty::remembered;
    std::string_view note;
};

/// A sheet material. Shrink, springback and moisture are ratios of length; shrink is the loss on
/// the first heating to forming temperature, negative where the sheet grows.
struct Sheet {
    std::string_view name;  ///< key in case files, `cast-acrylic`
    SheetKind kind = SheetKind::cast_acrylic;
    std::string_view title;  ///< for people, `cast acrylic (PMMA)`
    bool can_be_heated = false;
    Property density;                              ///< kg/m3
    Property modulus;                              ///< short-time modulus of elasticity, MPa
    Property poisson;                              ///< ratio
    Property expansion;                            ///< linear, 1/K
    Property flexural_strength;                    ///< short-time, MPa
    std::optional<Property> long_term_stress{};    ///< limit of lasting stress, MPa
    std::optional<Property> cold_bend_multiple{};  ///< least cold-bend radius over thickness
    std::optional<Property> conductivity{};        ///< W/(m K)
    std::optional<Property> heat_capacity{};       ///< J/(kg K)
    std::optional<Property> glass_transition{};    ///< degC
    std::optional<Property> service_max{};         ///< highest temperature in lasting use, degC
    std::optional<Forming> forming{};              ///< present exactly where `can_be_heated`
    Property shrink_along;         ///< along the extrusion; for a cast sheet, either way
    Property shrink_across;        ///< square to it
    Property shrink_spread_along;  ///< +-, hard limit
    Property shrink_spread_across;
    Property springback;  ///< growth of the radius on release, as a ratio of the radius
    Property springback_spread;
    std::optional<MoistureCurve> moisture{};
};

/// Every sheet of the library, in the order of the listing.
[[nodiscard]] std::span<const Sheet> sheets() noexcept;

/// The sheet of that name, or null.
[[nodiscard]] const Sheet* find_sheet(std::string_view name) noexcept;

/// How far a sheet's thickness may be off its nominal, either way.
///
/// Source: ISO 7823-1 (cast acrylic, 0.4 mm + a tenth of the thickness) and ISO 7823-2 (extruded,
/// 10 % below 3 mm and 5 % from there), as reproduced by a sheet maker; EN 12150 (glass), as
/// reproduced by a glass processor. For polycarbonate and PETG no standard's table was read: they
/// take the rule of extruded acrylic, being extruded sheet too. Outside the table of glass
/// thicknesses the nearest row counts, between rows the next thicker.
/// @param thickness  nominal, mm; > 0
/// @returns  mm, either way
/// @throws   ContractError when the thickness is not above 0
[[nodiscard]] Property thickness_tolerance(const Sheet& sheet, double thickness);

/// Growth of a sheet's length in air of a humidity, against the dry sheet, once it has settled.
///
/// Straight lines between the published points and from no growth at 0 % humidity: the source does
/// not state its reference state, and a dry sheet is taken for it. 0 where nothing was published.
/// @param humidity  relative humidity as a ratio, 0 to 1
/// @returns  ratio of length
/// @throws   ContractError outside this range
[[nodiscard]] double moisture_growth(const Sheet& sheet, double humidity);

/// How long a sheet must dry, at its drying temperature, before it may be formed.
///
/// Source: a sheet maker's processing manual for polycarbonate, straight lines between its rows.
/// @param thickness  mm; > 0
/// @returns  hours; nothing for a sheet that needs no drying or a thickness outside the table
/// @throws   ContractError when the thickness is not above 0
[[nodiscard]] std::optional<Property> drying_time(const Sheet& sheet, double thickness);

}  // namespace bowfront
