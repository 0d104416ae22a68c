#include "bowfront/fit/checks.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <functional>
#include <string>

#include "numbers_in.hpp"
#include "support/sample_case.hpp"

namespace bowfront::fit {
namespace {

using Numbers = std::vector<double>;
using sample::given;

std::vector<Finding> checked(const Case& c) {
    const auto sums = solve(c);
    return checks(c, sums, layout(c, sums));
}

/// One way to break one check, and to mend it as its advice says.
struct Provocation {
    const char* name;
    Code code;
    const char* id;
    const char* about;
    Status status;
    std::function<void(Case&)> provoke;
    /// Given the numbers that the advice names.
    std::function<void(Case&, const Numbers&)> follow;

    friend void PrintTo(const Provocation& shown, std::ostream* out) { *out << shown.name; }
};

const Finding* find(const std::vector<Finding>& findings, const Provocation& wanted) {
    const auto found = std::find_if(findings.begin(), findings.end(), [&](const Finding& each) {
        return each.id == wanted.id && each.about == wanted.about;
    });
    return found == findings.end() ? nullptr : &*found;
}

class EachCheck : public testing::TestWithParam<Provocation> {};

TEST_P(EachCheck, is_provoked_and_passes_once_its_advice_is_followed) {
    const Provocation& wanted = GetParam();
    Case c = sample::pilot_boat();
    wanted.provoke(c);
    ASSERT_TRUE(objections(c).empty()) << objections(c).front().found;
    auto findings = checked(c);
    const Finding* finding = find(findings, wanted);
    ASSERT_NE(finding, nullptr);
    EXPECT_EQ(finding->code, wanted.code);
    ASSERT_EQ(finding->status, wanted.status)
        << finding->value << ' ' << finding->worst << ' ' << finding->limit;
    ASSERT_FALSE(finding->advice.empty());
    // The advice for a fail mends the nominal; what then breaks at worst is advised on in turn.
    for (int round = 0; round < 2 && finding->status != Status::pass; ++round) {
        const Status before = finding->status;
        const std::string advice = finding->advice;
        wanted.follow(c, numbers_in(advice));
        ASSERT_TRUE(objections(c).empty()) << objections(c).front().found;
        findings = checked(c);
        finding = find(findings, wanted);
        ASSERT_NE(finding, nullptr);
        EXPECT_LT(finding->status, before) << "after \"" << advice << "\": " << finding->value << ' '
                                           << finding->worst << ' ' << finding->limit;
    }
    EXPECT_EQ(finding->status, Status::pass);
    EXPECT_TRUE(finding->advice.empty());
}

void make_rabbets(Case& c) {
    const Case other = sample::lift_and_drop();
    c.frame = other.frame;
    c.fit = other.fit;
}

// A pane's own height instead of the one that the frame gives it.
void own_height(Case& c, std::size_t pane, double height) {
    c.panes[pane].height = given(height, c.panes[pane].pointer + "/size/height");
}

const Provocation kPaneChecks[] = {
    {"top_clearance_too_large", Code::fit_engagement, "engagement", "front/top", Status::fail,
     [](Case& c) { c.fit.top_clearance.value = 10; },
     [](Case& c, const Numbers& n) { c.fit.top_clearance.value = n[0]; }},
    {"top_clearance_too_large_at_worst", Code::fit_engagement, "engagement", "front/top",
     Status::warn, [](Case& c) { c.fit.top_clearance.value = 6.5; },
     [](Case& c, const Numbers& n) { c.fit.top_clearance.value = n[0]; }},
    {"end_clearance_too_large", Code::fit_engagement, "engagement", "front/start", Status::fail,
     [](Case& c) { c.fit.end_clearance.value = 7; },
     [](Case& c, const Numbers& n) { c.fit.end_clearance.value = n[0]; }},
    {"base_groove_too_shallow", Code::fit_engagement, "engagement", "left/bottom", Status::fail,
     [](Case& c) { c.frame.groove.base_depth.value = 2.5; },
     [](Case& c, const Numbers& n) { c.frame.groove.base_depth.value += n[0]; }},
    {"pane_of_its_own_height_too_low", Code::fit_engagement, "engagement", "back/top",
     Status::fail, [](Case& c) { own_height(c, 3, 388); },
     [](Case& c, const Numbers& n) { c.panes[3].height->value += n[0]; }},
    {"no_room_under_the_top", Code::fit_room, "room", "back/vertical", Status::fail,
     [](Case& c) { own_height(c, 3, 397.9); },
     [](Case& c, const Numbers& n) { c.panes[3].height->value -= n[0]; }},
    {"little_top_clearance", Code::fit_room, "room", "front/vertical", Status::fail,
     [](Case& c) { c.fit.top_clearance.value = 0.2; },
     [](Case& c, const Numbers& n) { c.fit.top_clearance.value += n[0]; }},
    {"no_room_between_the_posts_at_worst", Code::fit_room, "room", "front/sideways", Status::warn,
     [](Case& c) { c.fit.end_clearance.value = 2; },
     [](Case& c, const Numbers& n) { c.fit.end_clearance.value += n[0]; }},
    {"groove_too_narrow", Code::fit_face_clearance, "face-clearance", "front/start", Status::fail,
     [](Case& c) { c.frame.groove.width.value = 3.2; },
     [](Case& c, const Numbers& n) { c.frame.groove.width.value += n[0]; }},
    {"too_wide_to_slide_in", Code::fit_loading, "loading", "back", Status::fail,
     [](Case& c) { c.panes[3].length = given(509.0, "/panes/3/size/length"); },
     [](Case& c, const Numbers& n) { c.panes[3].length->value -= n[0]; }},
    {"bead_without_rabbets", Code::fit_loading, "loading", "front", Status::fail,
     [](Case& c) { c.frame.loading.value = Loading::beaded; },
     [](Case& c, const Numbers&) { c.frame.post.hold.value = Hold::rabbet; }},
    {"drop_into_grooves", Code::fit_loading, "loading", "back", Status::fail,
     [](Case& c) {
         make_rabbets(c);
         c.frame.post.hold.value = Hold::groove;
     },
     [](Case& c, const Numbers&) { c.frame.post.hold.value = Hold::rabbet; }},
    {"pane_too_high_to_lift", Code::fit_loading, "loading", "back", Status::fail,
     [](Case& c) {
         make_rabbets(c);
         own_height(c, 3, 400);
     },
     [](Case& c, const Numbers& n) { c.panes[3].height->value -= n[0]; }},
    {"little_loading_clearance_at_worst", Code::fit_loading, "loading-reserve", "back",
     Status::warn,
     [](Case& c) {
         make_rabbets(c);
         c.fit.loading_clearance.value = 1;
     },
     [](Case& c, const Numbers& n) { c.fit.loading_clearance.value += n[0]; }},
    {"top_groove_too_narrow_to_tilt", Code::fit_loading, "loading-tilt", "back", Status::fail,
     [](Case& c) {
         make_rabbets(c);
         c.frame.groove.width.value = 4;
     },
     [](Case& c, const Numbers& n) { c.frame.groove.width.value += n[0]; }},
    {"front_spreads_under_the_top_groove", Code::fit_loading, "loading-swing", "front",
     Status::fail,
     [](Case& c) {
         make_rabbets(c);
         own_height(c, 0, 398);
     },
     [](Case& c, const Numbers& n) { c.frame.groove.top_depth.value += n[0]; }},
    {"front_spreads_and_its_height_follows_the_groove", Code::fit_loading, "loading-swing", "front",
     Status::fail, [](Case& c) { make_rabbets(c); },
     [](Case& c, const Numbers& n) { c.fit.loading_clearance.value += n[0]; }},
    {"no_room_for_a_pane_of_its_own_length", Code::fit_room, "room", "back/sideways", Status::fail,
     [](Case& c) { c.panes[3].length = given(507.8, "/panes/3/size/length"); },
     [](Case& c, const Numbers& n) { c.panes[3].length->value -= n[0]; }},
    {"held_cold_too_tight", Code::fit_bend, "bend", "front", Status::fail,
     [](Case& c) { c.panes[0].bend.value = Bend::cold; },
     [](Case& c, const Numbers& n) { c.panes[0].thickness.value = n[0]; }},
    {"cold_radius_unknown", Code::fit_bend, "bend", "front", Status::fail,
     [](Case& c) {
         c.sheets.at("cast-acrylic").like = find_sheet("petg");
         c.panes[0].bend.value = Bend::cold;
     },
     [](Case& c, const Numbers&) { c.panes[0].bend.value = Bend::heat; }},
};

const Provocation kHeatAndStockChecks[] = {
    {"oven_too_hot", Code::fit_heat, "heat-face", "front", Status::fail,
     [](Case& c) { c.oven->set = given(175.0, "/oven/set"); },
     [](Case& c, const Numbers& n) { c.oven->set->value -= n.back(); }},
    {"oven_too_cold", Code::fit_heat, "heat-core", "front", Status::fail,
     [](Case& c) { c.oven->set = given(150.0, "/oven/set"); },
     [](Case& c, const Numbers& n) { c.oven->set->value += n[0]; }},
    {"oven_too_small", Code::fit_oven, "oven", "front", Status::fail,
     [](Case& c) {
         c.oven->inside[0].value = 500;
         c.oven->inside[1].value = 380;
     },
     [](Case& c, const Numbers& n) {
         c.oven->inside[0].value = n[0];
         c.oven->inside[1].value = n[1];
     }},
    {"shrink_not_measured", Code::fit_shrink, "shrink-measured", "front", Status::warn,
     [](Case&) {},
     [](Case& c, const Numbers&) {
         SheetSpec& sheet = c.sheets.at("cast-acrylic");
         sheet.shrink_along = given(0.013, "/sheets/batch/shrink/along");
         sheet.shrink_across = given(0.012, "/sheets/batch/shrink/across");
     }},
    {"stock_too_small", Code::fit_stock, "stock", "front", Status::fail,
     [](Case& c) { c.stock[1].size = {500, 380}; },
     [](Case& c, const Numbers& n) {
         c.stock[1].size[0] += n[0];
         c.stock[1].size[1] += n[0];
     }},
};

const Provocation kFrameChecks[] = {
    {"post_over_the_base_s_edge", Code::frame_post_on_plate, "post-on-plate", "base/front-left",
     Status::fail, [](Case& c) { c.frame.base.margin.value = 15; },
     [](Case& c, const Numbers& n) { c.frame.base.margin.value += n[0]; }},
    {"cutter_too_thick", Code::frame_cutter, "cutter", "groove", Status::fail,
     [](Case& c) { c.cutter.diameter.value = 6; },
     [](Case& c, const Numbers& n) { c.cutter.diameter.value = n[0]; }},
    {"thin_web_in_a_post", Code::frame_web, "web", "post-back-left", Status::fail,
     [](Case& c) { c.frame.groove.post_depth.value = 17; },
     [](Case& c, const Numbers& n) { c.frame.groove.post_depth.value -= n[0]; }},
    {"thin_web_in_the_base", Code::frame_web, "web", "base/left-back", Status::fail,
     [](Case& c) { c.frame.groove.post_depth.value = 17; },
     [](Case& c, const Numbers& n) { c.frame.groove.post_depth.value -= n[0]; }},
    {"thin_cheek_in_a_post", Code::frame_cheek, "cheek", "post-back-left/back", Status::fail,
     [](Case& c) {
         c.frame.post.width.value = 16;
         c.frame.post.depth.value = 16;
         c.frame.groove.post_depth.value = 4;
         c.fit.end_clearance.value = 0.5;
     },
     [](Case& c, const Numbers& n) {
         c.frame.post.width.value += n[0];
         c.frame.post.depth.value += n[0];
     }},
    {"thin_cheek_at_the_edge", Code::frame_cheek, "cheek", "top/back", Status::fail,
     [](Case& c) { c.frame.top.margin.value = 8; },
     [](Case& c, const Numbers& n) { c.frame.top.margin.value += n[0]; }},
    {"thin_floor", Code::frame_floor, "floor", "base", Status::fail,
     [](Case& c) { c.frame.groove.base_depth.value = 14; },
     [](Case& c, const Numbers& n) { c.frame.groove.base_depth.value -= n[0]; }},
    {"thin_floor_at_worst", Code::frame_floor, "floor", "base", Status::warn,
     [](Case& c) { c.frame.groove.base_depth.value = 13.3; },
     [](Case& c, const Numbers& n) { c.frame.groove.base_depth.value -= n[0]; }},
};

void make_rails(Case& c) {
    c.frame = sample::on_rails().frame;
}

const Provocation kRailChecks[] = {
    {"boards_too_narrow_for_the_rails", Code::frame_rail_board, "rail-board", "base/back",
     Status::fail,
     [](Case& c) {
         make_rails(c);
         c.frame.base.build.board_width.value = 40;
     },
     [](Case& c, const Numbers& n) { c.frame.base.build.board_width.value = n[0]; }},
    {"too_few_segments_for_the_grain", Code::frame_rail_run_out, "rail-run-out", "top/front",
     Status::fail,
     [](Case& c) {
         make_rails(c);
         c.frame.top.build.segments = given(3, "/frame/top/segments");
     },
     [](Case& c, const Numbers& n) {
         c.frame.top.build.segments->value = static_cast<int>(n[0]) + 1;
     }},
    {"no_room_for_a_tongue", Code::frame_rail_joint, "rail-tongue", "top", Status::fail,
     [](Case& c) {
         make_rails(c);
         c.frame.groove.top_depth.value = 16;
     },
     [](Case& c, const Numbers& n) { c.frame.top.thickness.value += n[0]; }},
    {"groove_at_the_rail_s_inner_edge", Code::frame_cheek, "rail-cheek", "base/left", Status::fail,
     [](Case& c) {
         make_rails(c);
         c.frame.base.build.inset.value = 7;
     },
     [](Case& c, const Numbers& n) { c.frame.base.build.inset.value += n[0]; }},
    {"post_over_the_rail_s_inner_edge", Code::frame_post_on_plate, "post-on-rail",
     "base/back-left", Status::fail,
     [](Case& c) {
         make_rails(c);
         c.frame.base.build.inset.value = 12;
     },
     [](Case& c, const Numbers& n) { c.frame.base.build.inset.value += n[0]; }},
};

void join(Case& c, PostJoint joint, double size) {
    c.frame.post.joint.value = joint;
    c.frame.post.joint_size = given(size, "/frame/post/joint_size");
}

const Provocation kJointChecks[] = {
    {"tenon_too_near_the_grooves", Code::frame_post_joint, "joint-shoulder", "post-back-left",
     Status::fail, [](Case& c) { join(c, PostJoint::tenon, 19); },
     [](Case& c, const Numbers& n) { c.frame.post.joint_size->value = n[0]; }},
    {"dowel_too_near_the_grooves", Code::frame_post_joint, "joint-web", "post-front-left",
     Status::fail, [](Case& c) { join(c, PostJoint::dowel, 12); },
     [](Case& c, const Numbers& n) { c.frame.post.joint_size->value = n[0]; }},
};

const Provocation kFormChecks[] = {
    {"skin_bends_only_when_soaked", Code::form_skin, "skin-bend", "form-front", Status::warn,
     [](Case& c) { c.form.skin.value = 6.35; },
     [](Case& c, const Numbers&) { c.form.skin.value = 3; }},
    {"skin_in_no_table", Code::form_skin, "skin-bend", "form-front", Status::fail,
     [](Case& c) { c.form.skin.value = 0.5; },
     [](Case& c, const Numbers& n) { c.form.skin.value = n[0]; }},
    {"skin_too_stiff", Code::form_skin, "skin-bend", "form-front", Status::fail,
     [](Case& c) { c.form.skin.value = 9.5; },
     [](Case& c, const Numbers&) { c.form.skin.value = 3; }},
    {"form_past_half_a_turn", Code::form_sweep, "form-sweep", "form-front", Status::fail,
     [](Case& c) {
         c.plan.front = FrontArc{ArcMeasure::sweep, given(2.9, "/plan/front/sweep")};
         c.form.skin.value = 1;
     },
     [](Case& c, const Numbers& n) { c.form.overrun.value -= n[0]; }},
};

std::string name_of(const testing::TestParamInfo<Provocation>& info) { return info.param.name; }

INSTANTIATE_TEST_SUITE_P(Panes, EachCheck, testing::ValuesIn(kPaneChecks), name_of);
INSTANTIATE_TEST_SUITE_P(HeatAndStock, EachCheck, testing::ValuesIn(kHeatAndStockChecks), name_of);
INSTANTIATE_TEST_SUITE_P(Frame, EachCheck, testing::ValuesIn(kFrameChecks), name_of);
INSTANTIATE_TEST_SUITE_P(Rails, EachCheck, testing::ValuesIn(kRailChecks), name_of);
INSTANTIATE_TEST_SUITE_P(Joints, EachCheck, testing::ValuesIn(kJointChecks), name_of);
INSTANTIATE_TEST_SUITE_P(Form, EachCheck, testing::ValuesIn(kFormChecks), name_of);

// Neither shrink nor springback are measured, and a hand can push harder than the sheet bears for
// long: warnings say so.
TEST(Checks, of_the_pilot_boat_all_pass_but_for_what_is_not_measured_and_a_hard_push) {
    const Case c = sample::pilot_boat();
    EXPECT_TRUE(objections(c).empty());
    for (const Finding& finding : checked(c)) {
        if (finding.id == "shrink-measured" || finding.id == "radius-contact" ||
            finding.id == "push-stress") {
            EXPECT_EQ(finding.status, Status::warn);
            continue;
        }
        EXPECT_EQ(finding.status, Status::pass) << finding.id << ' ' << finding.about << ": "
                                                << finding.advice;
        EXPECT_TRUE(finding.advice.empty());
        EXPECT_GE(finding.margin(), 0);
    }
}

TEST(Shrink, need_not_be_measured_for_a_blank_that_is_trimmed_or_never_heated) {
    Case c = sample::pilot_boat();
    c.panes[0].blank.method = given(BlankMethod::trim_after, "/panes/0/blank");
    for (const Finding& finding : checked(c)) {
        EXPECT_NE(finding.id, "shrink-measured") << finding.about;
    }
}

TEST(Checks, come_in_a_fixed_order_each_subject_once) {
    const auto first = checked(sample::pilot_boat());
    const auto again = checked(sample::pilot_boat());
    ASSERT_EQ(first.size(), again.size());
    std::vector<std::string> names;
    for (std::size_t i = 0; i < first.size(); ++i) {
        EXPECT_EQ(first[i].id, again[i].id);
        EXPECT_EQ(first[i].about, again[i].about);
        names.push_back(first[i].id + " " + first[i].about);
    }
    std::sort(names.begin(), names.end());
    EXPECT_EQ(std::adjacent_find(names.begin(), names.end()), names.end());
}

// Lasting stress: a sheet whose library entry allowed the radius but not the stress of it.
TEST(Bend, held_cold_is_held_to_the_lasting_stress) {
    Sheet sheet = *find_sheet("cast-acrylic");
    sheet.cold_bend_multiple->value = 50;
    Case c = sample::pilot_boat();
    c.panes[0].bend.value = Bend::cold;
    c.sheets.at("cast-acrylic").like = &sheet;
    const auto stress_of = [](const Case& with) {
        const auto findings = checked(with);
        const auto found = std::find_if(findings.begin(), findings.end(),
                                        [](const Finding& each) { return each.id == "bend-stress"; });
        return found == findings.end() ? Finding{} : *found;
    };
    // ε = 3/2/420, E as the library has it; the limit of 10.3 MPa is a sheet maker's (1500 psi).
    const double stress = sheet.modulus.value * 1.5 / 420;
    constexpr double kRounding = 1e-12;
    EXPECT_NEAR(stress_of(c).value, stress, kRounding);
    EXPECT_NEAR(stress_of(c).limit, 10.3, 0.05);
    EXPECT_EQ(stress_of(c).status, stress > 10.3 ? Status::fail : Status::pass);
    sheet.long_term_stress->value = stress * 0.99;
    EXPECT_EQ(stress_of(c).status, Status::fail);
    EXPECT_EQ(stress_of(c).code, Code::fit_bend);
}

TEST(Heat, warns_within_five_kelvin_of_the_face_s_limit) {
    Case c = sample::pilot_boat();
    c.oven->set = given(168.0, "/oven/set");  // 177 − 168 − 5 = 4 K left
    const auto findings = checked(c);
    const auto warned = std::find_if(findings.begin(), findings.end(),
                                     [](const Finding& each) { return each.id == "heat-face"; });
    ASSERT_NE(warned, findings.end());
    EXPECT_EQ(warned->status, Status::warn);
    EXPECT_EQ(warned->value, 4);
    EXPECT_EQ(warned->advice, "keep 5 K to the face limit: set the oven 1 K lower");
}

}  // namespace
}  // namespace bowfront::fit
