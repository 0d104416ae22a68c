#pragma once
/// \file
/// Boards for bending forms and shelves: what they weigh, how tight they bend, what they bear.

#include <optional>
#include <span>
#include <string_view>

#include "bowfront/materials/property.hpp"

namespace bowfront {

/// Whether a board is bent dry or after soaking in hot water.
enum class BendState { dry, soaked };

/// Smallest radii of one thickness, mm.
struct BendRow {
    double thickness = 0;
    double dry = 0;
    double soaked = 0;
};

/// A published table of smallest radii: rows of rising thickness.
struct BendTable {
    std::span<const BendRow> rows;
    std::string_view source;
    Certainty certainty = Certainty::remembered;
    std::string_view note;
};

/// A wood-based board.
struct Board {
    std::string_view name;   ///< key in case files, `plywood`
    std::string_view title;  ///< for people
    Property density;        ///< kg/m3
    std::optional<Property> modulus{};           ///< in bending, whichever way it spans, MPa
    std::optional<Property> bending_strength{};  ///< the same, MPa
    /// Asked in this order; a later table counts where the earlier ones end.
    std::span<const BendTable> bend_tables{};
};

/// Every board of the library, in the order of the listing.
[[nodiscard]] std::span<const Board> boards() noexcept;

/// The board of that name, or null.
[[nodiscard]] const Board* find_board(std::string_view name) noexcept;

/// Smallest radius that a board bends to without breaking.
///
/// Straight lines between the rows of the table, rounded up to whole millimetres. Both tables
/// distinguish how the face grain lies; the larger radius counts, whatever the grain. Beyond the
/// aircraft table, which alone has soaked boards, a soaked board counts as a dry one.
///
/// Source: FAA Advisory Circular 43.13-1B, Table 1-2 (aircraft plywood, 0.89 to 9.5 mm); above it
/// an industry association's table of construction plywood (to 19 mm).
/// @param thickness  mm; > 0
/// @returns  mm; nothing where no table covers the board and thickness
/// @throws   ContractError when the thickness is not above 0
[[nodiscard]] std::optional<Property> bend_radius(const Board& board, double thickness,
                                                  BendState state);

}  // namespace bowfront
