#include "bowfront/study/spread.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "bowfront/base/contract.hpp"
#include "bowfront/fit/checks.hpp"
#include "bowfront/study/random.hpp"
#include "support/sample_case.hpp"

namespace bowfront::study {
namespace {

using testing::DoubleNear;

constexpr int kSamples = 200'000;
// A mean strays by σ/√n, a deviation by σ/√(2n), at most so, for normal and for cut normal draws.
constexpr double kErrors = 4;

// The back alone, in air that never changes: every size is then a sum of independent draws.
Case still_air() {
    Case c = sample::pilot_boat();
    std::erase_if(c.panes, [](const PaneSpec& pane) { return pane.side != CaseSide::back; });
    for (double* end : {&c.service.temperature[0].value, &c.service.temperature[1].value}) {
        *end = c.service.built_temperature.value;
    }
    for (double* end : {&c.service.humidity[0].value, &c.service.humidity[1].value}) {
        *end = c.service.built_humidity.value;
    }
    return c;
}

void expect_sum(const Spread& spread, double mean, std::initializer_list<double> limits) {
    double squares = 0;
    for (const double limit : limits) {
        squares += limit * limit;
    }
    // Source: variances of independent draws add up
    const double deviation = cut_normal_deviation() * std::sqrt(squares);
    EXPECT_THAT(spread.mean, DoubleNear(mean, kErrors * deviation / std::sqrt(kSamples)));
    EXPECT_THAT(spread.deviation,
                DoubleNear(deviation, kErrors * deviation / std::sqrt(2.0 * kSamples)));
}

TEST(Spread, of_sums_of_independent_draws_meets_the_closed_form) {
    const Case c = still_air();
    const auto sums = fit::solve(c);
    const PaneSums<double>& pane = sums.panes.front();
    const FrameTolerances<double>& t = pane.tolerances;
    const PaneSpreads back = spreads(c, sums, {kSamples, 5}).front();
    const auto of = [&](PaneEdge edge) { return back.engagement[static_cast<std::size_t>(edge)]; };
    expect_sum(of(PaneEdge::bottom), pane.edge(PaneEdge::bottom).settled, {t.base_depth});
    expect_sum(of(PaneEdge::top), pane.edge(PaneEdge::top).settled,
               {pane.height_tolerance, t.opening_height, t.base_depth});
    expect_sum(of(PaneEdge::start), pane.edge(PaneEdge::start).settled,
               {pane.length_tolerance, t.opening_length, t.post_depth});
    expect_sum(back.vertical, pane.room_vertical.nominal,
               {pane.height_tolerance, t.opening_height, t.base_depth, t.top_depth});
    expect_sum(back.sideways, pane.room_sideways.nominal,
               {pane.length_tolerance, t.opening_length, t.post_depth, t.post_depth});
    expect_sum(back.face_clearance, pane.edge(PaneEdge::bottom).face_clearance,
               {t.groove_width, pane.thickness_tolerance});
}

// Source: normal distribution by erfc; four limits added are near enough to normal that the share
// under one deviation below the mean is that of it, to 0.01.
TEST(Spread, holds_as_often_as_the_distribution_of_its_sum_says) {
    Case c = still_air();
    const auto sums = fit::solve(c);
    const Spread top = spreads(c, sums, {kSamples, 5}).front().engagement[1];
    c.fit.least_engagement = Sourced<double>{top.mean - top.deviation, {}};
    const Spread again = spreads(c, fit::solve(c), {kSamples, 5}).front().engagement[1];
    EXPECT_THAT(again.holds.value, DoubleNear(1 - std::erfc(1 / std::sqrt(2.0)) / 2, 0.01));
    EXPECT_EQ(again.mean, top.mean);
}

TEST(Spread, of_a_pane_is_that_of_the_samples_that_the_chance_counts) {
    Case c = sample::lift_and_drop();
    c.fit.least_engagement = Sourced<double>{8, {}};
    const auto sums = fit::solve(c);
    const ChanceOptions options{5'000, 3};
    const Chance chance = first_time_fit(c, sums, options);
    const auto panes = spreads(c, sums, options);
    ASSERT_EQ(panes.size(), chance.panes.size());
    for (std::size_t i = 0; i < panes.size(); ++i) {
        double least = 1;
        double missed = 0;
        int limits = 0;
        visit_spreads(panes[i], [&](const std::string&, const Spread& spread) {
            if (!panes[i].contact || &spread != &*panes[i].contact) {
                least = std::min(least, spread.holds.value);
            }
            missed += 1 - spread.holds.value;
            ++limits;
        });
        EXPECT_EQ(limits, panes[i].contact ? 10 : 9);
        if (panes[i].contact) {  // contact is no failure, and the chance does not ask for it
            missed -= 1 - panes[i].contact->holds.value;
        }
        // All limits at once hold no more often than the one that holds least, and no less often
        // than if every miss came alone.
        EXPECT_LE(chance.panes[i].fit.value, least);
        EXPECT_GE(chance.panes[i].fit.value, 1 - missed - 1e-12);
    }
}

// Source: normal distribution cut at two deviations, by erfc: nothing but the springback varies, so
// the pane touches where its draw is more than the clearance allows to either side.
TEST(Spread, of_contact_by_springback_alone_meets_the_closed_form) {
    Case c = sample::pilot_boat();
    for (double* end : {&c.service.temperature[0].value, &c.service.temperature[1].value}) {
        *end = c.service.built_temperature.value;
    }
    for (double* end : {&c.service.humidity[0].value, &c.service.humidity[1].value}) {
        *end = c.service.built_humidity.value;
    }
    c.tolerance.groove_width.value = {std::nullopt, 0};
    c.tolerance.sheet_thickness = Sourced<ToleranceSpec>{{std::nullopt, 0}, {}};
    SheetSpec& sheet = c.sheets.at("cast-acrylic");
    sheet.spread_along.value = sheet.spread_across.value = 0;
    sheet.springback_spread.value = 0.03;
    const auto sums = fit::solve(c);
    const PaneSums<double>& front = *sums.pane(CaseSide::front);
    const RadiusSums<double>& radius = front.radius_error;
    const double off = (radius.free_radius_most - radius.free_radius_least) / 2;
    const double allowed = front.edge(PaneEdge::bottom).face_clearance / (radius.share * off);
    ASSERT_LT(allowed, 0.9);
    const auto within = [](double deviations) { return std::erf(deviations / std::sqrt(2.0)); };
    const double expected = within(2 * allowed) / within(2);
    const Spread contact = *spreads(c, sums, {kSamples, 9}).front().contact;
    EXPECT_THAT(contact.holds.value, DoubleNear(expected, kErrors * contact.holds.error));
}

TEST(Spread, of_every_sample_stays_within_the_worst_case) {
    for (const Case& c : {sample::pilot_boat(), sample::straight_front(), sample::lift_and_drop(),
                          sample::beaded()}) {
        const auto sums = fit::solve(c);
        for (const PaneSpreads& pane : spreads(c, sums, {20'000, 1})) {
            const PaneSums<double>& of = *sums.pane(pane.side);
            for (std::size_t i = 0; i < kPaneEdges.size(); ++i) {
                EXPECT_GE(pane.engagement[i].least, of.edges[i].engagement_least);
            }
            EXPECT_GE(pane.vertical.least, of.room_vertical.worst);
            EXPECT_GE(pane.sideways.least, of.room_sideways.worst);
            EXPECT_GE(pane.face_clearance.least,
                      of.edge(PaneEdge::bottom).face_clearance_least);
            EXPECT_GE(pane.face_clearance_in_posts.least,
                      of.edge(PaneEdge::start).face_clearance_least);
            if (pane.contact) {
                EXPECT_GE(pane.contact->least, of.radius_error.clearance_left_worst);
            }
            if (pane.play) {
                EXPECT_GE(pane.play->least, of.loading.play_worst);
            }
        }
    }
}

TEST(Spread, wants_a_sample_at_least) {
    const Case c = sample::pilot_boat();
    EXPECT_THROW((void)spreads(c, fit::solve(c), {0, 1}), ContractError);
}

}  // namespace
}  // namespace bowfront::study
