#include <gtest/gtest.h>

#include "bowfront/figure/workings.hpp"
#include "bowfront/fit/sums.hpp"
#include "support/sample_case.hpp"

namespace bowfront {
namespace {

TEST(Explain, goes_down_to_the_leaves_and_tells_each_figure_once) {
    Workings workings;
    const Traced width = workings.input("case/width", "w", Kind::length, 400,
                                        {Origin::Kind::given, "/width", 3, {}});
    const Traced shrink =
        workings.input("case/shrink", "s", Kind::ratio, 0.02,
                       {Origin::Kind::assumed, "/shrink", 0, "common practice, no source"});
    const Traced turn = workings.input("lib/turn", "θ", Kind::angle, 0.5,
                                       {Origin::Kind::library, {}, 0, "a handbook, table 3"});
    const Traced blank =
        workings.figure("blank", "B", Kind::length, width / (1 - shrink), "definition of shrink");
    workings.figure("arc", "L", Kind::length, blank * turn + blank, "geometry");
    EXPECT_EQ(explain(workings, "arc"),
              "L = 612.244898 mm    arc\n"
              "  L = B·θ + B\n"
              "    = 408.163265·0.5 + 408.163265\n"
              "  computed; source of the formula: geometry\n"
              "    B = 408.163265 mm    blank\n"
              "      B = w/(1 − s)\n"
              "        = 400/(1 − 0.02)\n"
              "      computed; source of the formula: definition of shrink\n"
              "        w = 400 mm    case/width\n"
              "          given at line 3\n"
              "        s = 2 %    case/shrink\n"
              "          assumed: common practice, no source\n"
              "    θ = 28.64789 deg = 0.5 rad    lib/turn\n"
              "      library: a handbook, table 3\n");
}

// Every figure of a whole case can be asked for, and what it stands on as well.
TEST(Explain, answers_for_every_figure_of_a_case) {
    Workings workings;
    (void)fit::solve(sample::pilot_boat(), workings);
    ASSERT_GT(workings.figures().size(), 200U);
    for (const auto& [path, figure] : workings.figures()) {
        const std::string text = explain(workings, path);
        EXPECT_NE(text.find("    " + path + "\n"), std::string::npos) << path;
        EXPECT_FALSE(figure.symbol.empty()) << path;
        const bool computed = figure.origin.kind == Origin::Kind::computed;
        EXPECT_EQ(computed, !figure.formula.empty()) << path;
        EXPECT_TRUE(!computed || !figure.origin.source.empty()) << path << " names no source";
        for (const std::string& input : figure.inputs) {
            EXPECT_NE(workings.find(input), nullptr) << path << " stands on " << input;
        }
    }
}

TEST(Explain, tells_the_front_blank_s_length_from_the_case_file_up) {
    Workings workings;
    (void)fit::solve(sample::pilot_boat(), workings);
    const std::string text = explain(workings, "panes/front/blank/length");
    EXPECT_EQ(text.substr(0, text.find("        O = ")),
              "L₀ = 550.971791 mm    panes/front/blank/length\n"
              "  L₀ = L/(1 − s_a)\n"
              "    = 542.707214/(1 − 0.015)\n"
              "  computed; source of the formula: definition of shrink as loss over the length "
              "before heating\n"
              "    L = 542.707214 mm    panes/front/formed/developed_length\n"
              "      L = O + 2·(D_p − c_e)\n"
              "        = 518.707214 + 2·(15 − 3)\n"
              "      computed; source of the formula: size that the frame asks for\n");
    for (const char* leaf : {"R = 420 mm    plan/front/radius", "w_p = 520 mm    case/plan/width",
                             "D_p = 15 mm    case/frame/groove/depth/post",
                             "c_e = 3 mm    case/fit/end_clearance", "s_a = 1.5 %",
                             "given at line 1", "library: "}) {
        EXPECT_NE(text.find(leaf), std::string::npos) << leaf << " is missing in\n" << text;
    }
}

}  // namespace
}  // namespace bowfront
