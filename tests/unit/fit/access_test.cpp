#include "bowfront/fit/access.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <numbers>

#include "support/access_cases.hpp"

namespace bowfront::fit {
namespace {

using sample::given;
using std::numbers::pi;

// Some dozens of operations on sizes under 1 m, mm.
constexpr double kRounding = 1e-10;
// Widths of a tilt that is tried in steps of 1e-5 rad: flat at its top, off by its square.
constexpr double kTiltSteps = 1e-6;
// The straight front's opening at the back: 520 mm less two half posts of 42 mm each.
constexpr double kOpening = 478;
constexpr double kHeight = 380;

std::vector<Finding> checked(const Case& c) {
    const AccessSums<double> sums = solve_access(c);
    const CaseSums<double> rest = solve(c);
    const Layout frame = layout(c, rest);
    return access_checks(c, sums, access_layout(c, sums, frame), frame);
}

const Finding& named(const std::vector<Finding>& findings, std::string_view id,
                     std::string_view about) {
    const auto found = std::find_if(findings.begin(), findings.end(), [&](const Finding& each) {
        return each.id == id && each.about == about;
    });
    if (found == findings.end()) {
        throw std::logic_error("no check " + std::string(id) + " of " + std::string(about));
    }
    return *found;
}

// Turned by hand: the pane's lower corner rests on the base's face, what stands over the groove's
// mouth is as wide as its slanting edge and its thickness make it.
double widest_by_trying(double height, double opening, double thickness) {
    double widest = thickness;
    for (double tilt = 0; tilt < 0.6; tilt += 1e-5) {
        const double in_groove =
            height + thickness * std::tan(tilt) - opening / std::cos(tilt);
        if (in_groove > 0) {
            widest = std::max(widest, in_groove * std::sin(tilt) + thickness * std::cos(tilt));
        }
    }
    return widest;
}

// A beam on two supports, F in its middle, by the work of its bending moment, in a thousand slices.
double bow_by_slices(double force, double span, double modulus, double inertia) {
    constexpr int kSlices = 1000;
    double sum = 0;
    const double step = span / 2 / kSlices;
    for (int i = 0; i < kSlices; ++i) {
        // Simpson is exact for a square.
        const auto term = [](double at) { return at / 2 * at / 2; };
        const double low = i * step;
        sum += step / 6 * (term(low) + 4 * term(low + step / 2) + term(low + step));
    }
    return 2 * force * sum / (modulus * inertia);
}

TEST(LiftOutPane, stands_in_both_grooves_and_clears_the_base_when_lifted) {
    const AccessSums<double> sums = solve_access(sample::opening_at_the_back(sample::lift_out_pane()));
    const GroovedSums<double>& pane = *sums.grooved;
    EXPECT_NEAR(pane.length, kOpening - 4, kRounding);
    EXPECT_NEAR(pane.height, kHeight + 14 - 1.5, kRounding);
    EXPECT_NEAR(pane.bottom.nominal, 5, kRounding);
    EXPECT_NEAR(pane.top.nominal, 14 - 5 - 1.5, kRounding);
    EXPECT_NEAR(pane.lift.nominal, 1.5, kRounding);
    EXPECT_NEAR(pane.play->nominal, 4, kRounding);
    EXPECT_LT(pane.top.worst, pane.top.nominal);
    EXPECT_LT(pane.play->worst, pane.play->nominal);
}

TEST(LiftOutPane, tilts_as_every_position_that_is_tried_says) {
    const GroovedSums<double> pane =
        *solve_access(sample::opening_at_the_back(sample::lift_out_pane())).grooved;
    EXPECT_NEAR(pane.tilt.nominal, widest_by_trying(392.5, kHeight, 5), kTiltSteps);
    EXPECT_GT(pane.tilt.worst, pane.tilt.nominal);
}

TEST(LiftOutPane, bows_as_a_beam_no_wider_than_its_span) {
    Case c = sample::opening_at_the_back(sample::lift_out_pane());
    const double modulus = c.sheets.at(c.access_pane->sheet).like->modulus.value;
    const GroovedSums<double> pane = *solve_access(c).grooved;
    const double bow =
        bow_by_slices(c.service.push.value, kHeight, modulus, kHeight * 5 * 5 * 5 / 12);
    EXPECT_NEAR(pane.bow.nominal, bow, 1e-9 * bow);
    EXPECT_NEAR(pane.held.nominal, 7.5 - 8 * bow * bow / (3 * kHeight), 1e-9 * bow);
}

TEST(SlidingPair, fills_the_opening_and_overlaps) {
    const AccessSums<double> sums = solve_access(sample::opening_at_the_back(sample::sliding_pair()));
    EXPECT_NEAR(2 * sums.grooved->length, kOpening + 30, kRounding);
    EXPECT_NEAR(sums.sliding->overlap.nominal, 30, kRounding);
    EXPECT_NEAR(sums.sliding->open, (kOpening - 30) / 2, kRounding);
    EXPECT_NEAR(sums.sliding->share, (kOpening - 30) / 2 / kOpening, kRounding);
    EXPECT_FALSE(sums.grooved->play);
    EXPECT_LT(sums.sliding->overlap.worst, 30);
}

TEST(SlidingPair, stands_in_two_grooves_a_web_apart) {
    const Case c = sample::opening_at_the_back(sample::sliding_pair());
    const AccessSums<double> sums = solve_access(c);
    const Layout frame = layout(c, solve(c));
    const AccessLayout access = access_layout(c, sums, frame);
    ASSERT_EQ(access.grooves.size(), 2U);
    EXPECT_NEAR(gap(access.grooves[0], access.grooves[1]), 6, kRounding);
    ASSERT_EQ(access.panes.size(), 2U);
    // Face to face: the web and half of what each groove is wider than its pane, twice.
    EXPECT_NEAR(gap(access.panes[0].outline, access.panes[1].outline), 6 + 7 - 5, kRounding);
    // The outer one stands farther back, at the larger Y.
    EXPECT_GT(access.panes[0].outline.centroid().y, access.panes[1].outline.centroid().y);
    // Seen from behind, its start is the right-hand corner of the case.
    EXPECT_GT(access.panes[0].outline.centroid().x, access.panes[1].outline.centroid().x);
}

TEST(PivotDoor, turns_with_the_gaps_that_its_corners_leave) {
    const Case c = sample::opening_at_the_back(sample::pivot_door());
    const AccessSums<double> sums = solve_access(c);
    const DoorSums<double>& door = *sums.door;
    EXPECT_NEAR(door.length, kOpening - 6, kRounding);
    EXPECT_NEAR(door.height, kHeight - 6, kRounding);
    EXPECT_NEAR(door.latch.nominal, 458 - std::hypot(455.0, 2.5), kRounding);
    EXPECT_NEAR(door.heel.nominal, 20 - std::hypot(17.0, 2.5), kRounding);
    EXPECT_NEAR(door.above.nominal, 3, kRounding);
    EXPECT_LT(door.latch.worst, door.latch.nominal);
    const Layout frame = layout(c, solve(c));
    EXPECT_NEAR(swing_gap(access_layout(c, sums, frame), frame),
                std::min(door.latch.nominal, door.heel.nominal), kRounding);
}

TEST(PivotDoor, turns_alike_on_either_end) {
    PivotDoor other = sample::pivot_door();
    other.hinge = given(HingeEnd::end, "/access/hinge");
    const auto gap_of = [](const PivotDoor& door) {
        const Case c = sample::opening_at_the_back(door);
        const Layout frame = layout(c, solve(c));
        return swing_gap(access_layout(c, solve_access(c), frame), frame);
    };
    EXPECT_NEAR(gap_of(other), gap_of(sample::pivot_door()), kRounding);
}

TEST(LiftOffTop, wants_room_for_the_tallest_pane) {
    const AccessSums<double> sums = solve_access(sample::opening_at_the_top());
    EXPECT_NEAR(sums.top->travel, 386, kRounding);
    EXPECT_NEAR(sums.top->headroom, 393.5 - 24, kRounding);
}

TEST(LiftOffTop, has_a_peg_in_each_post_clear_of_grooves) {
    const Case c = sample::opening_at_the_top();
    const Layout frame = layout(c, solve(c));
    const AccessLayout access = access_layout(c, solve_access(c), frame);
    ASSERT_EQ(access.pegs.size(), 4U);
    for (std::size_t i = 0; i < access.pegs.size(); ++i) {
        const Contour peg = Contour::circle(access.pegs[i].at, 3);
        EXPECT_GE(access.pegs[i].timber, 4);
        double least = gap(peg, frame.posts[i].section.front().outer);
        for (const PlateGroove& groove : frame.top.grooves) {
            least = std::min(least, gap(peg, groove.band));
        }
        EXPECT_NEAR(least, access.pegs[i].timber, kRounding);
        EXPECT_EQ(where(frame.posts[i].section.front(), access.pegs[i].at), Side::inside);
    }
}

TEST(Access, is_derived_by_the_same_sums) {
    for (const Case& c : {sample::opening_at_the_top(),
                          sample::opening_at_the_back(sample::lift_out_pane()),
                          sample::opening_at_the_back(sample::sliding_pair()),
                          sample::opening_at_the_back(sample::pivot_door())}) {
        Workings workings;
        const AccessSums<Traced> traced = solve_access(c, workings);
        const AccessSums<double> plain = solve_access(c);
        if (plain.top) {
            EXPECT_EQ(value_of(traced.top->headroom), plain.top->headroom);
        } else if (plain.door) {
            EXPECT_EQ(value_of(traced.door->latch.worst), plain.door->latch.worst);
            EXPECT_NE(workings.find("access/latch/nominal"), nullptr);
        } else {
            EXPECT_EQ(value_of(traced.grooved->held.worst), plain.grooved->held.worst);
            EXPECT_EQ(value_of(traced.grooved->tilt.worst), plain.grooved->tilt.worst);
        }
        for (const Finding& finding : checked(c)) {
            if (!finding.figure.empty()) {
                const Figure* const figure = workings.find(finding.figure);
                ASSERT_NE(figure, nullptr) << finding.figure;
            }
        }
    }
}

TEST(Access, passes_as_it_is_drawn) {
    for (const Case& c : {sample::opening_at_the_top(),
                          sample::opening_at_the_back(sample::pivot_door())}) {
        for (const Finding& finding : checked(c)) {
            EXPECT_EQ(finding.status, Status::pass)
                << finding.id << ' ' << finding.about << ' ' << finding.value << ' '
                << finding.worst << ' ' << finding.limit;
        }
    }
}

struct Provocation {
    const char* id;
    const char* about;
    Code code;
    Access::Way way;
    std::function<void(Case&)> provoke;

