#include "bowfront/units/price.hpp"

#include <gtest/gtest.h>

namespace bowfront {
namespace {

using Kind = QuantityFault::Kind;

void expect_price(std::string_view text, double amount, PriceUnit unit) {
    const PriceRead read = parse_price(text);
    ASSERT_TRUE(read) << text << ": " << read.fault().found;
    EXPECT_EQ(read.value().amount, amount) << text;
    EXPECT_EQ(read.value().unit, unit) << text;
}

TEST(Price, is_read_with_what_it_is_for_one_of) {
    expect_price("62 /m2", 62, PriceUnit::square_metre);
    expect_price("62/m²", 62, PriceUnit::square_metre);
    expect_price(" 5.5 per ft2 ", 5.5, PriceUnit::square_foot);
    expect_price("38 / sheet", 38, PriceUnit::sheet);
    expect_price("2400 /m3", 2400, PriceUnit::cubic_metre);
    expect_price("9.50 /bf", 9.5, PriceUnit::board_foot);
    expect_price("9.50 per board foot", 9.5, PriceUnit::board_foot);
    expect_price("0.15 /each", 0.15, PriceUnit::each);
    expect_price("1/4 /piece", 0.25, PriceUnit::each);
    expect_price("9 1/2 per board foot", 9.5, PriceUnit::board_foot);
}

TEST(Price, without_a_known_unit_is_refused) {
    EXPECT_EQ(parse_price("62").fault().kind, Kind::unit);
    EXPECT_EQ(parse_price("62").fault().found, "\"62\" does not say what it is the price of");
    EXPECT_EQ(parse_price("62 m2").fault().kind, Kind::unit);
    EXPECT_EQ(parse_price("62 /kg").fault().kind, Kind::unit);
    EXPECT_EQ(parse_price("62 EUR/m2").fault().kind, Kind::unit);
    EXPECT_FALSE(parse_price("62 /m2 per each"));
    EXPECT_EQ(parse_price("62 /").fault().kind, Kind::unit);
}

TEST(Price, without_a_number_is_refused) {
    for (const std::string_view text : {"", "/m2", "-62 /m2", "EUR 62 /m2"}) {
        EXPECT_EQ(parse_price(text).fault().kind, Kind::form) << text;
        EXPECT_NE(parse_price(text).fault().wanted, "") << text;
    }
    EXPECT_EQ(parse_price("1e999 /m2").fault().kind, Kind::size);
}

TEST(PriceUnit, is_printed_as_it_is_read) {
    for (const PriceUnit unit : {PriceUnit::square_metre, PriceUnit::square_foot, PriceUnit::sheet,
                                 PriceUnit::cubic_metre, PriceUnit::board_foot, PriceUnit::each}) {
        const std::string text = "3 /" + std::string(price_unit_text(unit));
        expect_price(text, 3, unit);
    }
}

// A board foot is 144 in³, a twelfth of a cubic foot: 423.776 boards of it are a cubic metre.
TEST(PriceUnit, has_its_size_in_millimetres) {
    EXPECT_EQ(unit_size(PriceUnit::square_metre), 1e6);
    EXPECT_EQ(unit_size(PriceUnit::cubic_metre), 1e9);
    EXPECT_DOUBLE_EQ(unit_size(PriceUnit::square_foot), 92903.04);
    EXPECT_DOUBLE_EQ(unit_size(PriceUnit::board_foot), 144 * 25.4 * 25.4 * 25.4);
    EXPECT_NEAR(1e9 / unit_size(PriceUnit::board_foot), 423.776, 5e-4);
    EXPECT_EQ(measure_of(PriceUnit::board_foot), Measure::volume);
    EXPECT_EQ(measure_of(PriceUnit::square_foot), Measure::area);
    EXPECT_EQ(measure_of(PriceUnit::sheet), Measure::sheets);
    EXPECT_EQ(measure_of(PriceUnit::each), Measure::pieces);
}

}  // namespace
}  // namespace bowfront
