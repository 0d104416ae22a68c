#pragma once
/// \file
/// Polycarbonate.

#include "bowfront/materials/sheet.hpp"
#include "materials/property_terms.hpp"

namespace bowfront {

inline constexpr Sheet kPolycarbonate{
    .name = "polycarbonate",
    .kind = SheetKind::polycarbonate,
    .title = "polycarbonate (PC)",
    .can_be_heated = true,
    .density = density(1200, sourcing::seen(source::kPolycarbonateDataSheets)),
    .modulus = between(stress(2350, sourcing::seen(source::kPolycarbonateDataSheets)), 2300, 2400),
    .poisson = between(ratio(0.37, sourcing::seen(source::kPolycarbonateDataSheets)), 0.37, 0.38),
    .expansion = between(expansion(6.5e-5, sourcing::seen(source::kPolycarbonateDataSheets)),
                         6.5e-5, 7.0e-5),
    .flexural_strength = stress(93, sourcing::seen(source::kPolycarbonateDataSheets)),
    .long_term_stress = stress(14, sourcing::remembered()),
    .cold_bend_multiple = noted(ratio(100, sourcing::seen(source::kPolycarbonateColdForming)),
                                "radius over thickness, uncoated sheet held in a frame for good"),
    .conductivity =
        between(conductivity(0.20, sourcing::choice(source::kPolycarbonateDataSheets)), 0.19, 0.22),
    .heat_capacity =
        noted(heat_capacity(1200, sourcing::seen(source::kPolycarbonateDataSheets)),
              "near room temperature; the mean up to forming temperature is higher, so a soak "
              "computed with it is short"),
    .glass_transition = celsius(147, sourcing::seen(source::kPolycarbonateDataSheets)),
    .forming =
        Forming{
            .core_min = noted(
                between(celsius(177, sourcing::seen(source::kPolycarbonateForming)), 177, 188),
                "lower end of the published drape range; below 149 degC counts as cold forming"),
            .set = noted(
                between(celsius(185, sourcing::choice(source::kPolycarbonateForming)), 177, 188),
                "in the drape range, with room below for the oven's accuracy"),
            .face_max = noted(celsius(213, sourcing::seen(source::kPolycarbonateForming)),
                              "upper end of the vacuum range of 188 to 213 degC; above 188 degC "
                              "the sheet is softer than draping needs and takes marks"),
            .drying = noted(celsius(125, sourcing::seen(source::kPolycarbonateDrying)),
                            "required: undried sheet bubbles above about 121 degC; form within 1 "
                            "to 10 hours of drying, protective film off before it"),
        },
    .shrink_along =
        noted(between(ratio(0.035, sourcing::choice(source::kPolycarbonateForming)), 0.02, 0.05),
              "published as 2 to 5 % at drape temperature: measure a coupon of the same batch"),
    .shrink_across = noted(ratio(0, sourcing::remembered()),
                           "no figure across the extrusion was found: measure a coupon"),
    .shrink_spread_along = ratio(0.015, sourcing::choice(source::kPolycarbonateForming)),
    .shrink_spread_across = noted(ratio(0.01, sourcing::remembered()),
                                  "wide, because no figure was found: measure a coupon"),
    .springback = noted(ratio(0, sourcing::remembered()),
                        "no published figure was found: measure a formed piece"),
    .springback_spread = noted(ratio(0.01, sourcing::remembered()),
                               "no published figure was found: measure a formed piece"),
};

}  // namespace bowfront
