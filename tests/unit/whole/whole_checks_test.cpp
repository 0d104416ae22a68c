#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <charconv>

#include "support/sample_case.hpp"
#include "weighed_case.hpp"

namespace bowfront::whole {
namespace {

using testing::HasSubstr;

Finding found(const Case& c, const std::string& about) {
    for (Finding& finding : whole_checks(c, WeighedCase(c).whole)) {
        if (finding.about == about) {
            return std::move(finding);
        }
    }
    throw std::logic_error("no check of " + about);
}

// A bow-front that is high for its depth.
Case tall() {
    Case c = sample::pilot_boat();
    c.plan.front = FrontArc{ArcMeasure::rise, sample::given(20.0, "/plan/front/rise")};
    c.plan.depth.value = 130;
    c.frame.clear_height.value = 1500;
    return c;
}

// BF-CASE-001
TEST(WholeChecks, fail_a_case_that_tips_and_pass_it_once_the_hint_is_followed) {
    Case c = tall();
    const Finding fails = found(c, "empty");
    EXPECT_EQ(fails.code, Code::case_tipping);
    EXPECT_EQ(fails.status, Status::fail);
    EXPECT_EQ(fails.limit, 10);
    EXPECT_LT(fails.value, 10);
    EXPECT_THAT(fails.state, HasSubstr("to the "));
    const std::string words = "make the base's margin larger by ";
    ASSERT_THAT(fails.advice, HasSubstr(words));
    double more = 0;
    const char* const number = fails.advice.c_str() + words.size();
    std::from_chars(number, fails.advice.c_str() + fails.advice.size(), more);
    ASSERT_GT(more, 0);
    c.frame.base.margin.value += more;
    EXPECT_EQ(found(c, "empty").status, Status::pass);
}

TEST(WholeChecks, fail_no_case_that_is_fixed) {
    Case c = tall();
    for (const Fixing fixed : {Fixing::wall, Fixing::floor}) {
        c.stand.fixed.value = fixed;
        const Finding held = found(c, "empty");
        EXPECT_EQ(held.status, Status::warn);
        EXPECT_THAT(held.note, HasSubstr(fixed == Fixing::wall ? "the wall" : "the floor"));
        EXPECT_NE(held.advice, "");
    }
}

TEST(WholeChecks, ask_both_of_the_empty_and_of_the_loaded_case) {
    Case c = sample::pilot_boat();
    EXPECT_EQ(found(c, "empty").status, Status::pass);
    EXPECT_THROW((void)found(c, "loaded"), std::logic_error);
    c.contents = Contents{sample::given(60.0, "/contents/mass"), {}, {}, {}};
    EXPECT_EQ(found(c, "loaded").status, Status::pass);
    // Heavy things at the back edge of the base, and high up.
    c.contents->height = sample::given(380.0, "/contents/height");
    c.contents->y = sample::given(255.0, "/contents/y");
    const Finding loaded = found(c, "loaded");
    EXPECT_EQ(loaded.status, Status::fail);
    EXPECT_THAT(loaded.state, HasSubstr("to the back"));
    EXPECT_EQ(loaded.figure, "whole/loaded/tipping/angle");
}

// BF-CASE-002
TEST(WholeChecks, warn_of_a_mass_that_is_not_known) {
    const Case c = sample::pilot_boat();
    EXPECT_EQ(found(c, "case").status, Status::pass);
    WeighedCase weighed(c);
    weighed.parts[0].density = 0;
    weighed.parts[1].density = 0;
    const auto findings = whole_checks(c, whole_sums(c, weighed.layout, weighed.parts));
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].code, Code::case_mass);
    EXPECT_EQ(findings[0].status, Status::warn);
    EXPECT_EQ(findings[0].value, 2);
    EXPECT_THAT(findings[0].advice, HasSubstr("base, top"));
}

}  // namespace
}  // namespace bowfront::whole