    friend void PrintTo(const Provocation& shown, std::ostream* out) {
        *out << shown.id << ' ' << shown.about;
    }
};

class EachAccessCheck : public testing::TestWithParam<Provocation> {};

TEST_P(EachAccessCheck, passes_until_it_is_provoked) {
    const Provocation& wanted = GetParam();
    Case c = std::holds_alternative<LiftOffTop>(wanted.way) ? sample::opening_at_the_top()
                                                            : sample::opening_at_the_back(wanted.way);
    c.service.push = given(40.0, "/service/push");
    EXPECT_EQ(named(checked(c), wanted.id, wanted.about).status, Status::pass);
    wanted.provoke(c);
    const auto findings = checked(c);
    const Finding& finding = named(findings, wanted.id, wanted.about);
    EXPECT_EQ(finding.code, wanted.code);
    EXPECT_EQ(finding.status, Status::fail) << finding.value << ' ' << finding.limit;
    EXPECT_FALSE(finding.advice.empty());
}

// So that nothing is left to the worst case either.
LiftOutPane lifted_higher() {
    LiftOutPane way = sample::lift_out_pane();
    way.lift_clearance.value = 3;
    return way;
}

LiftOutPane& lifted(Case& c) { return std::get<LiftOutPane>(c.access->way); }
SlidingPair& pair(Case& c) { return std::get<SlidingPair>(c.access->way); }
PivotDoor& door(Case& c) { return std::get<PivotDoor>(c.access->way); }
LiftOffTop& top(Case& c) { return std::get<LiftOffTop>(c.access->way); }

INSTANTIATE_TEST_SUITE_P(
    Access, EachAccessCheck,
    testing::Values(
        Provocation{"access-engagement", "back/bottom", Code::access_engagement,
                    sample::sliding_pair(),
                    [](Case& c) { c.fit.least_engagement = given(6.0, "/fit/least_engagement"); }},
        Provocation{"access-engagement", "back/top", Code::access_engagement,
                    sample::lift_out_pane(),
                    [](Case& c) { lifted(c).groove.top_depth.value = 9; }},
        Provocation{"access-lift", "back", Code::access_way, lifted_higher(),
                    [](Case& c) { lifted(c).lift_clearance.value = -0.1; }},
        Provocation{"access-tilt", "back", Code::access_way, sample::lift_out_pane(),
                    [](Case& c) { lifted(c).groove.width.value = 5.5; }},
        Provocation{"access-play", "back", Code::access_room, sample::lift_out_pane(),
                    [](Case& c) { lifted(c).clearance.value = 0.2; }},
        Provocation{"access-push", "back", Code::access_push, sample::lift_out_pane(),
                    [](Case& c) { c.service.push.value = 400; }},
        Provocation{"access-finger", "back", Code::access_pull, sample::sliding_pair(),
                    [](Case& c) { pair(c).pull.value = 12; }},
        Provocation{"access-finger", "back/length", Code::access_pull, sample::sliding_pair(),
                    [](Case& c) { pair(c).pull.value = 90; }},
        Provocation{"access-floor", "base", Code::access_timber, sample::sliding_pair(),
                    [](Case& c) { pair(c).groove.base_depth.value = 15; }},
        Provocation{"access-cheek", "top", Code::access_timber, sample::sliding_pair(),
                    [](Case& c) { c.frame.top.margin.value = 14; }},
        Provocation{"access-web", "base", Code::access_timber, sample::sliding_pair(),
                    [](Case& c) { pair(c).groove.width.value = 30; }},
        Provocation{"access-cutter", "back", Code::access_timber, sample::sliding_pair(),
                    [](Case& c) { c.cutter.diameter.value = 8; }},
        Provocation{"access-overlap", "back", Code::access_overlap, sample::sliding_pair(),
                    [](Case& c) { pair(c).overlap.value = 5; }},
        Provocation{"access-faces", "back", Code::access_faces, sample::sliding_pair(),
                    [](Case& c) {
                        c.access_pane->thickness.value = 2;
                        pair(c).web.value = 1;
                    }},
        Provocation{"access-shut", "back/start", Code::access_room, sample::sliding_pair(),
                    [](Case& c) { c.frame.post.section.value = PostSection::round; }},
        Provocation{"access-gap", "back/latch", Code::access_room, sample::pivot_door(),
                    [](Case& c) { door(c).clearance.value = 0.3; }},
        Provocation{"access-gap", "back/hinge", Code::access_room, sample::pivot_door(),
                    [](Case& c) { door(c).clearance.value = 0.3; }},
        Provocation{"access-gap", "back/top", Code::access_room, sample::pivot_door(),
                    [](Case& c) { door(c).clearance.value = 0.3; }},
        Provocation{"access-swing", "back", Code::access_way, sample::pivot_door(),
                    [](Case& c) {
                        door(c).pivot.value = 5;
                        door(c).angle.value = pi;
                    }},
        Provocation{"access-pin", "base", Code::access_timber, sample::pivot_door(),
                    [](Case& c) { door(c).pin.value = 60; }},
        Provocation{"access-headroom", "top", Code::access_top, sample::lift_off_top(),
                    [](Case& c) { top(c).headroom = given(300.0, "/access/headroom"); }},
        Provocation{"access-peg", "post-front-left", Code::access_timber, sample::lift_off_top(),
                    [](Case& c) { top(c).peg_diameter.value = 30; }},
        Provocation{"access-peg", "top", Code::access_timber, sample::lift_off_top(),
                    [](Case& c) { top(c).peg_length.value = 40; }}));

TEST(AccessObjections, are_told_where_nothing_is_left_of_a_door) {
    Case c = sample::opening_at_the_back(sample::pivot_door());
    EXPECT_TRUE(access_objections(c).empty());
    door(c).pivot.value = 300;
    ASSERT_EQ(access_objections(c).size(), 1U);
    EXPECT_EQ(access_objections(c).front().pointer, "/access");
}

TEST(AccessObjections, are_told_where_panes_overlap_by_more_than_the_opening) {
    Case c = sample::opening_at_the_back(sample::sliding_pair());
    EXPECT_TRUE(access_objections(c).empty());
    pair(c).overlap.value = 500;
    EXPECT_EQ(access_objections(c).size(), 1U);
}

}  // namespace
}  // namespace bowfront::fit
