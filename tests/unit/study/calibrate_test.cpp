#include "bowfront/study/calibrate.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <random>

#include "bowfront/base/contract.hpp"

namespace bowfront::study {
namespace {

constexpr double kEps = std::numeric_limits<double>::epsilon();
constexpr double kRoundings = 16 * kEps;  // a handful of operations on numbers around 1

std::vector<Coupon> coupons(SheetDirection direction, const std::vector<double>& shrinks) {
    std::vector<Coupon> all;
    for (const double shrink : shrinks) {
        all.push_back({direction, 250, 250 * (1 - shrink), all.size() + 2});
    }
    return all;
}

Series only(const Measurements& measurements) {
    const auto all = calibrate(measurements);
    EXPECT_EQ(all.size(), 1U);
    return all.front();
}

// Michelson's hundred measurements of the speed of light of 1879, in km/s over 299 000.
// Source: NIST Statistical Reference Datasets, univariate summary statistics, "Michelso"; values
// from memory, and proven by the certified figures below, which no slip in them would meet.
constexpr int kMichelson[] = {
    850, 740, 900, 1070, 930, 850, 950, 980, 980, 880, 1000, 980, 930, 650, 760, 810, 1000,
    1000, 960, 960, 960, 940, 960, 940, 880, 800, 850, 880, 900, 840, 830, 790, 810, 880,
    880, 830, 800, 790, 760, 800, 880, 880, 880, 860, 720, 720, 620, 860, 970, 950, 880,
    910, 850, 870, 840, 840, 850, 840, 840, 840, 890, 810, 810, 820, 800, 770, 760, 740,
    750, 760, 910, 920, 890, 860, 880, 720, 840, 850, 850, 780, 890, 840, 780, 810, 760,
    810, 790, 810, 820, 850, 870, 870, 810, 740, 810, 940, 950, 800, 810, 870};

TEST(Describing, gives_the_certified_mean_and_deviation_of_a_reference_data_set) {
    std::vector<double> values;
    for (const int value : kMichelson) {
        values.push_back(299 + value / 1000.0);
    }
    const Sample sample = describe(values);
    // Certified: mean 299.852400000000, standard deviation 0.0790105478190518. Each value is
    // rounded to a double near 300, and the sum of a hundred of them is rounded at each step.
    constexpr double kRounded = 300 * kEps;
    EXPECT_EQ(sample.count, 100U);
    EXPECT_NEAR(sample.mean, 299.8524, 100 * kRounded);
    EXPECT_NEAR(sample.scatter->deviation, 0.0790105478190518, 2 * kRounded);
    EXPECT_NEAR(sample.scatter->standard_error, 0.00790105478190518, kRounded);
}

TEST(Describing, predicts_the_next_value_by_students_t) {
    // Worked by hand: 1, 2, 3, 4, 5 have the mean 3 and s = √2.5; t = 2.776 at 4 degrees of
    // freedom (NIST/SEMATECH e-Handbook, 1.3.6.7.2).
    constexpr double kTablesT = 0.5e-3 * 2;  // half of its last digit, times s·√1.2
    const Sample sample = describe({5, 3, 1, 2, 4});
    EXPECT_DOUBLE_EQ(sample.mean, 3);
    ASSERT_TRUE(sample.scatter);
    EXPECT_DOUBLE_EQ(sample.scatter->deviation, std::sqrt(2.5));
    EXPECT_DOUBLE_EQ(sample.scatter->standard_error, std::sqrt(0.5));
    EXPECT_NEAR(sample.scatter->prediction, 2.776 * std::sqrt(2.5) * std::sqrt(1.2), kTablesT);
}

TEST(Describing, says_nothing_of_the_scatter_of_two_values) {
    EXPECT_FALSE(describe({0.01}).scatter);
    EXPECT_FALSE(describe({0.01, 0.02}).scatter);
    EXPECT_TRUE(describe({0.01, 0.02, 0.03}).scatter);
    EXPECT_THROW((void)describe({}), ContractError);
}

TEST(Prediction, holds_the_next_sample_as_often_as_it_says) {
    // 40 000 draws of 5 samples and a next one; the share has a standard error of 0.0011.
    constexpr int kDraws = 40'000;
    constexpr unsigned kSeed = 7;
    std::mt19937 engine(kSeed);
    const auto uniform = [&engine] { return (static_cast<double>(engine()) + 0.5) * 0x1.0p-32; };
    const auto normal = [&uniform] {  // Box and Muller: the library's own differs by vendor
        return std::sqrt(-2 * std::log(uniform())) * std::cos(2 * std::numbers::pi * uniform());
    };
    int held = 0;
    for (int i = 0; i < kDraws; ++i) {
        const Sample sample = describe({normal(), normal(), normal(), normal(), normal()});
        held += std::abs(normal() - sample.mean) <= sample.scatter->prediction ? 1 : 0;
    }
    const double error = std::sqrt(kConfidence * (1 - kConfidence) / kDraws);
    EXPECT_NEAR(static_cast<double>(held) / kDraws, kConfidence, 4 * error) << "seed " << kSeed;
}

TEST(Calibration, learns_each_direction_from_its_own_coupons) {
    auto all = coupons(SheetDirection::across, {-0.004, -0.005, -0.003});
    for (const Coupon& coupon : coupons(SheetDirection::along, {0.028, 0.030, 0.029, 0.027})) {
        all.push_back(coupon);
    }
    const auto series = calibrate(all);
    ASSERT_EQ(series.size(), 2U);
    EXPECT_EQ(series[0].measure, Measure::shrink_along);
    EXPECT_EQ(series[0].sample.count, 4U);
    EXPECT_NEAR(series[0].sample.mean, 0.0285, kRoundings);
    EXPECT_EQ(series[1].measure, Measure::shrink_across);
    EXPECT_EQ(series[1].sample.count, 3U);
    EXPECT_NEAR(series[1].sample.mean, -0.004, kRoundings);
    EXPECT_EQ(series[0].spread, SpreadVerdict::measured);
    EXPECT_EQ(series[1].spread, SpreadVerdict::measured);
}

TEST(Calibration, has_no_series_for_a_direction_without_coupons) {
    EXPECT_EQ(only(coupons(SheetDirection::across, {0.01})).measure, Measure::shrink_across);
    EXPECT_THROW((void)calibrate(std::vector<Coupon>{}), ContractError);
    EXPECT_THROW((void)calibrate(std::vector<TestArc>{}), ContractError);
}

TEST(Calibration, is_the_same_in_any_unit_of_length) {
    const std::vector<Coupon> in_mm = {{SheetDirection::along, 250, 246.1, 2},
                                       {SheetDirection::along, 251, 247.3, 3},
                                       {SheetDirection::along, 249.5, 245.4, 4}};
    const Series expected = only(in_mm);
    for (const double scale : {0.5, 2.0, 1 / 25.4, 1e-3, 1e3}) {
        std::vector<Coupon> scaled = in_mm;
        for (Coupon& coupon : scaled) {
            coupon.before *= scale;
            coupon.after *= scale;
        }
        const Series series = only(scaled);
        EXPECT_NEAR(series.sample.mean, expected.sample.mean, kRoundings) << scale;
        EXPECT_NEAR(series.sample.scatter->prediction, expected.sample.scatter->prediction,
                    kRoundings)
            << scale;
    }
}

TEST(Calibration, does_not_depend_on_the_order_of_rows) {
    constexpr unsigned kSeed = 11;
    std::mt19937 engine(kSeed);
    std::vector<double> shrinks;
    for (int i = 0; i < 40; ++i) {
        shrinks.push_back(0.01 + 0.01 * (static_cast<double>(engine()) * 0x1.0p-32));
    }
    shrinks.push_back(0.15);
    auto all = coupons(SheetDirection::along, shrinks);
    const Series expected = only(all);
    ASSERT_EQ(expected.outliers.size(), 1U);
    for (int round = 0; round < 20; ++round) {
        std::shuffle(all.begin(), all.end(), engine);
        const Series series = only(all);
        // To the last digit: the same rows give the same entry.
        EXPECT_EQ(series.sample.mean, expected.sample.mean);
        EXPECT_EQ(series.sample.scatter->prediction, expected.sample.scatter->prediction);
        ASSERT_EQ(series.outliers.size(), 1U);
        EXPECT_EQ(series.outliers[0].measured.line, expected.outliers[0].measured.line);
    }
}

TEST(Calibration, refuses_a_spread_that_the_samples_can_not_show) {
    const auto spread_of = [](const std::vector<double>& shrinks) {
        return only(coupons(SheetDirection::along, shrinks)).spread;
    };
    EXPECT_EQ(spread_of({0.015, 0.016}), SpreadVerdict::too_few);
    EXPECT_EQ(spread_of({0.015, 0.015, 0.015}), SpreadVerdict::too_alike);
    EXPECT_EQ(spread_of({0.015, 0.016, 0.017}), SpreadVerdict::measured);
    EXPECT_EQ(spread_of({-0.05, 0.05, 0.15}), SpreadVerdict::too_wide);
}

TEST(Calibration, is_not_asked_of_what_no_sheet_does) {
    EXPECT_THROW((void)calibrate(coupons(SheetDirection::along, {0.21})), ContractError);
    EXPECT_THROW((void)calibrate(coupons(SheetDirection::along, {-0.11})), ContractError);
    EXPECT_THROW((void)calibrate(std::vector<TestArc>{{400, 300, 0, 2}}), ContractError);
}

TEST(Outliers, are_found_as_in_the_handbooks_example) {
    // Source: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.17.1: eight mass spectrometer
    // readings, 245.57 the outlier at G = 2.4687 (values from memory); here as shrinks of 0.1 %.
    constexpr double kPrinted = 0.5e-4;
    std::vector<double> shrinks = {199.31, 199.53, 200.19, 200.82,
                                   201.92, 201.95, 202.18, 245.57};
    for (double& shrink : shrinks) {
        shrink *= 1e-4;
    }
    const Series series = only(coupons(SheetDirection::along, shrinks));
    ASSERT_EQ(series.outliers.size(), 1U);
    EXPECT_EQ(series.outliers[0].measured.line, 9U);
    EXPECT_NEAR(series.outliers[0].distance, 2.4687, 2 * kPrinted);
    // It is told, and still counts.
    EXPECT_EQ(series.sample.count, 8U);
    shrinks.pop_back();
    EXPECT_TRUE(only(coupons(SheetDirection::along, shrinks)).outliers.empty());
}

TEST(Springback, is_the_growth_of_the_inside_radius) {
    // Geometry: half a circle of radius 100 has the chord 200 and the rise 100.
    EXPECT_DOUBLE_EQ((TestArc{80, 200, 100, 2}.inside_radius()), 100);
    EXPECT_DOUBLE_EQ((TestArc{80, 200, 100, 2}.springback()), 0.25);
    // The header's example, and an arc of more than half a circle: radius 100, chord 120, rise 180.
    constexpr double kPrinted = 0.5e-3;
    EXPECT_NEAR((TestArc{400, 300, 27.4, 2}.inside_radius()), 424.284, kPrinted);
    EXPECT_DOUBLE_EQ((TestArc{100, 120, 180, 2}.springback()), 0);
}

TEST(Springback, is_learnt_from_test_arcs) {
    // Arcs over chords of 300 whose radii are 404, 406 and 408 on a form of 400, the rise by
    // f = R − √(R² − c²/4).
    std::vector<TestArc> arcs;
    for (const double radius : {404.0, 406.0, 408.0}) {
        const double rise = radius - std::sqrt(radius * radius - 150.0 * 150.0);
        arcs.push_back({400, 300, rise, arcs.size() + 2});
    }
    const Series series = only(arcs);
    // The difference of two numbers near 400 leaves the rise, near 29, uncertain by 400 epsilons.
    constexpr double kFromRise = 400 * kEps;
    EXPECT_EQ(series.measure, Measure::springback);
    EXPECT_NEAR(series.sample.mean, 0.015, kFromRise);
    EXPECT_NEAR(series.sample.scatter->deviation, 0.005, kFromRise);
    EXPECT_EQ(series.spread, SpreadVerdict::measured);
}

}  // namespace
}  // namespace bowfront::study
