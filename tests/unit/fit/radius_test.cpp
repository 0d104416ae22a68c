#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "bowfront/fit/checks.hpp"
#include "bowfront/forming/pane.hpp"
#include "numbers_in.hpp"
#include "support/sample_case.hpp"

namespace bowfront::fit {
namespace {

/// A dozen operations on sizes under 1 m, mm.
constexpr double kRounding = 1e-9;

const PaneSums<double>& front(const CaseSums<double>& sums) { return *sums.pane(CaseSide::front); }

Finding found(const Case& c, std::string_view id) {
    const auto sums = solve(c);
    for (Finding& finding : checks(c, sums, layout(c, sums))) {
        if (finding.id == id) {
            return finding;
        }
    }
    ADD_FAILURE() << "no check " << id;
    return {};
}

// Width of the narrowest band round a circle of radius `groove` that an arc of radius `pane` over
// the same angle lies in, by trying every shift along the axis of symmetry: nothing of the closed
// formula is used.
double band_by_search(double groove, double pane, double sweep) {
    constexpr int kAngles = 400;
    const auto half_band = [&](double shift) {
        double most = 0;
        for (int i = 0; i <= kAngles; ++i) {
            // The angle at the pane's own centre; the point's distance from the groove's centre.
            const double angle = sweep / 2 * groove / pane * i / kAngles;
            const double off = std::hypot(pane * std::cos(angle) + shift, pane * std::sin(angle));
            most = std::max(most, std::abs(off - groove));
        }
        return most;
    };
    double low = -50;
    double high = 50;
    const double ratio = (std::sqrt(5.0) - 1) / 2;
    while (high - low > 1e-7) {
        const double a = high - ratio * (high - low);
        const double b = low + ratio * (high - low);
        (half_band(a) < half_band(b) ? high : low) = half_band(a) < half_band(b) ? b : a;
    }
    return 2 * half_band((low + high) / 2);
}

// The sums take the first order in ΔR/R, at the same angles; what is left out is of the second
// order, ΔR²/R, times what the ends move along the groove, a few units at half a turn.
TEST(RadiusError, uses_up_the_band_that_a_search_over_all_places_finds) {
    constexpr double kSecondOrder = 4;
    for (const double sweep : {0.4, 1.0, 1.6, 2.4, 2.9}) {
        Case c = sample::pilot_boat();
        c.plan.front = FrontArc{ArcMeasure::sweep, sample::given(sweep, "/plan/front/sweep")};
        const auto sums = solve(c);
        const PaneSums<double>& pane = front(sums);
        for (const double off : {-0.005, 0.005}) {
            const double change = off * pane.radius;
            const double half = std::cos(pane.sweep / 2);
            const double closed = 2 * std::abs(change) * (1 - half) / (1 + half);
            EXPECT_NEAR(closed, band_by_search(pane.radius, pane.radius + change, pane.sweep),
                        kSecondOrder * change * change / pane.radius)
                << sweep << ' ' << off;
        }
        // The worst case is that share of the largest difference of radii.
        double most = 0;
        for (const PaneState<double>& state : pane.states) {
            for (const double growth : {0.99, 1.01}) {
                const double free = (pane.inside_radius * growth + 1.5) * state.sheet;
                most = std::max({most, std::abs(free - state.base_radius),
                                 std::abs(free - state.top_radius)});
            }
        }
        const double half = std::cos(pane.sweep / 2);
        EXPECT_NEAR(pane.radius_error.rise_off_worst, 2 * most * (1 - half) / (1 + half),
                    kRounding * pane.radius);
    }
}

// For shallow arcs the band is the difference of the rises over one chord, f = c²/(8R).
TEST(RadiusError, is_the_difference_of_rises_over_one_chord_for_a_shallow_arc) {
    Case c = sample::pilot_boat();
    c.plan.front = FrontArc{ArcMeasure::radius, sample::given(5000.0, "/plan/front/radius")};
    const auto sums = solve(c);
    const PaneSums<double>& pane = front(sums);
    const double change = 50;
    const double half = std::cos(pane.sweep / 2);
    const auto rise = [&](double r) {
        return r - std::sqrt(r * r - pane.chord * pane.chord / 4);
    };
    // 1 % of the radius, and (sweep/4)² of the rest.
    constexpr double kShallow = 0.012;
    const double by_rises = rise(5000) - rise(5050);
    EXPECT_NEAR(2 * change * (1 - half) / (1 + half), by_rises, kShallow * by_rises);
}

TEST(RadiusError, is_nothing_as_built_when_the_springback_is_what_the_form_was_made_for) {
    Case c = sample::pilot_boat();
    c.sheets.at("cast-acrylic").springback.value = 0.013;
    const auto sums = solve(c);
    EXPECT_EQ(front(sums).radius_error.rise_off, 0);
    EXPECT_EQ(front(sums).radius_error.clearance_left,
              front(sums).edge(PaneEdge::bottom).face_clearance);
    EXPECT_EQ(sums.pane(CaseSide::back)->radius_error.rise_off_worst, 0);
}

// A base that grows along the front's rise and not along its chord bends the groove tighter: the
// circle through crown and ends, found here by the circumradius of that triangle, a·b·c/(4·area).
TEST(Groove, radius_in_a_state_is_that_of_the_circle_through_crown_and_ends) {
    const Case c = sample::pilot_boat();
    Workings workings;
    (void)solve(c, workings);
    const auto sums = solve(c);
    const PaneSums<double>& pane = front(sums);
    const PaneState<double>& damp = pane.states[2];
    const double grown = workings.find("states/cold-damp/base/across")->value;
    ASSERT_GT(grown, 1);
    const double side = std::hypot(pane.chord / 2, pane.rise * grown);
    const double area = pane.chord * pane.rise * grown / 2;
    EXPECT_NEAR(damp.base_radius, side * side * pane.chord / (4 * area), kRounding);
    EXPECT_LT(damp.base_radius, pane.radius);
    EXPECT_EQ(pane.states[0].base_radius, pane.radius);
}

// Source: fact sheet, bending of a thin strip: R 300 -> 250 mm, 3 mm: 0.1 %, 3.2 MPa at E 3200.
TEST(Flexing, from_300_to_250_strains_three_millimetres_by_a_tenth_of_a_per_cent) {
    const double strain = forming::flexing_strain(3.0, 1 / 300.0, 1 / 250.0);
    EXPECT_NEAR(strain, 0.001, kRounding);
    EXPECT_NEAR(find_sheet("cast-acrylic")->modulus.value * strain, 3.2, kRounding);
}

// By hand for the pilot boat as built: springback ± 1 % of the inside radius of 418.5 mm.
TEST(RadiusError, of_a_spread_alone_comes_out_as_worked_by_hand) {
    Case c = sample::pilot_boat();
    for (Sourced<double>* air : {&c.service.temperature[0], &c.service.temperature[1]}) {
        air->value = c.service.built_temperature.value;
    }
    for (Sourced<double>* air : {&c.service.humidity[0], &c.service.humidity[1]}) {
        air->value = c.service.built_humidity.value;
    }
    const auto sums = solve(c);
    const RadiusSums<double>& error = front(sums).radius_error;
    // tan²(θ/4) with θ = 542.7072137773/420 rad.
    const double tangent = std::tan(542.7072137773 / 420 / 4);
    EXPECT_NEAR(error.rise_off_worst, 2 * 4.185 * tangent * tangent, kRounding);
    EXPECT_NEAR(error.clearance_left_worst, 0.8474385674 - error.rise_off_worst, kRounding);
    EXPECT_NEAR(error.flexed_worst, 4.185, kRounding);
    const double strain = front(sums).thickest / 2 * (1 / (418.5 * 0.99 + 1.5) - 1 / 420.0);
    EXPECT_NEAR(error.strain_worst, strain, kRounding);
    EXPECT_NEAR(error.stress_worst, 3200 * strain, kRounding);
}

TEST(RadiusContact, is_a_warning_that_names_its_stress_and_ends_when_the_grooves_are_widened) {
    Case c = sample::pilot_boat();
    const Finding contact = found(c, "radius-contact");
    EXPECT_EQ(contact.status, Status::warn);
    EXPECT_EQ(contact.code, Code::fit_radius);
    EXPECT_NE(contact.note.find("to a stress of 0."), std::string::npos) << contact.note;
    EXPECT_NE(contact.note.find("(lasting limit 10.3 MPa)"), std::string::npos);
    EXPECT_EQ(found(c, "radius-stress").status, Status::pass);
    EXPECT_GT(found(c, "radius-stress").value, 0);
    c.frame.groove.width.value += numbers_in(contact.advice)[0];
    EXPECT_EQ(found(c, "radius-contact").status, Status::pass);
    EXPECT_EQ(found(c, "radius-stress").value, 0);
}

TEST(RadiusContact, fails_only_by_its_stress) {
    Sheet brittle = *find_sheet("cast-acrylic");
    Case c = sample::pilot_boat();
    c.sheets.at("cast-acrylic").like = &brittle;
    brittle.long_term_stress->value = found(c, "radius-stress").value * 0.99;
    const Finding stress = found(c, "radius-stress");
    EXPECT_EQ(stress.status, Status::fail);
    EXPECT_EQ(stress.code, Code::fit_radius);
    EXPECT_EQ(found(c, "radius-contact").status, Status::warn);
    c.frame.groove.width.value += numbers_in(stress.advice)[0];
    EXPECT_EQ(found(c, "radius-stress").status, Status::pass);
}

TEST(RadiusError, never_falls_when_the_springback_spreads_more) {
    double off = 0;
    double stress = 0;
    for (const double spread : {0.0, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2}) {
        Case c = sample::pilot_boat();
        c.sheets.at("cast-acrylic").springback_spread.value = spread;
        const auto sums = solve(c);
        EXPECT_GE(front(sums).radius_error.rise_off_worst, off) << spread;
        EXPECT_GE(front(sums).radius_error.stress_worst, stress) << spread;
        off = front(sums).radius_error.rise_off_worst;
        stress = front(sums).radius_error.stress_worst;
    }
    EXPECT_GT(stress, 0);
}

// Held cold, a pane is flexed from flat; a base that bends the groove tighter flexes it more.
TEST(RadiusError, of_a_pane_held_cold_is_all_of_its_curve) {
    Case c = sample::pilot_boat();
    c.plan.front = FrontArc{ArcMeasure::rise, sample::given(25.0, "/plan/front/rise")};
    c.panes[0].bend.value = Bend::cold;
    const auto sums = solve(c);
    const PaneSums<double>& pane = front(sums);
    EXPECT_EQ(pane.radius_error.stress, pane.flexing_stress);
    double tightest = pane.radius;
    for (const PaneState<double>& state : pane.states) {
        tightest = std::min({tightest, state.base_radius, state.top_radius});
    }
    ASSERT_LT(tightest, pane.radius);
    EXPECT_NEAR(pane.radius_error.stress_worst, 3200 * pane.thickest / 2 / tightest, kRounding);
    EXPECT_GT(pane.radius_error.stress_worst, pane.flexing_stress);
    EXPECT_EQ(pane.radius_error.rise_off_worst, 0);
}

}  // namespace
}  // namespace bowfront::fit
