#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "bowfront/fit/checks.hpp"
#include "bowfront/pattern/case_parts.hpp"
#include "support/random_cases.hpp"
#include "support/sample_case.hpp"

namespace bowfront::pattern {
namespace {

using testing::HasSubstr;

// Some dozens of operations on coordinates under 1 m, mm; volumes are larger by the sizes.
constexpr double kRounding = 1e-9;
constexpr double kVolumeRounding = 1e-4;

std::vector<Part> parts_of(const Case& c) {
    const auto sums = fit::solve(c);
    return case_parts(c, sums, fit::layout(c, sums));
}

std::vector<Part> rails_of(const std::vector<Part>& parts, const std::string& plate) {
    std::vector<Part> rails;
    std::copy_if(parts.begin(), parts.end(), std::back_inserter(rails), [&](const Part& part) {
        return part.id.starts_with(plate + "-");
    });
    return rails;
}

const Part& named(const std::vector<Part>& parts, std::string_view id) {
    return *std::find_if(parts.begin(), parts.end(),
                         [&](const Part& part) { return part.id == id; });
}

Case butted_and_beaded() {
    Case c = sample::on_rails();
    c.frame.loading.value = Loading::beaded;
    c.frame.post.hold.value = Hold::rabbet;
    c.frame.base.build.corner.value = RailCorner::butt;
    return c;
}

// The ring's timber is that of a board of its outline, less the hole within, with the same grooves.
TEST(RailParts, have_together_the_volume_of_the_ring_less_its_grooves) {
    for (const Case& c : {sample::on_rails(), butted_and_beaded()}) {
        Case board = c;
        board.frame.base.build.kind.value = PlateBuild::plate;
        const auto boards = parts_of(board);
        const auto& base = *std::find_if(boards.begin(), boards.end(),
                                         [](const Part& part) { return part.id == "base"; });
        const auto layout = fit::layout(c, fit::solve(c));
        double sum = 0;
        for (const Part& rail : rails_of(parts_of(c), "base")) {
            sum += volume(rail.body);
        }
        EXPECT_NEAR(sum, volume(base.body) - layout.base.ring->inner.area() * base.body.height,
                    kVolumeRounding);
    }
}

TEST(RailParts, have_the_volume_of_their_ring_whatever_the_plan) {
    constexpr int kCases = 60;
    constexpr unsigned kSeed = 20250322;
    // Edges closer than 1e-7 mm count as one: along 20 m of them, 20 mm deep, mm³.
    constexpr double kSliver = 0.04;
    static constexpr RailCorner kCorners[] = {RailCorner::mitre, RailCorner::butt};
    static constexpr PostJoint kJoints[] = {PostJoint::butt, PostJoint::tenon};
    sample::RandomCases random(kSeed);
    int judged = 0;
    for (int i = 0; i < kCases; ++i) {
        Case board = random.sound();
        board.frame.post.joint.value = random.pick(kJoints);
        Case rails = board;
        rails.frame.base.build.kind.value = PlateBuild::rails;
        rails.frame.base.build.inset.value = random.draw(board.frame.groove.width.value, 50);
        rails.frame.base.build.corner.value = random.pick(kCorners);
        if (!fit::objections(rails).empty()) {
            continue;
        }
        ++judged;
        const auto layout = fit::layout(rails, fit::solve(rails));
        double sum = 0;
        for (const Part& rail : rails_of(parts_of(rails), "base")) {
            EXPECT_GT(volume(rail.body), 0) << rail.id << ", seed " << kSeed << ", " << i;
            sum += volume(rail.body);
        }
        // What is cut over the inner edge's inside is cut from the board alone.
        double inside = layout.base.ring->inner.area() * board.frame.base.thickness.value;
        const auto parts = parts_of(board);
        const Part& base = named(parts, "base");
        for (const Recess& recess : base.body.recesses) {
            for (const Region& area : intersect({recess.area}, {{layout.base.ring->inner, {}}})) {
                inside -= area.area() * recess.depth;
            }
        }
        EXPECT_NEAR(sum, volume(base.body) - inside, kSliver) << "seed " << kSeed << ", " << i;
    }
    EXPECT_GT(judged, kCases / 3);
}

TEST(RailParts, lie_on_their_pattern_with_the_grain_along_x) {
    for (const char* const plate : {"base", "top"}) {
        const auto rails = rails_of(parts_of(sample::on_rails()), plate);
        ASSERT_EQ(rails.size(), 7U);
        for (const Part& rail : rails) {
            const Box box = rail.pattern.outline.box();
            EXPECT_NEAR(box.low.x, 0, kRounding);
            EXPECT_NEAR(box.low.y, 0, kRounding);
            EXPECT_NEAR(box.width(), rail.timber->length, kRounding) << rail.id;
            EXPECT_NEAR(box.height(), rail.timber->width, kRounding) << rail.id;
            EXPECT_NEAR(rail.pattern.outline.area(), rail.body.section.area(), kVolumeRounding);
            ASSERT_EQ(rail.pattern.labels.size(), 1U);
            EXPECT_THAT(rail.pattern.labels[0].text, HasSubstr("grain"));
            EXPECT_EQ(where(rail.pattern.outline, rail.pattern.labels[0].at), Side::inside);
            EXPECT_THAT(rail.note, HasSubstr("loose tongue"));
        }
    }
}

TEST(RailParts, are_found_by_the_side_that_they_hold) {
    const Case c = sample::on_rails();
    const auto layout = fit::layout(c, fit::solve(c));
    EXPECT_EQ(plate_piece("base", layout.base, CaseSide::front), "base-front-3");
    EXPECT_EQ(plate_piece("top", layout.top, CaseSide::back), "top-back");
    const Case board = sample::pilot_boat();
    EXPECT_EQ(plate_piece("top", fit::layout(board, fit::solve(board)).top, CaseSide::back), "top");
}

// Half a board of 20 mm and half of one of 24 mm, 1 mm of each left for glue.
TEST(JoinedPosts, have_tenons_that_fill_their_mortises_but_for_the_glue) {
    for (Case c : {sample::pilot_boat(), sample::on_rails()}) {
        c.frame.post.joint.value = PostJoint::tenon;
        const auto layout = fit::layout(c, fit::solve(c));
        const auto parts = parts_of(c);
        double tenons = 0;
        for (const fit::PostLayout& post : layout.posts) {
            const Part& part =
                named(parts, "post-" + post.name);
            ASSERT_EQ(part.body.steps.size(), 2U);
            EXPECT_EQ(part.body.steps[0].height, 9);
            EXPECT_EQ(part.body.steps[1].height, 11);
            EXPECT_EQ(part.timber->length, 380 + 9 + 11);
            tenons += part.body.steps[0].area.area();
        }
        double mortises = 0;
        for (const Part& part : parts) {
            if (part.id.starts_with("base")) {
                for (const Recess& recess : part.body.recesses) {
                    mortises += recess.depth == 10 ? recess.area.area() : 0;
                }
            }
        }
        EXPECT_NEAR(mortises, tenons, kVolumeRounding);
    }
}

TEST(JoinedPosts, are_bored_for_dowels_where_base_and_top_are) {
    Case c = sample::pilot_boat();
    c.frame.post.joint.value = PostJoint::dowel;
    const auto parts = parts_of(c);
    const Part& base = named(parts, "base");
    EXPECT_EQ(base.body.bores.size(), 8U);
    EXPECT_EQ(base.pattern.bores.size(), 8U);
    for (const Part& part : parts) {
        if (!part.id.starts_with("post-")) {
            continue;
        }
        ASSERT_EQ(part.body.bores.size(), 2U);
        ASSERT_EQ(part.body.back_bores.size(), 2U);
        for (const Bore& bore : part.body.bores) {
            EXPECT_TRUE(std::any_of(base.body.bores.begin(), base.body.bores.end(),
                                    [&](const Bore& in_base) {
                                        return distance(in_base.centre, bore.centre) == 0;
                                    }));
        }
    }
}

}  // namespace
}  // namespace bowfront::pattern
