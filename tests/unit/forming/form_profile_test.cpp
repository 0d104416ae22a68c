#include "bowfront/forming/form_profile.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "support/sample_case.hpp"

namespace bowfront::forming {
namespace {

using std::numbers::pi;

// Some dozens of operations on sizes up to 1 m, mm and rad.
constexpr double kRounding = 1e-10;

// A run of straights (radius 0) and bends by inside radius and length on the mid-surface of a sheet
// of 3 mm.
FormTask<double> task_of(std::vector<BentPiece<double>> pieces, double springback = 0) {
    FormTask<double> task{.inside_radius = 0,
                          .sweep = 0,
                          .blank_width = 400,
                          .widest_hot = 396,
                          .springback = springback};
    task.thickness = 3;
    task.pieces = std::move(pieces);
    return task;
}

BentPiece<double> straight(double length) {
    return {length, 0, false};
}
BentPiece<double> bend(double inside, double sweep, bool hollow = false) {
    return {(inside + 1.5) * sweep, inside, hollow};
}

FormSizes<double> sizes(const FormTask<double>& task) {
    Book<double> book;
    return form_sizes(task, sample::pilot_boat().form, "front", book);
}

// Numbers worked by hand: cover 0.6, skin 3, overruns of 60.
TEST(FormOfSeveralPieces, has_each_bend_under_the_sheet) {
    const auto form = sizes(task_of({straight(200), bend(80, pi / 2), straight(100)}));
    EXPECT_NEAR(form.face_radius, 80, kRounding);
    EXPECT_NEAR(form.rib_radius, 76.4, kRounding);
    EXPECT_NEAR(form.skin_radius, 76.4, kRounding);
    EXPECT_NEAR(form.rib_sweep, pi / 2, kRounding);
    ASSERT_EQ(form.pieces.size(), 3U);
    EXPECT_NEAR(form.pieces[0].length, 260, kRounding);
    EXPECT_NEAR(form.pieces[1].length, 80 * pi / 2, kRounding);
    EXPECT_NEAR(form.pieces[2].length, 160, kRounding);
    EXPECT_NEAR(form.skin_length, 260 + 77.9 * pi / 2 + 160, kRounding);
}

// Released, each bend's radius grows by k and its length stays: it opens to what the pane has.
TEST(FormOfSeveralPieces, is_bent_tighter_and_further_by_the_springback) {
    constexpr double kSpringback = 0.04;
    const auto form = sizes(task_of({straight(200), bend(80, pi / 2), straight(100)}, kSpringback));
    const FormPiece<double>& on_form = form.pieces[1];
    EXPECT_NEAR(on_form.radius * (1 + kSpringback), 80, kRounding);
    EXPECT_GT(on_form.sweep, pi / 2);
    EXPECT_NEAR((on_form.radius + 1.5) * on_form.sweep, 81.5 * pi / 2, kRounding);
    EXPECT_NEAR(form.pane_sweep, pi / 2, kRounding);
}

// On the other side of the sheet the form is hollow: it takes the sheet's thickness, cover and skin
// the other way.
TEST(FormOfSeveralPieces, is_hollow_where_the_pane_bows_the_other_way) {
    const auto form = sizes(
        task_of({straight(200), bend(80, 1.2), straight(50), bend(90, 0.7, true), straight(100)}));
    EXPECT_NEAR(form.pieces[3].radius, 93, kRounding);
    EXPECT_TRUE(form.pieces[3].hollow);
    EXPECT_NEAR(form.rib_sweep, 1.2, kRounding);
    EXPECT_NEAR(form.skin_length, 260 + 77.9 * 1.2 + 50 + 95.1 * 0.7 + 160, kRounding);
}

TEST(FormProfile, is_as_long_as_the_ribs_edge_and_smooth) {
    const auto form = sizes(
        task_of({straight(200), bend(80, 1.2), straight(50), bend(90, 0.7, true), straight(100)}));
    const FormProfile profile = form_profile(form, sample::pilot_boat().form);
    double length = 0;
    for (std::size_t i = 0; i < profile.edge.size(); ++i) {
        length += profile.edge[i].length();
        if (i > 0) {
            EXPECT_NEAR(distance(profile.edge[i - 1].tangent(1), profile.edge[i].tangent(0)), 0,
                        kRounding);
        }
    }
    EXPECT_NEAR(length, 260 + 76.4 * 1.2 + 50 + 96.6 * 0.7 + 160, kRounding);
    EXPECT_NEAR(profile.bend_lines[0], 260, kRounding);
    // The skin's mid-line is the edge set off by half of it.
    double skin = 0;
    for (const Segment& s : set_off(profile.edge, 1.5)) {
        skin += s.length();
    }
    EXPECT_NEAR(skin, form.skin_length, kRounding);
}

TEST(FormProfile, stands_level_where_it_can) {
    const auto form = sizes(task_of({straight(200), bend(80, pi / 2), straight(150)}));
    const FormProfile profile = form_profile(form, sample::pilot_boat().form);
    EXPECT_NEAR(profile.edge.front().from.y, 60, kRounding);
    EXPECT_NEAR(profile.edge.back().to.y, 60, kRounding);
    EXPECT_NEAR(profile.edge.front().from.x, -profile.edge.back().to.x, kRounding);
}

// A U with legs of two lengths can't stand level: its legs stand upright instead.
TEST(FormProfile, leans_in_nowhere_up_to_half_a_turn) {
    const auto form = sizes(
        task_of({straight(200), bend(80, pi / 2), straight(150), bend(60, pi / 2), straight(120)}));
    EXPECT_TRUE(can_be_drawn_off(form));
    const FormProfile profile = form_profile(form, sample::pilot_boat().form);
    EXPECT_NEAR(profile.edge.front().tangent(0).x, 0, kRounding);
    EXPECT_NEAR(profile.edge.back().tangent(1).x, 0, kRounding);
    double lowest = HUGE_VAL;
    for (const Segment& s : profile.edge) {
        lowest = std::min(lowest, s.box().low.y);
    }
    EXPECT_NEAR(lowest, 60, kRounding);
}

TEST(FormOfSeveralPieces, comes_off_past_half_a_turn_only_where_springback_opens_the_pane) {
    const std::vector<BentPiece<double>> u{straight(200), bend(80, pi / 2), straight(150),
                                           bend(60, pi / 2), straight(120)};
    const auto bent_over = sizes(task_of(u, 0.05));
    EXPECT_GT(bent_over.rib_sweep, pi + kHalfTurnRounding);
    EXPECT_TRUE(can_be_drawn_off(bent_over));
    std::vector<BentPiece<double>> more = u;
    more[1] = bend(80, 1.7);
    EXPECT_FALSE(can_be_drawn_off(sizes(task_of(more))));
}

}  // namespace
}  // namespace bowfront::forming
