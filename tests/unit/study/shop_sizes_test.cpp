#include "bowfront/study/shop_sizes.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "bowfront/base/contract.hpp"
#include "bowfront/fit/checks.hpp"
#include "support/sample_case.hpp"

namespace bowfront::study {
namespace {

using sample::given;
using testing::DoubleNear;

// Rounding of a quotient and a product of sizes up to 1 m.
constexpr double kRounding = 1e-12;

ShopSizes sizes_of(const Case& c) { return shop_sizes(c, fit::solve(c)); }

const PaneShopSizes& pane_of(const ShopSizes& sizes, CaseSide side) {
    return *std::find_if(sizes.panes.begin(), sizes.panes.end(),
                         [side](const PaneShopSizes& pane) { return pane.side == side; });
}

// The least that any limit of the fit leaves one side, by the checks of the whole case.
double least_margin(const Case& c, std::string_view side) {
    const fit::Solution solved = fit::solution(c);
    EXPECT_TRUE(solved.objections.empty());
    double least = 1e9;
    for (const Finding& finding : fit::checks(c, solved.sums, solved.layout)) {
        const bool of_size = finding.code == Code::fit_engagement || finding.code == Code::fit_room;
        // The bottom's engagement is the depth of the base's groove, whatever the pane's size.
        if (of_size && finding.about.starts_with(side) && !finding.about.ends_with("bottom")) {
            least = std::min({least, finding.margin(), finding.worst_margin()});
        }
    }
    return least;
}

Case cut_to(Case c, std::size_t pane, double length, double width) {
    c.panes[pane].blank.method.value = BlankMethod::as_cut;
    c.panes[pane].blank.length = given(length, "/blank/length");
    c.panes[pane].blank.width = given(width, "/blank/width");
    return c;
}

TEST(WholeSteps, are_counted_down_or_up_and_stay_where_they_are_whole) {
    EXPECT_EQ(whole_steps(550.97, 0.5, Rounding::down), 550.5);
    EXPECT_EQ(whole_steps(550.97, 0.5, Rounding::up), 551);
    EXPECT_EQ(whole_steps(222.0, 0.5, Rounding::down), 222);
    EXPECT_EQ(whole_steps(222.0, 0.5, Rounding::up), 222);
    // 393.7 mm is 15 1/2 in
    EXPECT_THAT(whole_steps(393.7 + 1e-10, 25.4 / 32, Rounding::up),
                DoubleNear(393.7, kRounding));
    EXPECT_EQ(whole_steps(0.3, 0.5, Rounding::down), 0);
    EXPECT_THROW((void)whole_steps(1, 0, Rounding::down), ContractError);
    EXPECT_THROW((void)whole_steps(-1, 0.5, Rounding::down), ContractError);
}

TEST(ShopSizes, of_the_pilot_boat_are_whole_half_millimetres) {
    const ShopSizes sizes = sizes_of(sample::pilot_boat());
    const PaneShopSizes& front = pane_of(sizes, CaseSide::front);
    EXPECT_EQ(front.length.size, 550.5);
    EXPECT_EQ(front.width.size, 399);
    EXPECT_THAT(front.length.over(), DoubleNear(550.5 - front.length.exact, kRounding));
    const PaneShopSizes& back = pane_of(sizes, CaseSide::back);
    EXPECT_THAT(back.length.over(), DoubleNear(0, kRounding));
    EXPECT_THAT(back.width.size, DoubleNear(393.5, kRounding));
    EXPECT_EQ(sizes.post.size, 380);
}

// The way that a size is rounded is held to the checks of a whole case that is cut so, which are
// told nothing of shop sizes.
TEST(ShopSizes, go_the_way_that_the_checks_leave_more_to) {
    std::mt19937 random(20);
    std::uniform_real_distribution<double> clearance(0.5, 9);
    std::uniform_real_distribution<double> height(300, 420);
    int up = 0;
    for (int i = 0; i < 40; ++i) {
        Case c = sample::pilot_boat();
        c.fit.end_clearance.value = clearance(random);
        c.fit.top_clearance.value = clearance(random);
        c.frame.clear_height.value = std::round(height(random));
        const ShopSizes sizes = sizes_of(c);
        const PaneShopSizes& back = pane_of(sizes, CaseSide::back);
        double most = -1e9;
        for (const Rounding length : {Rounding::down, Rounding::up}) {
            for (const Rounding width : {Rounding::down, Rounding::up}) {
                const Case cut = cut_to(c, 3, whole_steps(back.length.exact, 0.5, length),
                                        whole_steps(back.width.exact, 0.5, width));
                most = std::max(most, least_margin(cut, "back"));
            }
        }
        const Case chosen = cut_to(c, 3, back.length.size, back.width.size);
        EXPECT_THAT(least_margin(chosen, "back"), DoubleNear(most, 1e-9)) << i;
        EXPECT_THAT(back.slack.worst, DoubleNear(most, 1e-9)) << i;
        up += back.length.size > back.length.exact ? 1 : 0;
    }
    // Both ways are taken: the property is not that of rounding down.
    EXPECT_GT(up, 0);
    EXPECT_LT(up, 40);
}

TEST(ShopSizes, of_posts_off_the_steps_hold_for_panes_of_either_cut) {
    Case c = sample::pilot_boat();
    c.frame.clear_height.value = 380.3;
    const ShopSizes sizes = sizes_of(c);
    EXPECT_TRUE(sizes.post.size == 380.0 || sizes.post.size == 380.5);
    const PaneShopSizes& back = pane_of(sizes, CaseSide::back);
    Case short_posts = cut_to(c, 3, back.length.size, back.width.size);
    const double exact_posts = least_margin(short_posts, "back");
    short_posts.frame.clear_height.value = sizes.post.size;
    EXPECT_THAT(back.slack.worst,
                DoubleNear(std::min(exact_posts, least_margin(short_posts, "back")), 1e-9));
}

TEST(ShopSizes, of_a_pane_trimmed_after_forming_go_up_for_the_blank) {
    Case c = sample::pilot_boat();
    c.panes[0].blank.method.value = BlankMethod::trim_after;
    c.panes[0].blank.trim = given(10.0, "/blank/trim");
    const PaneShopSizes front = pane_of(sizes_of(c), CaseSide::front);
    EXPECT_GT(front.length.size, front.length.exact);
    EXPECT_LT(front.length.over(), 0.5);
    ASSERT_TRUE(front.trimmed_length && front.trimmed_height);
    EXPECT_THAT(std::remainder(front.trimmed_length->size, 0.5), DoubleNear(0, kRounding));
    EXPECT_LE(std::abs(front.trimmed_length->over()), 0.5);
}

TEST(ShopSizes, of_a_blank_that_is_cut_already_are_what_it_is) {
    const Case c = cut_to(sample::pilot_boat(), 0, 549.73, 398.21);
    const PaneShopSizes front = pane_of(sizes_of(c), CaseSide::front);
    EXPECT_EQ(front.length.size, 549.73);
    EXPECT_EQ(front.width.size, 398.21);
    EXPECT_EQ(front.slack.worst, front.exact.worst);
}

TEST(ShopChecks, warn_where_only_the_rounding_breaks_a_limit) {
    Case c = sample::pilot_boat();
    EXPECT_EQ(verdict(shop_checks(sizes_of(c))), Status::pass);
    // Rounded to 20 mm, no way leaves the back's top both room and engagement at worst.
    c.shop.step.value = 20;
    const std::vector<Finding> findings = shop_checks(sizes_of(c));
    const auto back = std::find_if(findings.begin(), findings.end(),
                                   [](const Finding& finding) { return finding.about == "back"; });
    ASSERT_NE(back, findings.end());
    EXPECT_EQ(back->code, Code::fit_shop_size);
    EXPECT_EQ(back->status, Status::fail);
    EXPECT_FALSE(back->advice.empty());
}

TEST(ShopChecks, blame_no_rounding_for_what_the_exact_sizes_break) {
    Case c = sample::pilot_boat();
    c.fit.top_clearance.value = 9.2;  // too little engagement at the top, whatever the step
    const ShopSizes sizes = sizes_of(c);
    const PaneShopSizes& back = pane_of(sizes, CaseSide::back);
    EXPECT_LT(back.exact.nominal, 0);
    EXPECT_EQ(shop_checks(sizes)[3].status, Status::pass) << "it was rounded up";
    EXPECT_GT(back.width.size, back.width.exact);
}

TEST(ShopFigures, name_every_size_and_its_steps) {
    const Case c = sample::pilot_boat();
    Workings workings;
    const CaseSums<Traced> sums = fit::solve(c, workings);
    const ShopSizes sizes = sizes_of(c);
    explain_shop_sizes(c, sizes, workings);
    const Figure* const length = workings.find("panes/front/blank/shop/length/size");
    ASSERT_NE(length, nullptr);
    EXPECT_EQ(length->value, sizes.panes[0].length.size);
    EXPECT_EQ(length->formula, "n·δ");
    const Figure* const over = workings.find("panes/front/blank/shop/length/over");
    ASSERT_NE(over, nullptr);
    EXPECT_EQ(over->value, sizes.panes[0].length.over());
    EXPECT_NE(workings.find("shop/post_length/size"), nullptr);
}

}  // namespace
}  // namespace bowfront::study
