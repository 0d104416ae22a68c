// A side of several pieces, glazed by one pane that is bent from one blank.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "bowfront/fit/checks.hpp"
#include "bowfront/fit/layout.hpp"
#include "bowfront/fit/sums.hpp"
#include "support/run_case.hpp"
#include "support/sample_case.hpp"

namespace bowfront::fit {
namespace {

using sample::arc_piece;
using sample::case_with_front;
using sample::random_run;
using sample::RandomCases;
using sample::straight_piece;
using std::numbers::pi;
using ::testing::HasSubstr;

// Some dozens of operations on sizes up to a few metres, mm.
constexpr double kRounding = 1e-9;
constexpr unsigned kSeed = 20261125;
constexpr int kCases = 40;

const PaneSums<double>& front_of(const CaseSums<double>& sums) {
    return sums.panes.front();
}

// Lengths along the pane's own pieces.
double length_of(const PaneSums<double>& pane) {
    double sum = 0;
    for (const SidePiece<double>& piece : pane.path) {
        sum += piece.length;
    }
    return sum;
}

// Source: bend allowance, BA = π/180·A·(R + K·T), with the neutral line in the middle, K = 0.5:
// Machinery's Handbook, "Bending Sheet Metal", allowances for bends. R 78.5, T 3, A 90:
// 1.5707963·80 = 125.66371; legs of 300 and 200 between the bend lines and the corner points.
TEST(Run, of_a_j_is_as_long_as_its_legs_and_the_bend_allowance) {
    const Case c =
        case_with_front({straight_piece(300), arc_piece(80, pi / 2), straight_piece(200)});
    const CaseSums<double> sums = solve(c);
    constexpr double kAllowance = 125.66370614;
    constexpr double kPrinted = 1e-8;  // of the allowance worked out by hand
    EXPECT_NEAR(sums.sides.front().length, 300 + kAllowance + 200, kPrinted);
    const PaneSums<double>& pane = front_of(sums);
    ASSERT_EQ(pane.bends.size(), 1U);
    EXPECT_NEAR(pane.bends[0].inside_radius, 78.5, kRounding);
    EXPECT_NEAR(pane.bends[0].end - pane.bends[0].start, kAllowance, kPrinted);
    // Fitted posts of 42 mm meet both straights square: 21 mm stand in each, and the pane's ends in
    // grooves of 15 mm with 3 mm of clearance. So the first leg is 300 − 21 + 12.
    EXPECT_NEAR(pane.bends[0].start, 291, kRounding);
    EXPECT_NEAR(pane.length, 291 + kAllowance + 191, kPrinted);
    // Cast acrylic shrinks by 1.5 %: blank and bend lines are longer by that.
    EXPECT_NEAR(pane.blank_length, pane.length / 0.985, kRounding);
    EXPECT_NEAR(pane.bends[0].blank_start, 291 / 0.985, kRounding);
    EXPECT_NEAR(pane.bends[0].blank_end, (291 + kAllowance) / 0.985, kPrinted);
    // From (0, 0) along X to 300, round (300, 80), and up to 280.
    EXPECT_NEAR(sums.sides.front().chord, std::hypot(380, 280), kRounding);
}

TEST(Run, is_as_long_as_its_pieces) {
    RandomCases random(kSeed);
    for (int i = 0; i < kCases; ++i) {
        SCOPED_TRACE(testing::Message() << "seed " << kSeed << ", case " << i);
        const Case c = random_run(random);
        const CaseSums<double> sums = solve(c);
        const PaneSums<double>& pane = front_of(sums);
        double side = 0;
        for (const PieceSpec& piece : c.plan.chain.front().pieces) {
            side += piece.straight ? piece.straight->value
                                   : piece.arc[0].value.value * piece.arc[1].value.value;
        }
        EXPECT_NEAR(sums.sides.front().length, side, kRounding);
        EXPECT_NEAR(length_of(pane), pane.length, kRounding);
        // Area of the blank before shrink: what the heat takes of it leaves length times height.
        const SheetSpec& sheet = c.sheets.at("cast-acrylic");
        EXPECT_NEAR(pane.blank_length * pane.blank_width * (1 - sheet.shrink_along.value) *
                        (1 - sheet.shrink_across.value),
                    pane.length * pane.height, 1e3 * kRounding);
        double at = 0;
        for (const BendSums<double>& bend : pane.bends) {
            EXPECT_LT(at, bend.start);
            EXPECT_LT(bend.start, bend.end);
            EXPECT_LT(bend.blank_start, bend.blank_end);
            at = bend.end;
        }
        EXPECT_LT(at, pane.length);
    }
}

TEST(Run, seen_in_a_mirror_has_the_same_figures_the_other_way_round) {
    RandomCases random(kSeed);
    // The pane is laid in its groove by steps that end within this, mm.
    constexpr double kLaid = 1e-7;
    for (int i = 0; i < kCases; ++i) {
        SCOPED_TRACE(testing::Message() << "seed " << kSeed << ", case " << i);
        const Case c = random_run(random);
        const CaseSums<double> sums = solve(c);
        const CaseSums<double> mirrored = solve(sample::mirrored(c));
        const PaneSums<double>& a = front_of(sums);
        const PaneSums<double>& b = front_of(mirrored);
        EXPECT_NEAR(a.length, b.length, kRounding);
        EXPECT_NEAR(a.chord, b.chord, kRounding);
        EXPECT_NEAR(a.rise, b.rise, kRounding);
        EXPECT_NEAR(a.start_in_post, b.end_in_post, kRounding);
        ASSERT_EQ(a.bends.size(), b.bends.size());
        for (std::size_t k = 0; k < a.bends.size(); ++k) {
            const BendSums<double>& bend = a.bends[k];
            const BendSums<double>& other = b.bends[b.bends.size() - 1 - k];
            EXPECT_NEAR(bend.start, b.length - other.end, kRounding);
            EXPECT_NEAR(bend.blank_start, b.blank_length - other.blank_end, kRounding);
        }
        EXPECT_NEAR(a.radius_error.share, b.radius_error.share, kLaid);
        EXPECT_NEAR(a.radius_error.rise_off_worst, b.radius_error.rise_off_worst, kLaid);
        ASSERT_EQ(sums.forms.size(), mirrored.forms.size());
        EXPECT_NEAR(sums.forms[0].sizes.skin_length, mirrored.forms[0].sizes.skin_length,
                    kRounding);
    }
}

// Two halves of one arc, which are not one piece, against the formulas of one arc.
TEST(Run, of_two_halves_of_an_arc_fits_as_the_arc_does) {
    const Case whole = case_with_front({arc_piece(420, 1.2)});
    const Case halves = case_with_front({arc_piece(420, 0.6), arc_piece(420, 0.6)});
    const CaseSums<double> of_whole = solve(whole);
    const CaseSums<double> of_halves = solve(halves);
    const PaneSums<double>& a = front_of(of_whole);
    const PaneSums<double>& b = front_of(of_halves);
    EXPECT_TRUE(a.path.empty());
    ASSERT_EQ(b.path.size(), 2U);
    EXPECT_NEAR(a.length, b.length, kRounding);
    EXPECT_NEAR(a.blank_length, b.blank_length, kRounding);
    EXPECT_NEAR(a.chord, b.chord, kRounding);
    EXPECT_NEAR(a.rise, b.rise, kRounding);
    EXPECT_NEAR(a.reach, b.reach, kRounding);
    EXPECT_NEAR(a.radius, b.radius, kRounding);
    for (std::size_t i = 0; i < a.states.size(); ++i) {
        EXPECT_NEAR(a.states[i].opening_least, b.states[i].opening_least, kRounding);
        EXPECT_NEAR(a.states[i].opening_most, b.states[i].opening_most, kRounding);
    }
    for (std::size_t i = 0; i < a.edges.size(); ++i) {
        EXPECT_NEAR(a.edges[i].engagement_least, b.edges[i].engagement_least, kRounding);
        EXPECT_NEAR(a.edges[i].face_clearance_least, b.edges[i].face_clearance_least, kRounding);
    }
    // The formula of one arc lets it shift along its middle and counts the first order of the
    // radii's difference alone, here 4.2 of 420 mm: a hundredth of what it stands off.
    EXPECT_NEAR(b.radius_error.share, a.radius_error.share, 0.02 * a.radius_error.share);
    EXPECT_GT(b.radius_error.share, 0);
    EXPECT_NEAR(of_whole.forms[0].sizes.skin_length, of_halves.forms[0].sizes.skin_length,
                kRounding);
}

TEST(Run, swings_its_straights_where_springback_opens_its_bends) {
    const Case c =
        case_with_front({straight_piece(300), arc_piece(80, pi / 2), straight_piece(200)});
    const CaseSums<double> sums = solve(c);
    const PaneSums<double>& pane = front_of(sums);
    const BendSums<double>& bend = pane.bends[0];
    // ± 1 % of the inside radius.
    EXPECT_NEAR(bend.free_radius_most, 78.5 * 1.01 + 1.5, kRounding);
    EXPECT_NEAR(bend.free_sweep_least * bend.free_radius_most, bend.sweep * bend.radius, kRounding);
    EXPECT_LT(bend.free_sweep_least, bend.sweep);
    // The legs, 291 and 191 mm, swing apart by the angle δ that the bend opens by. Each can be shifted
    // square to itself, and one turn is shared between them: sharply bent legs a and b are off by
    // δ·a·b/(2(a + b)). The round corner adds something to both, less than its length of 125.7 mm.
    const double opened = bend.sweep - bend.free_sweep_least;
    const auto sharp = [&](double a, double b) { return opened * a * b / (2 * (a + b)); };
    const double off = pane.radius_error.share * 78.5 * 0.01 / 2;
    EXPECT_GT(off, sharp(291, 191));
    EXPECT_LT(off, sharp(291 + 125.7, 191 + 125.7));
    EXPECT_EQ(pane.radius_error.rise_off, 0);
    // With the timber's movement at worst.
    EXPECT_GT(pane.radius_error.rise_off_worst / 2, off);
}

TEST(Run, goes_by_the_bends_that_were_measured) {
    Case c = case_with_front({straight_piece(300), arc_piece(80, pi / 2), straight_piece(200)});
    const PaneSums<double> drawn = solve(c).panes.front();
    c.panes[0].made.bends = {{79.5, 79.3, 79.7}};
    const PaneSums<double> made = solve(c).panes.front();
    EXPECT_NEAR(made.bends[0].free_radius, 81, kRounding);
    EXPECT_NEAR(made.bends[0].free_radius_most, 81.2, kRounding);
    EXPECT_NEAR(made.radius_error.free_radius, 81, kRounding);
    // It has opened by 1 of 78.5 mm; what it stands off by, as built, is in proportion.
    EXPECT_NEAR(made.radius_error.rise_off, drawn.radius_error.share, 0.02 * drawn.radius_error.share);
}

TEST(Run, is_moved_by_each_piece_on_its_own_way) {
    // Across the grain, along Y, the base moves; along X it stands still.
    const Case c = case_with_front({straight_piece(200), arc_piece(80, pi / 2), straight_piece(300),
                                    arc_piece(80, pi / 2), straight_piece(200)});
    const CaseSums<double> sums = solve(c);
    const PaneSums<double>& pane = front_of(sums);
    Book<double> book;
    const auto timber = timber_states(c, book);
    const double moved = timber[1].base.depth;
    ASSERT_NE(moved, 1);
    EXPECT_EQ(timber[1].base.width, 1);
    // A U: its legs lie along Y, the middle along X. Source: geometry; each quarter bend becomes a
    // quarter of an ellipse, 80·E(k) with its half axes 80 and 80·moved, to the second order
    // 80·π/2·((1 + moved)/2)·(1 + h/4), h = ((1 − moved)/(1 + moved))² (Ramanujan's first terms).
    const double h = std::pow((1 - moved) / (1 + moved), 2);
    const double quarter = 80 * pi / 2 * (1 + moved) / 2 * (1 + h / 4);
    const double side = 2 * 200 * moved + 300 + 2 * quarter;
    const double in_posts = (pane.start_in_post + pane.end_in_post) * timber[1].post_most;
    EXPECT_NEAR(pane.states[1].opening_least, side - in_posts, 1e-7);
}

TEST(Run, is_asked_to_hold_its_first_piece_until_it_is_out_of_its_post) {
    const Case c =
        case_with_front({straight_piece(15), arc_piece(150, pi / 2), straight_piece(300)});
    const auto objections = fit::objections(c);
    ASSERT_FALSE(objections.empty());
    EXPECT_EQ(objections[0].pointer, "/plan/sides/0");
    EXPECT_THAT(objections[0].found, HasSubstr("ends inside its post"));
    EXPECT_THAT(objections[0].wanted, HasSubstr("at least 21"));
}

TEST(Run, has_no_two_straights_in_a_row) {
    const Case c = case_with_front(
        {straight_piece(150), straight_piece(80), arc_piece(150, pi / 2), straight_piece(300)});
    const auto objections = fit::objections(c);
    ASSERT_FALSE(objections.empty());
    EXPECT_THAT(objections[0].wanted, HasSubstr("one straight of 230"));
}

TEST(Run, can_not_be_held_cold) {
    Case c = case_with_front({straight_piece(300), arc_piece(80, pi / 2), straight_piece(200)});
    c.panes[0].bend.value = Bend::cold;
    const auto objections = fit::objections(c);
    ASSERT_FALSE(objections.empty());
    EXPECT_EQ(objections[0].pointer, "/panes/0/bend");
}

TEST(Run, needs_a_bend_that_form_and_skin_can_take) {
    const Case c =
        case_with_front({straight_piece(300), arc_piece(5, pi / 2), straight_piece(200)});
    const auto objections = fit::objections(c);
    ASSERT_FALSE(objections.empty());
    // 1.5 of the sheet, 3 of the skin, 0.6 of the cover.
    EXPECT_THAT(objections[0].wanted, HasSubstr("more than 5.1"));
    EXPECT_EQ(objections[0].pointer, "/plan/sides/0/run/1");
}

TEST(Run, keeps_its_groove_smooth_on_a_moved_plate) {
    const Case c = case_with_front({straight_piece(200), arc_piece(80, 1.5), straight_piece(300),
                                    arc_piece(120, 0.4, Bow::in), straight_piece(200),
                                    arc_piece(90, 1.5), straight_piece(200)});
    const Solution solved = solution(c);
    ASSERT_TRUE(solved.objections.empty()) << solved.objections[0].found;
    Book<double> book;
    const Layout moved = layout_in(solved.layout, timber_states(c, book)[4]);
    for (std::size_t i = 1; i < moved.line.sides[0].size(); ++i) {
        const Segment& before = moved.line.sides[0][i - 1];
        const Segment& after = moved.line.sides[0][i];
        EXPECT_NEAR(distance(before.tangent(1), after.tangent(0)), 0, kRounding);
        EXPECT_NEAR(distance(before.to, after.from), 0, kRounding);
    }
}

}  // namespace
}  // namespace bowfront::fit
