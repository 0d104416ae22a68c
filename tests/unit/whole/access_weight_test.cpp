#include "bowfront/whole/access_weight.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "bowfront/pattern/access_parts.hpp"
#include "bowfront/pattern/case_parts.hpp"
#include "support/access_cases.hpp"

namespace bowfront::whole {
namespace {

using sample::given;

// Some dozens of operations on masses of some kg and places under 1 m.
constexpr double kRounding = 1e-9;

struct Weighed {
    std::vector<Part> parts;
    AccessWeight weight;
    WholeSums<double> shut;
    std::vector<Finding> findings;
};

Weighed weighed(const Case& c) {
    const auto sums = fit::solve(c);
    const fit::Layout layout = fit::layout(c, sums);
    const AccessSums<double> opening = fit::solve_access(c);
    const fit::AccessLayout access = fit::access_layout(c, opening, layout);
    Weighed out;
    out.parts = pattern::case_parts(c, sums, layout);
    pattern::add_access_parts(c, opening, access, out.parts);
    out.weight = access_weight(c, opening, access, layout, out.parts);
    out.shut = whole_sums(c, layout, out.parts);
    out.findings = access_weight_checks(c, out.weight);
    return out;
}

TEST(AccessWeight, of_a_top_is_that_of_its_part) {
    const Weighed made = weighed(sample::opening_at_the_top());
    ASSERT_TRUE(made.weight.mass);
    EXPECT_DOUBLE_EQ(*made.weight.mass, made.parts[1].mass());
    EXPECT_EQ(made.parts[1].id, "top");
    EXPECT_EQ(made.weight.people, 1);
    EXPECT_FALSE(made.weight.open);
    ASSERT_EQ(made.findings.size(), 1U);
    EXPECT_EQ(made.findings.front().status, Status::pass);
}

TEST(AccessWeight, warns_of_a_top_that_two_can_not_lift) {
    Case c = sample::opening_at_the_top();
    c.frame.top.thickness.value = 400;
    const Weighed made = weighed(c);
    EXPECT_GT(*made.weight.mass, 30.7);  // two thirds of twice 23 kg
    EXPECT_EQ(made.findings.front().code, Code::access_lift);
    EXPECT_EQ(made.findings.front().status, Status::warn);
}

// The door's middle goes from beside the pin to behind it, and takes the whole with it by its share
// of the mass.
TEST(AccessWeight, of_an_open_door_moves_the_centre_of_gravity) {
    const Weighed made = weighed(sample::opening_at_the_back(sample::pivot_door()));
    ASSERT_TRUE(made.weight.open);
    const Weight<double>& open = made.weight.open->empty->weight;
    const Weight<double>& shut = made.shut.empty->weight;
    const double share = *made.weight.mass / shut.mass;
    const double arm = 472.0 / 2 - 17;
    EXPECT_NEAR(open.mass, shut.mass, kRounding);
    EXPECT_NEAR(open.y - shut.y, share * arm, kRounding);
    EXPECT_NEAR(open.x - shut.x, share * arm, kRounding);  // hung at the right, seen from the front
    EXPECT_NEAR(made.weight.pull, *made.weight.mass * 9.80665 * arm / 374, kRounding);
}

TEST(AccessWeight, tells_of_a_case_that_an_open_door_tips) {
    Case c = sample::opening_at_the_back(sample::pivot_door());
    const auto tipping = [](const Weighed& made) {
        return *std::find_if(made.findings.begin(), made.findings.end(), [](const Finding& each) {
            return each.code == Code::access_tipping;
        });
    };
    EXPECT_EQ(tipping(weighed(c)).status, Status::pass);
    c.access_pane->thickness.value = 60;  // as heavy as all the rest
    c.frame.base.margin.value = 22;
    EXPECT_EQ(tipping(weighed(c)).status, Status::fail);
    c.stand.fixed = given(Fixing::wall, "/stand/fixed");
    EXPECT_EQ(tipping(weighed(c)).status, Status::warn);
}

}  // namespace
}  // namespace bowfront::whole
