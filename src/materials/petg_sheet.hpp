#pragma once
/// \file
/// PETG.

#include "bowfront/materials/sheet.hpp"
#include "materials/property_terms.hpp"

namespace bowfront {

inline constexpr Sheet kPetg{
    .name = "petg",
    .kind = SheetKind::petg,
    .title = "PETG (glycol-modified polyester)",
    .can_be_heated = true,
    .density = density(1270, sourcing::seen(source::kPetgDataSheet)),
    .modulus = stress(2200, sourcing::seen(source::kPetgDataSheet)),
    .poisson = between(ratio(0.39, sourcing::remembered()), 0.38, 0.40),
    .expansion = expansion(6.8e-5, sourcing::seen(source::kPetgDataSheet)),
    .flexural_strength = stress(79, sourcing::seen(source::kPetgDataSheet)),
    .long_term_stress = stress(7, sourcing::remembered()),
    .cold_bend_multiple =
        noted(between(ratio(150, sourcing::remembered()), 100, 150),
              "radius over thickness, the safe end of makers' figures; a data sheet allows cold "
              "bending up to 2 mm of thickness only; at 150 the face bears 7.3 MPa"),
    .conductivity = conductivity(0.20, sourcing::remembered()),
    .heat_capacity = between(heat_capacity(1200, sourcing::remembered()), 1100, 1300),
    .glass_transition = between(celsius(80, sourcing::seen(source::kFabricatorNotes)), 80, 85),
    .forming =
        Forming{
            .core_min = noted(celsius(120, sourcing::seen(source::kPetgForming)),
                              "lower end of the published forming range"),
            .set = noted(between(celsius(140, sourcing::choice(source::kPetgForming)), 120, 160),
                         "middle of the published range; no drying needed"),
            .face_max = noted(celsius(160, sourcing::seen(source::kPetgForming)),
                              "upper end of the published forming range"),
            .drying = std::nullopt,
        },
    .shrink_along = noted(ratio(0.03, sourcing::remembered()),
                          "no figure was found, this is extruded acrylic's: measure a coupon"),
    .shrink_across =
        noted(ratio(0, sourcing::remembered()), "no figure was found: measure a coupon"),
    .shrink_spread_along = noted(ratio(0.03, sourcing::remembered()),
                                 "wide, because no figure was found: measure a coupon"),
    .shrink_spread_across = noted(ratio(0.01, sourcing::remembered()),
                                  "wide, because no figure was found: measure a coupon"),
    .springback = noted(ratio(0, sourcing::remembered()),
                        "no published figure was found: measure a formed piece"),
    .springback_spread = noted(ratio(0.01, sourcing::remembered()),
                               "no published figure was found: measure a formed piece"),
};

}  // namespace bowfront
