#pragma once
/// \file
/// The pieces that `shelves` is put together from.

#include <optional>
#include <string>
#include <vector>

#include "bowfront/fit/shelf.hpp"

namespace bowfront::fit {

/// The pin of one post that leaves most timber round its bore, under an outline; empty where none reaches under it.
[[nodiscard]] std::optional<ShelfPin> shelf_pin(const PostLayout& post,
                                                const CornerDirections& directions,
                                                const Contour& outline);

/// Rails along the straight sides, from post to post.
/// @param inset  of their outer edges from the glazing line, > 0
[[nodiscard]] std::vector<ShelfRail> shelf_rails(const Layout& layout, double inset);

/// The rests of a shelf with pins or rails, without their shares.
[[nodiscard]] std::vector<ShelfRest> shelf_rests(const ShelfPlan& plan, const Layout& layout);

/// Sets the shares of the rests, how far the shelf is held within them and stands out beyond them.
/// @returns  false where it does not rest on them without tipping
[[nodiscard]] bool stands(ShelfPlan& plan);

/// Sets the span and how the sums bend it: between two rails that face each other, on rails all
/// round, or over the longer extent in X or Y.
/// @param both_ways  the material bears both ways
void set_span(const Layout& layout, bool both_ways, ShelfPlan& plan);

/// What a shelf's material bears.
struct ShelfMaterial {
    Property density;
    Property modulus;
    Property stress_limit;   ///< MPa, for years
    double of_strength = 1;  ///< share of `stress_limit` that is taken
    double creep = 1;        ///< sag after years over the sag at once
    std::string creep_source;
    std::string limit_source;
};
/// @param spec  with a material
[[nodiscard]] ShelfMaterial shelf_material(const ShelfSpec& spec);

}  // namespace bowfront::fit
