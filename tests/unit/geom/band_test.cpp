#include <gmock/gmock.h>

#include <numbers>

#include "bowfront/base/contract.hpp"
#include "bowfront/geom/region.hpp"

namespace bowfront {
namespace {

using std::numbers::pi;

/// Rounding of lengths and of areas under 1 m, mm and mm².
constexpr double kRounding = 1e-11;
constexpr double kAreaRounding = 1e-8;

/// A straight, a quarter turn to the left and a straight.
std::vector<Segment> hook(double straight, double radius) {
    return {{{-straight, 0}, {0, 0}},
            arc_segment({0, radius}, radius, -pi / 2, pi / 2),
            {{radius, radius}, {radius, radius + straight}}};
}

TEST(Band, of_a_straight_with_square_ends_is_a_rectangle) {
    const Contour found = band({{{10, 20}, {50, 20}}}, 6, BandEnd::square, BandEnd::square);
    EXPECT_EQ(found.size(), 4U);
    EXPECT_NEAR(found.area(), 240, kAreaRounding);
    EXPECT_NEAR(found.box().low.x, 10, kRounding);
    EXPECT_NEAR(found.box().high.y, 23, kRounding);
}

TEST(Band, has_its_round_crowns_at_the_ends_of_the_chain) {
    const Contour found = band({{{0, 0}, {100, 0}}}, 12, BandEnd::round, BandEnd::round);
    EXPECT_EQ(found.size(), 4U);
    EXPECT_NEAR(found.area(), 88 * 12 + 36 * pi, kAreaRounding);
    EXPECT_NEAR(found.perimeter(), 2 * 88 + 12 * pi, kRounding);
    EXPECT_NEAR(found.box().low.x, 0, kRounding);
    EXPECT_NEAR(found.box().high.x, 100, kRounding);
    const Contour half = band({{{0, 0}, {100, 0}}}, 12, BandEnd::square, BandEnd::round);
    EXPECT_NEAR(half.area(), 94 * 12 + 18 * pi, kAreaRounding);
    EXPECT_NEAR(half.box().high.x, 100, kRounding);
}

TEST(Band, follows_straights_and_arcs) {
    // Width times length, whatever the bends: what the outside gains the inside loses.
    const Contour found = band(hook(100, 80), 10, BandEnd::square, BandEnd::square);
    EXPECT_EQ(found.size(), 8U);
    EXPECT_NEAR(found.area(), 10 * (200 + 40 * pi), kAreaRounding);
    EXPECT_NEAR(found.perimeter(), 2 * (200 + 40 * pi) + 20, kRounding);
}

TEST(Band, reaches_the_end_of_a_curved_chain_with_its_round_end) {
    const Segment arc = arc_segment({0, 0}, 60, 0.2, 1.5);
    const Contour found = band({arc}, 16, BandEnd::round, BandEnd::round);
    // A chord of half the width is 2·asin(8/120) of the turn at each end.
    const double spine = 1.5 - 4 * std::asin(8.0 / 120);
    EXPECT_NEAR(found.area(), 16 * 60 * spine + 64 * pi, kAreaRounding);
    EXPECT_EQ(where(found, arc.from), Side::on_edge);
    EXPECT_EQ(where(found, arc.to), Side::on_edge);
    EXPECT_GT(found.area(), 0);
}

TEST(Band, starts_its_round_end_beyond_a_short_first_segment) {
    const Contour whole = band({{{0, 0}, {100, 0}}}, 12, BandEnd::round, BandEnd::round);
    const Contour parted =
        band({{{0, 0}, {2, 0}}, {{2, 0}, {6, 0}}, {{6, 0}, {99, 0}}, {{99, 0}, {100, 0}}}, 12,
             BandEnd::round, BandEnd::round);
    EXPECT_NEAR(parted.area(), whole.area(), kAreaRounding);
    EXPECT_NEAR(parted.perimeter(), whole.perimeter(), kRounding);
}

TEST(Band, is_a_disc_when_as_long_as_wide) {
    const Contour found = band({{{0, 0}, {12, 0}}}, 12, BandEnd::round, BandEnd::round);
    EXPECT_EQ(found.size(), 2U);
    EXPECT_NEAR(found.area(), 36 * pi, kAreaRounding);
    EXPECT_NEAR(found.box().low.x, 0, kRounding);
}

TEST(Band, expects_a_chain_that_a_cutter_can_follow) {
    const auto square = BandEnd::square;
    const auto round = BandEnd::round;
    EXPECT_THROW((void)band({}, 5, square, square), ContractError);
    EXPECT_THROW((void)band({{{0, 0}, {10, 0}}}, 0, square, square), ContractError);
    EXPECT_THROW((void)band({{{0, 0}, {10, 0}}}, 11, round, round), ContractError);
    EXPECT_THROW((void)band(hook(50, 20), 40, square, square), ContractError);
    EXPECT_THROW((void)band({{{0, 0}, {9, 0}}, {{9, 0}, {9, 9}}}, 2, square, square),
                 ContractError);
    EXPECT_THROW((void)band({{{0, 0}, {9, 0}}, {{10, 0}, {20, 0}}}, 2, square, square),
                 ContractError);
    // Longer than wide along its bend, but its round ends would overlap.
    EXPECT_THROW((void)band({arc_segment({}, 8, 0, 1.9)}, 15, round, round), ContractError);
}

}  // namespace
}  // namespace bowfront
