#include "bowfront/whole/cost.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "bowfront/base/contract.hpp"
#include "support/sample_case.hpp"
#include "weighed_case.hpp"

namespace bowfront::whole {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

// Some dozens of operations on amounts under 10 000 of a currency.
constexpr double kRounding = 1e-9;

MaterialPrice price(const std::string& material, std::optional<double> thickness, double amount,
                    PriceUnit unit) {
    return {material, thickness, sample::given(amount, "/prices/materials/" + material), unit};
}

Case priced(std::vector<MaterialPrice> materials) {
    Case c = sample::pilot_boat();
    c.prices = Prices{"EUR", sample::given(0.25, "/prices/waste"), std::move(materials), {}};
    return c;
}

std::vector<Part> all_parts(const Case& c) {
    const WeighedCase weighed(c);
    std::vector<Part> all = weighed.parts;
    for (Part& part : pattern::form_parts(c, weighed.sums.forms.at(0))) {
        all.push_back(std::move(part));
    }
    return all;
}

// The blanks of the pilot boat's panes, one curved and three flat, by their lengths and widths.
double blanks(const Case& c) {
    double area = 0;
    for (const auto& pane : fit::solve(c).panes) {
        area += pane.blank_length * pane.blank_width;
    }
    return area;
}

TEST(Cost, of_sheet_is_that_of_its_blanks_and_waste) {
    const Case c = priced({price("cast-acrylic", {}, 62, PriceUnit::square_metre)});
    const CostSums<double> sums = cost_sums(c, WeighedCase(c).parts);
    ASSERT_EQ(sums.rows.size(), 1U);
    const CostRow<double>& row = sums.rows[0];
    EXPECT_EQ(row.id, "cast-acrylic-3");
    EXPECT_EQ(row.what, "cast-acrylic 3 mm");
    EXPECT_EQ(row.thickness, 3);
    EXPECT_NEAR(row.net, blanks(c) * 1e-6, kRounding);
    EXPECT_NEAR(row.quantity, blanks(c) * 1e-6 * 1.25, kRounding);
    EXPECT_NEAR(row.cost, blanks(c) * 1e-6 * 1.25 * 62, kRounding);
    EXPECT_EQ(sums.total, row.cost);
    EXPECT_EQ(sums.currency, "EUR");
    EXPECT_THAT(sums.not_priced, ElementsAre("cherry"));
}

TEST(Cost, by_the_sheet_counts_whole_sheets_of_the_stock) {
    const Case c = priced({price("cast-acrylic", 3, 93, PriceUnit::sheet)});
    const CostSums<double> sums = cost_sums(c, WeighedCase(c).parts);
    const double sheets = blanks(c) * 1.25 / (1000 * 1500);
    ASSERT_EQ(sums.rows.size(), 1U);
    EXPECT_NEAR(sums.rows[0].net, sheets / 1.25, kRounding);
    EXPECT_EQ(sums.rows[0].quantity, std::ceil(sheets));
    EXPECT_EQ(sums.rows[0].cost, std::ceil(sheets) * 93);
}

// Posts as the squares round their sections, boards as the rectangles round their outlines.
TEST(Cost, of_timber_is_by_its_volume) {
    Case c = sample::straight_front();
    c.frame.post.section.value = PostSection::square;
    c.prices = Prices{"USD",
                      sample::given(0.0, "/prices/waste"),
                      {price("cherry", {}, 9.5, PriceUnit::board_foot)},
                      {}};
    const CostSums<double> sums = cost_sums(c, WeighedCase(c).parts);
    ASSERT_EQ(sums.rows.size(), 1U);
    const double volume = 568.0 * 288 * (20 + 24) + 4 * 42.0 * 42 * 380;
    const double board_feet = volume / (144 * 25.4 * 25.4 * 25.4);
    EXPECT_EQ(sums.rows[0].id, "cherry");
    EXPECT_FALSE(sums.rows[0].thickness);
    EXPECT_NEAR(sums.rows[0].net, board_feet, kRounding);
    EXPECT_NEAR(sums.rows[0].cost, board_feet * 9.5, kRounding);
}

TEST(Cost, takes_the_price_of_the_thickness_before_that_of_all) {
    Case c = priced({price("plywood", {}, 20, PriceUnit::square_metre),
                     price("plywood", 18, 40, PriceUnit::square_metre)});
    const CostSums<double> sums = cost_sums(c, all_parts(c));
    double thin = 0;
    double thick = 0;
    for (const auto& row : sums.rows) {
        (row.thickness == 18 ? thick : thin) = row.price;
    }
    EXPECT_EQ(thick, 40);
    EXPECT_EQ(thin, 20);
}

TEST(Cost, of_a_sheet_of_the_maker_s_own_is_that_of_the_sheet_it_is_like) {
    Case c = priced({price("cast-acrylic", {}, 62, PriceUnit::square_metre)});
    SheetSpec own = c.sheets.at("cast-acrylic");
    own.key = "batch 7/a";
    c.sheets.emplace(own.key, own);
    c.panes[0].sheet = own.key;
    const CostSums<double> sums = cost_sums(c, WeighedCase(c).parts);
    ASSERT_EQ(sums.rows.size(), 2U);
    EXPECT_EQ(sums.rows[0].id, "batch-7-a-3");
    EXPECT_EQ(sums.rows[0].price, 62);
}

TEST(Cost, counts_hardware_without_waste) {
    Case c = priced({});
    c.prices->hardware = {
        {"brass screw 4 x 40", 24, sample::given(0.15, "/prices/hardware/0/price")}};
    const CostSums<double> sums = cost_sums(c, WeighedCase(c).parts);
    ASSERT_EQ(sums.rows.size(), 1U);
    EXPECT_EQ(sums.rows[0].id, "hardware-1");
    EXPECT_EQ(sums.rows[0].quantity, 24);
    EXPECT_NEAR(sums.total, 3.6, kRounding);
    EXPECT_THAT(sums.not_priced, ElementsAre("cherry", "cast-acrylic 3 mm"));
}

TEST(Cost, is_the_same_traced) {
    Case c = priced({price("cast-acrylic", {}, 62, PriceUnit::square_metre),
                     price("cherry", {}, 2400, PriceUnit::cubic_metre)});
    const auto parts = all_parts(c);
    const CostSums<double> plain = cost_sums(c, parts);
    Workings workings;
    const CostSums<Traced> traced = cost_sums(c, parts, workings);
    EXPECT_EQ(traced.total.value(), plain.total);
    EXPECT_THAT(explain(workings, "cost/total"), HasSubstr("K[cherry] + K[cast-acrylic-3]"));
    EXPECT_EQ(workings.find("cost/rows/cherry/net")->value, plain.rows[0].net);
}

TEST(Cost, without_prices_is_refused) {
    const Case c = sample::pilot_boat();
    EXPECT_THROW((void)cost_sums(c, WeighedCase(c).parts), ContractError);
}

}  // namespace
}  // namespace bowfront::whole
