#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "bowfront/fit/checks.hpp"
#include "bowfront/pattern/case_parts.hpp"
#include "support/sample_case.hpp"

namespace bowfront::pattern {
namespace {

// Some dozens of operations on coordinates under 1 m, mm.
constexpr double kRounding = 1e-9;

std::vector<Part> form_of(const Case& c) {
    const auto sums = fit::solve(c);
    return form_parts(c, sums.forms.at(0));
}

const Part& named(const std::vector<Part>& parts, std::string_view id) {
    const auto found =
        std::find_if(parts.begin(), parts.end(), [&](const Part& part) { return part.id == id; });
    if (found == parts.end()) {
        throw std::logic_error("no part " + std::string(id));
    }
    return *found;
}

TEST(FormParts, are_ribs_base_cross_members_skin_rails_and_fences) {
    const auto parts = form_of(sample::pilot_boat());
    std::vector<std::pair<std::string, int>> counts;
    for (const Part& part : parts) {
        counts.emplace_back(part.id, part.count());
        EXPECT_EQ(part.assembly, "form-front");
    }
    EXPECT_THAT(counts,
                testing::ElementsAre(testing::Pair("form-front-rib", 4),
                                     testing::Pair("form-front-base", 1),
                                     testing::Pair("form-front-cross", 2),
                                     testing::Pair("form-front-skin", 1),
                                     testing::Pair("form-front-rail", 2),
                                     testing::Pair("form-front-fence", 2)));
}

// The rib's edge is the arc of the radius chain: 414.9 mm over the form's sweep, found in the
// pattern by its centre and ends.
TEST(Rib, carries_the_arc_of_the_form) {
    const auto sums = fit::solve(sample::pilot_boat());
    const auto parts = form_of(sample::pilot_boat());
    const Contour& outline = named(parts, "form-front-rib").pattern.outline.outer;
    double longest = 0;
    Segment edge;
    for (const Segment& s : outline.segments()) {
        if (!s.straight() && s.length() > longest) {
            longest = s.length();
            edge = s;
        }
    }
    EXPECT_NEAR(edge.radius(), 414.9, kRounding);
    EXPECT_NEAR(std::abs(edge.sweep()), sums.forms.at(0).sizes.rib_sweep, kRounding);
    EXPECT_NEAR(edge.centre().x, 0, kRounding);
    // The band under it is 70 mm deep on the middle line.
    const Path& scribe = named(parts, "form-front-rib").pattern.scribes.at(0);
    EXPECT_NEAR(scribe.length(), 70, kRounding);
    EXPECT_NEAR(scribe.segments.at(0).to.y, edge.centre().y + 414.9, kRounding);
}

TEST(Skin, is_cut_flat_to_the_length_of_its_mid_surface) {
    const auto parts = form_of(sample::pilot_boat());
    const Part& skin = named(parts, "form-front-skin");
    // 416.4 mm over the form's sweep and blank width + 40 (sums done a second way).
    EXPECT_NEAR(skin.pattern.outline.box().width(), 657.4532871215, kRounding);
    EXPECT_NEAR(skin.pattern.outline.box().height(), 439.4923857868, kRounding);
    // Bent, it holds the same board.
    EXPECT_NEAR(volume(skin.body), 657.4532871215 * 439.4923857868 * 3, 1e-3);
    EXPECT_NEAR(skin.body.section.box().high.y,
                named(parts, "form-front-rib").body.section.box().high.y + 3, kRounding);
}

TEST(Fences, stand_apart_by_the_hot_sheet_and_its_clearance) {
    const auto parts = form_of(sample::pilot_boat());
    const Part& fence = named(parts, "form-front-fence");
    ASSERT_EQ(fence.placements.size(), 2U);
    // Each runs from its origin towards −Y by its thickness of 18 mm: inner faces at the second
    // one's far end and the first one's near end.
    const double low_face = fence.placements[0].origin.y;
    const double high_face = fence.placements[1].origin.y - 18;
    EXPECT_NEAR(high_face - low_face, 396.4974619289, kRounding);
}

TEST(Ribs, stand_flush_with_the_ends_and_evenly) {
    const auto sums = fit::solve(sample::pilot_boat());
    const auto parts = form_of(sample::pilot_boat());
    const Part& rib = named(parts, "form-front-rib");
    const double width = sums.forms.at(0).sizes.width;
    std::vector<double> ends;
    for (const Placement& place : rib.placements) {
        ends.push_back(place.origin.y);
    }
    std::sort(ends.begin(), ends.end());
    EXPECT_NEAR(ends.front() - 18, -width / 2, kRounding);
    EXPECT_NEAR(ends.back(), width / 2, kRounding);
    for (std::size_t i = 1; i < ends.size(); ++i) {
        EXPECT_NEAR(ends[i] - ends[i - 1], sums.forms.at(0).sizes.rib_pitch, kRounding);
    }
}

// Half-lapped: what a cross-member leaves of a rib's height the rib's notch takes, and the slot is
// wider than the board by the joint allowance.
TEST(CrossMembers, lap_half_and_half_with_the_ribs) {
    const auto parts = form_of(sample::pilot_boat());
    const Part& cross = named(parts, "form-front-cross");
    const Part& rib = named(parts, "form-front-rib");
    const double board = 18;
    const double slot = board + 0.2;
    const double height = cross.pattern.outline.box().height();
    const double notch = slot * height / 2;
    // The outer two slots run out at the board's ends, where only half a slot's surplus is left.
    const double full = cross.pattern.outline.box().width() * height;
    const double outer = (board + 0.1) * height / 2;
    EXPECT_NEAR(cross.pattern.outline.area(), full - 2 * notch - 2 * outer, 1e-6);
    double shallow = 1e9;
    for (const Vertex& vertex : rib.pattern.outline.outer.vertices()) {
        if (vertex.at.y > 1e-6) {
            shallow = std::min(shallow, vertex.at.y);
        }
    }
    EXPECT_NEAR(shallow, height / 2, kRounding);
}

TEST(FormParts, are_none_past_half_a_turn) {
    Case c = sample::pilot_boat();
    c.plan.front = FrontArc{ArcMeasure::sweep, sample::given(3.0, "/plan/front/sweep")};
    EXPECT_TRUE(form_of(c).empty());
}

TEST(Rib, of_a_flat_arc_is_solid_down_to_the_base) {
    Case c = sample::pilot_boat();
    c.plan.front = FrontArc{ArcMeasure::rise, sample::given(10.0, "/plan/front/rise")};
    c.form.rib_depth.value = 300;
    const auto parts = form_of(c);
    const Contour& outline = named(parts, "form-front-rib").pattern.outline.outer;
    int arcs = 0;
    for (const Segment& s : outline.segments()) {
        arcs += s.straight() ? 0 : 1;
    }
    EXPECT_EQ(arcs, 1);
}

}  // namespace
}  // namespace bowfront::pattern
