#include <gtest/gtest.h>

#include <functional>
#include <string>
#include <utility>
#include <vector>

#include "bowfront/fit/sums.hpp"
#include "support/run_case.hpp"
#include "support/sample_case.hpp"

namespace bowfront::fit {
namespace {

using Pairs = std::vector<std::pair<const char*, std::pair<double, double>>>;

void compare(const char* what, const Pairs& pairs) {
    for (const auto& [name, values] : pairs) {
        EXPECT_EQ(values.first, values.second) << what << ": " << name;
    }
}

template <class Sums>
std::pair<double, double> both(const Sums& plain, const auto& traced, auto member) {
    return {plain.*member.first, (traced.*member.second).value()};
}

#define BOTH(type, member) \
    {#member, both(plain, traced, std::pair{&type<double>::member, &type<Traced>::member})}

void expect_same(const EdgeSums<double>& plain, const EdgeSums<Traced>& traced) {
    compare("edge", {BOTH(EdgeSums, engagement), BOTH(EdgeSums, engagement_least),
                     BOTH(EdgeSums, engagement_most), BOTH(EdgeSums, settled),
                     BOTH(EdgeSums, clearance), BOTH(EdgeSums, clearance_least),
                     BOTH(EdgeSums, face_clearance), BOTH(EdgeSums, face_clearance_least)});
}

void expect_same(const RoomSums<double>& plain, const RoomSums<Traced>& traced) {
    compare("room", {BOTH(RoomSums, nominal), BOTH(RoomSums, worst)});
}

void expect_same(const LoadingSums<double>& plain, const LoadingSums<Traced>& traced) {
    compare("loading", {BOTH(LoadingSums, play), BOTH(LoadingSums, play_worst),
                        BOTH(LoadingSums, tilt_width), BOTH(LoadingSums, tilt_width_worst),
                        BOTH(LoadingSums, tilt_rise), BOTH(LoadingSums, tilt_rise_worst)});
}

void expect_same(const RadiusSums<double>& plain, const RadiusSums<Traced>& traced) {
    compare("radius", {BOTH(RadiusSums, free_radius), BOTH(RadiusSums, free_radius_least),
                       BOTH(RadiusSums, free_radius_most), BOTH(RadiusSums, groove_radius),
                       BOTH(RadiusSums, groove_radius_least), BOTH(RadiusSums, groove_radius_most),
                       BOTH(RadiusSums, strain), BOTH(RadiusSums, flexing_strain),
                       BOTH(RadiusSums, flexing_stress), BOTH(RadiusSums, rise_off), BOTH(RadiusSums, rise_off_worst),
                       BOTH(RadiusSums, clearance_left), BOTH(RadiusSums, clearance_left_worst),
                       BOTH(RadiusSums, flexed_worst), BOTH(RadiusSums, strain_worst),
                       BOTH(RadiusSums, stress), BOTH(RadiusSums, stress_worst)});
}

void expect_same(const LoadSums<double>& plain, const LoadSums<Traced>& traced) {
    compare("load", {BOTH(LoadSums, force), BOTH(LoadSums, deflection),
                     BOTH(LoadSums, deflection_worst), BOTH(LoadSums, stress),
                     BOTH(LoadSums, stress_worst), BOTH(LoadSums, held),
                     BOTH(LoadSums, held_worst)});
}

void expect_same(const PaneState<double>& plain, const PaneState<Traced>& traced) {
    compare("state", {BOTH(PaneState, temperature), BOTH(PaneState, humidity),
                      BOTH(PaneState, moisture), BOTH(PaneState, sheet), BOTH(PaneState, base),
                      BOTH(PaneState, top), BOTH(PaneState, post), BOTH(PaneState, opening_least),
                      BOTH(PaneState, opening_most), BOTH(PaneState, length),
                      BOTH(PaneState, height), BOTH(PaneState, opening_height),
                      BOTH(PaneState, base_depth), BOTH(PaneState, top_depth),
                      BOTH(PaneState, post_depth), BOTH(PaneState, base_radius),
                      BOTH(PaneState, top_radius)});
}

void expect_same(const HeatingSums<double>& plain, const HeatingSums<Traced>& traced) {
    compare("heating", {BOTH(HeatingSums, oven_set), BOTH(HeatingSums, core_min),
                        BOTH(HeatingSums, face_limit), BOTH(HeatingSums, accuracy),
                        BOTH(HeatingSums, margin_to_limit), BOTH(HeatingSums, margin_to_core),
                        BOTH(HeatingSums, shop_rule)});
}

void expect_same(const FormSizes<double>& plain, const FormSizes<Traced>& traced) {
    compare("form", {BOTH(FormSizes, face_radius), BOTH(FormSizes, rib_radius),
                     BOTH(FormSizes, rib_sweep), BOTH(FormSizes, rib_count),
                     BOTH(FormSizes, width), BOTH(FormSizes, rib_pitch),
                     BOTH(FormSizes, skin_length), BOTH(FormSizes, fence_gap)});
}

void expect_same(const BendSums<double>& plain, const BendSums<Traced>& traced) {
    compare("bend", {BOTH(BendSums, radius), BOTH(BendSums, inside_radius), BOTH(BendSums, sweep),
                     BOTH(BendSums, start), BOTH(BendSums, end), BOTH(BendSums, blank_start),
                     BOTH(BendSums, blank_end), BOTH(BendSums, free_radius),
                     BOTH(BendSums, free_radius_least), BOTH(BendSums, free_radius_most),
                     BOTH(BendSums, free_sweep), BOTH(BendSums, free_sweep_least),
                     BOTH(BendSums, free_sweep_most), BOTH(BendSums, groove_radius_least),
                     BOTH(BendSums, groove_radius_most), BOTH(BendSums, flexing_strain),
                     BOTH(BendSums, flexing_stress)});
}

void expect_same(const PaneSums<double>& plain, const PaneSums<Traced>& traced) {
    EXPECT_EQ(plain.side, traced.side);
    EXPECT_EQ(plain.curved, traced.curved);
    EXPECT_EQ(plain.heated, traced.heated);
    compare("pane",
            {BOTH(PaneSums, thickness), BOTH(PaneSums, thickness_tolerance),
             BOTH(PaneSums, side_length), BOTH(PaneSums, start_in_post),
             BOTH(PaneSums, end_in_post), BOTH(PaneSums, opening_length),
             BOTH(PaneSums, opening_height), BOTH(PaneSums, length), BOTH(PaneSums, height),
             BOTH(PaneSums, length_tolerance), BOTH(PaneSums, height_tolerance),
             BOTH(PaneSums, blank_length), BOTH(PaneSums, blank_width),
             BOTH(PaneSums, formed_thickness), BOTH(PaneSums, thickest), BOTH(PaneSums, reach),
             BOTH(PaneSums, radius), BOTH(PaneSums, inside_radius), BOTH(PaneSums, sweep),
             BOTH(PaneSums, chord), BOTH(PaneSums, rise), BOTH(PaneSums, cold_radius),
             BOTH(PaneSums, flexing_stress), BOTH(PaneSums, least_engagement)});
    for (const PaneEdge edge : kPaneEdges) {
        expect_same(plain.edge(edge), traced.edge(edge));
    }
    for (std::size_t i = 0; i < plain.states.size(); ++i) {
        expect_same(plain.states[i], traced.states[i]);
    }
    expect_same(plain.room_vertical, traced.room_vertical);
    expect_same(plain.room_sideways, traced.room_sideways);
    expect_same(plain.loading, traced.loading);
    expect_same(plain.radius_error, traced.radius_error);
    ASSERT_EQ(plain.bends.size(), traced.bends.size());
    for (std::size_t i = 0; i < plain.bends.size(); ++i) {
        expect_same(plain.bends[i], traced.bends[i]);
    }
    expect_same(plain.push, traced.push);
    expect_same(plain.carried, traced.carried);
}

#undef BOTH

struct Variant {
    const char* name;
    std::function<Case()> make;
};

class TracedSums : public testing::TestWithParam<Variant> {};

// The formula that is printed is the formula that was computed: same code, same bits.
TEST_P(TracedSums, equal_plain_sums_bit_for_bit) {
    const Case c = GetParam().make();
    Workings workings;
    const CaseSums<Traced> traced = solve(c, workings);
    const CaseSums<double> plain = solve(c);
    ASSERT_EQ(plain.panes.size(), traced.panes.size());
    ASSERT_EQ(plain.forms.size(), traced.forms.size());
    ASSERT_EQ(plain.heating.size(), traced.heating.size());
    for (std::size_t i = 0; i < plain.panes.size(); ++i) {
        expect_same(plain.panes[i], traced.panes[i]);
    }
    for (std::size_t i = 0; i < plain.forms.size(); ++i) {
        expect_same(plain.forms[i].sizes, traced.forms[i].sizes);
        expect_same(plain.heating[i], traced.heating[i]);
    }
    ASSERT_EQ(plain.sides.size(), traced.sides.size());
    for (std::size_t i = 0; i < plain.sides.size(); ++i) {
        EXPECT_EQ(plain.sides[i].length, traced.sides[i].length.value());
        EXPECT_EQ(plain.sides[i].chord, traced.sides[i].chord.value());
        ASSERT_EQ(plain.sides[i].pieces.size(), traced.sides[i].pieces.size());
        for (std::size_t k = 0; k < plain.sides[i].pieces.size(); ++k) {
            const auto& piece = plain.sides[i].pieces[k];
            const auto& other = traced.sides[i].pieces[k];
            EXPECT_EQ(piece.length, other.length.value());
            EXPECT_EQ(piece.chord_heading, other.chord_heading);
            if (piece.curved) {
                EXPECT_EQ(piece.arc.rise, other.arc.rise.value());
            }
        }
    }
}

Case with_front(ArcMeasure measure, double value) {
    Case c = sample::pilot_boat();
    c.plan.front = FrontArc{measure, sample::given(value, "/plan/front/x")};
    return c;
}

Case with_section(PostSection section) {
    Case c = sample::pilot_boat();
    c.frame.post.section.value = section;
    return c;
}

Case bent_cold() {
    Case c = with_front(ArcMeasure::rise, 25);
    c.panes[0].bend.value = Bend::cold;
    return c;
}

Case trimmed() {
    Case c = sample::pilot_boat();
    c.panes[0].blank.method.value = BlankMethod::trim_after;
    return c;
}

Case as_cut() {
    Case c = sample::pilot_boat();
    c.panes[0].blank.method.value = BlankMethod::as_cut;
    c.panes[0].blank.length = sample::given(551.0, "/panes/0/blank/length");
    c.panes[0].blank.width = sample::given(399.5, "/panes/0/blank/width");
    return c;
}

Case run() {
    return sample::case_with_front({sample::straight_piece(300), sample::arc_piece(80, 1.4),
                                    sample::straight_piece(200),
                                    sample::arc_piece(120, 0.6, Bow::in),
                                    sample::straight_piece(150)});
}

Case elliptic() { return sample::case_with_front({sample::ellipse_piece(300, 160, 3.4, 6)}); }

INSTANTIATE_TEST_SUITE_P(
    Cases, TracedSums,
    testing::Values(Variant{"pilot_boat", sample::pilot_boat},
                    Variant{"straight_front", sample::straight_front},
                    Variant{"lift_and_drop", sample::lift_and_drop},
                    Variant{"beaded", sample::beaded},
                    Variant{"by_rise", [] { return with_front(ArcMeasure::rise, 90); }},
                    Variant{"by_sweep", [] { return with_front(ArcMeasure::sweep, 1.3); }},
                    Variant{"by_length", [] { return with_front(ArcMeasure::length, 560); }},
                    Variant{"square_posts", [] { return with_section(PostSection::square); }},
                    Variant{"round_posts", [] { return with_section(PostSection::round); }},
                    Variant{"bent_cold", bent_cold}, Variant{"trimmed", trimmed},
                    Variant{"as_cut", as_cut}, Variant{"run", run},
                    Variant{"elliptic", elliptic}),
    [](const auto& variant) { return variant.param.name; });

}  // namespace
}  // namespace bowfront::fit
