// The parts of a pane of several pieces and of its form.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "bowfront/fit/checks.hpp"
#include "bowfront/pattern/case_parts.hpp"
#include "support/run_case.hpp"
#include "support/sample_case.hpp"

namespace bowfront::pattern {
namespace {

using sample::arc_piece;
using sample::case_with_front;
using sample::straight_piece;
using std::numbers::pi;

// Some dozens of operations on coordinates up to a metre, mm; areas and volumes are larger by the
// sizes that they are made of.
constexpr double kRounding = 1e-9;
constexpr double kAreaRounding = 1e-6;
constexpr double kVolumeRounding = 1e-3;
constexpr unsigned kSeed = 20261126;
constexpr int kCases = 25;

std::vector<Part> parts_of(const Case& c) {
    const fit::Solution solved = fit::solution(c);
    EXPECT_TRUE(solved.objections.empty());
    std::vector<Part> parts = case_parts(c, solved.sums, solved.layout);
    for (const auto& form : solved.sums.forms) {
        for (Part& part : form_parts(c, form)) {
            parts.push_back(std::move(part));
        }
    }
    return parts;
}

const Part& named(const std::vector<Part>& parts, std::string_view id) {
    const auto found =
        std::find_if(parts.begin(), parts.end(), [&](const Part& part) { return part.id == id; });
    if (found == parts.end()) {
        throw std::logic_error("no part " + std::string(id));
    }
    return *found;
}

Case u_front() {
    return case_with_front({straight_piece(200), arc_piece(90, pi / 2), straight_piece(300),
                            arc_piece(90, pi / 2), straight_piece(200)});
}

// Across the middle of a band lies as much material outside as is missing inside: the section of a
// bent pane is its thickness times the length of its middle. Source: geometry (Pappus).
TEST(PaneOfSeveralPieces, has_the_volume_of_its_developed_length) {
    sample::RandomCases random(kSeed);
    for (int i = 0; i < kCases; ++i) {
        SCOPED_TRACE(testing::Message() << "seed " << kSeed << ", case " << i);
        const Case c = sample::random_run(random);
        const PaneSums<double> pane = fit::solve(c).panes.front();
        const std::vector<Part> parts = parts_of(c);
        EXPECT_NEAR(volume(named(parts, "pane-front").body),
                    pane.thickness * pane.length * pane.height, kVolumeRounding);
        const PaneForm<double> form = fit::solve(c).forms.front();
        if (!forming::can_be_drawn_off(form.sizes)) {
            continue;
        }
        EXPECT_NEAR(volume(named(parts, "form-front-skin").body),
                    3 * form.sizes.skin_length * form.sizes.width, kVolumeRounding);
    }
}

TEST(PaneOfSeveralPieces, has_its_bend_lines_scribed_on_the_blank) {
    const Case c = u_front();
    const PaneSums<double> pane = fit::solve(c).panes.front();
    const std::vector<Part> parts = parts_of(c);
    const Pattern& pattern = named(parts, "pane-front").pattern;
    EXPECT_NEAR(pattern.outline.area(), pane.blank_length * pane.blank_width, kAreaRounding);
    std::vector<double> lines;
    for (const Path& scribe : pattern.scribes) {
        const Segment& line = scribe.segments.at(0);
        EXPECT_EQ(line.from.x, line.to.x);
        EXPECT_EQ(line.to.y - line.from.y, pane.blank_width);
        lines.push_back(line.from.x);
    }
    EXPECT_THAT(lines, testing::ElementsAre(pane.bends[0].blank_start, pane.bends[0].blank_end,
                                            pane.bends[1].blank_start, pane.bends[1].blank_end));
}

// Legs of 191 mm in the pane and 60 of overrun, on feet of 60; corners of 84.9, 90 less half the
// sheet, cover and skin: a rectangle with two rounded corners, less two notches of 18.2 by 20.
TEST(Rib, of_a_u_is_a_rounded_rectangle) {
    const std::vector<Part> parts = parts_of(u_front());
    const Part& rib = named(parts, "form-front-rib");
    const double radius = 90 - 1.5 - 0.6 - 3;
    const double wide = 300 + 2 * radius;
    const double high = 60 + 60 + 191 + radius;
    const double corners = 2 * (1 - pi / 4) * radius * radius;
    EXPECT_NEAR(rib.body.section.area(), wide * high - corners - 2 * 18.2 * 20, kAreaRounding);
    EXPECT_EQ(rib.pattern.scribes.size(), 4U);
}

TEST(FormOfAHollow, tells_that_the_sheet_must_be_held_down) {
    const Case c = case_with_front({straight_piece(200), arc_piece(90, 1.5), straight_piece(300),
                                    arc_piece(150, 0.4, Bow::in), straight_piece(200),
                                    arc_piece(90, 1.5), straight_piece(200)});
    const std::vector<Part> parts = parts_of(c);
    EXPECT_THAT(named(parts, "form-front-rib").note, testing::HasSubstr("held down"));
}

TEST(FormOfAHollow, takes_no_fence_that_is_too_deep_for_it) {
    const Case c = case_with_front({straight_piece(200), arc_piece(90, 1.2), straight_piece(200),
                                    arc_piece(20, 0.5, Bow::in), straight_piece(200)});
    const auto objections = fit::objections(c);
    ASSERT_FALSE(objections.empty());
    EXPECT_EQ(objections[0].pointer, "/form/fence/depth");
    // 20 and half the sheet, and the cover.
    EXPECT_THAT(objections[0].wanted, testing::HasSubstr("less than 22.1"));
}

}  // namespace
}  // namespace bowfront::pattern
