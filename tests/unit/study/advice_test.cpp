#include "bowfront/study/advice.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <functional>
#include <numbers>

#include "bowfront/fit/checks.hpp"
#include "bowfront/model/values.hpp"
#include "support/sample_case.hpp"

namespace bowfront::study {
namespace {

using sample::given;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

constexpr ChanceOptions kChance{2000, 1};

std::vector<Finding> found(const Case& c) {
    const fit::Solution solution = fit::solution(c);
    EXPECT_TRUE(solution.objections.empty());
    std::vector<Finding> findings = fit::checks(c, solution.sums, solution.layout);
    for (Finding& finding : chance_checks(first_time_fit(c, solution.sums, kChance))) {
        findings.push_back(std::move(finding));
    }
    return findings;
}

const Finding& of(const std::vector<Finding>& findings, std::string_view id, std::string_view about) {
    const auto at = std::find_if(findings.begin(), findings.end(), [&](const Finding& finding) {
        return finding.id == id && finding.about == about;
    });
    EXPECT_NE(at, findings.end()) << id << ' ' << about;
    return *at;
}

std::vector<Change> changes(const Case& c, std::string_view id, std::string_view about) {
    const std::vector<Finding> findings = found(c);
    return Adviser(c, findings, kChance, {}).changes(of(findings, id, about));
}

std::optional<Change> correction(const Case& c, std::string_view id, std::string_view about) {
    const std::vector<Finding> findings = found(c);
    return Adviser(c, findings, kChance, {}).correction(of(findings, id, about));
}

/// A case that breaks one check, and a change that must be among those told. Where it is a number
/// in millimetres, a step less of it must not do.
struct Broken {
    const char* name;
    const char* id;
    const char* about;
    std::function<void(Case&)> break_it;
    const char* pointer;
    const char* to;

