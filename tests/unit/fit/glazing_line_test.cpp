#include "bowfront/fit/plan.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "bowfront/fit/sums.hpp"
#include "bowfront/geom/region.hpp"
#include "support/random_cases.hpp"
#include "support/sample_case.hpp"

namespace bowfront::fit {
namespace {

using sample::given;
using std::numbers::pi;

// Some dozens of operations on coordinates and sizes of a metre, mm; areas are up to 1e6 as large.
constexpr double kRounding = 1e-9;
constexpr double kAreaRounding = 1e-6;

Plan plan_of(PlanShape shape, double width, double depth) {
    Plan plan;
    plan.shape = shape;
    plan.width = given(width, "/plan/width");
    plan.depth = given(depth, "/plan/depth");
    return plan;
}

FrontArc arc(ArcMeasure measure, double value) { return {measure, given(value, "/plan/front/x")}; }

SideSpec straight(const std::string& name, double length, double turn) {
    SideSpec side;
    side.name = name;
    side.pointer = "/plan/sides/" + name;
    side.pieces.front().straight = given(length, side.pointer + "/straight");
    side.turn = given(turn, side.pointer + "/turn");
    return side;
}

SideSpec closing(const std::string& name) {
    SideSpec side;
    side.name = name;
    side.pointer = "/plan/sides/" + name;
    side.closing = side.turn_follows = true;
    return side;
}

// Area of the segment between a chord and its arc. Source: geometry, r²/2·(θ − sin θ); tabulated in
// engineers' handbooks as the area of a circular segment.
double segment_area(double chord, double sweep) {
    const double radius = chord / (2 * std::sin(sweep / 2));
    return radius * radius / 2 * (sweep - std::sin(sweep));
}

TEST(GlazingLine, of_a_quarter_round_is_a_quarter_of_a_circle) {
    Plan plan = plan_of(PlanShape::quarter_round, 400, 400);
    plan.front = arc(ArcMeasure::sweep, pi / 2);
    EXPECT_NEAR(glazing_line(plan).outline().area(), pi * 400 * 400 / 4, kAreaRounding);
    // The arc meets both straights square.
    for (const CornerDirections& corner : glazing_line(plan).directions) {
        EXPECT_NEAR(std::cos(corner.next - corner.previous), 0, kRounding);
    }
}

TEST(GlazingLine, of_a_half_round_is_half_a_circle_however_it_is_divided) {
    for (const int panes : {1, 2, 3}) {
        Plan plan = plan_of(PlanShape::half_round, 600, 0);
        plan.front = arc(ArcMeasure::sweep, pi);
        plan.arc_panes = panes;
        const GlazingLine line = glazing_line(plan);
        EXPECT_EQ(line.size(), static_cast<std::size_t>(panes) + 1);
        EXPECT_NEAR(line.outline().area(), pi * 300 * 300 / 2, kAreaRounding);
        EXPECT_NEAR(line.outline().box().low.y, -300, kRounding);
        EXPECT_NEAR(line.corners[0].x, -300, kRounding);
    }
}

TEST(GlazingLine, of_bow_ends_is_a_rectangle_and_two_segments) {
    Plan plan = plan_of(PlanShape::bow_ends, 600, 300);
    plan.front = arc(ArcMeasure::sweep, 1.1);
    EXPECT_NEAR(glazing_line(plan).outline().area(), 600 * 300 + 2 * segment_area(300, 1.1),
                kAreaRounding);
}

TEST(GlazingLine, of_a_serpentine_takes_as_much_as_it_gives) {
    Plan plan = plan_of(PlanShape::serpentine, 900, 280);
    plan.front = arc(ArcMeasure::sweep, 0.9);
    EXPECT_NEAR(glazing_line(plan).outline().area(), 900 * 280, kAreaRounding);
    plan.arcs = 3;  // out, in, out
    EXPECT_NEAR(glazing_line(plan).outline().area(), 900 * 280 + segment_area(300, 0.9),
                kAreaRounding);
    // The arcs go into each other smoothly.
    const GlazingLine line = glazing_line(plan);
    EXPECT_NEAR(std::remainder(line.directions[1].next - line.directions[1].previous - pi, 2 * pi),
                0, kRounding);
}

// Source: geometry, n·s²/(4·tan(π/n)); the handbooks' table of regular polygons has 2.598076·s² for
// the hexagon and 4.828427·s² for the octagon.
TEST(GlazingLine, of_a_regular_polygon_has_the_tabulated_area) {
    Plan plan;
    plan.shape = PlanShape::polygon;
    plan.side = given(300.0, "/plan/side");
    plan.count = 6;
    EXPECT_NEAR(glazing_line(plan).outline().area() / 90000, 2.598076, 1e-6);
    plan.count = 8;
    EXPECT_NEAR(glazing_line(plan).outline().area() / 90000, 4.828427, 1e-6);
    EXPECT_NEAR(glazing_line(plan).corners[0].y, 0, kRounding);
}

TEST(GlazingLine, of_a_chain_is_closed_by_the_side_that_is_solved_for) {
    // Three sides of a rectangle; the fourth is the rectangle's.
    Plan plan;
    plan.shape = PlanShape::sides;
    plan.chain = {straight("a", 500, pi / 2), straight("b", 300, pi / 2), straight("c", 500, 0),
                  closing("d")};
    plan.chain[2].turn_follows = true;
    Book<double> book;
    const auto sides = solve_sides(plan, book);
    EXPECT_NEAR(sides[3].length, 300, kRounding);
    EXPECT_NEAR(std::remainder(sides[3].chord_heading - 3 * pi / 2, 2 * pi), 0, kRounding);
    EXPECT_NEAR(glazing_line(plan).outline().area(), 500 * 300, kAreaRounding);
}

TEST(GlazingLine, of_a_whole_turn_is_a_circle_in_as_many_pieces_as_asked) {
    Plan plan;
    plan.shape = PlanShape::sides;
    SideSpec round;
    round.name = "round";
    round.pointer = "/plan/sides/0";
    round.pieces.front().arc = {arc(ArcMeasure::radius, 250), arc(ArcMeasure::sweep, 2 * pi)};
    round.panes = 4;
    round.turn_follows = true;
    plan.chain = {round};
    const GlazingLine line = glazing_line(plan);
    EXPECT_EQ(line.size(), 4U);
    EXPECT_NEAR(line.outline().area(), pi * 250 * 250, kAreaRounding);
    EXPECT_LT(norm(plan_gap(plan).off), kOpenPlan);
}

TEST(PlanGap, tells_how_far_a_chain_ends_from_its_start) {
    Plan plan;
    plan.shape = PlanShape::sides;
    plan.chain = {straight("a", 500, pi / 2), straight("b", 300, pi / 2), straight("c", 490, pi / 2),
                  straight("d", 300, pi / 2)};
    const PlanGap gap = plan_gap(plan);
    EXPECT_NEAR(gap.off.x, 10, kRounding);
    EXPECT_NEAR(gap.off.y, 0, kRounding);
    EXPECT_NEAR(gap.turn, 0, kRounding);
    plan.chain[3].turn.value = 1;
    EXPECT_NEAR(plan_gap(plan).turn, 1 - pi / 2, kRounding);
}

class RandomPlans : public ::testing::Test, protected sample::RandomCases {
  protected:
    static constexpr unsigned kSeed = 20261125;
    static constexpr int kPlans = 2000;
    RandomPlans() : RandomCases(kSeed) {}
};

TEST_F(RandomPlans, turn_once_round_and_close) {
    for (int i = 0; i < kPlans; ++i) {
        const Case c = sound();
        SCOPED_TRACE(testing::Message() << "seed " << kSeed << ", plan " << i << ", "
                                        << shape_text(c.plan.shape));
        Book<double> book;
        const auto sides = solve_sides(c.plan, book);
        const GlazingLine line = glazing_line(c.plan, sides);
        double turned = 0;
        for (std::size_t s = 0; s < sides.size(); ++s) {
            const auto& next = sides[line.next(s)];
            turned += sides[s].turned() +
                      std::remainder(next.start_heading() - sides[s].end_heading(), 2 * pi);
            double length = 0;
            for (const Segment& piece : line.sides[s]) {
                length += piece.length();
            }
            EXPECT_NEAR(length, sides[s].length, kRounding * 10);
        }
        EXPECT_NEAR(turned, 2 * pi, kRounding);
        EXPECT_FALSE(self_crossing(line.outline()));
        EXPECT_GT(line.outline().area(), 0);
    }
}

// By Green's theorem along the chords, and the segments of the arcs: another way than the outline's.
TEST_F(RandomPlans, have_the_area_of_chords_and_segments) {
    for (int i = 0; i < kPlans; ++i) {
        const Case c = sound();
        Book<double> book;
        const auto sides = solve_sides(c.plan, book);
        double x = 0;
        double y = 0;
        double area = 0;
        for (const auto& side : sides) {
            for (const auto& piece : side.pieces) {
                const double chord = piece.curved ? piece.arc.chord : piece.length;
                const double dx = chord * std::cos(piece.chord_heading);
                const double dy = chord * std::sin(piece.chord_heading);
                area += (x * dy - y * dx) / 2;
                x += dx;
                y += dy;
                if (piece.curved) {
                    const double segment = piece.arc.radius * piece.arc.radius / 2 *
                                           (piece.arc.sweep - std::sin(piece.arc.sweep));
                    area += piece.bow == Bow::out ? segment : -segment;
                }
            }
        }
        EXPECT_NEAR(glazing_line(c.plan, sides).outline().area(), area, 1e-9 * area)
            << kSeed << ' ' << i << ' ' << shape_text(c.plan.shape);
    }
}

// The sides of a case written out as a chain that starts at any of them.
Plan chain_from(const CaseSums<double>& sums, std::size_t first) {
    const auto& sides = sums.sides;
    Plan plan;
    plan.shape = PlanShape::sides;
    for (std::size_t i = 0; i < sides.size(); ++i) {
        const auto& side = sides[(first + i) % sides.size()];
        const auto& next = sides[(first + i + 1) % sides.size()];
        SideSpec spec = straight(std::string(side_text(side.side)), side.length, 0);
        if (const SidePiece<double>& round = side.pieces.front(); round.curved) {
            PieceSpec& piece = spec.pieces.front();
            piece.straight.reset();
            piece.arc = {arc(ArcMeasure::radius, round.arc.radius),
                         arc(ArcMeasure::sweep, round.arc.sweep)};
            piece.bow.value = round.bow;
        }
        spec.turn.value =
            std::remainder(next.start_heading() - side.end_heading(), 2 * std::numbers::pi);
        spec.turn_follows = i + 1 == sides.size();
        plan.chain.push_back(std::move(spec));
    }
    return plan;
}

// Sizes worked out to all digits and read again, summed over up to a hundred sides of some metres,
// mm: far under anything that can be cut.
constexpr double kWrittenOut = 1e-7;

// The same panes on the same sides, of a plan whose sides are numbered anew.
std::vector<PaneSpec> renumbered(const Case& c, const Plan& plan) {
    const std::vector<CaseSide> sides = sides_of(plan);
    std::vector<PaneSpec> panes = c.panes;
    for (PaneSpec& pane : panes) {
        pane.side = *std::find_if(sides.begin(), sides.end(), [&](const CaseSide& side) {
            return side.name() == pane.side.name();
        });
    }
    return panes;
}

// Turned round, a plan stands otherwise to the grain; but as built nothing of a pane changes.
TEST_F(RandomPlans, give_the_same_panes_wherever_the_chain_begins) {
    for (int i = 0; i < kPlans / 4; ++i) {
        const Case c = sound();
        if (c.frame.post.section.value == PostSection::square) {
            continue;  // of two straight sides, it goes by the one nearer square to X
        }
        const auto sums = solve(c);
        Case turned = c;
        turned.plan = chain_from(sums, static_cast<std::size_t>(draw(0, 100)) % sums.sides.size());
        turned.panes = renumbered(c, turned.plan);
        ASSERT_LT(norm(plan_gap(turned.plan).off), kOpenPlan);
        const auto again = solve(turned);
        for (std::size_t p = 0; p < sums.panes.size(); ++p) {
            SCOPED_TRACE(testing::Message() << "seed " << kSeed << ", plan " << i << ", "
                                            << side_text(sums.panes[p].side));
            const auto& was = sums.panes[p];
            const auto& is = again.panes[p];
            EXPECT_NEAR(is.start_in_post, was.start_in_post, kWrittenOut);
            EXPECT_NEAR(is.opening_length, was.opening_length, kWrittenOut);
            EXPECT_NEAR(is.blank_length, was.blank_length, kWrittenOut);
            EXPECT_NEAR(is.reach, was.reach, kWrittenOut);
            EXPECT_NEAR(is.edge(PaneEdge::end).face_clearance,
                        was.edge(PaneEdge::end).face_clearance, kWrittenOut);
        }
    }
}

// Seen in a mirror, sides run the other way: starts are ends, and everything else stays.
TEST_F(RandomPlans, give_the_same_panes_in_a_mirror) {
    for (int i = 0; i < kPlans / 4; ++i) {
        const Case c = sound();
        const auto sums = solve(c);
        if (c.frame.post.section.value == PostSection::square) {
            continue;
        }
        Case mirrored = c;
        mirrored.plan = chain_from(sums, 0);
        auto& chain = mirrored.plan.chain;
        std::reverse(chain.begin(), chain.end());
        for (std::size_t s = 0; s < chain.size(); ++s) {
            // The corner after a side is the one before it in the mirror.
            const auto& side = sums.sides[(2 * chain.size() - 1 - s) % chain.size()];
            const auto& before =
                sums.sides[(2 * chain.size() - 2 - s) % chain.size()];
            chain[s].turn.value =
                std::remainder(side.start_heading() - before.end_heading(), 2 * std::numbers::pi);
            chain[s].turn_follows = s + 1 == chain.size();
        }
        mirrored.panes = renumbered(c, mirrored.plan);
        ASSERT_LT(norm(plan_gap(mirrored.plan).off), kOpenPlan) << kSeed << ' ' << i;
        const auto again = solve(mirrored);
        for (std::size_t p = 0; p < sums.panes.size(); ++p) {
            const auto& was = sums.panes[p];
            const auto& is = again.panes[p];
            EXPECT_NEAR(is.start_in_post, was.end_in_post, kWrittenOut) << kSeed << ' ' << i;
            EXPECT_NEAR(is.blank_length, was.blank_length, kWrittenOut) << kSeed << ' ' << i;
            EXPECT_NEAR(is.edge(PaneEdge::start).face_clearance,
                        was.edge(PaneEdge::end).face_clearance, kWrittenOut)
                << kSeed << ' ' << i;
        }
    }
}

}  // namespace
}  // namespace bowfront::fit
