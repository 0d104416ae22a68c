// Bends of a pane of several pieces, as they were measured.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "bowfront/io/read_measured.hpp"
#include "case_text.hpp"

namespace bowfront::io {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;

Case lightship() {
    return read_case(project_file("examples/lightship/case.json"), "case.json").value;
}

std::string file(const std::string& formed) {
    return R"({ "bowfront_measured": 1, "panes": [ { "side": "front", "formed": { )" + formed +
           " } } ] }";
}

std::string faults(const std::string& formed) {
    try {
        (void)read_measured(file(formed), "measured.json", lightship());
    } catch (const InputError& error) {
        return error.diagnostics().front().text();
    }
    return {};
}

TEST(MeasuredBends, are_the_inside_radius_of_each) {
    const Measured measured =
        read_measured(file(R"("bends": [118.4, "117.9 mm"])"), "measured.json", lightship()).value;
    ASSERT_EQ(measured.sides.size(), 1U);
    EXPECT_THAT(measured.sides[0].pane.bends, ElementsAre(118.4, 117.9));
}

TEST(MeasuredBends, are_as_many_as_the_pane_has) {
    EXPECT_THAT(faults(R"("bends": [118.4])"), HasSubstr("has 2 bends, and 1 were measured"));
    EXPECT_THAT(faults(R"("bends": [118.4, 0.1])"), HasSubstr("no larger than the uncertainty"));
}

TEST(MeasuredBends, are_not_told_by_chord_and_rise) {
    EXPECT_THAT(faults(R"("chord": 640, "rise": 260)"), HasSubstr("several bends"));
}

TEST(MeasuredBends, are_those_of_a_run_alone) {
    const Case flat = read_case(pilot_boat(), "case.json").value;
    try {
        (void)read_measured(file(R"("bends": [418])"), "measured.json", flat);
        FAIL() << "a single arc took bends";
    } catch (const InputError& error) {
        EXPECT_THAT(error.diagnostics().front().text(), HasSubstr("no run of straights and arcs"));
    }
}

}  // namespace
}  // namespace bowfront::io
