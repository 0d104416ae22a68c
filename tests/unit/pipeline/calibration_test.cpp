// From measured samples to an entry of the case file, and back through the reader of case files.

#include "bowfront/report/calibration.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <iterator>
#include <string>

#include "bowfront/io/read_coupons.hpp"
#include "bowfront/pipeline/design.hpp"

namespace bowfront {
namespace {

using testing::HasSubstr;
using testing::Not;

constexpr double kHalfDigit = 0.5e-6;  // of the fourth decimal of a percentage, as a ratio
constexpr double kDigit = 2 * kHalfDigit;

std::string project_file(const std::string& path) {
    std::ifstream stream(std::string(BOWFRONT_SOURCE_DIR) + '/' + path, std::ios::binary);
    EXPECT_TRUE(stream) << path;
    return {std::istreambuf_iterator<char>(stream), {}};
}

std::vector<study::Series> learnt(const std::string& samples) {
    return study::calibrate(io::read_coupons(samples, "coupons.csv"));
}

report::CalibrationContent content(const std::vector<study::Series>& series,
                                   std::string_view like = "cast-acrylic") {
    return {series, *find_sheet(like), "batch-7"};
}

// The pilot boat's case with an entry, all of its panes cut from that sheet.
std::string case_with(const std::string& entry) {
    const std::size_t open = entry.find('{') + 1;
    const std::string member = entry.substr(open, entry.rfind('}') - open);
    std::string text = project_file("examples/pilot-boat/case.json");
    const std::string version = "\"bowfront\": 1,";
    text.insert(text.find(version) + version.size(), member + ",");
    const std::string library = R"("sheet": "cast-acrylic")";
    for (std::size_t at = text.find(library); at != std::string::npos; at = text.find(library)) {
        text.replace(at, library.size(), R"("sheet": "batch-7")");
    }
    return text;
}

SheetSpec read_back(const report::CalibrationContent& told) {
    return io::read_case(case_with(sheets_entry(told)), "case.json").value.sheets.at("batch-7");
}

const Finding* find_shrink(const Design& design) {
    const auto found = std::find_if(design.findings.begin(), design.findings.end(),
                                    [](const Finding& finding) { return finding.code == Code::fit_shrink; });
    return found == design.findings.end() ? nullptr : &*found;
}

constexpr const char* kBothWays =
    "direction,before,after\n"
    "along,250,243\nalong,250,242.8\nalong,250,243.3\n"
    "across,200,200.9\nacross,200,200.7\nacross,200,201\n";

TEST(CalibrationText, wonders_at_what_is_far_from_the_library) {
    const char* const swapped =
        "direction,before,after\nalong,246.3,250\nalong,246.2,250\nalong,246.4,250\n";
    EXPECT_THAT(calibration_text(content(learnt(swapped))),
                HasSubstr("is far from what is known of cast-acrylic, 1.5 +- 0.5 %"));
    const char* const right =
        "direction,before,after\nalong,250,246.3\nalong,250,246.2\nalong,250,246.4\n";
    EXPECT_THAT(calibration_text(content(learnt(right))), Not(HasSubstr("is far from")));
}

TEST(SheetsEntry, is_read_back_with_the_same_figures) {
    const auto series = learnt(kBothWays);
    const SheetSpec sheet = read_back(content(series, "extruded-acrylic"));
    EXPECT_EQ(sheet.like->name, "extruded-acrylic");
    EXPECT_NEAR(sheet.shrink_along.value, series[0].sample.mean, kHalfDigit);
    EXPECT_NEAR(sheet.shrink_across.value, series[1].sample.mean, kHalfDigit);
    // Rounded up by less than a digit, never down.
    const double along = series[0].sample.scatter->prediction;
    const double across = series[1].sample.scatter->prediction;
    EXPECT_GE(sheet.spread_along.value, along);
    EXPECT_LT(sheet.spread_along.value, along + kDigit);
    EXPECT_GE(sheet.spread_across.value, across);
    EXPECT_LT(sheet.spread_across.value, across + kDigit);
    for (const auto* value : {&sheet.shrink_along, &sheet.shrink_across, &sheet.spread_along,
                              &sheet.spread_across}) {
        EXPECT_TRUE(value->given()) << value->origin.pointer;
    }
}

TEST(SheetsEntry, of_the_example_ends_the_warning_of_a_shrink_not_measured) {
    const Design before = design(project_file("examples/pilot-boat/case.json"), "case.json");
    ASSERT_NE(find_shrink(before), nullptr);
    ASSERT_EQ(find_shrink(before)->status, Status::warn);
    const auto series = learnt(project_file("examples/pilot-boat/coupons.csv"));
    const Design after = design(case_with(sheets_entry(content(series))), "case.json");
    ASSERT_NE(find_shrink(after), nullptr);
    EXPECT_EQ(find_shrink(after)->status, Status::pass);
}

TEST(SheetsEntry, leaves_the_warning_where_one_direction_was_measured_alone) {
    const auto series =
        learnt("direction,before,after\nalong,250,246\nalong,250,246.1\nalong,250,246.2\n");
    const std::string entry = sheets_entry(content(series));
    EXPECT_THAT(entry, Not(HasSubstr("across")));
    EXPECT_EQ(find_shrink(design(case_with(entry), "case.json"))->status, Status::warn);
    EXPECT_THAT(calibration_text(content(series)), HasSubstr("shrink across: not measured"));
}

TEST(SheetsEntry, leaves_the_spread_to_the_library_where_coupons_can_not_show_it) {
    const Sheet& library = *find_sheet("cast-acrylic");
    for (const char* rows : {"along,250,246\nalong,250,245\n",
                             "along,250,246\nalong,250,246\nalong,250,246\n"}) {
        const auto series = learnt(std::string("direction,before,after\n") + rows);
        EXPECT_THAT(sheets_entry(content(series)), Not(HasSubstr("spread"))) << rows;
        EXPECT_THAT(calibration_text(content(series)), HasSubstr("+-0.5 %, stays")) << rows;
        const SheetSpec sheet = read_back(content(series));
        EXPECT_TRUE(sheet.shrink_along.given()) << rows;
        EXPECT_EQ(sheet.spread_along.value, library.shrink_spread_along.value) << rows;
        EXPECT_FALSE(sheet.spread_along.given()) << rows;
    }
}

TEST(SheetsEntry, leaves_out_what_differs_too_much_to_be_of_use) {
    const auto series = learnt("direction,before,after\nalong,250,260\nalong,250,240\n"
                               "along,250,220\nacross,200,197\n");
    const std::string entry = sheets_entry(content(series));
    EXPECT_THAT(entry, Not(HasSubstr("along")));
    EXPECT_THAT(entry, HasSubstr(R"("across": "1.5 %")"));
    EXPECT_THAT(calibration_text(content(series)), HasSubstr("left out of the entry"));
    EXPECT_FALSE(read_back(content(series)).shrink_along.given());
}

TEST(SheetsEntry, holds_the_widest_figures_that_a_case_file_takes) {
    // At the ends of the ranges a rounding up must not step over them.
    const auto series = learnt("direction,before,after\nalong,200,220\nalong,200,219.99\n"
                               "along,200,219.98\nacross,200,160\n");
    const SheetSpec sheet = read_back(content(series));
    EXPECT_NEAR(sheet.shrink_along.value, kShrinkRange.low, 2 * 0.01 / 200);
    EXPECT_DOUBLE_EQ(sheet.shrink_across.value, kShrinkRange.high);
}

TEST(SheetsEntry, holds_the_springback_of_test_arcs) {
    const auto series = learnt(
        "radius_on_form,chord,rise\n400,300,28.9\n400,300,28.7\n400,300,28.8\n");
    const SheetSpec sheet = read_back(content(series));
    EXPECT_NEAR(sheet.springback.value, series[0].sample.mean, kHalfDigit);
    EXPECT_GE(sheet.springback_spread.value, series[0].sample.scatter->prediction);
    EXPECT_TRUE(sheet.springback.given());
    EXPECT_TRUE(sheet.springback_spread.given());
    EXPECT_FALSE(sheet.shrink_along.given());
}

TEST(CalibrationText, names_the_line_of_an_outlier) {
    const auto series = learnt("direction,before,after\nalong,250,246\nalong,250,246.1\n"
                               "along,250,245.9\nalong,250,246.05\nalong,250,240\n");
    EXPECT_THAT(calibration_text(content(series)), HasSubstr("line 6: shrink along 4.000 % lies "));
    EXPECT_THAT(calibration_json(content(series)), HasSubstr(R"("line": 6)"));
}

}  // namespace
}  // namespace bowfront
