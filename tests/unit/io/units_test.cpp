#include <gtest/gtest.h>

#include <random>

#include "bowfront/base/number_text.hpp"
#include "bowfront/fit/checks.hpp"
#include "case_text.hpp"

namespace bowfront::io {
namespace {

constexpr unsigned kSeed = 20240611;
constexpr double kInch = 25.4;
/// A size divided by 25.4 and multiplied again is rounded twice; dozens of sums of 2 m follow.
constexpr double kRounding = 1e-9;

// Sizes of a case, mm.
struct Drawn {
    double width, radius, depth, clear, post, groove, base, top, in_post, thickness;
};

std::string text(const Drawn& d, const std::string& units) {
    const auto size = [&](double mm) { return number_text(units == "in" ? mm / kInch : mm); };
    const auto pane = [&](const char* side) {
        return std::string(R"({"side": ")") + side + R"(", "sheet": "cast-acrylic", "thickness": )" +
               size(d.thickness) + "}";
    };
    return R"({"bowfront": 1, "name": "a case", "units": ")" + units +
           R"(", "plan": {"shape": "bow-front", "width": )" + size(d.width) + R"(, "depth": )" +
           size(d.depth) + R"(, "front": {"radius": )" + size(d.radius) +
           R"(}}, "frame": {"timber": "cherry", "clear_height": )" + size(d.clear) +
           R"(, "base": {"thickness": )" + size(30) + R"(, "margin": )" + size(40) +
           R"(}, "top": {"thickness": )" + size(36) + R"(, "margin": )" + size(40) +
           R"(}, "post": {"width": )" + size(d.post) + R"(, "depth": )" + size(d.post) +
           R"(}, "groove": {"width": )" + size(d.groove) + R"(, "depth": {"base": )" +
           size(d.base) + R"(, "top": )" + size(d.top) + R"(, "post": )" + size(d.in_post) +
           R"(}}}, "panes": [)" + pane("front") + ", " + pane("left") + ", " + pane("right") + ", " +
           pane("back") + R"(], "form": {"skin": {"thickness": )" + size(3) +
           R"(}, "cover": {"thickness": )" + size(0.6) + R"(}, "overrun": )" + size(60) +
           R"(, "ribs": {"thickness": )" + size(18) + R"(, "depth": )" + size(70) +
           R"(, "max_spacing": )" + size(180) + R"(}}, "service": {"built_at": {"temperature": )" +
           R"("20 C", "humidity": "45 %"}, "temperature": ["15 C", "28 C"], "humidity": )" +
           R"(["35 %", "60 %"]}})";
}

TEST(Units, change_no_figure_of_a_case) {
    std::mt19937_64 random(kSeed);
    const auto draw = [&](double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(random);
    };
    int compared = 0;
    while (compared < 40) {
        const double width = draw(300, 1500);
        const Drawn drawn{width,       width * draw(0.55, 3), draw(200, 600), draw(200, 1200),
                          draw(36, 60), draw(5, 7),           draw(4, 8),     draw(9, 12),
                          draw(8, 15), draw(2, 4.5)};
        const auto mm = read_case(text(drawn, "mm"), "case.json");
        const auto inches = read_case(text(drawn, "in"), "case.json");
        if (!fit::objections(mm.value).empty()) {
            continue;
        }
        ++compared;
        SCOPED_TRACE(testing::Message() << "seed " << kSeed << ", case " << compared);
        const auto a = fit::solve(mm.value);
        const auto b = fit::solve(inches.value);
        for (std::size_t i = 0; i < a.panes.size(); ++i) {
            const auto& one = a.panes[i];
            const auto& other = b.panes[i];
            EXPECT_NEAR(one.blank_length, other.blank_length, kRounding);
            EXPECT_NEAR(one.blank_width, other.blank_width, kRounding);
            EXPECT_NEAR(one.room_sideways.worst, other.room_sideways.worst, kRounding);
            EXPECT_NEAR(one.room_vertical.worst, other.room_vertical.worst, kRounding);
            EXPECT_NEAR(one.radius_error.rise_off_worst, other.radius_error.rise_off_worst,
                        kRounding);
            EXPECT_NEAR(one.push.held_worst, other.push.held_worst, kRounding);
            for (const PaneEdge edge : kPaneEdges) {
                EXPECT_NEAR(one.edge(edge).engagement_least, other.edge(edge).engagement_least,
                            kRounding);
            }
        }
        EXPECT_NEAR(a.forms[0].sizes.rib_radius, b.forms[0].sizes.rib_radius, kRounding);
    }
}

}  // namespace
}  // namespace bowfront::io
