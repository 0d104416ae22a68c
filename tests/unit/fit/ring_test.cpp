#include "bowfront/fit/ring.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "bowfront/fit/layout.hpp"
#include "random_cases.hpp"

namespace bowfront::fit {
namespace {

using std::numbers::pi;
using testing::ElementsAre;

// Some hundred operations on coordinates under 3 m, mm; areas are larger by the ring's length.
constexpr double kPlace = 1e-9;
constexpr double kArea = 1e-5;

PlateLayout base_of(const Case& c) {
    return layout(c, solve(c)).base;
}

std::vector<std::string> names(const Ring& ring) {
    std::vector<std::string> all;
    for (const RailPiece& piece : ring.pieces) {
        all.push_back(piece.name);
    }
    return all;
}

const RailPiece& named(const Ring& ring, std::string_view name) {
    return *std::find_if(ring.pieces.begin(), ring.pieces.end(),
                         [&](const RailPiece& piece) { return piece.name == name; });
}

Case butted() {
    Case c = sample::on_rails();
    c.frame.base.build.corner.value = RailCorner::butt;
    return c;
}

// Panes of the sample on all sides of a plan.
Case with_plan(Plan plan) {
    Case c = sample::on_rails();
    c.plan = std::move(plan);
    sample::glaze_all_sides(c);
    return c;
}

Case hexagon() {
    Plan plan;
    plan.shape = PlanShape::polygon;
    plan.count = 6;
    plan.side = sample::given(320.0, "/plan/side");
    return with_plan(std::move(plan));
}

SideSpec straight_side(double length, double turn = 0) {
    SideSpec side;
    side.pieces.front().straight = sample::given(length, "/straight");
    side.turn = sample::given(turn, "/turn");
    return side;
}

SideSpec bowed_side(Bow bow, double sweep, double radius, double turn = 0) {
    SideSpec side;
    side.pieces.front().bow.value = bow;
    side.pieces.front().arc = {FrontArc{ArcMeasure::sweep, sample::given(sweep, "/arc/sweep")},
                      FrontArc{ArcMeasure::radius, sample::given(radius, "/arc/radius")}};
    side.turn = sample::given(turn, "/turn");
    return side;
}

Case of_chain(std::vector<SideSpec> chain) {
    for (std::size_t i = 0; i < chain.size(); ++i) {
        chain[i].name = "side-" + std::to_string(i + 1);
        chain[i].pointer = chain[i].pieces.front().pointer = "/plan/sides/" + std::to_string(i);
    }
    chain.back().turn_follows = true;
    Plan plan;
    plan.shape = PlanShape::sides;
    plan.chain = std::move(chain);
    return with_plan(std::move(plan));
}

// The pieces lie side by side and leave nothing of the ring out.
void expect_tiled(const PlateLayout& plate, const std::string& what) {
    ASSERT_TRUE(plate.ring) << what;
    double sum = 0;
    std::vector<Region> all;
    for (const RailPiece& piece : plate.ring->pieces) {
        EXPECT_GT(piece.outline.area(), 0) << what;
        sum += piece.outline.area();
        all.push_back({piece.outline, {}});
    }
    const double whole = plate.outline->area() - plate.ring->inner.area();
    EXPECT_NEAR(sum, whole, kArea) << what;
    double covered = 0;
    for (const Region& region : unite(all)) {
        covered += region.area();
    }
    EXPECT_NEAR(covered, whole, kArea) << what;
}

TEST(Ring, has_straight_rails_in_one_piece_and_curved_ones_in_the_fewest) {
    EXPECT_THAT(names(*base_of(sample::on_rails()).ring),
                ElementsAre("front-1", "front-2", "front-3", "front-4", "right", "back", "left"));
}

TEST(Ring, is_covered_by_its_pieces_side_by_side) {
    expect_tiled(base_of(sample::on_rails()), "mitred");
    expect_tiled(base_of(butted()), "butted");
}

TEST(Ring, of_a_board_is_none) {
    EXPECT_FALSE(base_of(sample::pilot_boat()).ring);
}

// Source: geometry. A piece between two radii that turns by θ has its grain along its chord, θ/2 off
// its edges' ends; across that it reaches from Ri·cos(θ/2) to Ro, along it over 2·Ro·sin(θ/2).
TEST(Ring, cuts_a_curved_rail_square_to_its_arc) {
    const Case c = sample::on_rails();
    const Ring ring = *base_of(c).ring;
    const double outer = 420 + 24;
    const double inner = 420 - 24;
    const double turn = 2 * std::asin(260.0 / 420) / 4;
    for (const char* const name : {"front-2", "front-3"}) {
        const RailPiece& piece = named(ring, name);
        EXPECT_NEAR(piece.run_out, turn / 2, kPlace);
        EXPECT_NEAR(piece.width, outer - inner * std::cos(turn / 2), kPlace);
        EXPECT_NEAR(piece.length, 2 * outer * std::sin(turn / 2), kPlace);
        EXPECT_NEAR(piece.outline.area(), (outer * outer - inner * inner) * turn / 2, kArea);
    }
}

// 1 in 5 is 11.3°, so a limit of 12° lets three pieces of the front's 76.5° run out too far.
TEST(Ring, takes_more_pieces_for_less_run_out_and_for_narrower_boards) {
    Case c = sample::on_rails();
    std::size_t before = 0;
    for (const double degrees : {30.0, 15.0, 8.0, 5.0}) {
        c.frame.base.build.run_out.value = degrees * pi / 180;
        const Ring ring = *base_of(c).ring;
        EXPECT_GT(ring.pieces.size(), before);
        before = ring.pieces.size();
        for (const RailPiece& piece : ring.pieces) {
            EXPECT_LE(piece.run_out, c.frame.base.build.run_out.value) << piece.name;
        }
    }
    c = sample::on_rails();
    c.frame.base.build.run_out.value = 40 * pi / 180;
    c.frame.base.build.board_width.value = 200;
    const std::size_t wide = base_of(c).ring->pieces.size();
    c.frame.base.build.board_width.value = 60;
    const Ring narrow = *base_of(c).ring;
    EXPECT_GT(narrow.pieces.size(), wide);
    for (const RailPiece& piece : narrow.pieces) {
        EXPECT_LE(piece.width, 60) << piece.name;
    }
}

TEST(Ring, has_as_many_pieces_as_asked_for) {
    Case c = sample::on_rails();
    c.frame.base.build.segments = sample::given(6, "/frame/base/segments");
    EXPECT_EQ(base_of(c).ring->pieces.size(), 6U + 3U);
}

// The straight rails run through to the front's outer edge, and the back, the longer one, past both.
TEST(Ring, lets_straight_and_longer_rails_run_through_a_butt) {
    const Ring mitred = *base_of(sample::on_rails()).ring;
    const Ring butted_ring = *base_of(butted()).ring;
    EXPECT_NEAR(named(butted_ring, "back").outline.area(), (520 + 2 * 24) * 48, kArea);
    const Box left = named(butted_ring, "left").outline.box();
    EXPECT_NEAR(left.width(), 48, kPlace);
    EXPECT_NEAR(left.high.y, 240 - 24, kPlace);  // it stops at the back's inner edge
    EXPECT_LT(named(butted_ring, "front-1").outline.area(),
              named(mitred, "front-1").outline.area());
}

TEST(Ring, has_a_joint_between_any_two_neighbours) {
    for (const Case& c : {sample::on_rails(), butted()}) {
        const PlateLayout plate = base_of(c);
        ASSERT_EQ(plate.ring->joints.size(), plate.ring->pieces.size());
        for (const Segment& joint : plate.ring->joints) {
            EXPECT_EQ(where(*plate.outline, joint.from), Side::on_edge);
            EXPECT_EQ(where(plate.ring->inner, joint.to), Side::on_edge);
            EXPECT_GE(joint.length(), 48 - kPlace);
        }
    }
}

TEST(Ring, whose_inner_edge_does_not_close_is_objected_to) {
    Case c = sample::on_rails();
    c.frame.base.build.inset = sample::given(230.0, "/frame/base/inset");
    const auto objections = fit::objections(c);
    ASSERT_EQ(objections.size(), 1U);
    EXPECT_EQ(objections[0].pointer, "/frame/base/inset");
    c = sample::on_rails();
    c.frame.base.build.segments = sample::given(100, "/frame/base/segments");
    c.plan.width.value = 150;
    c.plan.depth.value = 150;
    c.plan.front->value.value = 85;
    const auto pieces = fit::objections(c);
    ASSERT_FALSE(pieces.empty());
    EXPECT_EQ(pieces[0].pointer, "/frame/base/segments");
}

// A post's worth of a corner of a regular polygon: between lines set out by m and in by i, that turn
// by θ, the mitre is (m + i)/cos(θ/2) long; with m = i a rail is as long in its middle as its side.
TEST(Ring, of_a_hexagon_is_mitred_at_half_its_corners_angle) {
    const Ring ring = *base_of(hexagon()).ring;
    ASSERT_EQ(ring.pieces.size(), 6U);
    for (std::size_t i = 0; i < 6; ++i) {
        EXPECT_NEAR(ring.joints[i].length(), 48 / std::cos(pi / 6), kPlace);
        EXPECT_NEAR(ring.pieces[i].outline.area(), 48 * 320, kArea);
        EXPECT_NEAR(ring.pieces[i].length, 320 + 2 * 24 * std::tan(pi / 6), kPlace);
        EXPECT_NEAR(ring.pieces[i].width, 48, kPlace);
    }
}

// Each of the alike rails runs through at its own start, and stops at the next one's inner edge:
// there it has the shape of a parallelogram.
TEST(Ring, of_a_hexagon_is_butted_alike_all_round) {
    Case c = hexagon();
    c.frame.base.build.corner.value = RailCorner::butt;
    const PlateLayout base = base_of(c);
    expect_tiled(base, "hexagon");
    for (std::size_t i = 0; i < 6; ++i) {
        EXPECT_NEAR(base.ring->joints[i].length(), 48 / std::sin(pi / 3), kPlace);
        EXPECT_NEAR(base.ring->pieces[i].outline.area(), 48 * 320, kArea);
    }
}

// Where sides go on smoothly there is no corner to mitre: the joint is square to the line.
TEST(Ring, is_cut_square_where_sides_go_on_smoothly) {
    Case c = of_chain({straight_side(600), bowed_side(Bow::out, pi, 300), straight_side(600),
                       bowed_side(Bow::out, pi, 300)});
    for (const RailCorner corner : {RailCorner::mitre, RailCorner::butt}) {
        c.frame.base.build.corner.value = corner;
        const PlateLayout base = base_of(c);
        expect_tiled(base, "stadium");
        for (const Segment& joint : base.ring->joints) {
            EXPECT_NEAR(joint.length(), 48, kPlace);
        }
        EXPECT_NEAR(named(*base.ring, "side-1").outline.area(), 600 * 48, kArea);
    }
}

// Pieces of a side that bows into the case are as those of one that bows out, but that their outer
// edge is the hollow one.
TEST(Ring, of_a_hollow_side_has_its_outer_edge_on_the_smaller_radius) {
    Case c = of_chain({bowed_side(Bow::in, 1.2, 500, pi / 2 + 0.6), straight_side(400, pi / 2),
                       straight_side(2 * 500 * std::sin(0.6), pi / 2),
                       straight_side(400, pi / 2 + 0.6)});
    c.frame.base.build.segments = sample::given(4, "/frame/base/segments");
    const PlateLayout base = base_of(c);
    expect_tiled(base, "hollow front");
    const double outer = 500 - 24;
    const double inner = 500 + 24;
    const RailPiece& piece = named(*base.ring, "side-1-2");
    EXPECT_TRUE(piece.curved);
    EXPECT_EQ(piece.number, 2);
    EXPECT_NEAR(piece.run_out, 0.15, kPlace);
    EXPECT_NEAR(piece.width, inner - outer * std::cos(0.15), kPlace);
    EXPECT_NEAR(piece.outline.area(), (inner * inner - outer * outer) * 0.15, kArea);
    c.frame.base.build.corner.value = RailCorner::butt;
    expect_tiled(base_of(c), "hollow front, butted");
}

TEST(Ring, whose_pieces_have_the_name_of_another_side_is_objected_to) {
    Case c = of_chain({straight_side(600), bowed_side(Bow::out, pi, 300), straight_side(600),
                       bowed_side(Bow::out, pi, 300)});
    c.plan.chain[2].name = "side-2-1";
    c.panes.clear();
    const auto found = fit::objections(c);
    ASSERT_EQ(found.size(), 2U);  // to base and top
    EXPECT_EQ(found[0].pointer, "/plan/sides/2");
}

TEST(Ring, stands_still_where_a_board_moves_across_its_grain) {
    Book<double> book;
    const auto rails = timber_states(sample::on_rails(), book);
    const auto board = timber_states(sample::pilot_boat(), book);
    for (const AirState state : kAirStates) {
        const auto at = static_cast<std::size_t>(state);
        EXPECT_EQ(rails[at].base.width, 1);
        EXPECT_EQ(rails[at].base.depth, 1);
        EXPECT_EQ(rails[at].base.thickness, board[at].base.thickness);
    }
    EXPECT_NE(board.back().base.depth, 1);
}

class Rails : public RandomCases {};

TEST_F(Rails, cover_their_ring_whatever_the_case) {
    static constexpr RailCorner kCorners[] = {RailCorner::mitre, RailCorner::butt};
    int judged = 0;
    for (int i = 0; i < kCases; ++i) {
        Case c = sound();
        Build& build = c.frame.base.build;
        build.kind.value = PlateBuild::rails;
        build.inset.value = draw(c.frame.groove.width.value, 60);
        build.corner.value = pick(kCorners);
        build.run_out.value = draw(4, 25) * pi / 180;
        build.board_width.value = draw(80, 250);
        if (!fit::objections(c).empty()) {
            continue;
        }
        ++judged;
        expect_tiled(base_of(c), "case " + std::to_string(i) + " of seed " +
                                     std::to_string(kSeed));
    }
    EXPECT_GT(judged, kCases / 2);
}

}  // namespace
}  // namespace bowfront::fit
