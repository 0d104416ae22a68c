#include "bowfront/fit/loading_path.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>

#include "bowfront/base/number_text.hpp"
#include "bowfront/fit/checks.hpp"
#include "numbers_in.hpp"
#include "support/sample_case.hpp"

namespace bowfront::fit {
namespace {

using testing::HasSubstr;

/// The best shift of a swing is found by thirds of a reach of some metres: (2/3)^64 of it.
constexpr double kShift = 1e-6;

struct Way {
    Case c;
    CaseSums<double> sums = solve(c);
    Layout frame = layout(c, sums);

    [[nodiscard]] LoadingPath of(CaseSide side) const {
        return loading_path(c, *sums.pane(side), frame);
    }
};

TEST(SlideIn, follows_the_pane_down_its_posts_with_the_top_off) {
    const Way way{sample::pilot_boat()};
    const LoadingPath front = way.of(CaseSide::front);
    EXPECT_TRUE(front.possible);
    EXPECT_EQ(front.still_off, "the top");
    ASSERT_EQ(front.steps.size(), 5U);
    EXPECT_THAT(front.steps[1], HasSubstr("flexed"));
    EXPECT_THAT(front.steps[2], HasSubstr("the bow outwards"));
    EXPECT_THAT(front.steps[3], HasSubstr("Slide it down 380 mm"));
    EXPECT_THAT(front.steps[3], HasSubstr("6 mm into the base's groove"));
    EXPECT_THAT(front.steps[4], HasSubstr("7.5 mm"));
    EXPECT_EQ(way.of(CaseSide::back).steps.size(), 4U);
}

TEST(SlideIn, is_impossible_where_the_pane_meets_timber) {
    Case thick = sample::pilot_boat();
    thick.frame.groove.width.value = 3;
    const LoadingPath front = Way{thick}.of(CaseSide::front);
    EXPECT_FALSE(front.possible);
    EXPECT_LT(front.clearance, 0);
    EXPECT_THAT(front.tightest, HasSubstr("posts"));
    Case wide = sample::pilot_boat();
    wide.panes[3].length = sample::given(509.0, "/panes/3/size/length");
    EXPECT_FALSE(Way{wide}.of(CaseSide::back).possible);
    // A round end with a cutter of 1 mm stops the corners of a pane that the posts would take.
    Case round = sample::pilot_boat();
    round.cutter.diameter.value = 1;
    round.fit.end_clearance.value = 0;
    const LoadingPath stopped = Way{round}.of(CaseSide::back);
    EXPECT_FALSE(stopped.possible);
    EXPECT_THAT(stopped.tightest, HasSubstr("round ends"));
}

TEST(LiftAndDrop, names_the_tightest_place_and_what_is_missing_there) {
    Case c = sample::lift_and_drop();
    const LoadingPath fits = Way{c}.of(CaseSide::back);
    EXPECT_TRUE(fits.possible);
    EXPECT_EQ(fits.still_off, "the posts' beads");
    ASSERT_EQ(fits.steps.size(), 5U);
    EXPECT_THAT(fits.steps[3], HasSubstr("18 mm into the top's groove; let it down 6 mm"));
    c.frame.groove.width.value = 4;
    const LoadingPath narrow = Way{c}.of(CaseSide::back);
    EXPECT_FALSE(narrow.possible);
    EXPECT_THAT(narrow.tightest, HasSubstr("cheeks"));
    const PaneSums<double> back = *Way{c}.sums.pane(CaseSide::back);
    EXPECT_NEAR(narrow.clearance, 4 - back.loading.tilt_width, kShift);
    c.frame.post.hold.value = Hold::groove;
    EXPECT_FALSE(Way{c}.of(CaseSide::back).possible);
    EXPECT_TRUE(Way{c}.of(CaseSide::back).steps.empty());
}

TEST(Beaded, is_laid_in_from_the_open_side_of_its_rabbets) {
    const Way way{sample::beaded()};
    for (const PaneSums<double>& pane : way.sums.panes) {
        const LoadingPath path = way.of(pane.side);
        EXPECT_TRUE(path.possible) << path.tightest << ' ' << path.clearance;
        EXPECT_EQ(path.still_off, "the top and all beads");
        EXPECT_EQ(path.steps.size(), pane.curved ? 5U : 4U);
    }
    Case c = sample::beaded();
    c.frame.post.hold.value = Hold::groove;
    EXPECT_FALSE(Way{c}.of(CaseSide::back).possible);
}

TEST(LoadingPath, is_the_same_for_mirrored_panes) {
    for (const Case& c : {sample::pilot_boat(), sample::lift_and_drop(), sample::beaded()}) {
        const Way way{c};
        const LoadingPath left = way.of(CaseSide::left);
        const LoadingPath right = way.of(CaseSide::right);
        EXPECT_EQ(left.steps, right.steps);
        EXPECT_EQ(left.tightest, right.tightest);
        EXPECT_NEAR(left.clearance, right.clearance, kShift);
    }
}

// By hand for a flat pane: half of the narrowest groove less the thickest sheet, as built; in dry
// air the post's groove is narrower by what its timber has shrunk.
TEST(PassageInState, of_a_flat_pane_is_half_of_what_groove_and_sheet_leave) {
    const Way way{sample::pilot_boat()};
    const PaneSums<double>& back = *way.sums.pane(CaseSide::back);
    const LoadingPath path = way.of(CaseSide::back);
    ASSERT_EQ(path.states.size(), kAirStates.size());
    EXPECT_NEAR(path.states[0].nominal.clearance, (4.8 - 3) / 2, kShift);
    EXPECT_NEAR(path.states[0].worst.clearance, (4.8 - 0.1 - 3.7) / 2, kShift);
    const double dry = back.states[1].post;
    ASSERT_LT(dry, 1);
    EXPECT_NEAR(path.states[1].nominal.clearance, (4.8 * dry - 3) / 2, kShift);
    EXPECT_NEAR(path.states[1].worst.clearance, (4.8 * dry - 0.1 - 3.7) / 2, kShift);
    EXPECT_EQ(path.states[1].nominal.at, Narrow::posts);
}

// A flat pane's worst swing, as built, against the sums' worst closed formulas.
TEST(PassageInState, of_a_lifted_pane_is_what_the_sums_leave_at_worst) {
    Case c = sample::lift_and_drop();
    const Way way{c};
    const PaneSums<double>& back = *way.sums.pane(CaseSide::back);
    const LoadingPath path = way.of(CaseSide::back);
    EXPECT_NEAR(path.states[0].worst.clearance, 8 - 0.1 - back.loading.tilt_width_worst, kShift);
    c.frame.groove.width.value = 30;
    c.fit.end_clearance.value = 5;
    const Way wide{c};
    const Passage deep = wide.of(CaseSide::back).states[0].worst;
    EXPECT_EQ(deep.at, Narrow::top_bottom);
    EXPECT_NEAR(deep.clearance, 24 - 0.2 - back.loading.tilt_rise_worst, kShift);
    // Damp air makes the pane taller, and it stands deeper in the top's groove while it swings.
    EXPECT_LT(path.states[4].worst.clearance, path.states[0].worst.clearance);
}

void stand_still(Case& c) {
    for (Sourced<double>* air : {&c.service.temperature[0], &c.service.temperature[1]}) {
        air->value = c.service.built_temperature.value;
    }
    for (Sourced<double>* air : {&c.service.humidity[0], &c.service.humidity[1]}) {
        air->value = c.service.built_humidity.value;
    }
}

TEST(PassageInState, is_the_same_in_every_state_where_the_air_stands_still) {
    Case c = sample::pilot_boat();
    stand_still(c);
    for (const CaseSide side : kFourSides) {
        const LoadingPath path = Way{c}.of(side);
        for (const PassageInState& state : path.states) {
            EXPECT_NEAR(state.nominal.clearance, path.clearance, kShift) << side_text(side);
            EXPECT_NEAR(state.worst.clearance, path.states[0].worst.clearance, kShift);
        }
    }
}

// Springback alone: a radius that may be 1 % off goes in flexed, a measured one as it is.
TEST(PassageInState, of_a_formed_pane_hangs_on_the_spread_of_its_radius) {
    Case c = sample::pilot_boat();
    stand_still(c);
    const auto worst = [&](double spread) {
        c.sheets.at("cast-acrylic").springback_spread.value = spread;
        return Way{c}.of(CaseSide::front).states[0].worst;
    };
    EXPECT_TRUE(worst(0.01).must_flex());
    EXPECT_TRUE(worst(0.01).possible());
    EXPECT_FALSE(worst(0.0).must_flex());
    EXPECT_GT(worst(0.0).clearance, 0);
    double before = worst(0.0).clearance;
    for (const double spread : {0.002, 0.005, 0.01, 0.02}) {
        EXPECT_LT(worst(spread).clearance, before) << spread;
        before = worst(spread).clearance;
    }
}

TEST(PassageInState, is_never_easier_at_worst) {
    for (const Case& c : {sample::pilot_boat(), sample::lift_and_drop(), sample::beaded()}) {
        const Way way{c};
        for (const LoadingPath& path : loading_paths(c, way.sums, way.frame)) {
            for (const PassageInState& state : path.states) {
                EXPECT_LE(state.worst.clearance, state.nominal.clearance)
                    << side_text(path.side) << ' ' << state_text(state.state);
            }
        }
    }
}

Finding check(const Case& c, CaseSide side) {
    const Way way{c};
    for (Finding& finding : path_checks(c, way.sums, loading_paths(c, way.sums, way.frame))) {
        if (finding.about == side_text(side)) {
            return finding;
        }
    }
    ADD_FAILURE() << "no check";
    return {};
}

// The first number that an advice names; 0 where it names none.
double first_number(const Finding& finding) {
    const auto numbers = numbers_in(finding.advice);
    return numbers.empty() ? 0 : numbers[0];
}

TEST(LoadingPathCheck, warns_where_a_formed_pane_goes_in_only_flexed_and_tells_the_stress) {
    Case c = sample::pilot_boat();
    const Finding finding = check(c, CaseSide::front);
    EXPECT_EQ(finding.code, Code::fit_path);
    EXPECT_EQ(finding.id, "loading-path");
    EXPECT_EQ(finding.status, Status::warn);
    EXPECT_GT(finding.value, 0);
    EXPECT_LT(finding.worst, 0);
    EXPECT_THAT(finding.note, HasSubstr("only flexed"));
    const RadiusSums<double> error = Way{c}.sums.pane(CaseSide::front)->radius_error;
    EXPECT_THAT(finding.note, HasSubstr(rounded_text(error.flexing_stress, 2) + " MPa"));
    EXPECT_THAT(finding.note, HasSubstr("lasting limit 10.3 MPa"));
    c.frame.groove.width.value += first_number(finding);
    EXPECT_EQ(check(c, CaseSide::front).status, Status::pass);
}

TEST(LoadingPathCheck, fails_where_there_is_no_way_in_as_built) {
    Case narrow = sample::pilot_boat();
    narrow.frame.groove.width.value = 2.9;
    const Finding thick = check(narrow, CaseSide::back);
    EXPECT_EQ(thick.status, Status::fail);
    narrow.frame.groove.width.value += first_number(thick);
    EXPECT_NE(check(narrow, CaseSide::back).status, Status::fail);

    Case wide = sample::pilot_boat();
    wide.panes[3].length = sample::given(509.0, "/panes/3/size/length");
    const Finding longer = check(wide, CaseSide::back);
    EXPECT_EQ(longer.status, Status::fail);
    wide.panes[3].length->value -= first_number(longer);
    EXPECT_NE(check(wide, CaseSide::back).status, Status::fail);

    Case tilted = sample::lift_and_drop();
    tilted.frame.groove.width.value = 4;
    const Finding cheeks = check(tilted, CaseSide::back);
    EXPECT_EQ(cheeks.status, Status::fail);
    tilted.frame.groove.width.value += first_number(cheeks);
    EXPECT_NE(check(tilted, CaseSide::back).status, Status::fail);
}

TEST(LoadingPathCheck, warns_where_the_pane_is_too_long_only_at_worst) {
    Case c = sample::pilot_boat();
    c.fit.end_clearance.value = 0.4;
    const Finding finding = check(c, CaseSide::back);
    EXPECT_EQ(finding.status, Status::warn);
    EXPECT_THAT(finding.note, HasSubstr("there is no way in"));
    c.fit.end_clearance.value += first_number(finding) / 2;
    EXPECT_EQ(check(c, CaseSide::back).status, Status::pass);
}

TEST(LoadingPathCheck, refuses_to_lift_what_can_only_slide) {
    Case c = sample::lift_and_drop();
    c.frame.post.hold.value = Hold::groove;
    const Finding lifted = check(c, CaseSide::back);
    EXPECT_EQ(lifted.status, Status::fail);
    EXPECT_THAT(lifted.state, HasSubstr("can only slide"));
    EXPECT_THAT(lifted.advice, HasSubstr("slide-in"));
    c.frame.loading.value = Loading::slide_in;
    EXPECT_NE(check(c, CaseSide::back).status, Status::fail);
}

// A sheet of 1.2 mm held cold to the mid-radius of 420 mm: 0.6/420 = 0.143 %, 4.57 MPa at 3200 MPa;
// at worst a little more.
TEST(LoadingPathCheck, tells_what_bending_a_cold_pane_in_comes_to) {
    Case c = sample::pilot_boat();
    c.panes[0].bend.value = Bend::cold;
    c.panes[0].thickness.value = 1.2;
    stand_still(c);
    c.tolerance.sheet_thickness = sample::given(ToleranceSpec{{}, 0.0}, "/tolerance/sheet_thickness");
    const Finding finding = check(c, CaseSide::front);
    EXPECT_EQ(finding.status, Status::pass);
    EXPECT_THAT(finding.state, HasSubstr("a strain of 0.143 % and a stress of 4.57 MPa"));
    EXPECT_THAT(Way{c}.of(CaseSide::front).steps[1], HasSubstr("from flat"));
}

Finding access(const std::vector<Finding>& findings) {
    const auto found = std::find_if(findings.begin(), findings.end(), [](const Finding& each) {
        return each.id == "loading-access";
    });
    EXPECT_NE(found, findings.end());
    return found == findings.end() ? Finding{} : *found;
}

TEST(LoadingAccess, fails_where_the_last_of_four_lifted_panes_has_nobody_inside) {
    Case c = sample::lift_and_drop();
    const auto found = [&] {
        const Way way{c};
        return access(checks(c, way.sums, way.frame));
    };
    EXPECT_EQ(found().code, Code::fit_path);
    EXPECT_EQ(found().status, Status::fail);
    EXPECT_THAT(found().advice, HasSubstr("leave one side without a pane"));
    EXPECT_THAT(found().advice, HasSubstr("slide-in"));
    c.panes.pop_back();
    EXPECT_EQ(found().status, Status::pass);
    for (const Loading loading : {Loading::slide_in, Loading::beaded}) {
        c = sample::lift_and_drop();
        c.frame.loading.value = loading;
        EXPECT_EQ(found().status, Status::pass);  // the top is off
    }
}

TEST(LoadingAccess, is_no_question_where_panes_slide_in_grooves) {
    const Way way{sample::pilot_boat()};
    const auto findings = checks(way.c, way.sums, way.frame);
    EXPECT_TRUE(std::none_of(findings.begin(), findings.end(), [](const Finding& each) {
        return each.id == "loading-access";
    }));
}

}  // namespace
}  // namespace bowfront::fit
