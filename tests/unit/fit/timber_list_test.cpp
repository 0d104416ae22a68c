#include "bowfront/fit/timber_list.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "bowfront/units/volume.hpp"
#include "support/sample_case.hpp"

namespace bowfront::fit {
namespace {

constexpr double kInch = 25.4;
// A dozen operations, relative.
constexpr double kRounding = 1e-14;

TimberList<double> list_of(const Case& c, const std::vector<TimberPiece>& pieces) {
    Book<double> book;
    return timber_list(c, pieces, book);
}

// Source: NIST Handbook 130: a board foot is one foot by one foot by one inch.
TEST(BoardFoot, is_a_foot_square_of_an_inch) {
    EXPECT_DOUBLE_EQ(kBoardFoot, 12 * kInch * (12 * kInch) * kInch);
}

// The example of the header: 325 · 48 · 45 mm³ over 2359737.216 mm³.
TEST(TimberList, adds_the_allowances_and_counts_board_feet) {
    const auto list = list_of(sample::pilot_boat(), {{"post", 1, 300, 42, 42, 300.0 * 42 * 42}});
    ASSERT_EQ(list.rows.size(), 1U);
    EXPECT_EQ(list.rows[0].rough.length, 325);
    EXPECT_EQ(list.rows[0].rough.width, 48);
    EXPECT_EQ(list.rows[0].rough.thickness, 45);
    constexpr double kShown = 5e-5;
    EXPECT_NEAR(list.board_feet, 0.2975, kShown);
    EXPECT_NEAR(list.volume, 325 * 48 * 45 / 1e9, kRounding);
    EXPECT_NEAR(list.cut_away, 1 - 300.0 * 42 * 42 / (325 * 48 * 45), kRounding);
}

TEST(TimberList, of_a_board_foot_without_allowances_is_one) {
    Case c = sample::pilot_boat();
    c.shop.allowance = {};
    const auto list = list_of(c, {{"board", 1, 12 * kInch, 12 * kInch, kInch, kBoardFoot}});
    EXPECT_NEAR(list.board_feet, 1, kRounding);
    EXPECT_NEAR(list.cut_away, 0, kRounding);
}

TEST(TimberList, of_pieces_alike_is_as_many_times_one) {
    const Case c = sample::pilot_boat();
    const TimberPiece one{"rail", 1, 500, 48, 20, 450000};
    TimberPiece three = one;
    three.count = 3;
    const auto alike = list_of(c, {three});
    const auto single = list_of(c, {one, one, one});
    EXPECT_NEAR(alike.board_feet, single.board_feet, kRounding * single.board_feet);
    EXPECT_NEAR(alike.cut_away, single.cut_away, kRounding);
}

TEST(TimberList, is_cut_away_more_the_more_is_allowed) {
    Case c = sample::pilot_boat();
    const std::vector<TimberPiece> pieces{{"rail", 1, 500, 48, 20, 450000}};
    double before = list_of(c, pieces).cut_away;
    for (Sourced<double>* const more :
         {&c.shop.allowance.length, &c.shop.allowance.width, &c.shop.allowance.thickness}) {
        more->value += 2;
        const double now = list_of(c, pieces).cut_away;
        EXPECT_GT(now, before);
        before = now;
    }
}

}  // namespace
}  // namespace bowfront::fit
