#include "bowfront/pattern/access_parts.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <numbers>

#include "bowfront/pattern/case_parts.hpp"
#include "support/access_cases.hpp"

namespace bowfront::pattern {
namespace {

using std::numbers::pi;

// Volumes of up to 5e6 mm³, to 1e-11; places of under 1 m after some dozens of operations.
constexpr double kVolumeRounding = 1e-4;
constexpr double kRounding = 1e-10;

struct Made {
    Case c;
    AccessSums<double> sums;
    fit::AccessLayout access;
    std::vector<Part> before;
    std::vector<Part> parts;

    explicit Made(Case made) : c(std::move(made)), sums(fit::solve_access(c)) {
        const auto all = fit::solve(c);
        const fit::Layout layout = fit::layout(c, all);
        access = fit::access_layout(c, sums, layout);
        before = parts = case_parts(c, all, layout);
        add_access_parts(c, sums, access, parts);
    }
    static const Part& named(const std::vector<Part>& all, std::string_view id) {
        const auto found =
            std::find_if(all.begin(), all.end(), [&](const Part& part) { return part.id == id; });
        if (found == all.end()) {
            throw std::logic_error("no part " + std::string(id));
        }
        return *found;
    }
    [[nodiscard]] const Part& part(std::string_view id) const { return named(parts, id); }
    // What the opening takes of a part.
    [[nodiscard]] double taken(std::string_view id) const {
        return volume(named(before, id).body) - volume(part(id).body);
    }
};

TEST(AccessParts, of_a_pane_that_lifts_out_are_a_groove_above_and_below_and_a_pane_with_two_bores) {
    const Made made(sample::opening_at_the_back(sample::lift_out_pane()));
    // 478 mm and half a width at each end, round.
    const double area = 478 * 7.5 + pi / 4 * 7.5 * 7.5;
    EXPECT_NEAR(made.taken("base"), area * 5, kVolumeRounding);
    EXPECT_NEAR(made.taken("top"), area * 14, kVolumeRounding);
    EXPECT_EQ(made.part("base").pattern.recesses.size(),
              made.part("base").body.recesses.size());
    const Part& pane = made.part("pane-back");
    EXPECT_NEAR(volume(pane.body), (474 * 392.5 - 2 * pi / 4 * 625) * 5, kVolumeRounding);
    EXPECT_EQ(pane.pattern.outline.holes.size(), 2U);
    EXPECT_EQ(pane.pattern.thickness, 5);
}

// The middle of a pane of the back stands over the back's glazing line, its foot in the groove.
TEST(AccessParts, stand_the_pane_up_on_its_side) {
    const Made made(sample::opening_at_the_back(sample::lift_out_pane()));
    const Part& pane = made.part("pane-back");
    const Point3 low = placed(pane.placements.front(), {0, 0, 0});
    const Point3 high = placed(pane.placements.front(), {474, 392.5, 5});
    EXPECT_NEAR(low.z, -5, kRounding);
    EXPECT_NEAR(high.z, 387.5, kRounding);
    EXPECT_NEAR((low.x + high.x) / 2, 0, kRounding);
    EXPECT_NEAR((low.y + high.y) / 2, 240, kRounding);
    EXPECT_NEAR(high.y - low.y, 5, kRounding);  // its upper local face looks outwards
}

TEST(AccessParts, of_a_sliding_pair_are_twin_grooves_and_two_panes) {
    const Made made(sample::opening_at_the_back(sample::sliding_pair()));
    const double area = 478 * 7 + pi / 4 * 49;
    EXPECT_NEAR(made.taken("base"), 2 * area * 5, kVolumeRounding);
    EXPECT_NEAR(made.taken("top"), 2 * area * 14, kVolumeRounding);
    EXPECT_NEAR(volume(made.part("pane-back-start").body),
                volume(made.part("pane-back-end").body), kVolumeRounding);
    EXPECT_NEAR(volume(made.part("pane-back-start").body),
                (254 * 392.5 - pi / 4 * 625) * 5, kVolumeRounding);
    EXPECT_EQ(moved_part(*made.c.access), "pane-back-start");
}

TEST(AccessParts, of_a_door_are_two_bores_and_a_stop) {
    const Made made(sample::opening_at_the_back(sample::pivot_door()));
    const double bore = pi / 4 * 36 * 10;  // half the thinner plate, of 20 mm, deep
    EXPECT_NEAR(made.taken("base"), bore, kVolumeRounding);
    EXPECT_NEAR(made.taken("top"), bore, kVolumeRounding);
    EXPECT_NEAR(volume(made.part("stop-back").body), 10 * 10 * 380, kVolumeRounding);
    EXPECT_NEAR(volume(made.part("pane-back").body), 472 * 374 * 5, kVolumeRounding);
}

TEST(AccessParts, of_a_top_are_pegs_half_in_the_posts) {
    const Made made(sample::opening_at_the_top());
    const double bore = pi / 4 * 36 * 12;
    EXPECT_NEAR(made.taken("top"), 4 * bore, kVolumeRounding);
    EXPECT_NEAR(made.taken("post-back-left"), bore, kVolumeRounding);
    EXPECT_EQ(made.part("peg").count(), 4);
    EXPECT_NEAR(volume(made.part("peg").body), 2 * bore, kVolumeRounding);
    EXPECT_EQ(moved_part(*made.c.access), "top");
}

TEST(OpenDoor, stands_square_to_its_side_outside_the_case) {
    const Made made(sample::opening_at_the_back(sample::pivot_door()));
    const auto open = with_open_door(*made.c.access, made.access, made.parts);
    const Part& door = Made::named(open, "pane-back");
    const Point3 near = placed(door.placements.front(), {0, 0, 2.5});
    const Point3 far = placed(door.placements.front(), {472, 0, 2.5});
    EXPECT_NEAR(near.x, far.x, kRounding);
    EXPECT_NEAR(far.y - near.y, 472, kRounding);  // the back opens towards larger Y
    EXPECT_NEAR(near.y, 240 - 17, kRounding);     // the pin stands 17 mm from its edge
    EXPECT_NEAR(far.z, 3, kRounding);
    EXPECT_EQ(volume(door.body), volume(made.part("pane-back").body));
}

}  // namespace
}  // namespace bowfront::pattern
