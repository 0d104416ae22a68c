// Sides of several pieces, and sides that follow a curve.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <numbers>

#include "bowfront/fit/sums.hpp"
#include "case_text.hpp"

namespace bowfront::io {
namespace {

using std::numbers::pi;
using ::testing::HasSubstr;
using ::testing::IsEmpty;

constexpr std::string_view kOwnPlan =
    R"("plan": { "shape": "bow-front", "width": 520, "depth": 240, "front": { "radius": 420 } })";

// The pilot boat's case with a front that is so described, and three straights that close it.
std::string with_front(const std::string& front) {
    return pilot_boat_with(
        kOwnPlan, R"("plan": { "shape": "sides", "sides": [ { "name": "front", "turn": 70, )" +
                      front +
                      R"( }, { "name": "right", "straight": 240, "turn": 90 },
                { "name": "back", "straight": 520 }, { "name": "left", "closing": true } ] })");
}

const PieceSpec& piece(const ReadCase& read, std::size_t number) {
    return read.value.plan.chain.front().pieces.at(number);
}

TEST(ReadRun, takes_straights_and_arcs_in_their_order) {
    const ReadCase read = read_case(
        with_front(R"("run": [ { "straight": 300 }, { "arc": { "radius": 80, "sweep": 30 },
                     "bow": "in" }, { "straight": "20 cm" } ])"),
        "case.json");
    ASSERT_EQ(read.value.plan.chain.front().pieces.size(), 3U);
    EXPECT_EQ(piece(read, 0).straight->value, 300);
    EXPECT_EQ(piece(read, 1).arc[0].value.value, 80);
    EXPECT_NEAR(piece(read, 1).arc[1].value.value, pi / 6, 1e-15);
    EXPECT_EQ(piece(read, 1).bow.value, Bow::in);
    EXPECT_EQ(piece(read, 2).straight->value, 200);
    EXPECT_EQ(piece(read, 2).straight->origin.pointer, "/plan/sides/0/run/2/straight");
}

TEST(ReadRun, of_one_piece_is_that_piece) {
    const std::string arc = R"("arc": { "radius": 420, "sweep": 70 })";
    const auto alone = fit::solve(read_case(with_front(arc), "case.json").value);
    const auto in_a_run =
        fit::solve(read_case(with_front(R"("run": [ { )" + arc + " } ]"), "case.json").value);
    ASSERT_EQ(alone.panes.size(), in_a_run.panes.size());
    for (std::size_t i = 0; i < alone.panes.size(); ++i) {
        const auto& a = alone.panes[i];
        const auto& b = in_a_run.panes[i];
        EXPECT_EQ(a.length, b.length);
        EXPECT_EQ(a.blank_length, b.blank_length);
        EXPECT_EQ(a.chord, b.chord);
        EXPECT_EQ(a.reach, b.reach);
        EXPECT_EQ(a.states[3].opening_least, b.states[3].opening_least);
        EXPECT_EQ(a.radius_error.rise_off_worst, b.radius_error.rise_off_worst);
        EXPECT_TRUE(b.path.empty());
    }
    EXPECT_EQ(alone.forms.at(0).sizes.skin_length, in_a_run.forms.at(0).sizes.skin_length);
}

TEST(ReadRun, tells_what_is_missing_or_too_much) {
    EXPECT_THAT(fault_text(with_front(R"("run": [])")), HasSubstr("the run has no pieces"));
    EXPECT_THAT(fault_text(with_front(R"("run": [ { "straight": 300 }, {} ])")),
                HasSubstr("/plan/sides/0/run/1: the piece has no shape"));
    EXPECT_THAT(fault_text(with_front(R"("run": [ { "straight": 300 } ], "straight": 20)")),
                HasSubstr("the side has a shape beside its run"));
    EXPECT_THAT(
        fault_text(with_front(
            R"("run": [ { "straight": 300 }, { "arc": { "radius": 80, "sweep": 30 } } ], "panes": 2)")),
        HasSubstr("a run of several pieces is glazed by one pane"));
    EXPECT_THAT(fault_text(with_front(R"("run": [ { "straight": 300, "bow": "in" } ])")),
                HasSubstr("a straight piece does not bow"));
    EXPECT_THAT(fault_text(with_front(R"("run": [ { "arc": { "radius": 80 } } ])")),
                HasSubstr("the arc has 1 measure"));
}

TEST(ReadEllipse, takes_half_axes_and_angles) {
    const ReadCase read =
        read_case(with_front(R"("ellipse": { "semi_axes": [400, 200], "from": -120, "to": -60 })"),
                  "case.json");
    const EllipseSpec& ellipse = *piece(read, 0).ellipse;
    EXPECT_EQ(ellipse.semi_axes[0].value, 400);
    EXPECT_EQ(ellipse.semi_axes[1].value, 200);
    EXPECT_NEAR(ellipse.from.value, -2 * pi / 3, 1e-15);
    EXPECT_NEAR(ellipse.to.value, -pi / 3, 1e-15);
    EXPECT_EQ(piece(read, 0).chord_error.value, 0.01);
    EXPECT_EQ(assumed_at(read, "/plan/sides/0/chord_error").value, "0.01 mm");
}

TEST(ReadCurve, takes_points) {
    const ReadCase read =
        read_case(with_front(R"("curve": { "through": [[0, 0], [100, "-1 in"], [300, 0]] },
                     "chord_error": 0.001)"),
                  "case.json");
    const CurveSpec& curve = *piece(read, 0).curve;
    ASSERT_EQ(curve.through.size(), 3U);
    EXPECT_EQ(curve.through[1][1].value, -25.4);
    EXPECT_EQ(piece(read, 0).chord_error.value, 0.001);
}

TEST(ReadCurve, tells_what_it_is_not) {
    EXPECT_THAT(fault_text(with_front(R"("straight": 300, "chord_error": 0.1)")),
                HasSubstr("a straight or an arc is held to no chord error"));
    EXPECT_THAT(fault_text(with_front(R"("straight": 300, "curve": { "through": [[0, 0]] })")),
                HasSubstr("more than one shape"));
    EXPECT_THAT(fault_text(with_front(R"("ellipse": { "semi_axes": [400], "from": 0 })")),
                HasSubstr("/plan/sides/0/ellipse/to"));
    EXPECT_THAT(fault_text(with_front(R"("curve": {})")), HasSubstr("through"));
}

TEST(ReadPlan, refuses_a_dome_for_what_it_is) {
    EXPECT_THAT(fault_text(pilot_boat_with(R"("shape": "bow-front")", R"("shape": "dome")")),
                HasSubstr("can't be unrolled into a flat blank"));
}

TEST(ReadRun, of_the_example_is_without_fault) {
    EXPECT_THAT(fault_text(project_file("examples/lightship/case.json")), IsEmpty());
}

}  // namespace
}  // namespace bowfront::io
