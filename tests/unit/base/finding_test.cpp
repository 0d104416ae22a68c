#include "bowfront/base/finding.hpp"

#include <gtest/gtest.h>

namespace bowfront {
namespace {

Finding finding(double value, double worst, double limit, Bound bound) {
    Finding finding;
    finding.value = value;
    finding.worst = worst;
    finding.limit = limit;
    finding.bound = bound;
    return finding;
}

TEST(Finding, measures_its_margin_on_the_right_side) {
    const Finding above = finding(7.5, 4.5, 3, Bound::at_least);
    EXPECT_EQ(above.margin(), 4.5);
    EXPECT_EQ(above.worst_margin(), 1.5);
    const Finding below = finding(7.5, 9.5, 8, Bound::at_most);
    EXPECT_EQ(below.margin(), 0.5);
    EXPECT_EQ(below.worst_margin(), -1.5);
}

Finding with(Status status, double worst, double limit, Code code = Code::fit_engagement) {
    Finding result = finding(worst, worst, limit, Bound::at_least);
    result.status = status;
    result.code = code;
    return result;
}

TEST(Finding, falls_short_by_a_share_of_its_limit) {
    EXPECT_EQ(with(Status::fail, 1.5, 3).shortfall(), 0.5);
    EXPECT_EQ(with(Status::fail, -0.25, 0).shortfall(), 0.25);
    Finding warned = finding(4, 2, 3, Bound::at_least);
    warned.status = Status::warn;
    EXPECT_DOUBLE_EQ(warned.shortfall(), 1.0 / 3);
    // A warning that breaks no limit.
    EXPECT_LT(with(Status::warn, 5, 3).shortfall(), 0);
}

TEST(WorstFirst, puts_fails_before_warnings_and_the_chance_after_its_like) {
    const std::vector<Finding> all{with(Status::warn, 0, 4), with(Status::fail, 2.5, 3),
                                   with(Status::pass, 9, 3),
                                   with(Status::fail, 0, 0.95, Code::fit_chance),
                                   with(Status::fail, 1, 3), with(Status::warn, -8, 4)};
    std::vector<std::ptrdiff_t> order;
    for (const Finding* const one : worst_first(all)) {
        order.push_back(one - all.data());
    }
    EXPECT_EQ(order, (std::vector<std::ptrdiff_t>{4, 1, 3, 5, 0}));
}

TEST(Verdict, is_the_worst_of_all) {
    EXPECT_EQ(verdict({}), Status::pass);
    Finding warned;
    warned.status = Status::warn;
    Finding failed;
    failed.status = Status::fail;
    EXPECT_EQ(verdict({Finding{}, warned, Finding{}}), Status::warn);
    EXPECT_EQ(verdict({failed, warned, Finding{}}), Status::fail);
}

TEST(Status, has_a_word) {
    EXPECT_EQ(status_text(Status::pass), "pass");
    EXPECT_EQ(status_text(Status::warn), "warn");
    EXPECT_EQ(status_text(Status::fail), "fail");
}

}  // namespace
}  // namespace bowfront
