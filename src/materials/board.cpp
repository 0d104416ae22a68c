#include "bowfront/materials/board.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "bowfront/base/contract.hpp"
#include "materials/property_terms.hpp"

namespace bowfront {
namespace {

constexpr double kInch = 25.4;

constexpr BendRow inches(double thickness, double dry, double soaked) {
    return {thickness * kInch, dry * kInch, soaked * kInch};
}

// Three and five plies overlap in thickness; the rows are merged by thickness. Of the two columns
// (face grain at 90 degrees, at 0 or 45 degrees) the first holds the larger radii throughout. The
// soaked row of 0.190 in prints 7 in; it carries the 7.1 in of the thinner three-ply board.
constexpr std::array kAircraftRows{
    inches(0.035, 2.0, 0.5), inches(0.070, 5.2, 1.5), inches(0.100, 8.6, 2.6),
    inches(0.125, 12, 3.8),  inches(0.155, 16, 5.3),  inches(0.160, 17, 6),
    inches(0.185, 20, 7.1),  inches(0.190, 21, 7.1),  inches(0.225, 27, 10),
    inches(0.250, 31, 12),   inches(0.315, 43, 16),   inches(0.375, 54, 21)};

// Parallel to the face grain, the larger of the two columns; printed in metres.
constexpr std::array kConstructionRows{BendRow{6.4, 1520, 1520},  BendRow{7.9, 1830, 1830},
                                       BendRow{9.5, 2440, 2440},  BendRow{12.7, 3660, 3660},
                                       BendRow{15.9, 4880, 4880}, BendRow{19, 6100, 6100}};

constexpr std::array kPlywoodTables{
    BendTable{.rows = kAircraftRows,
              .source = source::kAircraftPlywood,
              .certainty = Certainty::reproduced,
              .note = "aircraft plywood at 10 % moisture content on a cold mandrel; the larger of "
                      "the columns for 90 and for 0 to 45 degrees to the face grain, because the "
                      "copy leaves open what the angle is measured from: try a strip"},
    BendTable{.rows = kConstructionRows,
              .source = source::kConstructionPlywood,
              .certainty = Certainty::reproduced,
              .note = "construction plywood, dry; the larger of the columns along and across the "
                      "face grain; soaked boards are not in the table and count as dry"}};

constexpr std::string_view kAcrossFaceGrain =
    "half of the least of the table, since the face grain may run across the span: 6861 to 8979 MPa "
    "and 37.6 to 65.7 MPa were measured along it";

constexpr std::array kBoards{
    Board{.name = "plywood",
          .title = "plywood",
          .density = noted(
              between(density(600, sourcing::choice("published plywood densities by core")), 500,
                      700),
              "poplar cores 500 to 530, pine 560 to 610, mixed hardwood 580 to 620, birch 650 to "
              "700 kg/m3; boards are often thinner than their nominal size: measure"),
          .modulus = noted(between(stress(3500, sourcing::choice(source::kPlywoodStrength)), 3500,
                                   8979),
                           kAcrossFaceGrain),
          .bending_strength = noted(
              between(stress(18.8, sourcing::choice(source::kPlywoodStrength)), 18.8, 65.7),
              kAcrossFaceGrain),
          .bend_tables = kPlywoodTables},
    Board{.name = "mdf",
          .title = "medium-density fibreboard (MDF)",
          .density = between(
              density(770, sourcing::choice("a published study of MDF panels; a dealer's weights")),
              673, 833)},
    Board{.name = "hardboard",
          .title = "hardboard",
          .density = between(density(950, sourcing::remembered()), 800, 1100)},
};

double radius_between(const BendRow& low, const BendRow& high, double thickness, BendState state) {
    const double part = (thickness - low.thickness) / (high.thickness - low.thickness);
    return state == BendState::dry ? std::lerp(low.dry, high.dry, part)
                                   : std::lerp(low.soaked, high.soaked, part);
}

}  // namespace

std::span<const Board> boards() noexcept {
    return kBoards;
}

const Board* find_board(std::string_view name) noexcept {
    const auto found = std::find_if(kBoards.begin(), kBoards.end(),
                                    [&](const Board& board) { return board.name == name; });
    return found == kBoards.end() ? nullptr : &*found;
}

std::optional<Property> bend_radius(const Board& board, double thickness, BendState state) {
    BOWFRONT_EXPECTS(thickness > 0 && std::isfinite(thickness));
    for (const BendTable& table : board.bend_tables) {
        if (thickness < table.rows.front().thickness) {
            return std::nullopt;  // thinner than the first table: a later one is for thicker boards
        }
        if (thickness > table.rows.back().thickness) {
            continue;
        }
        const auto high = std::find_if(table.rows.begin() + 1, table.rows.end(),
                                       [&](const auto& row) { return thickness <= row.thickness; });
        const double radius = radius_between(*(high - 1), *high, thickness, state);
        return noted(property(std::ceil(radius), "mm", {table.source, table.certainty}),
                     table.note);
    }
    return std::nullopt;
}

}  // namespace bowfront
