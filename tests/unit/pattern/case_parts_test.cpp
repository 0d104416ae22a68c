#include "bowfront/pattern/case_parts.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <set>

#include "bowfront/fit/checks.hpp"
#include "support/sample_case.hpp"

namespace bowfront::pattern {
namespace {

using std::numbers::pi;
using testing::ElementsAre;

// Some dozens of operations on coordinates under 1 m, mm; areas and volumes are larger by the sizes.
constexpr double kRounding = 1e-10;
constexpr double kAreaRounding = 1e-7;
constexpr double kVolumeRounding = 1e-4;  // a plate of 3e6 mm³ to 1e-11

std::vector<Part> parts_of(const Case& c) {
    const auto sums = fit::solve(c);
    return case_parts(c, sums, fit::layout(c, sums));
}

std::vector<std::string> ids(const std::vector<Part>& parts) {
    std::vector<std::string> ids;
    for (const Part& part : parts) {
        ids.push_back(part.id);
    }
    return ids;
}

const Part& named(const std::vector<Part>& parts, std::string_view id) {
    const auto found =
        std::find_if(parts.begin(), parts.end(), [&](const Part& part) { return part.id == id; });
    if (found == parts.end()) {
        throw std::logic_error("no part " + std::string(id));
    }
    return *found;
}

TEST(CaseParts, are_plates_posts_and_panes) {
    EXPECT_THAT(ids(parts_of(sample::pilot_boat())),
                ElementsAre("base", "top", "post-front-left", "post-front-right",
                            "post-back-right", "post-back-left", "pane-front", "pane-left",
                            "pane-right", "pane-back"));
}

TEST(CaseParts, bring_beads_where_edges_lie_in_rabbets) {
    const auto parts = parts_of(sample::beaded());
    int plate_beads = 0;
    int post_beads = 0;
    for (const Part& part : parts) {
        plate_beads += part.id.rfind("bead-base-", 0) == 0 || part.id.rfind("bead-top-", 0) == 0;
        post_beads += part.id.rfind("bead-post-", 0) == 0;
    }
    EXPECT_EQ(plate_beads, 8);
    EXPECT_GE(post_beads, 8);
}

TEST(CaseParts, have_names_of_their_own) {
    for (const auto& make : {sample::pilot_boat, sample::beaded, sample::lift_and_drop}) {
        std::set<std::string> seen;
        for (const Part& part : parts_of(make())) {
            EXPECT_TRUE(seen.insert(part.id).second) << part.id;
            EXPECT_THAT(part.id, testing::MatchesRegex("[a-z0-9-]+"));
            EXPECT_FALSE(part.placements.empty()) << part.id;
        }
    }
}

// Source: geometry: thickness × mid-arc × height.
TEST(Pane, has_the_volume_of_its_sheet_bent_round_its_mid_surface) {
    const auto parts = parts_of(sample::pilot_boat());
    EXPECT_NEAR(volume(named(parts, "pane-front").body), 3 * 542.7072137773 * 393.5,
                kVolumeRounding);
    EXPECT_NEAR(volume(named(parts, "pane-back").body), 3 * 502 * 393.5, kVolumeRounding);
}

TEST(Pane, is_cut_as_its_blank) {
    const auto parts = parts_of(sample::pilot_boat());
    const Pattern& front = named(parts, "pane-front").pattern;
    EXPECT_NEAR(front.outline.box().width(), 550.9717906368, kRounding);
    EXPECT_NEAR(front.outline.box().height(), 399.4923857868, kRounding);
    EXPECT_EQ(front.thickness, 3);
    // 1190 kg/m³ by several data sheets.
    EXPECT_NEAR(named(parts, "pane-back").mass(), 1190e-9 * 3 * 502 * 393.5, 1e-12);
}

TEST(Pane, stands_on_the_bottom_of_the_base_s_groove) {
    for (const Part& part : parts_of(sample::pilot_boat())) {
        if (part.group == "glazing") {
            EXPECT_EQ(part.placements.front().origin.z, -6) << part.id;
        }
    }
}

// A square post of 42 mm less two grooves of 4.8 by 15 mm, 380 mm tall.
TEST(Post, is_its_section_run_to_the_clear_height) {
    const auto parts = parts_of(sample::straight_front());
    EXPECT_NEAR(volume(named(parts, "post-back-left").body), (42 * 42 - 2 * 4.8 * 15) * 380,
                kVolumeRounding);
}

// Source: geometry: plate of 568 by 288 mm, four grooves crown to crown with round ends.
TEST(Plate, is_its_outline_less_its_grooves) {
    const auto parts = parts_of(sample::straight_front());
    const double run = 2 * (15 + 3.175 / 2) - 4.8;
    const double grooves =
        2 * ((478 + run) * 4.8 + pi * 2.4 * 2.4) + 2 * ((198 + run) * 4.8 + pi * 2.4 * 2.4);
    EXPECT_NEAR(volume(named(parts, "base").body), 568 * 288 * 20 - grooves * 6, kVolumeRounding);
    EXPECT_NEAR(volume(named(parts, "top").body), 568 * 288 * 24 - grooves * 12, kVolumeRounding);
}

TEST(Plate, is_drawn_from_the_side_that_is_cut) {
    Case c = sample::pilot_boat();
    c.panes.erase(c.panes.begin() + 2);  // no right pane: the case is no longer its own mirror image
    const auto parts = parts_of(c);
    const Part& base = named(parts, "base");
    const Part& top = named(parts, "top");
    ASSERT_EQ(base.pattern.recesses.size(), 3U);
    ASSERT_EQ(top.pattern.recesses.size(), 3U);
    const auto leftmost = [](const Pattern& pattern) {
        double x = 0;
        for (const Recess& recess : pattern.recesses) {
            x = std::min(x, recess.area.box().low.x);
        }
        return x;
    };
    const auto rightmost = [](const Pattern& pattern) {
        double x = 0;
        for (const Recess& recess : pattern.recesses) {
            x = std::max(x, recess.area.box().high.x);
        }
        return x;
    };
    // The left pane's groove lies to the left seen from above, to the right seen from below.
    EXPECT_NEAR(leftmost(base.pattern), -262.4, kRounding);
    EXPECT_NEAR(rightmost(top.pattern), 262.4, kRounding);
    EXPECT_GT(leftmost(top.pattern), -262);
    EXPECT_NEAR(top.pattern.outline.area(), base.pattern.outline.area(), kAreaRounding);
}

TEST(Beads, fill_the_rabbets_beside_the_pane) {
    const Case c = sample::beaded();
    const auto parts = parts_of(c);
    // In base: 478 mm of opening, 8 mm wide, as deep as the rabbet.
    EXPECT_NEAR(volume(named(parts, "bead-base-back").body), 478 * 8 * 6, kVolumeRounding);
    const auto sums = fit::solve(c);
    const auto frame = fit::layout(c, sums);
    for (const fit::PostLayout& post : frame.posts) {
        double timber = 0;
        for (const Region& region : post.section) {
            timber += region.area();
        }
        double beads = 0;
        const std::string prefix = "bead-post-" + post.name;
        for (const Part& part : parts) {
            if (part.id.rfind(prefix, 0) == 0) {
                beads += part.body.section.area();
            }
        }
        // Post, beads and the places of the two panes make up the outline again.
        std::vector<Region> holds;
        for (const fit::PostGroove& groove : post.grooves) {
            holds.push_back({groove.hold, {}});
        }
        double kept = 0;
        for (const Region& region : intersect(unite(holds), {{post.outline, {}}})) {
            kept += region.area();
        }
        EXPECT_NEAR(timber + beads + kept, post.outline.area(), kAreaRounding) << prefix;
    }
}

}  // namespace
}  // namespace bowfront::pattern
