#include "bowfront/solid/solid.hpp"
#include "support/sample_bodies.hpp"

namespace bowfront {
namespace {

using solid::Overlap;

// Least depth that counts, as in a design.
constexpr double kDepth = 1e-4;
// The kernel's boolean moves surfaces by up to its fuzziness, so a piece t thick is right to that
// share of t.
double boolean_volume(double volume, double thinnest) {
    return volume * kDepth / thinnest;
}

Solid made(const Body& body) {
    return solid::make(body, "part");
}

/// The arc groove of sample::plate, and a pane in it that stands on the groove's floor.
Body pane_in_arc_groove(double thickness) {
    return sample::bent_pane({200, 300}, 250, thickness, 1.5 * std::numbers::pi - 0.58, 1.16, 100);
}

std::vector<Overlap> pane_against_plate(double thickness, double foot) {
    return solid::overlaps(
        {made(sample::plate()), made(pane_in_arc_groove(thickness)).placed(sample::at(0, 0, foot))},
        kDepth);
}

TEST(Overlap, is_not_found_for_a_pane_standing_in_its_groove) {
    EXPECT_TRUE(pane_against_plate(3, 14).empty());
    EXPECT_TRUE(pane_against_plate(4.8, 14).empty()) << "flush on both sides";
    EXPECT_TRUE(pane_against_plate(4.7999, 14).empty()) << "nearer than the plain test decides";
}

TEST(Overlap, is_found_for_a_pane_thicker_than_its_groove) {
    const auto found = pane_against_plate(4.9, 14);
    ASSERT_EQ(found.size(), 1U);
    EXPECT_EQ(found[0].first, 0U);
    EXPECT_EQ(found[0].second, 1U);
    // 0.05 on each side, 6 deep, along 1.16 rad of the two radii.
    const double expected = 2 * 0.05 * 6 * 250 * 1.16;
    EXPECT_NEAR(found[0].volume, expected, boolean_volume(expected, 0.05));
    EXPECT_NEAR(found[0].depth, 0.05, 1e-3);
}

TEST(Overlap, is_found_for_a_pane_that_stands_below_its_grooves_floor) {
    const auto found = pane_against_plate(3, 13.5);
    ASSERT_EQ(found.size(), 1U);
    const double expected = 0.5 * 3 * 250 * 1.16;
    EXPECT_NEAR(found[0].volume, expected, boolean_volume(expected, 0.5));
    EXPECT_NEAR(found[0].depth, 0.5, 1e-3);
}

TEST(Overlap, starts_at_the_depth_told) {
    const Solid low = made(sample::block({0, 0}, {100, 100}, 10));
    const auto on_top = [&](double sunk) {
        return solid::overlaps({low, low.placed(sample::at(0, 0, 10 - sunk))}, kDepth).size();
    };
    EXPECT_EQ(on_top(-0.3), 0U);
    EXPECT_EQ(on_top(0), 0U);
    EXPECT_EQ(on_top(5e-5), 0U);
    EXPECT_EQ(on_top(5e-4), 1U);
    EXPECT_EQ(on_top(1), 1U);
}

TEST(Overlap, that_is_shallower_than_told_is_passed_over) {
    const std::vector<Solid> solids = {made(sample::plate()),
                                       made(pane_in_arc_groove(4.9)).placed(sample::at(0, 0, 14))};
    EXPECT_EQ(solid::overlaps(solids, 0.04).size(), 1U);
    EXPECT_EQ(solid::overlaps(solids, 0.06).size(), 0U);
}

TEST(Overlap, is_found_for_a_solid_within_another_and_for_one_on_another) {
    const Solid large = made(sample::block({0, 0}, {100, 100}, 50));
    const Solid small = made(sample::block({40, 40}, {60, 60}, 10)).placed(sample::at(0, 0, 20));
    const auto found = solid::overlaps({small, large, large}, kDepth);
    ASSERT_EQ(found.size(), 3U);
    EXPECT_NEAR(found[0].volume, 4000, boolean_volume(4000, 10));
    EXPECT_NEAR(found[2].volume, 500000, boolean_volume(500000, 50));
    EXPECT_EQ(found[2].first, 1U);
    EXPECT_EQ(found[2].second, 2U);
}

TEST(Overlap, is_not_found_for_a_solid_in_the_hole_of_another) {
    Body ring = sample::block({0, 0}, {100, 100}, 50);
    ring.section.holes.push_back(Contour::circle({50, 50}, 30).reversed());
    Body plug;
    plug.section.outer = Contour::circle({50, 50}, 29);
    plug.height = 50;
    EXPECT_TRUE(solid::overlaps({made(ring), made(plug)}, kDepth).empty());
    plug.section.outer = Contour::circle({50, 50}, 30);
    EXPECT_TRUE(solid::overlaps({made(ring), made(plug)}, kDepth).empty()) << "flush all round";
    plug.section.outer = Contour::circle({50, 50}, 31);
    EXPECT_EQ(solid::overlaps({made(ring), made(plug)}, kDepth).size(), 1U);
}

TEST(Overlap, is_judged_across_any_axis) {
    const Solid block = made(sample::block({-20, -20}, {20, 20}, 40));
    const double tilt = 0.4;
    const Placement leaning{{0, 0, 20}, {1, 0, 0}, {0, std::sin(tilt), std::cos(tilt)}};
    const Solid rod = made(sample::block({-5, -5}, {5, 5}, 100)).placed(leaning);
    const auto through = solid::overlaps({block, rod}, kDepth);
    ASSERT_EQ(through.size(), 1U);
    EXPECT_GT(through[0].volume, 1000);
    // Above the block by more than the rod's tilted foot reaches down, though the boxes meet.
    const Solid above = rod.placed(sample::at(0, 24, 21.9));
    EXPECT_TRUE(solid::overlaps({block, above}, kDepth).empty());
    // Lying along X beside each other: common axis X.
    const Placement lying{{0, 0, 0}, {0, 1, 0}, {1, 0, 0}};
    const Body arc = sample::bent_pane({0, 0}, 100, 4, 0.2, 1, 50);
    const Body inner = sample::bent_pane({0, 0}, 95, 4, 0.2, 1, 50);
    const Body touching = sample::bent_pane({0, 0}, 97, 4, 0.2, 1, 50);
    EXPECT_TRUE(
        solid::overlaps({made(arc).placed(lying), made(inner).placed(lying)}, kDepth).empty());
    EXPECT_EQ(
        solid::overlaps({made(arc).placed(lying), made(touching).placed(lying)}, kDepth).size(),
        1U);
}

TEST(Overlap, leaves_standard_output_alone) {
    testing::internal::CaptureStdout();
    EXPECT_EQ(pane_against_plate(4.9, 14).size(), 1U);
    EXPECT_EQ(testing::internal::GetCapturedStdout(), "");
}

}  // namespace
}  // namespace bowfront
