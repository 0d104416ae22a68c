#pragma once
/// \file
/// Shelves inside a case.

#include <string>
#include <string_view>

#include "bowfront/base/origin.hpp"
#include "bowfront/materials/board.hpp"
#include "bowfront/materials/sheet.hpp"
#include "bowfront/materials/timber.hpp"

namespace bowfront {

/// What a shelf lies on.
enum class ShelfSupport {
    pins,   ///< one in each post
    rails,  ///< cleats from post to post along the straight sides
};

/// `pins`, `rails`.
[[nodiscard]] std::string_view support_text(ShelfSupport support) noexcept;

/// A shelf as the case file gives it.
struct ShelfSpec {
    Sourced<double> height;          ///< of its upper face over the base's, mm, > 0
    Sourced<std::string> material;   ///< a sheet's name or key, a board or a timber
    const Sheet* sheet = nullptr;    ///< one of the three is set: what the material is
    const Board* board = nullptr;    ///< one that has modulus and strength
    const Timber* timber = nullptr;  ///< one that has strength, density and movement
    Sourced<double> thickness;       ///< as bought, mm, > 0
    Sourced<double> clearance;       ///< between the shelf's edge and panes and posts, mm, ≥ 0
    Sourced<double> load;            ///< what stands on it, spread evenly, kg, ≥ 0
    Sourced<ShelfSupport> support;
    std::string pointer;  ///< JSON pointer of the shelf
};

}  // namespace bowfront
