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
