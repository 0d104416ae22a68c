#include "bowfront/materials/board.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "bowfront/base/contract.hpp"

namespace bowfront {
namespace {

constexpr double kInch = 25.4;

const Board& board(std::string_view name) {
    const Board* found = find_board(name);
    if (found == nullptr) {
        throw std::logic_error("no such board");
    }
    return *found;
}

const Board& plywood() {
    return board("plywood");
}

double radius(double thickness, BendState state) {
    return bend_radius(plywood(), thickness, state).value().value;
}

// Rounding up to whole millimetres adds less than one; a row's own thickness in millimetres may
// carry the last bit of 25.4.
void expect_rounded_up(double found, double exact) {
    constexpr double kLastBit = 1e-9;
    EXPECT_GE(found, exact - kLastBit);
    EXPECT_LE(found, exact + 1 + kLastBit);
    EXPECT_EQ(found, std::floor(found));
}

struct AircraftRow {
    double thickness;  // in
    double dry_90, dry_0, soaked_90, soaked_0;
};

// FAA Advisory Circular 43.13-1B, Table 1-2, inches: three plies, then five.
constexpr AircraftRow kAircraft[] = {
    {.035, 2.0, 1.1, 0.5, 0.1}, {.070, 5.2, 3.2, 1.5, 0.4}, {.100, 8.6, 5.2, 2.6, 0.8},
    {.125, 12, 7.1, 3.8, 1.2},  {.155, 16, 10, 5.3, 1.8},   {.185, 20, 13, 7.1, 2.6},
    {.160, 17, 11, 6, 2},       {.190, 21, 14, 7, 3},       {.225, 27, 17, 10, 4},
    {.250, 31, 20, 12, 5},      {.315, 43, 28, 16, 7},      {.375, 54, 36, 21, 10}};

TEST(BendRadius, of_aircraft_plywood_is_the_larger_column) {
    for (const AircraftRow& row : kAircraft) {
        SCOPED_TRACE(row.thickness);
        const double thickness = row.thickness * kInch;
        expect_rounded_up(radius(thickness, BendState::dry),
                          std::max(row.dry_90, row.dry_0) * kInch);
    }
}

TEST(BendRadius, of_soaked_plywood_is_never_under_a_printed_value) {
    for (const AircraftRow& row : kAircraft) {
        SCOPED_TRACE(row.thickness);
        const double found = radius(row.thickness * kInch, BendState::soaked);
        const double printed = std::max(row.soaked_90, row.soaked_0) * kInch;
        // 0.190 in prints less than the thinner 0.185 in (7 against 7.1) and takes the larger.
        expect_rounded_up(found, row.thickness == .190 ? 7.1 * kInch : printed);
    }
}

TEST(BendRadius, of_construction_plywood_begins_where_the_aircraft_table_ends) {
    // An industry association's table: mm, m along and across the grain.
    constexpr double kRows[][3] = {{12.7, 3.66, 1.83}, {15.9, 4.88, 2.44}, {19, 6.10, 3.66}};
    for (const auto& row : kRows) {
        EXPECT_EQ(radius(row[0], BendState::dry), 1000 * std::max(row[1], row[2])) << row[0];
    }
    constexpr double kEnd = 0.375 * kInch;
    EXPECT_EQ(radius(kEnd, BendState::dry), 1372);
    // Past it the table of 9.5 mm: 2.44 m, 12.7 mm: 3.66 m counts.
    EXPECT_EQ(radius(kEnd + 0.001, BendState::dry), 2450);
    EXPECT_EQ(radius(11.1, BendState::dry), 3050);
}

TEST(BendRadius, lies_on_the_straight_line_between_rows) {
    // 3 mm between 0.100 in: 8.6 in and 0.125 in: 12 in.
    const double part = (3 - 2.54) / (3.175 - 2.54);
    expect_rounded_up(radius(3, BendState::dry), (8.6 + part * 3.4) * kInch);
    EXPECT_EQ(radius(3, BendState::dry), 281);
}

TEST(BendRadius, never_falls_with_thickness_and_soaking_never_makes_it_larger) {
    double last_dry = 0;
    double last_soaked = 0;
    for (double thickness = 0.9; thickness <= 19; thickness += 0.05) {
        const double dry = radius(thickness, BendState::dry);
        const double soaked = radius(thickness, BendState::soaked);
        EXPECT_GE(dry, last_dry) << thickness;
        EXPECT_GE(soaked, last_soaked) << thickness;
        EXPECT_LE(soaked, dry) << thickness;
        last_dry = dry;
        last_soaked = soaked;
    }
}

TEST(BendRadius, is_unknown_beyond_the_tables) {
    EXPECT_EQ(bend_radius(plywood(), 0.88, BendState::dry), std::nullopt);
    EXPECT_NE(bend_radius(plywood(), 0.89, BendState::dry), std::nullopt);
    EXPECT_NE(bend_radius(plywood(), 19, BendState::dry), std::nullopt);
    EXPECT_EQ(bend_radius(plywood(), 19.1, BendState::dry), std::nullopt);
    EXPECT_EQ(bend_radius(board("mdf"), 3, BendState::dry), std::nullopt);
    EXPECT_EQ(bend_radius(board("hardboard"), 3, BendState::dry), std::nullopt);
}

TEST(BendRadius, says_that_the_grain_is_left_open) {
    for (const double thickness : {3.0, 15.0}) {
        const Property found = bend_radius(plywood(), thickness, BendState::dry).value();
        EXPECT_EQ(found.unit, "mm");
        EXPECT_EQ(found.certainty, Certainty::reproduced);
        EXPECT_THAT(found.note, testing::HasSubstr("grain"));
    }
}

TEST(BendRadius, needs_a_thickness) {
    for (const double thickness : {0.0, -1.0, std::nan("")}) {
        EXPECT_THROW((void)bend_radius(plywood(), thickness, BendState::dry), ContractError);
    }
}

TEST(Boards, state_densities_that_lie_in_their_ranges) {
    for (const Board& each : boards()) {
        const auto& [least, most] = each.density.range.value();
        EXPECT_GE(each.density.value, least) << each.name;
        EXPECT_LE(each.density.value, most) << each.name;
    }
}

}  // namespace
}  // namespace bowfront
