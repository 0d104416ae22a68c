#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "bowfront/fit/checks.hpp"
#include "bowfront/fit/loading_path.hpp"
#include "bowfront/pattern/case_parts.hpp"
#include "random_cases.hpp"

namespace bowfront::fit {
namespace {

double status_sum(const std::vector<Finding>& findings, std::string_view id) {
    double sum = 0;
    for (const Finding& finding : findings) {
        sum += finding.id == id ? static_cast<double>(finding.status) : 0;
    }
    return sum;
}

std::vector<Finding> checked(const Case& c) {
    const auto sums = solve(c);
    return checks(c, sums, layout(c, sums));
}

TEST_F(RandomCases, keep_the_identities_of_every_pane) {
    for (int i = 0; i < kCases; ++i) {
        const Case c = sound();
        for (const auto& pane : solve(c).panes) {
            SCOPED_TRACE(testing::Message() << "seed " << kSeed << ", case " << i << ", "
                                            << side_text(pane.side));
            EXPECT_NEAR(pane.start_in_post + pane.opening_length + pane.end_in_post,
                        pane.side_length, kRounding);
            // What stands in the grooves and in the opening is the pane.
            const auto& bottom = pane.edge(PaneEdge::bottom);
            const auto& top = pane.edge(PaneEdge::top);
            EXPECT_NEAR(bottom.engagement + pane.opening_height + top.engagement, pane.height,
                        kRounding);
            const auto& start = pane.edge(PaneEdge::start);
            const auto& end = pane.edge(PaneEdge::end);
            EXPECT_NEAR(start.engagement + pane.opening_length + end.engagement, pane.length,
                        kRounding);
            // Worst cases are worse, and least is not more than most.
            for (const auto& edge : pane.edges) {
                EXPECT_LE(edge.engagement_least, edge.settled + kRounding);
                EXPECT_LE(edge.face_clearance_least, edge.face_clearance);
            }
            EXPECT_LE(pane.room_vertical.worst, pane.room_vertical.nominal);
            EXPECT_LE(pane.room_sideways.worst, pane.room_sideways.nominal);
            // Volume stays when a pane is heated and not trimmed.
            if (pane.heated && c.pane(pane.side)->blank.method.value == BlankMethod::allow_shrink) {
                EXPECT_NEAR(pane.blank_length * pane.blank_width * pane.thickness /
                                (pane.length * pane.height * pane.formed_thickness),
                            1, kRounding);
            }
            if (pane.curved) {
                EXPECT_NEAR(pane.radius * pane.sweep, pane.length, kRounding);
                EXPECT_NEAR(pane.rise * (2 * pane.radius - pane.rise),
                            pane.chord * pane.chord / 4, kRounding * pane.radius);
            }
        }
    }
}

TEST_F(RandomCases, never_fit_worse_in_wider_grooves) {
    for (int i = 0; i < kCases; ++i) {
        Case c = sound();
        const auto before = checked(c);
        c.frame.groove.width.value += draw(0, 1);
        if (!objections(c).empty()) {
            continue;
        }
        EXPECT_LE(status_sum(checked(c), "face-clearance"), status_sum(before, "face-clearance"))
            << "seed " << kSeed << ", case " << i;
    }
}

TEST_F(RandomCases, never_have_less_room_with_more_clearance) {
    for (int i = 0; i < kCases; ++i) {
        Case c = sound();
        const auto before = solve(c);
        c.fit.top_clearance.value += draw(0, 2);
        c.fit.end_clearance.value += draw(0, 2);
        c.fit.loading_clearance.value += draw(0, 2);
        if (!objections(c).empty()) {
            continue;
        }
        const auto after = solve(c);
        for (std::size_t pane = 0; pane < before.panes.size(); ++pane) {
            const auto& was = before.panes[pane];
            const auto& is = after.panes[pane];
            EXPECT_GE(is.room_vertical.nominal, was.room_vertical.nominal);
            EXPECT_GE(is.room_sideways.nominal, was.room_sideways.nominal - kRounding);
            EXPECT_LE(is.edge(PaneEdge::top).settled, was.edge(PaneEdge::top).settled);
            EXPECT_LE(is.edge(PaneEdge::end).settled, was.edge(PaneEdge::end).settled + kRounding);
        }
    }
}

TEST_F(RandomCases, scale_where_nothing_is_a_fixed_size) {
    constexpr double kScale = 1.7;
    for (int i = 0; i < kCases; ++i) {
        Case c = sound();
        const auto before = solve(c);
        Case larger = c;
        Frame& f = larger.frame;
        for (Sourced<double>* size :
             {&larger.plan.width, &larger.plan.depth, &larger.plan.side, &f.clear_height,
              &f.base.thickness,
              &f.base.margin, &f.top.thickness, &f.top.margin, &f.post.width, &f.post.depth,
              &f.groove.width, &f.groove.base_depth, &f.groove.top_depth, &f.groove.post_depth,
              &larger.fit.end_clearance, &larger.fit.top_clearance, &larger.fit.loading_clearance,
              &larger.cutter.diameter}) {
            size->value *= kScale;
        }
        for (SideSpec& side : larger.plan.chain) {
            if (side.pieces.front().straight) {
                side.pieces.front().straight->value *= kScale;
            }
            for (FrontArc& measure : side.pieces.front().arc) {
                measure.value.value *= measure.measure == ArcMeasure::sweep ? 1 : kScale;
            }
        }
        for (PaneSpec& pane : larger.panes) {
            pane.thickness.value *= kScale;
            pane.blank.trim.value *= kScale;
        }
        const auto after = solve(larger);
        for (std::size_t p = 0; p < before.panes.size(); ++p) {
            const auto& was = before.panes[p];
            const auto& is = after.panes[p];
            EXPECT_NEAR(is.blank_length, kScale * was.blank_length, kRounding);
            EXPECT_NEAR(is.blank_width, kScale * was.blank_width, kRounding);
            EXPECT_NEAR(is.sweep, was.sweep, kRounding);
            EXPECT_NEAR(is.reach, kScale * was.reach, kRounding);
            EXPECT_NEAR(is.edge(PaneEdge::start).face_clearance,
                        kScale * was.edge(PaneEdge::start).face_clearance, kRounding);
        }
    }
}

TEST_F(RandomCases, leave_the_mirrored_ends_alike) {
    for (int i = 0; i < kCases; ++i) {
        const auto sums = solve(sound_with_four_sides());
        const auto& front = *sums.pane(CaseSide::front);
        EXPECT_NEAR(front.start_in_post, front.end_in_post, kRounding) << kSeed << ' ' << i;
        const auto& left = *sums.pane(CaseSide::left);
        const auto& right = *sums.pane(CaseSide::right);
        EXPECT_NEAR(left.start_in_post, right.end_in_post, kRounding) << kSeed << ' ' << i;
        EXPECT_NEAR(left.end_in_post, right.start_in_post, kRounding) << kSeed << ' ' << i;
    }
}

// A pane that takes its height from the frame grows with the groove, and reaches as much deeper.
TEST_F(RandomCases, never_engage_less_in_a_deeper_top_groove) {
    for (int i = 0; i < kCases; ++i) {
        Case c = sound();
        const auto before = solve(c);
        const double deeper = draw(0, 3);
        c.frame.groove.top_depth.value += deeper;
        if (!objections(c).empty()) {
            continue;
        }
        const auto after = solve(c);
        for (std::size_t p = 0; p < before.panes.size(); ++p) {
            const EdgeSums<double>& was = before.panes[p].edge(PaneEdge::top);
            const EdgeSums<double>& is = after.panes[p].edge(PaneEdge::top);
            EXPECT_NEAR(is.engagement, was.engagement + deeper, kRounding) << kSeed << ' ' << i;
            EXPECT_GE(is.settled, was.settled - kRounding) << kSeed << ' ' << i;
            // The blank, larger by that, may pass into the next row of its tolerance class.
            const double row = after.panes[p].height_tolerance - before.panes[p].height_tolerance +
                               after.panes[p].tolerances.top_depth;
            EXPECT_GE(is.engagement_least, was.engagement_least - row) << kSeed << ' ' << i;
        }
    }
}

// Left and right changed places: every figure of the one is the other's, its ends turned round.
TEST_F(RandomCases, give_mirrored_results_when_mirrored) {
    for (int i = 0; i < kCases / 4; ++i) {
        Case c = sound_with_four_sides();
        const auto pane = [](Case& of, CaseSide side) -> PaneSpec& {
            return *std::find_if(of.panes.begin(), of.panes.end(),
                                 [&](const PaneSpec& each) { return each.side == side; });
        };
        pane(c, CaseSide::left).thickness.value *= draw(0.5, 1);
        pane(c, CaseSide::right).length =
            sample::given(solve(c).pane(CaseSide::right)->length - draw(0, 2), "/panes/2/size/length");
        Case mirrored = c;
        std::swap(pane(mirrored, CaseSide::left).side, pane(mirrored, CaseSide::right).side);
        if (!objections(c).empty() || !objections(mirrored).empty()) {
            continue;
        }
        SCOPED_TRACE(testing::Message() << "seed " << kSeed << ", case " << i);
        const auto sums = solve(c);
        const auto turned = solve(mirrored);
        const auto& a = *sums.pane(CaseSide::left);
        const auto& b = *turned.pane(CaseSide::right);
        EXPECT_EQ(a.thickness, b.thickness);
        EXPECT_NEAR(a.start_in_post, b.end_in_post, kRounding);
        EXPECT_NEAR(a.opening_length, b.opening_length, kRounding);
        EXPECT_NEAR(a.room_sideways.worst, b.room_sideways.worst, kRounding);
        EXPECT_NEAR(a.loading.play_worst, b.loading.play_worst, kRounding);
        EXPECT_NEAR(a.push.held_worst, b.push.held_worst, kRounding);
        EXPECT_NEAR(a.edge(PaneEdge::start).engagement_least,
                    b.edge(PaneEdge::end).engagement_least, kRounding);
        EXPECT_NEAR(a.edge(PaneEdge::end).face_clearance_least,
                    b.edge(PaneEdge::start).face_clearance_least, kRounding);
        // Outlines met in plan, to the 1e-7 mm of the booleans and the halving of what is missing.
        const auto way = loading_path(c, a, layout(c, sums));
        const auto way_turned = loading_path(mirrored, b, layout(mirrored, turned));
        constexpr double kMet = 1e-5;
        EXPECT_EQ(way.possible, way_turned.possible);
        EXPECT_NEAR(way.clearance, way_turned.clearance, kMet);
    }
}

// Glazing and timber never share a place: in plan, no pane reaches over the section of a post.
TEST_F(RandomCases, keep_panes_clear_of_posts_wherever_face_clearance_is_left) {
    for (int i = 0; i < kCases / 4; ++i) {
        const Case c = sound();
        const auto sums = solve(c);
        const Layout frame = layout(c, sums);
        for (const auto& pane : sums.panes) {
            const auto& edge = pane.edge(PaneEdge::start);
            if (edge.face_clearance < 0 || pane.room_sideways.nominal < 0) {
                continue;
            }
            const auto span = pattern::pane_span(pane);
            const auto line = stretch(frame.line.sides[index(pane.side)], span.start, span.end);
            const Region body{band(line, pane.formed_thickness, BandEnd::square, BandEnd::square),
                              {}};
            for (const PostLayout& post : frame.posts) {
                double shared = 0;
                for (const Region& piece : intersect({body}, post.section)) {
                    shared += piece.area();
                }
                // Touching along a groove of 20 mm within the joint of 1e-9 mm.
                constexpr double kTouching = 1e-7;
                EXPECT_LT(shared, kTouching) << "seed " << kSeed << ", case " << i << ", "
                                             << side_text(pane.side) << " in "
                                             << post.name;
            }
        }
    }
}

}  // namespace
}  // namespace bowfront::fit
