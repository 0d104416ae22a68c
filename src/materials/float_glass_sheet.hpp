#pragma once
/// \file
/// Float glass: flat panes only.

#include "bowfront/materials/sheet.hpp"
#include "materials/property_terms.hpp"

namespace bowfront {

/// Glass is neither heated nor bent here, so nothing of forming can change its size.
inline constexpr Property kNeverFormed =
    noted(ratio(0, {"glass stays flat and is not heated", Certainty::choice}),
          "glass panes are flat: there is no forming that could change their size");

inline constexpr Sheet kFloatGlass{
    .name = "float-glass",
    .kind = SheetKind::float_glass,
    .title = "soda-lime float glass (flat panes only)",
    .can_be_heated = false,
    .density = density(2500, sourcing::reproduced(source::kGlassProperties)),
    .modulus = stress(70000, sourcing::reproduced(source::kGlassProperties)),
    .poisson = between(ratio(0.20, sourcing::reproduced(source::kGlassProperties)), 0.20, 0.23),
    .expansion = expansion(9e-6, sourcing::reproduced(source::kGlassProperties)),
    .flexural_strength =
        noted(stress(45, sourcing::reproduced(source::kGlassProperties)),
              "characteristic, annealed; heat-strengthened 70 MPa, toughened 120 MPa"),
    .long_term_stress =
        noted(stress(8, sourcing::remembered()),
              "annealed glass, lasting load, after EN 16612; the characteristic bending strength "
              "is 45 MPa annealed and 120 MPa toughened (EN 572 as reproduced)"),
    .conductivity = conductivity(1.0, sourcing::reproduced(source::kGlassProperties)),
    .heat_capacity = heat_capacity(720, sourcing::reproduced(source::kGlassProperties)),
    .glass_transition =
        noted(between(celsius(520, sourcing::seen(source::kGlassHandbook)), 520, 550),
              "a difference of 40 K across an annealed pane is safe, by the same handbook"),
    .shrink_along = kNeverFormed,
    .shrink_across = kNeverFormed,
    .shrink_spread_along = kNeverFormed,
    .shrink_spread_across = kNeverFormed,
    .springback = kNeverFormed,
    .springback_spread = kNeverFormed,
};

}  // namespace bowfront
