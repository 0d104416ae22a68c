#include "bowfront/study/steps.hpp"

#include "bowfront/base/contract.hpp"
#include "bowfront/base/error.hpp"

namespace bowfront::study {
namespace {

using ::testing::HasSubstr;

TEST(Steps, tenths_hit_their_end_and_stay_decimals) {
    const Steps steps("0", "1", "0.1");
    ASSERT_EQ(steps.count(), 11U);
    EXPECT_EQ(steps.text(3), "0.3");
    EXPECT_EQ(steps.number(3), 0.3);  // 3 · 0.1 is another double
    EXPECT_EQ(steps.text(10), "1");
}

TEST(Steps, every_number_reads_back_as_its_text) {
    const Steps steps("-0.7", "123.4", "0.007");
    for (std::size_t i = 0; i < steps.count(); ++i) {
        ASSERT_EQ(std::stod(steps.text(i)), steps.number(i)) << i;
    }
}

TEST(Steps, an_end_between_two_steps_is_left_out) {
    const Steps steps("0", "1", "0.3");
    ASSERT_EQ(steps.count(), 4U);
    EXPECT_EQ(steps.text(3), "0.9");
}

TEST(Steps, may_lead_downwards) {
    const Steps steps("5", "4", "-0.25");
    ASSERT_EQ(steps.count(), 5U);
    EXPECT_EQ(steps.text(4), "4");
}

TEST(Steps, one_number_needs_a_step_all_the_same) {
    EXPECT_EQ(Steps("3", "3", "1").count(), 1U);
    EXPECT_EQ(Steps("3", "3", "-1").count(), 1U);
}

TEST(Steps, powers_of_ten_are_read) {
    const Steps steps("0", "2e-3", "1e-3");
    ASSERT_EQ(steps.count(), 3U);
    EXPECT_EQ(steps.text(1), "0.001");
}

TEST(Steps, faults_say_what_would_do) {
    const auto fault = [](const char* from, const char* to, const char* step) -> std::string {
        try {
            (void)Steps(from, to, step);
        } catch (const InputError& error) {
            return error.what();
        }
        return "no fault";
    };
    EXPECT_THAT(fault("a", "1", "1"), HasSubstr("\"a\" is not a number"));
    EXPECT_THAT(fault("0", "", "1"), HasSubstr("\"\" is not a number"));
    EXPECT_THAT(fault("0", "nan", "1"), HasSubstr("is not a number"));
    EXPECT_THAT(fault("0", "1", "0"), HasSubstr("the step is 0"));
    EXPECT_THAT(fault("0", "1", "-1"), HasSubstr("a step of the other sign"));
    EXPECT_THAT(fault("0", "1e9", "1"), HasSubstr("too large"));
    EXPECT_THAT(fault("0", "1", "0.0000000001"), HasSubstr("too many decimals"));
    EXPECT_THAT(fault("0", "10000000", "1"), HasSubstr("10000001 numbers"));
    EXPECT_EQ(fault("1", "10000000", "1"), "no fault");
}

TEST(Steps, past_the_end_is_a_broken_promise) {
    EXPECT_THROW((void)Steps("0", "1", "1").text(2), ContractError);
}

}  // namespace
}  // namespace bowfront::study
