#pragma once
/// \file
/// Cast and extruded acrylic.

#include <array>

#include "bowfront/materials/sheet.hpp"
#include "materials/property_terms.hpp"

namespace bowfront {

inline constexpr std::array kAcrylicMoisturePoints{
    MoisturePoint{0.0, 0.0}, MoisturePoint{0.6, 0.002}, MoisturePoint{0.8, 0.003},
    MoisturePoint{1.0, 0.006}};

/// Mean specific heat from 20 to 165 degC, J/(kg K).
///
/// Below the glass transition (110 degC here) cp = 4184 (0.265 + 0.00139 T), above it about 2050.
inline constexpr double kAcrylicMeanHeat = [] {
    constexpr double kFrom = 20;
    constexpr double kGlass = 110;
    constexpr double kTo = 165;
    constexpr double kRubberHeat = 2050;
    constexpr double kMiddle = (kFrom + kGlass) / 2;
    constexpr double kSolidHeat = 4184 * (0.265 + 1.39e-3 * kMiddle);
    return (kSolidHeat * (kGlass - kFrom) + kRubberHeat * (kTo - kGlass)) / (kTo - kFrom);
}();

inline constexpr std::string_view kMeasureSpringback =
    "no published figure was found (0 to 2 % of the radius is spoken of): measure a formed piece";

/// What the two acrylics share.
inline constexpr Sheet kAcrylic = [] {
    Sheet sheet;
    sheet.can_be_heated = true;
    sheet.density = between(density(1190, sourcing::seen(source::kAcrylicDataSheets)), 1180, 1190);
    sheet.modulus =
        noted(between(stress(3200, sourcing::seen(source::kAcrylicDataSheets)), 2800, 3200),
              "short-time value; it falls to about half over a year of load (from memory); "
              "US facilities criteria 4-159-01, Table 3-1, ask for at least 2760 MPa");
    sheet.flexural_strength =
        noted(between(stress(97, sourcing::seen(source::kFacilitiesCriteria)), 97, 120),
              "the least that is asked for; data sheets of cast sheet print 110 to 120 MPa");
    sheet.poisson = between(ratio(0.37, sourcing::remembered()), 0.35, 0.40);
    sheet.expansion =
        noted(between(expansion(7.2e-5, sourcing::seen(source::kGlazingExpansion)), 7.2e-5, 8.5e-5),
              "rises with temperature: 7.2, 7.7 and 8.5e-5 per K at 16, 27 and 38 degC (US "
              "facilities criteria 4-159-01, Table 3-1); sign grades 7.9e-5");
    sheet.cold_bend_multiple =
        noted(between(ratio(330, sourcing::seen(source::kColdBending)), 180, 330),
              "radius over thickness, held in a frame for good; impact-modified grades 240 or 330; "
              "an older rule of 180 (from memory) strains the surface to 0.28 %");
    sheet.conductivity =
        between(conductivity(0.19, sourcing::seen(source::kAcrylicDataSheets)), 0.17, 0.19);
    sheet.heat_capacity = noted(
        between(heat_capacity(kAcrylicMeanHeat, sourcing::computed(source::kSpecificHeat)), 1254,
                kAcrylicMeanHeat),
        "mean from 20 to 165 degC; about 2050 J/(kg K) above the glass transition is an estimate; "
        "data sheets print 1260 to 1460 near room temperature");
    sheet.glass_transition =
        between(celsius(105, sourcing::seen(source::kAcrylicDataSheets)), 105, 110);
    sheet.springback =
        noted(between(ratio(0, sourcing::remembered()), 0, 0.02), kMeasureSpringback);
    sheet.springback_spread = noted(ratio(0.01, sourcing::remembered()), kMeasureSpringback);
    return sheet;
}();

inline constexpr Sheet kCastAcrylic = [] {
    Sheet sheet = kAcrylic;
    sheet.name = "cast-acrylic";
    sheet.kind = SheetKind::cast_acrylic;
    sheet.title = "cast acrylic (PMMA)";
    sheet.long_term_stress =
        noted(stress(10.3, sourcing::seen(source::kDesignStresses)),
              "against crazing; solvents, cleaners and machining stress lower it strongly");
    sheet.service_max = celsius(80, sourcing::seen(source::kServiceTemperatures));
    sheet.forming = Forming{
        .core_min = between(celsius(150, sourcing::choice(source::kAcrylicForming)), 140, 171),
        .set = noted(between(celsius(165, sourcing::choice(source::kAcrylicForming)), 140, 193),
                     "dry first only if a test piece blisters: 24 hours at 80 degC"),
        .face_max = noted(celsius(177, sourcing::seen(source::kFabricationManual)),
                          "above it vapours need ventilation; a distributor's range of 171 to "
                          "193 degC goes beyond it"),
        .drying = std::nullopt,
    };
    const Property shrink =
        noted(between(ratio(0.015, sourcing::choice(source::kThermoformingBrief)), 0, 0.02),
              "published as up to 1.5 %, elsewhere up to 2 %: measure a coupon of the same batch");
    const Property spread = ratio(0.005, sourcing::choice(source::kThermoformingBrief));
    sheet.shrink_along = shrink;
    sheet.shrink_across = shrink;
    sheet.shrink_spread_along = spread;
    sheet.shrink_spread_across = spread;
    sheet.moisture = MoistureCurve{
        .points = kAcrylicMoisturePoints,
        .source = source::kMoistureSpecification,
        .certainty = Certainty::choice,
        .note =
            "measured on extruded sheet; cast sheet is the same polymer and has no figures of "
            "its own here; the reference state is not stated and taken as dry",
    };
    return sheet;
}();

inline constexpr Sheet kExtrudedAcrylic = [] {
    Sheet sheet = kAcrylic;
    sheet.name = "extruded-acrylic";
    sheet.kind = SheetKind::extruded_acrylic;
    sheet.title = "extruded acrylic (PMMA)";
    sheet.long_term_stress =
        noted(stress(5.2, sourcing::seen(source::kDesignStresses)),
              "against crazing; solvents, cleaners and machining stress lower it strongly");
    sheet.service_max = celsius(70, sourcing::seen(source::kServiceTemperatures));
    sheet.forming = Forming{
        .core_min = between(celsius(145, sourcing::choice(source::kAcrylicForming)), 145, 150),
        .set = noted(between(celsius(152, sourcing::choice(source::kAcrylicForming)), 145, 160),
                     "must be supported all over while hot; one fabricator advises drying first"),
        .face_max = noted(celsius(160, sourcing::seen(source::kAcrylicForming)),
                          "upper end of the published forming range"),
        .drying = std::nullopt,
    };
    sheet.shrink_along =
        noted(between(ratio(0.03, sourcing::choice(source::kThermoformingBrief)), 0, 0.06),
              "published as up to 3 %; sheet of 3 mm and less up to 6 % (from memory): measure a "
              "coupon of the same batch");
    sheet.shrink_across =
        noted(between(ratio(-0.005, sourcing::choice(source::kThermoformingBrief)), -0.005, 0),
              "the sheet grows across the extrusion, published as up to 0.5 %");
    sheet.shrink_spread_along = ratio(0.01, sourcing::choice(source::kThermoformingBrief));
    sheet.shrink_spread_across = ratio(0.005, sourcing::choice(source::kThermoformingBrief));
    sheet.moisture = MoistureCurve{
        .points = kAcrylicMoisturePoints,
        .source = source::kMoistureSpecification,
        .certainty = Certainty::seen,
        .note = "the reference state is not stated and taken as dry",
    };
    return sheet;
}();

}  // namespace bowfront
