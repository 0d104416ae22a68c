#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "case_text.hpp"

namespace bowfront::io {
namespace {

using testing::HasSubstr;

std::string holding(const std::string& prices) {
    return pilot_boat_with("\"cutter\":", "\"prices\": { " + prices + " },\n  \"cutter\":");
}

std::string with_material(const std::string& entry) {
    return holding(R"("currency": "EUR", "materials": [ )" + entry + " ]");
}

TEST(Prices, are_none_where_the_file_leaves_them_out) {
    EXPECT_FALSE(read_case(pilot_boat(), "case.json").value.prices);
}

TEST(Prices, are_read_with_their_units) {
    const ReadCase file = read_case(holding(R"("currency": "EUR", "materials": [
    { "material": "cast-acrylic", "thickness": 3, "price": "62 /m2" },
    { "material": "plywood", "price": "38 /sheet" },
    { "material": "cherry", "price": "9.50 per board foot" } ],
    "hardware": [ { "name": "brass screw", "count": 24, "price": "0.15 /each" } ])"),
                                    "case.json");
    const Prices& prices = file.value.prices.value();
    EXPECT_EQ(prices.currency, "EUR");
    EXPECT_EQ(*prices.waste, 0.15);
    EXPECT_EQ(assumed_at(file, "/prices/waste").value, "15 %");
    ASSERT_EQ(prices.materials.size(), 3U);
    EXPECT_EQ(prices.materials[0].thickness, 3);
    EXPECT_EQ(*prices.materials[0].amount, 62);
    EXPECT_EQ(prices.materials[0].amount.origin.pointer, "/prices/materials/0/price");
    EXPECT_FALSE(prices.materials[1].thickness);
    EXPECT_EQ(prices.materials[1].unit, PriceUnit::sheet);
    EXPECT_EQ(prices.materials[2].unit, PriceUnit::board_foot);
    ASSERT_EQ(prices.hardware.size(), 1U);
    EXPECT_EQ(prices.hardware[0].count, 24);
    EXPECT_EQ(*prices.hardware[0].amount, 0.15);
}

TEST(Prices, need_a_currency) {
    EXPECT_THAT(fault_text(holding("\"waste\": \"10 %\"")),
                HasSubstr("BF-IN-006 /prices/currency"));
}

TEST(Prices, need_the_unit_that_their_material_is_sold_by) {
    EXPECT_THAT(fault_text(with_material(R"({ "material": "cherry", "price": "62 /m2" })")),
                HasSubstr("BF-IN-010 /prices/materials/0: a price by \"m2\" of cherry; a price of "
                          "timber by its volume, \"/m3\" or \"/bf\""));
    EXPECT_THAT(fault_text(with_material(R"({ "material": "plywood", "price": "900 /m3" })")),
                HasSubstr("BF-IN-010 /prices/materials/0: a price by \"m3\" of plywood; a price by "
                          "the area or the sheet"));
    EXPECT_THAT(fault_text(with_material(R"({ "material": "plywood", "price": "9 /each" })")),
                HasSubstr("BF-IN-010"));
    EXPECT_THAT(fault_text(with_material(R"({ "material": "plywood", "price": 38 })")),
                HasSubstr("BF-IN-010 /prices/materials/0/price: a bare number, 38; a price with "
                          "its unit"));
    EXPECT_THAT(fault_text(with_material(R"({ "material": "plywood", "price": "38 /kg" })")),
                HasSubstr("BF-IN-010 /prices/materials/0/price: \"38 /kg\" has \"/kg\" for what it "
                          "is the price of"));
    EXPECT_THAT(fault_text(holding(R"("currency": "EUR",
    "hardware": [ { "name": "felt", "count": 1, "price": "9 /m2" } ])")),
                HasSubstr("BF-IN-010 /prices/hardware/0: a price by \"m2\" of hardware; a price by "
                          "the piece, \"/each\""));
}

TEST(Prices, by_the_sheet_need_stock_that_says_how_large_it_is) {
    EXPECT_EQ(fault_text(with_material(R"({ "material": "plywood", "price": "38 /sheet" })")), "");
    EXPECT_THAT(
        fault_text(
            with_material(R"({ "material": "plywood", "thickness": 12, "price": "38 /sheet" })")),
        HasSubstr("BF-IN-008 /prices/materials/0: a price by \"sheet\" of plywood, and no stock of "
                  "it says how large a sheet is; a sheet of it under \"stock\""));
}

TEST(Prices, are_lists_of_a_thousand_at_most) {
    EXPECT_EQ(faults_of(holding(R"("currency": "EUR", "materials": 5)")).size(), 1U);
    std::string many;
    for (int i = 0; i < 1001; ++i) {
        many += i == 0 ? "" : ", ";
        many += R"({ "name": "screw", "count": 1, "price": "1 /each" })";
    }
    EXPECT_THAT(fault_text(holding(R"("currency": "EUR", "hardware": [ )" + many + " ]")),
                HasSubstr("BF-IN-009 /prices/hardware: the list has 1001 prices; at most 1000"));
}

TEST(Prices, of_timber_know_no_thickness) {
    EXPECT_THAT(fault_text(with_material(
                    R"({ "material": "cherry", "thickness": 20, "price": "2400 /m3" })")),
                HasSubstr("BF-IN-008 /prices/materials/0"));
}

TEST(Prices, name_a_material_that_is_known_and_each_once) {
    EXPECT_THAT(fault_text(with_material(R"({ "material": "chery", "price": "2400 /m3" })")),
                HasSubstr("BF-IN-004 /prices/materials/0/material: \"chery\" is not known here; "
                          "did you mean \"cherry\"?"));
    EXPECT_THAT(fault_text(with_material(R"({ "material": "cherry", "price": "2400 /m3" },
    { "material": "cherry", "price": "2500 /m3" })")),
                HasSubstr("BF-IN-008 /prices/materials/1: a second price of \"cherry\""));
}

}  // namespace
}  // namespace bowfront::io
