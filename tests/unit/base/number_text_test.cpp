#include "bowfront/base/number_text.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdlib>
#include <limits>
#include <random>

#include "bowfront/base/contract.hpp"
#include "support/comma_locale.hpp"

namespace bowfront {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

TEST(NumberText, reads_back_to_the_same_number) {
    std::mt19937_64 random(7);
    std::uniform_real_distribution<double> draw(-1e4, 1e4);
    for (int i = 0; i < 10000; ++i) {
        const double value = draw(random) * std::pow(10, i % 17 - 8);
        ASSERT_EQ(std::strtod(number_text(value).c_str(), nullptr), value);
    }
    EXPECT_EQ(number_text(0.1), "0.1");
    EXPECT_EQ(number_text(21), "21");
}

TEST(NumberText, gives_zero_no_sign) {
    EXPECT_EQ(number_text(-0.0), "0");
    EXPECT_EQ(fixed_text(-0.0, 2), "0.00");
    EXPECT_EQ(fixed_text(-0.004, 2), "0.00");
    EXPECT_EQ(rounded_text(-0.004, 2), "0");
    EXPECT_EQ(fixed_text(-0.006, 2), "-0.01");
}

TEST(NumberText, keeps_or_drops_trailing_zeros_as_asked) {
    EXPECT_EQ(fixed_text(12.5, 2), "12.50");
    EXPECT_EQ(rounded_text(12.5, 2), "12.5");
    EXPECT_EQ(rounded_text(1200, 2), "1200");
    EXPECT_EQ(rounded_text(100, 0), "100");
    EXPECT_EQ(fixed_text(1e300, 0).size(), 301U);
}

TEST(NumberText, lets_no_number_through_that_is_none) {
    for (const double value : {std::nan(""), kInfinity, -kInfinity}) {
        EXPECT_THROW((void)number_text(value), ContractError);
        EXPECT_THROW((void)fixed_text(value, 2), ContractError);
        EXPECT_THROW((void)rounded_text(value, 2), ContractError);
    }
    EXPECT_THROW((void)fixed_text(1, -1), ContractError);
    EXPECT_THROW((void)fixed_text(1, 18), ContractError);
}

TEST(NumberText, does_not_ask_the_locale) {
    const CommaLocale locale;
    if (!locale.found()) {
        GTEST_SKIP() << "no locale with a decimal comma is installed";
    }
    EXPECT_EQ(number_text(1234.5), "1234.5");
    EXPECT_EQ(fixed_text(1234.5, 3), "1234.500");
    EXPECT_EQ(rounded_text(1234.5, 3), "1234.5");
}

}  // namespace
}  // namespace bowfront
