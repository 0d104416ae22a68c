#include "bowfront/fit/states.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "bowfront/base/contract.hpp"
#include "bowfront/fit/checks.hpp"
#include "bowfront/materials/timber.hpp"
#include "support/sample_case.hpp"

namespace bowfront::fit {
namespace {

using testing::DoubleNear;

// The printed examples carry two or three decimals; half of the last one.
constexpr double kPrinted = 0.005;
constexpr double kPrintedFine = 0.0005;
constexpr double kRounding = 1e-12;  // a dozen operations on sizes of about 1

// Source: Wood Handbook FPL-GTR-190, chapter 13, coefficients of Table 13-5.
TEST(Movement, agrees_with_worked_examples_of_the_wood_handbook) {
    // Flat-sawn oak, 100 mm, 6 to 12 %: 100·0.00365·6 = 2.19 mm.
    EXPECT_THAT(100 * (movement(0.00365, 6, 12) - 1), DoubleNear(2.19, kPrinted));
    // Quarter-sawn cherry, 60 mm, 8 to 11 %: 60·0.00126·3 = 0.227 mm.
    EXPECT_THAT(60 * (movement(0.00126, 8, 11) - 1), DoubleNear(0.227, kPrintedFine));
}

TEST(Movement, takes_the_general_form_outside_six_to_fourteen_per_cent) {
    // At 10 % both forms are one: 3000/S − 30 + 10 = 1/C.
    EXPECT_THAT(movement(0.00248, 10, 16), DoubleNear(1 + 6 * 0.00248, kRounding));
    EXPECT_LT(movement(0.00248, 5, 6), 1 + 1 / (1 / 0.00248 - 10));
    EXPECT_EQ(movement(0.00248, 9, 9), 1);
}

// Source: geometry; the whole ellipse against its perimeter by the complete elliptic integral, axes
// 1 and 0.9: 4·E(m = 0.19) = 5.973160433 (Abramowitz and Stegun 17.3, computed by its series).
TEST(StretchedArc, becomes_a_piece_of_an_ellipse) {
    double e = 1;
    double term = 1;
    for (int n = 1; n < 60; ++n) {
        const double ratio = (2.0 * n - 1) / (2.0 * n);
        term *= ratio * ratio * 0.19;
        e -= term / (2.0 * n - 1);
    }
    constexpr double kPi = 3.14159265358979323846;
    EXPECT_THAT(stretched_arc(1, 2 * kPi, 1, 0.9), DoubleNear(2 * kPi * e, 1e-9));
    EXPECT_EQ(stretched_arc(420, 1.3, 1.01, 1.01), 420 * 1.3 * 1.01);
}

TEST(StretchedArc, lies_between_both_stretches) {
    const double length = stretched_arc(420, 1.335, 1, 1.004);
    EXPECT_GT(length, 420 * 1.335);
    EXPECT_LT(length, 420 * 1.335 * 1.004);
    EXPECT_THROW((void)stretched_arc(420, 0, 1, 1), ContractError);
}

TEST(TimberStates, stand_still_along_the_grain_and_as_built) {
    const Case c = sample::pilot_boat();
    Book<double> book;
    const TimberStates<double> states = timber_states(c, book);
    EXPECT_EQ(states[0].post, 1);
    EXPECT_EQ(states[0].base.depth, 1);
    for (const auto& state : states) {
        EXPECT_EQ(state.base.width, 1);  // grain along the width
    }
    EXPECT_GT(states[static_cast<std::size_t>(AirState::warm_damp)].base.depth, 1);
    EXPECT_LT(states[static_cast<std::size_t>(AirState::cold_dry)].base.depth, 1);
}

TEST(TimberStates, turn_with_the_grain_and_stop_in_plywood) {
    Case c = sample::pilot_boat();
    c.frame.base.grain.value = Grain::depth;
    c.frame.top.sawn.value = Sawn::plywood;
    Book<double> book;
    const auto states = timber_states(c, book);
    const auto& damp = states[static_cast<std::size_t>(AirState::warm_damp)];
    EXPECT_GT(damp.base.width, 1);
    EXPECT_EQ(damp.base.depth, 1);
    EXPECT_EQ(damp.top.width, 1);
    EXPECT_EQ(damp.top.depth, 1);
    EXPECT_EQ(damp.top.thickness, 1);
}

// Source: Wood Handbook, table 13-5, black cherry: C_R 0.00126, C_T 0.00248; rift: their mean.
TEST(TimberStates, of_a_rift_sawn_post_move_by_the_mean_of_both_ways) {
    Case c = sample::pilot_boat();
    c.frame.post.sawn.value = PostSawn::rift;
    Book<double> book;
    const auto states = timber_states(c, book);
    const double from = equilibrium_moisture(20, 0.45);
    const double to = equilibrium_moisture(28, 0.60);
    EXPECT_THAT(states[static_cast<std::size_t>(AirState::warm_damp)].post,
                DoubleNear(1 + (0.00126 + 0.00248) / 2 * (to - from), 1e-12));
    EXPECT_EQ(states[4].post_least, states[4].post_most);
    c.frame.post.sawn.value = PostSawn::any;
    EXPECT_THAT(timber_states(c, book)[static_cast<std::size_t>(AirState::warm_damp)].post,
                DoubleNear(1 + 0.00248 * (to - from), 1e-12));
}

// Who does not know how a post's rings lie is told no more than who knows.
TEST(TimberStates, of_a_post_sawn_any_way_bound_those_of_a_rift_one) {
    Case c = sample::pilot_boat();
    const auto any = fit::solve(c);
    c.frame.post.sawn.value = PostSawn::rift;
    const auto rift = fit::solve(c);
    for (std::size_t i = 0; i < any.panes.size(); ++i) {
        EXPECT_LE(any.panes[i].edge(PaneEdge::start).engagement_least,
                  rift.panes[i].edge(PaneEdge::start).engagement_least);
        EXPECT_LE(any.panes[i].room_sideways.worst, rift.panes[i].room_sideways.worst);
        for (std::size_t state = 0; state < kAirStates.size(); ++state) {
            EXPECT_LE(any.panes[i].states[state].opening_least,
                      rift.panes[i].states[state].opening_least);
            EXPECT_GE(any.panes[i].states[state].opening_most,
                      rift.panes[i].states[state].opening_most);
        }
    }
}

// Source: linear expansion 4.0e-5 /°F of a sheet maker's glazing guide: 1000 mm of acrylic over 30 K
// grow 2.16 mm where the air stays as damp as it was.
TEST(SheetFactors, grow_with_temperature) {
    Case c = sample::pilot_boat();
    c.service.temperature[1].value = c.service.built_temperature.value + 30;
    c.service.humidity[1].value = c.service.built_humidity.value;
    Book<double> book;
    const auto factors = sheet_factors(c, c.sheets.begin()->second, book);
    EXPECT_THAT(1000 * (factors[static_cast<std::size_t>(AirState::warm_damp)] - 1),
                DoubleNear(2.16, kPrinted));
    EXPECT_EQ(factors[0], 1);
}

// Source: ΔL = L·α·ΔT over a metre and 30 K: acrylic at 7e-5 2.10, polycarbonate 1.95, PETG 2.04,
// float glass 0.27 mm (a sheet maker's glazing guide; data sheets; EN 572).
TEST(SheetFactors, grow_a_metre_by_the_published_rows) {
    struct Row {
        const char* sheet;
        double expansion;
        double growth;
    };
    for (const Row& row : {Row{"cast-acrylic", 7e-5, 2.10}, Row{"polycarbonate", 6.5e-5, 1.95},
                           Row{"petg", 6.8e-5, 2.04}, Row{"float-glass", 9e-6, 0.27}}) {
        Case c = sample::pilot_boat();
        c.service.temperature = {sample::given(20.0, "/service/temperature/0"),
                                 sample::given(50.0, "/service/temperature/1")};
        c.service.humidity = {c.service.built_humidity, c.service.built_humidity};
        Sheet sheet = *find_sheet(row.sheet);
        sheet.expansion.value = row.expansion;
        SheetSpec spec = c.sheets.at("cast-acrylic");
        spec.like = &sheet;
        Book<double> book;
        const auto factors = sheet_factors(c, spec, book);
        const auto warm = static_cast<std::size_t>(AirState::warm_dry);
        constexpr double kMetre = 1000;
        EXPECT_THAT(kMetre * (factors[warm] - 1), DoubleNear(row.growth, kPrinted)) << row.sheet;
    }
}

TEST(States, only_ever_take_from_the_worst_case) {
    Case wide = sample::pilot_boat();
    Case still = wide;
    for (auto* ends : {&still.service.temperature, &still.service.humidity}) {
        const bool warm = ends == &still.service.temperature;
        (*ends)[0].value = (*ends)[1].value =
            warm ? still.service.built_temperature.value : still.service.built_humidity.value;
    }
    const auto moving = solve(wide);
    const auto standing = solve(still);
    for (std::size_t i = 0; i < moving.panes.size(); ++i) {
        for (const PaneEdge edge : kPaneEdges) {
            const auto& a = moving.panes[i].edge(edge);
            const auto& b = standing.panes[i].edge(edge);
            EXPECT_LE(a.engagement_least, b.engagement_least + kRounding);
            EXPECT_GE(a.engagement_most, b.engagement_most - kRounding);
            EXPECT_EQ(a.settled, b.settled);
        }
        EXPECT_LE(moving.panes[i].room_sideways.worst,
                  standing.panes[i].room_sideways.worst + kRounding);
    }
}

}  // namespace
}  // namespace bowfront::fit
