#include "bowfront/pipeline/design.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <map>

#include "bowfront/base/error.hpp"
#include "support/sample_case.hpp"

namespace bowfront {
namespace {

using testing::HasSubstr;

std::string pilot_boat_text() {
    return read_text(BOWFRONT_SOURCE_DIR "/examples/pilot-boat/case.json", io::kMostBytes);
}

std::map<std::string, double> computed(const Case& c) {
    Workings workings;
    (void)fit::solve(c, workings);
    std::map<std::string, double> values;
    for (const auto& [path, figure] : workings.figures()) {
        if (figure.origin.kind == Origin::Kind::computed) {
            values[path] = figure.value;
        }
    }
    return values;
}

// The tests that read no file stand on a case made in code: it is the one in the file.
TEST(Design, of_the_example_is_the_case_that_the_other_tests_make_in_code) {
    const Design read = design(pilot_boat_text(), "case.json");
    EXPECT_EQ(computed(read.c()), computed(sample::pilot_boat()));
}

TEST(Design, turns_objections_into_faults_of_the_file_with_their_places) {
    std::string text = pilot_boat_text();
    const std::string deep = "\"post\": 15";
    const auto at = text.find(deep);
    ASSERT_NE(at, std::string::npos);
    text.replace(at, deep.size(), "\"post\": 21.5");
    try {
        (void)design(text, "case.json");
        FAIL() << "a groove past the post's middle was taken";
    } catch (const InputError& error) {
        ASSERT_EQ(error.diagnostics().size(), 1U);
        const Diagnostic& fault = error.diagnostics().front();
        EXPECT_EQ(fault.code, Code::input_contradiction);
        EXPECT_EQ(fault.pointer, "/frame/groove/depth/post");
        EXPECT_GT(fault.line, 0U);
        EXPECT_THAT(fault.text(), HasSubstr("deeper than half the post"));
    }
}

TEST(ExplainFigure, offers_the_nearest_path_for_an_unknown_one) {
    const Design read = design(pilot_boat_text(), "case.json");
    EXPECT_THAT(explain_figure(read, "panes/front/blank/length", false),
                HasSubstr("550.971791 mm"));
    try {
        (void)explain_figure(read, "panes/front/blank/lenght", false);
        FAIL() << "an unknown path was explained";
    } catch (const InputError& error) {
        EXPECT_THAT(error.what(), HasSubstr("panes/front/blank/length"));
    }
}

TEST(ReadText, refuses_what_is_no_file_or_too_large) {
    EXPECT_THROW((void)read_text("no such file", 100), InputError);
    EXPECT_THROW((void)read_text(BOWFRONT_SOURCE_DIR, 100), InputError);
    EXPECT_THROW((void)read_text(BOWFRONT_SOURCE_DIR "/examples/pilot-boat/case.json", 100),
                 InputError);
}

}  // namespace
}  // namespace bowfront
