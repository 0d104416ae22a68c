#include "bowfront/study/student.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "bowfront/base/contract.hpp"

namespace bowfront::study {
namespace {

constexpr double kPrinted = 0.5e-3;  // half of the last digit of a table with three decimals
constexpr double kPrinted4 = 0.5e-4;
constexpr double kStated = 1e-9;  // relative error that the header promises

struct Row {
    int freedom;
    double at_95, at_99;  // both sides together
};

// Source: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2, upper critical values of
// Student's t distribution, columns 0.975 and 0.995 (0.025 and 0.005 to one side).
constexpr Row kTable[] = {
    {1, 12.706, 63.657}, {2, 4.303, 9.925},  {3, 3.182, 5.841},  {4, 2.776, 4.604},
    {5, 2.571, 4.032},   {6, 2.447, 3.707},  {7, 2.365, 3.499},  {8, 2.306, 3.355},
    {9, 2.262, 3.250},   {10, 2.228, 3.169}, {11, 2.201, 3.106}, {12, 2.179, 3.055},
    {15, 2.131, 2.947},  {20, 2.086, 2.845}, {25, 2.060, 2.787}, {29, 2.045, 2.756},
    {30, 2.042, 2.750},  {40, 2.021, 2.704}, {60, 2.000, 2.660}, {100, 1.984, 2.626}};

TEST(StudentT, is_that_of_the_printed_table) {
    for (const Row& row : kTable) {
        EXPECT_NEAR(student_t(0.05, row.freedom), row.at_95, kPrinted) << row.freedom;
        EXPECT_NEAR(student_t(0.01, row.freedom), row.at_99, kPrinted) << row.freedom;
    }
}

TEST(StudentT, has_its_closed_form_at_one_and_two_degrees_of_freedom) {
    for (const double outside : {0.9, 0.5, 0.05, 1e-3, 1e-6}) {
        // The Cauchy distribution, and F(t) = 1/2 + t/(2·√(2 + t²)) solved for t.
        const double one = 1 / std::tan(outside * std::numbers::pi / 2);
        EXPECT_NEAR(student_t(outside, 1), one, kStated * one) << outside;
        const double two = (1 - outside) * std::sqrt(2 / (outside * (2 - outside)));
        EXPECT_NEAR(student_t(outside, 2), two, kStated * two) << outside;
    }
}

// Share outside ±t, from the density itself by Simpson's rule: nothing shared with the sums.
double outside_by_density(double t, int freedom) {
    const double nu = freedom;
    const double scale = std::exp(std::lgamma((nu + 1) / 2) - std::lgamma(nu / 2)) /
                         std::sqrt(nu * std::numbers::pi);
    const auto density = [&](double x) {
        return scale * std::pow(1 + x * x / nu, -(nu + 1) / 2);
    };
    constexpr int kStrips = 20'000;
    const double width = t / kStrips;
    double sum = density(0) + density(t);
    for (int i = 1; i < kStrips; ++i) {
        sum += density(i * width) * (i % 2 != 0 ? 4 : 2);
    }
    return 1 - 2 * sum * width / 3;
}

TEST(StudentT, leaves_the_share_outside_that_its_density_does) {
    // lgamma at 5000 carries some 1e-12 of relative error into the density.
    constexpr double kDensity = 1e-10;
    for (const int freedom : {1, 2, 3, 4, 7, 12, 49, 200, 9999}) {
        for (const double outside : {0.3, 0.05, 0.01, 0.001}) {
            const double t = student_t(outside, freedom);
            EXPECT_NEAR(outside_by_density(t, freedom), outside, kDensity)
                << freedom << ' ' << outside;
        }
    }
}

TEST(StudentT, comes_down_to_the_normal_distribution) {
    // Source: the same handbook, last row of the table: 1.960 and 2.576
    EXPECT_NEAR(student_t(0.05, 1'000'000), 1.960, kPrinted);
    EXPECT_NEAR(student_t(0.01, 1'000'000), 2.576, kPrinted);
}

TEST(StudentT, is_not_asked_outside_its_range) {
    EXPECT_THROW((void)student_t(0, 5), ContractError);
    EXPECT_THROW((void)student_t(1, 5), ContractError);
    EXPECT_THROW((void)student_t(std::nan(""), 5), ContractError);
    EXPECT_THROW((void)student_t(0.05, 0), ContractError);
    EXPECT_THROW((void)student_t(0.05, 1'000'001), ContractError);
}

TEST(GrubbsLimit, is_that_of_the_printed_tables) {
    // Source: table of critical values of the test for one outlier at 5 % (both sides), as in
    // ISO 5725-2, table 5; the row of 7, misprinted in the reproduction that was read, is left out.
    constexpr struct {
        int count;
        double limit;
    } kLimits[] = {{3, 1.155},  {4, 1.481},  {5, 1.715},  {6, 1.887},  {8, 2.126},
                   {9, 2.215},  {10, 2.290}, {11, 2.355}, {12, 2.412}, {13, 2.462},
                   {14, 2.507}, {15, 2.549}};
    constexpr double kTableDigit = 1e-3;  // the tables differ by one in the last place
    for (const auto& row : kLimits) {
        EXPECT_NEAR(grubbs_limit(row.count, 0.05), row.limit, kTableDigit) << row.count;
    }
    // Source: the same table at 1 %
    EXPECT_NEAR(grubbs_limit(5, 0.01), 1.764, kTableDigit);
    EXPECT_NEAR(grubbs_limit(8, 0.01), 2.274, kTableDigit);
    EXPECT_NEAR(grubbs_limit(12, 0.01), 2.636, kTableDigit);
}

TEST(GrubbsLimit, at_twice_the_level_is_the_limit_to_one_side) {
    // Source: NIST/SEMATECH e-Handbook, 1.3.5.17.1, the worked example: 8 measurements, 5 % to the
    // upper side alone (from memory)
    EXPECT_NEAR(grubbs_limit(8, 2 * 0.05), 2.032, kPrinted);
}

TEST(GrubbsLimit, of_three_measurements_lies_just_under_the_farthest_that_one_can_lie) {
    // Geometry: of n values one lies at most (n − 1)/√n standard deviations from their mean; at
    // n = 3, t is the Cauchy distribution's.
    const double t = 1 / std::tan(0.05 / 3 * std::numbers::pi / 2);
    const double farthest = 2 / std::sqrt(3.0);
    EXPECT_NEAR(grubbs_limit(3, 0.05), farthest * t / std::sqrt(1 + t * t), kStated);
    EXPECT_LT(grubbs_limit(3, 0.05), farthest);
    EXPECT_NEAR(grubbs_limit(3, 0.05), 1.1543, kPrinted4);
}

TEST(GrubbsLimit, is_not_asked_outside_its_range) {
    EXPECT_THROW((void)grubbs_limit(2, 0.05), ContractError);
    EXPECT_THROW((void)grubbs_limit(8, 0), ContractError);
    EXPECT_THROW((void)grubbs_limit(8, 1), ContractError);
}

}  // namespace
}  // namespace bowfront::study