    friend void PrintTo(const Broken& shown, std::ostream* out) { *out << shown.name; }
};

void as_cut(Case& c, double length, double width) {
    BlankSpec& blank = c.panes[0].blank;
    blank.method = given(BlankMethod::as_cut, "/panes/0/blank");
    blank.length = given(length, "/panes/0/blank/length");
    blank.width = given(width, "/panes/0/blank/width");
}

void lift(Case& c) {
    c = sample::lift_and_drop();
}

const Broken kBroken[] = {
    {"clearance_on_top", "engagement", "front/top", [](Case& c) { c.fit.top_clearance.value = 6.5; },
     "/fit/top_clearance", "5.6"},
    {"clearance_at_the_ends", "room", "front/sideways",
     [](Case& c) { c.fit.end_clearance.value = 2; }, "/fit/end_clearance", "3"},
    {"groove_in_the_base", "engagement", "left/bottom",
     [](Case& c) { c.frame.groove.base_depth.value = 2.5; }, "/frame/groove/depth/base", "3.2"},
    {"width_of_grooves", "face-clearance", "back/start",
     [](Case& c) { c.frame.groove.width.value = 3.2; }, "/frame/groove/width", "3.8"},
    {"size_of_its_own", "room", "back/vertical",
     [](Case& c) { c.panes[3].height = given(397.9, "/panes/3/size/height"); },
     "/panes/3/size/height", "395.8"},
    {"length_of_a_blank", "engagement", "front/start", [](Case& c) { as_cut(c, 543, 399.5); },
     "/panes/0/blank/length", "549.9"},
    {"width_of_a_blank", "engagement", "front/top", [](Case& c) { as_cut(c, 551, 393.5); },
     "/panes/0/blank/width", "398.4"},
    {"method_of_a_blank", "engagement", "front/top", [](Case& c) { as_cut(c, 551, 393.5); },
     "/panes/0/blank", "\"trim-after\""},
    {"hold_of_the_posts", "loading", "back",
     [](Case& c) {
         lift(c);
         c.panes.erase(c.panes.begin());
         c.frame.post.hold.value = Hold::groove;
     },
     "/frame/post/hold", "\"rabbet\""},
    {"loading", "loading", "back",
     [](Case& c) {
         c = sample::straight_front();
         c.frame.loading.value = Loading::lift_and_drop;
     },
     "/frame/loading", "\"slide-in\""},
    {"loading_clearance", "loading-reserve", "back",
     [](Case& c) {
         lift(c);
         c.fit.loading_clearance.value = 1;
     },
     "/fit/loading_clearance", "1.9"},
    {"bend", "bend", "front", [](Case& c) { c.panes[0].bend.value = Bend::cold; }, "/panes/0/bend",
     "\"heat\""},
    {"oven_too_hot", "heat-face", "front", [](Case& c) { c.oven->set = given(175.0, "/oven/set"); },
     "/oven/set", "\"167 C\""},
    {"oven_that_proposes", "heat-face", "front", [](Case& c) { c.oven->accuracy.value = 9; },
     "/oven/set", "\"163 C\""},
    {"small_oven", "oven", "front", [](Case& c) {
         c.oven->inside[0].value = 540;
         c.oven->inside[1].value = 500;
     },
     "/oven/inside/0", "551"},
    {"small_sheet", "stock", "front",
     [](Case& c) {
         c.stock[1].pointer = "/stock/1";
         c.stock[1].size = {540, 400};
     },
     "/stock/1/size/0", "551"},
    {"shrink_not_measured", "shrink-measured", "front", [](Case&) {}, "/panes/0/blank",
     "\"trim-after\""},
    {"springback", "radius-contact", "front", [](Case&) {}, "/frame/groove/width", "5.5"},
    {"push", "push-stress", "back", [](Case&) {}, "/service/push", "\"38 N\""},
    {"chance", "first-time-fit", "back", [](Case& c) { c.fit.end_clearance.value = 0; },
     "/fit/end_clearance", "1"},
    {"margin", "post-on-plate", "base/front-left",
     [](Case& c) { c.frame.base.margin.value = 15; }, "/frame/base/margin", "21.5"},
    {"cutter", "cutter", "groove", [](Case& c) { c.cutter.diameter.value = 6; },
     "/cutter/diameter", "4"},
    {"web", "web", "post-back-left", [](Case& c) { c.frame.groove.post_depth.value = 17; },
     "/frame/groove/depth/post", "15.7"},
    {"cheek", "cheek", "top/back", [](Case& c) { c.frame.top.margin.value = 8; },
     "/frame/top/margin", "8.5"},
    {"floor_by_groove", "floor", "base", [](Case& c) { c.frame.groove.base_depth.value = 13.5; },
     "/frame/groove/depth/base", "13.1"},
    {"floor_by_board", "floor", "base", [](Case& c) { c.frame.groove.base_depth.value = 13.5; },
     "/frame/base/thickness", "21"},
    {"rail_board", "rail-board", "base/back",
     [](Case& c) {
         c.frame = sample::on_rails().frame;
         c.frame.base.build.board_width.value = 40;
     },
     "/frame/base/board_width", "48"},
    {"rail_run_out", "rail-run-out", "top/front",
     [](Case& c) {
         c.frame = sample::on_rails().frame;
         c.frame.top.build.segments = given(3, "/frame/top/segments");
     },
     "/frame/top/run_out", "14.3"},
    {"rail_joint", "rail-tongue", "top",
     [](Case& c) {
         c.frame = sample::on_rails().frame;
         c.frame.groove.top_depth.value = 16;
     },
     "/frame/groove/depth/top", "15"},
    {"rail_inset", "post-on-rail", "base/back-left",
     [](Case& c) {
         c.frame = sample::on_rails().frame;
         c.frame.base.build.inset = given(12.0, "/frame/base/inset");
     },
     "/frame/base/inset", "21"},
    {"post_joint", "joint-shoulder", "post-back-left",
     [](Case& c) {
         c.frame.post.joint.value = PostJoint::tenon;
         c.frame.post.joint_size = given(19.0, "/frame/post/joint_size");
     },
     "/frame/post/joint_size", "18"},
    {"skin", "skin-bend", "form-front", [](Case& c) { c.form.skin.value = 9.5; },
     "/form/skin/thickness", "3"},
    {"overrun", "form-sweep", "form-front",
     [](Case& c) {
         c.plan.front = FrontArc{ArcMeasure::sweep, given(2.9, "/plan/front/sweep")};
         c.form.skin.value = 1;
     },
     "/form/overrun", "40"},
};

bool is_of_standard_sizes(const std::string& pointer) {
    return pointer == "/cutter/diameter" || pointer == "/form/skin/thickness";
}

// Of a shop, mm: of what is fitted, of what is sawn, of a form and an oven.
double step_of(const std::string& pointer) {
    if (pointer == "/form/overrun" || pointer.starts_with("/oven/")) {
        return 1;
    }
    return pointer.ends_with("/margin") || pointer.ends_with("/thickness") ||
                   pointer.ends_with("/joint_size") || pointer.ends_with("/inset")
               ? 0.5
               : 0.1;
}

void expect_no_less(Case c, const Broken& broken, const Change& change) {
    if (change.to.front() == '"' || is_of_standard_sizes(change.pointer) ||
        change.pointer.starts_with("/stock/")) {
        return;
    }
    const double to = std::stod(change.to);
    const double from = std::stod(change.from);
    const double step = step_of(change.pointer);
    const double unit = change.pointer.ends_with("/run_out") ? std::numbers::pi / 180 : 1;
    const double less = from < to ? std::max(from, to - step) : std::min(from, to + step);
    visit_values(c, [&](double& value, const Origin& origin) {
        value = origin.pointer == change.pointer ? less * unit : value;
    });
    EXPECT_NE(of(found(c), broken.id, broken.about).status, Status::pass) << change.words;
}

class EachSetting : public testing::TestWithParam<Broken> {};

TEST_P(EachSetting, is_advised_where_it_helps) {
    const Broken& broken = GetParam();
    Case c = sample::pilot_boat();
    broken.break_it(c);
    const std::vector<Change> list = changes(c, broken.id, broken.about);
    EXPECT_LE(list.size(), kMostChanges);
    const auto at = std::find_if(list.begin(), list.end(), [&](const Change& change) {
        return change.pointer == broken.pointer;
    });
    std::string told;
    for (const Change& change : list) {
        told += change.words + "; ";
    }
    ASSERT_NE(at, list.end()) << told;
    EXPECT_EQ(at->to, broken.to);
    EXPECT_EQ(at->after, Status::pass);
    EXPECT_THAT(at->words, HasSubstr("now "));
    expect_no_less(c, broken, *at);
}

std::string name_of(const testing::TestParamInfo<Broken>& broken) {
    return broken.param.name;
}

INSTANTIATE_TEST_SUITE_P(Settings, EachSetting, testing::ValuesIn(kBroken), name_of);

Case tight_ends(double clearance) {
    Case c = sample::pilot_boat();
    c.fit.end_clearance.value = clearance;
    return c;
}

// 3 passes; a step less does not.
TEST(Advice, names_the_smallest_step_that_passes) {
    const auto list = changes(tight_ends(0), "room", "front/sideways");
    ASSERT_FALSE(list.empty());
    ASSERT_EQ(list.front().to, "3");
    const auto status = [](double clearance) {
        return of(found(tight_ends(clearance)), "room", "front/sideways").status;
    };
    EXPECT_EQ(status(3), Status::pass);
    EXPECT_NE(status(2.9), Status::pass);
}

// The floor would not bear the depth that the engagement wants.
TEST(Advice, names_no_change_that_breaks_something_else) {
    Case c = sample::pilot_boat();
    c.frame.groove.base_depth.value = 2.5;
    c.frame.base.thickness.value = 4;
    c.webs.floor.value = 0.35;
    ASSERT_EQ(of(found(c), "floor", "base").status, Status::pass);
    for (const Change& change : changes(c, "engagement", "left/bottom")) {
        EXPECT_NE(change.pointer, "/frame/groove/depth/base") << change.words;
    }
}

TEST(Advice, is_of_different_values_and_asks_less_only_at_the_end) {
    Case c = sample::pilot_boat();
    c.fit.top_clearance.value = 8.4;
    const auto list = changes(c, "engagement", "left/top");
    ASSERT_EQ(list.size(), 3U);
    EXPECT_EQ(list[0].pointer, "/frame/groove/depth/top");
    EXPECT_EQ(list[1].pointer, "/fit/top_clearance");
    EXPECT_LE(list[0].relative, list[1].relative);
    EXPECT_EQ(list[2].pointer, "/fit/least_engagement");
    EXPECT_EQ(list[2].touches, Touches::demand);
}

TEST(Advice, names_the_warnings_that_come_with_a_change) {
    Case c = sample::pilot_boat();
    c.panes[0].bend.value = Bend::cold;
    const auto list = changes(c, "bend", "front");
    ASSERT_EQ(list.size(), 1U);
    EXPECT_THAT(list[0].brings, ElementsAre("radius-contact front", "shrink-measured front"));
}

TEST(Advice, in_inches_goes_by_the_sixty_fourth) {
    Case c = tight_ends(2);
    c.units = LengthUnit::inch;
    const auto list = changes(c, "room", "front/sideways");
    ASSERT_FALSE(list.empty());
    EXPECT_EQ(list.front().to, "\"1/8 in\"");
    const CaseFile bare{[](const std::string&) { return "0.0787"; }, {}};
    const auto findings = found(c);
    const auto in_bare = Adviser(c, findings, kChance, bare)
                             .changes(of(findings, "room", "front/sideways"));
    ASSERT_FALSE(in_bare.empty());
    EXPECT_EQ(in_bare.front().to, "0.125");
}

TEST(Advice, keeps_the_unit_that_a_value_is_written_in) {
    Case c = sample::pilot_boat();
    c.oven->set = given(175.0, "/oven/set");
    const CaseFile file{[](const std::string&) { return "\"347 F\""; }, {}};
    const auto findings = found(c);
    const auto list =
        Adviser(c, findings, kChance, file).changes(of(findings, "heat-face", "front"));
    ASSERT_FALSE(list.empty());
    EXPECT_EQ(list.front().from, "\"347 F\"");
    EXPECT_EQ(list.front().to, "\"332 F\"");
}

TEST(Advice, takes_no_value_that_the_file_s_rules_refuse) {
    const auto findings = found(tight_ends(2));
    const Case c = tight_ends(2);
    const CaseFile strict{{}, [](const Case& changed) {
                              return changed.fit.end_clearance.value > 2 ? "too much" : "";
                          }};
    for (const Change& change :
         Adviser(c, findings, kChance, strict).changes(of(findings, "room", "front/sideways"))) {
        EXPECT_NE(change.pointer, "/fit/end_clearance");
    }
}

// Only the look could be changed, and a warning is not worth that; nor is a limit to be lowered.
TEST(Correction, changes_no_look_for_a_warning_and_asks_no_less) {
    EXPECT_FALSE(correction(sample::pilot_boat(), "push-stress", "back"));
    EXPECT_FALSE(correction(sample::pilot_boat(), "shrink-measured", "front"));
}

TEST(Correction, keeps_to_hidden_sizes_where_they_help) {
    Case c = sample::pilot_boat();
    as_cut(c, 543, 399.5);
    const auto change = correction(c, "engagement", "front/end");
    ASSERT_TRUE(change);
    EXPECT_EQ(change->pointer, "/panes/0/blank/length");
}

TEST(Correction, changes_the_look_of_a_case_that_fails_otherwise) {
    Case c = sample::straight_front();
    c.frame.loading.value = Loading::lift_and_drop;
    const auto change = correction(c, "loading", "back");
    ASSERT_TRUE(change);
    EXPECT_EQ(change->pointer, "/frame/loading");
}

TEST(Advise, sums_changes_up_and_calls_a_hint_a_hint) {
    Case c = tight_ends(2);
    c.stock[1].size = {300, 300};
    auto findings = found(c);
    advise(c, findings, kChance, {});
    const Finding& room = of(findings, "room", "front/sideways");
    ASSERT_FALSE(room.changes.empty());
    EXPECT_THAT(room.advice, HasSubstr(room.changes.front().words));
    const Finding& stock = of(findings, "stock", "front");
    EXPECT_THAT(stock.changes, IsEmpty());
    EXPECT_THAT(stock.advice, HasSubstr("no single change"));
    EXPECT_THAT(stock.advice, HasSubstr("a hint, not tried out: buy a sheet"));
    for (const Finding& finding : findings) {
        if (finding.status == Status::pass) {
            EXPECT_THAT(finding.changes, IsEmpty());
            EXPECT_THAT(finding.advice, IsEmpty());
        }
    }
}

}  // namespace
}  // namespace bowfront::study
