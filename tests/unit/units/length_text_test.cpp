#include "bowfront/units/length_text.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "bowfront/base/contract.hpp"
#include "bowfront/units/quantity.hpp"

namespace bowfront {
namespace {

TEST(MillimetreText, has_up_to_three_decimals) {
    EXPECT_EQ(millimetre_text(412.6), "412.6 mm");
    EXPECT_EQ(millimetre_text(439.7375), "439.738 mm");
    EXPECT_EQ(millimetre_text(18), "18 mm");
    EXPECT_EQ(millimetre_text(-0.0001), "0 mm");
    EXPECT_THROW((void)millimetre_text(std::nan("")), ContractError);
}

TEST(InchText, is_a_fraction_where_it_is_a_64th) {
    EXPECT_EQ(inch_text(439.7375), "17 5/16 in");
    EXPECT_EQ(inch_text(19.05), "3/4 in");
    EXPECT_EQ(inch_text(25.4), "1 in");
    EXPECT_EQ(inch_text(0), "0 in");
    EXPECT_EQ(inch_text(25.4 / 64), "1/64 in");
    EXPECT_EQ(inch_text(-38.1), "-1 1/2 in");
}

TEST(InchText, has_decimals_where_it_is_no_64th) {
    EXPECT_EQ(inch_text(412.6), "16.2441 in");
    EXPECT_EQ(inch_text(3), "0.1181 in");
    EXPECT_EQ(inch_text(-3), "-0.1181 in");
    EXPECT_EQ(inch_text(1e20), "3937007874015748096 in");
    EXPECT_THROW((void)inch_text(std::numeric_limits<double>::infinity()), ContractError);
}

TEST(InchText, reads_back_to_the_length_it_shows) {
    // Half of the fourth decimal of an inch, which is the most that the text leaves out.
    constexpr double kHalfLastPlace = 0.00005 * 25.4 * (1 + 1e-9);
    for (int tenths = 1; tenths < 20000; tenths += 7) {
        const double millimetres = tenths / 10.0;
        const Quantity back = parse_length(inch_text(millimetres));
        ASSERT_TRUE(back) << back.fault().found;
        ASSERT_NEAR(back.value(), millimetres, kHalfLastPlace);
    }
}

}  // namespace
}  // namespace bowfront
