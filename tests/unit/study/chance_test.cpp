#include "bowfront/study/chance.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "bowfront/base/contract.hpp"
#include "bowfront/fit/checks.hpp"
#include "bowfront/study/random.hpp"
#include "support/sample_case.hpp"

namespace bowfront::study {
namespace {

using testing::DoubleNear;

// The first numbers of xoshiro256++ from the state that splitmix64 makes of a seed; computed by an
// independent script from the published description.
TEST(Random, repeats_its_sequence_for_a_seed) {
    Random a(1);
    Random b(1);
    Random other(2);
    const auto first = a.bits();
    EXPECT_EQ(first, b.bits());
    EXPECT_NE(first, other.bits());
}

TEST(Random, is_uniform_to_its_standard_error) {
    Random random(7);
    constexpr int kSamples = 200'000;
    double sum = 0;
    double squares = 0;
    for (int i = 0; i < kSamples; ++i) {
        const double x = random.uniform();
        ASSERT_GE(x, 0);
        ASSERT_LT(x, 1);
        sum += x;
        squares += x * x;
    }
    const double mean = sum / kSamples;
    const double four_errors = 4 * std::sqrt(1.0 / 12 / kSamples);
    EXPECT_THAT(mean, DoubleNear(0.5, four_errors));
    EXPECT_THAT(squares / kSamples - mean * mean, DoubleNear(1.0 / 12, four_errors));
}

// Source: normal distribution, erfc: the inverse undone gives the share back.
TEST(CutNormal, inverts_the_distribution_cut_at_two_deviations) {
    const auto cumulative = [](double z) { return std::erfc(-z / std::sqrt(2.0)) / 2; };
    const double low = cumulative(-2);
    constexpr double kTable = 1e-9;
    for (int i = 0; i <= 1000; ++i) {
        const double share = i / 1000.0 * (1 - 1e-12);
        const double z = 2 * cut_normal(share);
        EXPECT_THAT((cumulative(z) - low) / (1 - 2 * low), DoubleNear(share, kTable)) << share;
    }
    EXPECT_EQ(cut_normal(0), -1);
    EXPECT_THAT(cut_normal(0.5), DoubleNear(0, 1e-15));  // rounding of the table's node
}

// Source: variance of a normal distribution cut at ±a: 1 − 2a·φ(a)/(2Φ(a) − 1); a = 2: 0.7737.
TEST(CutNormal, has_the_deviation_of_the_closed_form) {
    EXPECT_THAT(4 * cut_normal_deviation() * cut_normal_deviation(), DoubleNear(0.7737, 5e-5));
    Random random(3);
    constexpr int kSamples = 100'000;
    double squares = 0;
    for (int i = 0; i < kSamples; ++i) {
        const double x = cut_normal(random.uniform());
        squares += x * x;
    }
    EXPECT_THAT(std::sqrt(squares / kSamples), DoubleNear(cut_normal_deviation(), 0.005));
}

// One limit, one draw: the flat pane's bottom engagement hangs on the base groove's depth alone, so
// its chance is that of one cut normal.
TEST(FirstTimeFit, meets_the_closed_form_where_one_draw_decides) {
    Case c = sample::pilot_boat();
    std::erase_if(c.panes, [](const PaneSpec& pane) { return pane.side != CaseSide::back; });
    for (auto* ends : {&c.service.temperature, &c.service.humidity}) {
        const bool warm = ends == &c.service.temperature;
        (*ends)[0].value = (*ends)[1].value =
            warm ? c.service.built_temperature.value : c.service.built_humidity.value;
    }
    c.tolerance.groove_depth.value = {std::nullopt, 0.4};
    c.fit.least_engagement = Sourced<double>{c.frame.groove.base_depth.value - 0.2, {}};
    c.fit.top_clearance.value = 2;  // enough engagement at the top, and room
    const auto sums = fit::solve(c);
    const Chance chance = first_time_fit(c, sums, {400'000, 11});
    // P(depth off > −0.2 of ±0.4) = P(z > −1) cut at ±2.
    const auto cumulative = [](double z) { return std::erfc(-z / std::sqrt(2.0)) / 2; };
    const double expected =
        (cumulative(2) - cumulative(-1)) / (cumulative(2) - cumulative(-2));
    EXPECT_THAT(chance.fit.value, DoubleNear(expected, 4 * chance.fit.error));
}

TEST(FirstTimeFit, repeats_for_a_seed_and_differs_by_its_error_for_another) {
    Case c = sample::pilot_boat();
    c.fit.top_clearance.value = 9;  // so that a good share fails
    const auto sums = fit::solve(c);
    const Chance first = first_time_fit(c, sums, {20'000, 1});
    const Chance again = first_time_fit(c, sums, {20'000, 1});
    const Chance other = first_time_fit(c, sums, {20'000, 2});
    EXPECT_EQ(first.fit.value, again.fit.value);
    EXPECT_THAT(other.fit.value, DoubleNear(first.fit.value, 6 * (first.fit.error + 1e-6)));
}

TEST(FirstTimeFit, of_a_case_is_no_better_than_of_its_worst_pane) {
    const Case c = sample::pilot_boat();
    const auto sums = fit::solve(c);
    const Chance chance = first_time_fit(c, sums, {5'000, 1});
    for (const PaneChance& pane : chance.panes) {
        EXPECT_LE(chance.fit.value, pane.fit.value);
    }
}

TEST(FirstTimeFit, falls_as_the_shrink_spreads) {
    Case c = sample::pilot_boat();
    double before = 1;
    for (const double spread : {0.0, 0.005, 0.02, 0.05}) {
        for (auto& [key, sheet] : c.sheets) {
            sheet.spread_along.value = sheet.spread_across.value = spread;
        }
        const Chance chance = first_time_fit(c, fit::solve(c), {20'000, 1});
        EXPECT_LE(chance.fit.value, before + 0.005) << spread;
        before = chance.fit.value;
    }
    EXPECT_LT(before, 0.95);
}

// More spread moves samples out of limits that the nominal is within, never into them.
TEST(FirstTimeFit, never_rises_with_the_spread_where_the_nominal_passes) {
    constexpr unsigned kSeed = 20240611;
    std::mt19937_64 random(kSeed);
    const auto draw = [&](double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(random);
    };
    int passing = 0;
    while (passing < 20) {
        Case c = sample::pilot_boat();
        c.plan.width.value = draw(300, 1200);
        c.plan.front->value.value = c.plan.width.value * draw(0.55, 3);
        c.frame.clear_height.value = draw(200, 900);
        c.fit.top_clearance.value = draw(2, 8);
        c.fit.end_clearance.value = draw(1.5, 5);
        if (!fit::objections(c).empty()) {
            continue;
        }
        const auto sums = fit::solve(c);
        const auto findings = fit::checks(c, sums, fit::layout(c, sums));
        if (std::any_of(findings.begin(), findings.end(), [](const Finding& each) {
                return each.status == Status::fail &&
                       (each.code == Code::fit_engagement || each.code == Code::fit_room);
            })) {
            continue;
        }
        ++passing;
        Share before{1, 0};
        for (const double spread : {0.0, 0.002, 0.006, 0.015, 0.03}) {
            SheetSpec& sheet = c.sheets.at("cast-acrylic");
            sheet.spread_along.value = sheet.spread_across.value = spread;
            const Share now = first_time_fit(c, fit::solve(c), {4'000, 5}).fit;
            const double four_errors = 4 * std::hypot(now.error, before.error);
            EXPECT_LE(now.value, before.value + four_errors) << "seed " << kSeed << ' ' << spread;
            before = now;
        }
    }
}

// The worst case is a bound: where it keeps every limit, so does every sample.
TEST(FirstTimeFit, is_certain_where_the_worst_case_keeps_every_limit) {
    Case c = sample::pilot_boat();
    c.fit.least_engagement->value = 2;
    SheetSpec& sheet = c.sheets.at("cast-acrylic");
    for (const double spread : {0.001, 0.003, 0.005}) {
        sheet.spread_along.value = sheet.spread_across.value = spread;
        const auto sums = fit::solve(c);
        const auto findings = fit::checks(c, sums, fit::layout(c, sums));
        const bool kept = std::all_of(findings.begin(), findings.end(), [](const Finding& each) {
            return (each.code != Code::fit_engagement && each.code != Code::fit_room &&
                    each.code != Code::fit_face_clearance) ||
                   each.status == Status::pass;
        });
        ASSERT_TRUE(kept) << spread;
        EXPECT_EQ(first_time_fit(c, sums, {50'000, 9}).fit.value, 1) << spread;
    }
}

TEST(FirstTimeFit, fails_a_pane_under_its_least_chance) {
    Chance chance;
    chance.panes = {{CaseSide::front, {0.94, 0.001}}, {CaseSide::back, {0.99, 0.001}}};
    const auto findings = chance_checks(chance);
    ASSERT_EQ(findings.size(), 2U);
    EXPECT_EQ(findings[0].code, Code::fit_chance);
    EXPECT_EQ(findings[0].status, Status::fail);
    EXPECT_FALSE(findings[0].advice.empty());
    EXPECT_EQ(findings[1].status, Status::pass);
}

TEST(FirstTimeFit, wants_a_sample_at_least) {
    const Case c = sample::pilot_boat();
    EXPECT_THROW((void)first_time_fit(c, fit::solve(c), {0, 1}), ContractError);
}

}  // namespace
}  // namespace bowfront::study
