#include "bowfront/fit/sums.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <string_view>

#include "bowfront/fit/checks.hpp"
#include "support/sample_case.hpp"

namespace bowfront::fit {
namespace {

/// The second way halves intervals and prints ten digits after the point: the difference is the
/// rounding of some dozen operations on sizes under 1 m, or half that last digit, mm and rad.
constexpr double kSecondWay = 1e-9;

struct Expected {
    std::string_view path;
    double value;
};

// Source: tests/reference/pilot_boat_sums.py, which works them out from the trade's definitions a
// second way; shrink of 1.5 % and the clearances by common practice, limits by ISO 2768-1 class m
// and ISO 7823-1.
constexpr Expected kPilotBoat[] = {
    {"plan/front/length", 560.7247334941},
    {"plan/front/rise", 90.1515499506},
    {"panes/front/start/in_post", 21.0087598584},
    {"panes/front/end/in_post", 21.0087598584},
    {"panes/front/opening/length", 518.7072137773},
    {"panes/front/formed/developed_length", 542.7072137773},
    {"panes/front/formed/height", 393.5},
    {"panes/front/blank/length", 550.9717906368},
    {"panes/front/blank/width", 399.4923857868},
    {"panes/front/formed/thickness", 3.0920662733},
    {"panes/front/formed/inside_radius", 418.5},
    {"panes/front/formed/sweep", 1.2921600328},
    {"panes/front/formed/chord", 505.7313480000},
    {"panes/front/formed/rise", 84.6510013247},
    {"panes/front/reach", 14.9465966307},
    {"panes/front/room/sideways/nominal", 5.8931932615},
    {"panes/front/room/vertical/nominal", 4.5},
    {"panes/front/tolerance/length", 3.5428589532},
    {"panes/front/tolerance/height", 2.4899619289},
    {"panes/front/room/sideways/worst", 0.6626408494},
    {"panes/front/room/vertical/worst", 0.8374854364},
    {"panes/front/edges/bottom/engagement/nominal", 6},
    {"panes/front/edges/bottom/engagement/least", 5.8871774415},
    {"panes/front/edges/top/engagement/nominal", 7.5},
    {"panes/front/edges/top/engagement/least", 4.1483592693},
    {"panes/front/edges/top/edge_clearance/nominal", 4.5},
    {"panes/front/edges/start/engagement/nominal", 12},
    {"panes/front/edges/start/engagement/settled", 9},
    {"panes/front/edges/start/engagement/least", 4.0718675517},
    {"panes/front/edges/end/engagement/nominal", 12},
    {"panes/front/edges/start/face_clearance/nominal", 1.5371478078},
    {"panes/front/edges/start/face_clearance/least", 0.5720606985},
    {"panes/front/edges/top/face_clearance/nominal", 1.7079337267},
    {"panes/front/edges/top/face_clearance/least", 0.8474385674},
    {"forms/front/face_radius", 418.5},
    {"forms/front/rib_radius", 414.9},
    {"forms/front/rib_sweep", 1.5788983841},
    {"forms/front/rib_count", 4},
    {"forms/front/skin/width", 439.4923857868},
    {"forms/front/skin/length", 657.4532871215},
    {"forms/front/fence_gap", 396.4974619289},
    {"heating/front/shop_rule_min", 11.8110236220},
};

TEST(Sums, of_the_pilot_boat_come_out_as_worked_by_hand) {
    Workings workings;
    (void)solve(sample::pilot_boat(), workings);
    for (const auto& [path, value] : kPilotBoat) {
        const Figure* figure = workings.find(std::string(path));
        ASSERT_NE(figure, nullptr) << path;
        EXPECT_NEAR(figure->value, value, kSecondWay) << path;
    }
}

// Worked by hand: the back is 520 mm between corner points, a fitted post takes 21 mm at each end.
TEST(Sums, of_a_flat_pane_need_no_shrink) {
    const auto sums = solve(sample::pilot_boat());
    const auto& back = *sums.pane(CaseSide::back);
    EXPECT_FALSE(back.curved);
    EXPECT_FALSE(back.heated);
    EXPECT_EQ(back.opening_length, 478);
    EXPECT_EQ(back.length, 502);
    EXPECT_EQ(back.height, 393.5);
    EXPECT_EQ(back.blank_length, 502);
    EXPECT_EQ(back.blank_width, 393.5);
    EXPECT_EQ(back.formed_thickness, 3);
    // ISO 2768-1 class m: 502 mm and 393.5 mm are cut to ±0.8 and ±0.5.
    EXPECT_EQ(back.length_tolerance, 0.8);
    EXPECT_EQ(back.height_tolerance, 0.5);
    EXPECT_EQ(back.radius, 0);
    EXPECT_EQ(back.chord, 502);
    // Its square end meets the post groove's bottom before the round end in base and top.
    EXPECT_EQ(back.reach, 15);
    EXPECT_EQ(back.room_sideways.nominal, 6);
}

// A round end of radius 2.4 mm runs past the bottom by half a cutter of 1 mm: a square end of 3 mm
// touches it 13.1 + sqrt(2.4² − 1.5²) mm from the post's face, short of the bottom at 15 mm.
TEST(Sums, count_the_round_ends_of_the_grooves_where_they_stop_the_pane_first) {
    Case c = sample::pilot_boat();
    c.cutter.diameter.value = 1;
    const auto sums = solve(c);
    const double reach = 15 + 0.5 - 2.4 + std::sqrt(2.4 * 2.4 - 1.5 * 1.5);
    EXPECT_NEAR(sums.pane(CaseSide::back)->reach, reach, kSecondWay);
    EXPECT_NEAR(sums.pane(CaseSide::back)->room_sideways.nominal, 478 + 2 * reach - 502,
                kSecondWay);
}

TEST(Sums, name_one_form_and_one_soak_for_each_heated_pane) {
    const auto sums = solve(sample::pilot_boat());
    ASSERT_EQ(sums.forms.size(), 1U);
    EXPECT_EQ(sums.forms.front().side, CaseSide::front);
    ASSERT_EQ(sums.heating.size(), 1U);
    // Library: set 165, core 150, face 177 degC; the oven holds ± 5 K.
    const auto& heating = sums.heating.front();
    EXPECT_EQ(heating.oven_set, 165);
    EXPECT_EQ(heating.margin_to_limit, 177 - 165 - 5);
    EXPECT_EQ(heating.margin_to_core, 165 - 5 - 150);
    Case cold = sample::pilot_boat();
    cold.panes[0].bend = sample::given(Bend::cold, "/panes/0/bend");
    EXPECT_TRUE(solve(cold).forms.empty());
    EXPECT_TRUE(solve(cold).heating.empty());
    EXPECT_TRUE(solve(sample::straight_front()).forms.empty());
}

// Source: common practice, no source: about a minute for each 0.01 in, 12 minutes for 3 mm.
TEST(Soak, by_the_shop_rule_is_under_twelve_minutes_for_three_millimetres) {
    constexpr double kOneDecimal = 0.05;
    EXPECT_NEAR(solve(sample::pilot_boat()).heating.front().shop_rule, 11.8, kOneDecimal);
}

TEST(Blank, trimmed_after_forming_starts_larger_by_trim_and_shrink) {
    Case c = sample::pilot_boat();
    c.panes[0].blank.method = sample::given(BlankMethod::trim_after, "/panes/0/blank");
    const auto trimmed = solve(c);
    const auto& pane = *trimmed.pane(CaseSide::front);
    // L₀ = (L + 2·trim)/(1 − s) with the sizes of the table above.
    EXPECT_NEAR(pane.blank_length, (542.7072137773 + 20) / 0.985, kSecondWay);
    EXPECT_NEAR(pane.blank_width, (393.5 + 20) / 0.985, kSecondWay);
    EXPECT_NEAR(pane.length, 542.7072137773, kSecondWay);
    // Only the last cut counts: the shrink's spread is trimmed away.
    EXPECT_EQ(pane.length_tolerance, 0.8);
    EXPECT_EQ(pane.height_tolerance, 0.5);
}

TEST(Blank, as_cut_comes_to_what_the_shrink_leaves_of_it) {
    Case c = sample::pilot_boat();
    c.panes[0].blank.method = sample::given(BlankMethod::as_cut, "/panes/0/blank");
    c.panes[0].blank.length = sample::given(542.7, "/panes/0/blank/length");
    c.panes[0].blank.width = sample::given(393.5, "/panes/0/blank/width");
    const auto sums = solve(c);
    const auto& pane = *sums.pane(CaseSide::front);
    EXPECT_EQ(pane.blank_length, 542.7);
    EXPECT_NEAR(pane.length, 542.7 * 0.985, kSecondWay);
    EXPECT_NEAR(pane.height, 393.5 * 0.985, kSecondWay);
    // 5.9 mm lower than asked for: engagement at the top is 7.5 mm less that.
    EXPECT_NEAR(pane.edge(PaneEdge::top).settled, 7.5 - 393.5 * 0.015, kSecondWay);
}

// Extruded sheet: 3 % along, −0.5 % across; the direction decides which side of the blank grows.
TEST(Blank, of_extruded_sheet_follows_the_extrusion) {
    Case c = sample::pilot_boat();
    SheetSpec& sheet = c.sheets.at("cast-acrylic");
    sheet.shrink_along.value = 0.03;
    sheet.shrink_across.value = -0.005;
    const auto lengthwise = solve(c);
    c.panes[0].along = sample::given(Extrusion::height, "/panes/0/along");
    const auto upright = solve(c);
    EXPECT_NEAR(lengthwise.panes[0].blank_length, 542.7072137773 / 0.97, kSecondWay);
    EXPECT_NEAR(lengthwise.panes[0].blank_width, 393.5 / 1.005, kSecondWay);
    EXPECT_NEAR(upright.panes[0].blank_length, 542.7072137773 / 1.005, kSecondWay);
    EXPECT_NEAR(upright.panes[0].blank_width, 393.5 / 0.97, kSecondWay);
    EXPECT_NEAR(lengthwise.panes[0].formed_thickness, 3 / (0.97 * 1.005), kSecondWay);
    EXPECT_NEAR(upright.panes[0].formed_thickness, 3 / (0.97 * 1.005), kSecondWay);
}

// The table of ISO 2768-1 ends at 4 m; a hall's case may be longer.
TEST(Sums, hold_sizes_past_the_table_of_tolerances_to_its_last_column) {
    Case c = sample::straight_front();
    c.plan.width.value = 5000;
    EXPECT_EQ(solve(c).pane(CaseSide::back)->length_tolerance, 2.0);
}

TEST(Sums, of_lift_and_drop_take_the_height_from_opening_and_top_groove) {
    const auto sums = solve(sample::lift_and_drop());
    const auto& pane = *sums.pane(CaseSide::back);
    // opening 380 + top groove 24 − loading clearance 6.
    EXPECT_EQ(pane.height, 398);
    // Dropped into the base groove of 6 mm it stands 398 − 380 − 6 in the top groove.
    EXPECT_EQ(pane.edge(PaneEdge::top).settled, 12);
    EXPECT_EQ(pane.loading.play, 6);
}

// The tilt rule by brute force over angles in steps of a tenth of a second of arc would take long;
// a golden-section search on e·sin φ + t·cos φ finds the same top. e is measured along the pane; its
// lower corner stands just clear of the base.
TEST(Loading, tilts_a_flat_pane_by_the_rule) {
    const auto sums = solve(sample::lift_and_drop());
    const auto& pane = *sums.pane(CaseSide::back);
    const auto width = [&](double angle) {
        return (398 * std::cos(angle) + 3 * std::sin(angle) - 380) * std::tan(angle) +
               3 * std::cos(angle);
    };
    double low = 0;
    double high = std::acos(380.0 / 398);
    const double ratio = (std::sqrt(5.0) - 1) / 2;
    while (high - low > 1e-9) {
        const double a = high - ratio * (high - low);
        const double b = low + ratio * (high - low);
        (width(a) < width(b) ? low : high) = width(a) < width(b) ? a : b;
    }
    // The program looks at 4096 angles up to 1.5 rad: at the top, where the curve is flat, it is
    // short by at most half a step's square times half the curvature, (1.5/8192)²/2·1200 mm.
    constexpr double kSampling = 2.1e-5;
    EXPECT_NEAR(pane.loading.tilt_width, width((low + high) / 2), kSampling);
    EXPECT_NEAR(pane.loading.tilt_rise, std::hypot(398, 3) - 380, kSecondWay);
}

}  // namespace
}  // namespace bowfront::fit
