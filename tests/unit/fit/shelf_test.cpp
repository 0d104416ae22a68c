#include "bowfront/fit/shelf.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <tuple>

#include "bowfront/fit/checks.hpp"
#include "numbers_in.hpp"
#include "random_cases.hpp"
#include "support/sample_shelf.hpp"

namespace bowfront::fit {
namespace {

using sample::rectangle_with_shelf;
using sample::with_shelf;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

constexpr double kPi = std::numbers::pi;
/// Areas under 1 m² by a few dozen operations, mm².
constexpr double kArea = 1e-6;

struct Solved {
    CaseSums<double> sums;
    Layout frame;
    Shelves shelves;
};

Solved solved(const Case& c) {
    Solved out;
    out.sums = solve(c);
    out.frame = layout(c, out.sums);
    out.shelves = fit::shelves(c, out.sums, out.frame);
    return out;
}

const Shelf& first(const Solved& all) {
    if (all.shelves.list.empty()) {
        throw std::logic_error(all.shelves.objections.front().found);
    }
    return all.shelves.list.front();
}

TEST(ShelfOutline, of_a_rectangle_is_inset_and_notched_in_closed_form) {
    const auto all = solved(rectangle_with_shelf("plywood"));
    const double inset = all.sums.panes[0].thickest / 2 + 3;
    // Fitted posts of 42 mm reach 21 mm into the case, 24 mm with the clearance; the notch's corner
    // is round by the clearance.
    const double notch = (24 - inset) * (24 - inset) - (1 - kPi / 4) * 9;
    const double area = (520 - 2 * inset) * (240 - 2 * inset) - 4 * notch;
    const ShelfPlan& plan = first(all).plan;
    EXPECT_NEAR(plan.outline.area(), area, kArea);
    EXPECT_NEAR(plan.line_gap, inset, kRounding);
    EXPECT_NEAR(plan.post_gap, 3, kRounding);
    EXPECT_NEAR(plan.span, 520 - 2 * inset, kRounding);
    EXPECT_NEAR(plan.breadth, 240 - 2 * inset, kRounding);
}

TEST(ShelfOutline, keeps_the_front_s_arc_about_its_centre) {
    const auto all = solved(with_shelf("plywood"));
    const double radius = 420 - all.sums.panes[0].thickest / 2 - 3;
    const auto segments = first(all).plan.outline.segments();
    EXPECT_TRUE(std::ranges::any_of(segments, [&](const Segment& s) {
        return !s.straight() && std::abs(s.radius() - radius) < kRounding && s.length() > 300;
    }));
}

TEST(ShelfOutline, has_notches_that_the_cutter_and_glass_allow) {
    Case c = rectangle_with_shelf("plywood");
    c.cutter.diameter.value = 4.8;
    c.shelves[0].clearance.value = 2;
    EXPECT_NEAR(first(solved(c)).plan.post_gap, 2.4, kRounding);
    Case glass = rectangle_with_shelf("float-glass");
    glass.shelves[0].thickness.value = 6;
    EXPECT_NEAR(first(solved(glass)).plan.post_gap, 6, kRounding);
}

TEST(ShelfPins, stand_in_sound_timber_and_reach_under_the_shelf) {
    for (const auto section : {PostSection::fitted, PostSection::square, PostSection::round}) {
        Case c = with_shelf("plywood");
        c.frame.post.section.value = section;
        const auto all = solved(c);
        const ShelfPlan& plan = first(all).plan;
        ASSERT_THAT(plan.pins, SizeIs(4));
        for (const ShelfPin& pin : plan.pins) {
            const PostLayout& post = all.frame.posts[index(pin.corner)];
            EXPECT_EQ(where(post.outline, pin.mouth), Side::on_edge);
            EXPECT_EQ(where(post.section[0], pin.mouth + pin.inward * kPinDepth), Side::inside);
            EXPECT_EQ(where(plan.outline, pin.tip), Side::inside);
            EXPECT_GE(pin.wall, kPinWall) << static_cast<int>(section);
        }
    }
}

TEST(ShelfPins, find_no_timber_in_posts_with_rabbets) {
    Case c = rectangle_with_shelf("plywood");
    const Case beaded = sample::beaded();
    c.frame.post.hold.value = Hold::rabbet;
    c.frame.loading.value = Loading::beaded;
    c.frame.bead_width = beaded.frame.bead_width;
    const auto all = solved(c);
    EXPECT_EQ(first(all).plan.pins[0].wall, 0);
    const auto findings = shelf_checks(c, all.sums, all.shelves);
    const auto pin = std::ranges::find(findings, "shelf-pin", &Finding::id);
    ASSERT_NE(pin, findings.end());
    EXPECT_EQ(pin->code, Code::shelf_pin);
    EXPECT_EQ(pin->status, Status::fail);
    EXPECT_THAT(pin->advice, HasSubstr("rails"));
}

TEST(ShelfRails, run_from_post_to_post_along_straight_sides) {
    const auto all = solved(rectangle_with_shelf("plywood", ShelfSupport::rails));
    const ShelfPlan& plan = first(all).plan;
    ASSERT_THAT(plan.rails, SizeIs(4));
    EXPECT_NEAR(plan.rails[0].outline.area(), (520 - 42) * kRailWidth, kArea);
    EXPECT_NEAR(plan.rails[1].outline.area(), (240 - 42) * kRailWidth, kArea);
    for (const ShelfRail& rail : plan.rails) {
        for (const PostLayout& post : all.frame.posts) {
            EXPECT_THAT(intersect({rail.outline}, {{post.outline, {}}}), IsEmpty());
        }
    }
    EXPECT_EQ(plan.model, ShelfModel::plate);
    EXPECT_LT(plan.span, plan.breadth);
    const auto timber = solved(rectangle_with_shelf("cherry", ShelfSupport::rails));
    EXPECT_EQ(first(timber).plan.model, ShelfModel::rails);
    EXPECT_THAT(first(solved(with_shelf("plywood", ShelfSupport::rails))).plan.rails, SizeIs(3));
}

TEST(ShelfRails, butt_where_they_meet_beside_a_thin_post) {
    Case c = rectangle_with_shelf("plywood", ShelfSupport::rails);
    c.frame.post.section.value = PostSection::round;
    const auto rails = first(solved(c)).plan.rails;
    for (std::size_t i = 0; i < rails.size(); ++i) {
        for (std::size_t j = 0; j < i; ++j) {
            EXPECT_THAT(intersect({rails[i].outline}, {rails[j].outline}), IsEmpty());
        }
    }
}

TEST(ShelfReactions, of_a_rectangle_are_half_the_weight_on_two_pins_across) {
    const auto all = solved(rectangle_with_shelf("plywood"));
    const Shelf& shelf = first(all);
    for (std::size_t i = 0; i < 4; ++i) {
        EXPECT_NEAR(shelf.plan.rests[i].share, 0.5, kRounding);
        EXPECT_NEAR(shelf.sums.reactions[i], shelf.sums.force / 2, kRounding);
    }
    // Volume times 600 kg/m³, and 2 kg, at 9.80665 m/s².
    const double mass = shelf.plan.outline.area() * 12 * 600e-9;
    EXPECT_NEAR(shelf.sums.force, (mass + 2) * 9.80665, kRounding);
}

/// A strip on two supports under an even load: w = 5pL⁴/(32Et³), σ = 3pL²/(4t²) (any textbook of
/// the strength of materials).
TEST(ShelfBending, meets_beams_on_two_supports) {
    // PMMA of 3200 MPa, 600 mm, 6 mm, 300 Pa: 8.79 mm, 2.25 MPa.
    const auto strip = shelf_bending({ShelfModel::rails, 600, 300, 0, 300e-6, 3200, 0.37, 6});
    EXPECT_NEAR(strip.deflection, 8.789, 0.0005);
    EXPECT_NEAR(strip.stress, 2.25, kRounding);
    const auto example = shelf_bending({ShelfModel::corners, 500, 250, 0, 5e-4, 70000, 0.2, 6});
    EXPECT_NEAR(example.deflection, 0.363, 0.0005);
    EXPECT_NEAR(example.stress, 3.255, 0.0005);
}

TEST(ShelfBending, on_rails_all_round_is_a_quarter_over_the_printed_plate) {
    // Roark's Formulas for Stress and Strain, 8th ed., Table 11.4 case 1a, ν 0.3: w =
    // α·q·b⁴/(E·t³), σ = β·q·b²/t², b the shorter side; printed to three digits.
    constexpr double kPrinted = 0.006;
    struct Row {
        double ratio, alpha, beta;
    };
    for (const Row& row :
         {Row{1, 0.0444, 0.2874}, Row{1.4, 0.0770, 0.4530}, Row{2, 0.1110, 0.6102}}) {
        const double b = 300;
        const auto bent =
            shelf_bending({ShelfModel::plate, b, row.ratio * b, 0, 5e-4, 70000, 0.3, 6});
        const double w = row.alpha * 5e-4 * std::pow(b, 4) / (70000 * 216);
        const double s = row.beta * 5e-4 * b * b / 36;
        EXPECT_NEAR(bent.deflection / (1.25 * w), 1, kPrinted);
        EXPECT_NEAR(bent.stress / (1.25 * s), 1, kPrinted);
    }
}

TEST(ShelfBending, is_on_the_safe_side_of_a_square_plate_on_its_corners) {
    // Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, square plate supported at its
    // corners, ν 0.3 (from memory; computed anew in tests/reference/shelf_plate.py):
    // w = 0.0257·q·a⁴/D, greatest moment 0.153·q·a² at the middle of an edge.
    const double a = 400;
    const double q = 5e-4;
    const double e = 70000;
    const double t = 8;
    const double d = e * t * t * t / (12 * (1 - 0.3 * 0.3));
    const auto shelf = shelf_bending({ShelfModel::corners, a, a, 0, q, e, 0.3, t});
    const double deflection = 0.0257 * q * std::pow(a, 4) / d;
    const double stress = 6 * 0.153 * q * a * a / (t * t);
    EXPECT_GT(shelf.deflection, deflection);
    EXPECT_LT(shelf.deflection, 1.5 * deflection);
    EXPECT_GT(shelf.stress, stress);
    EXPECT_LT(shelf.stress, 1.1 * stress);
}

TEST(ShelfSums, count_creep_and_lasting_strength_by_material) {
    const auto glass = first(solved(with_shelf("float-glass"))).sums;
    const auto acrylic = first(solved(with_shelf("cast-acrylic"))).sums;
    const auto plywood = first(solved(with_shelf("plywood"))).sums;
    EXPECT_EQ(glass.stress_limit, 8);
    EXPECT_EQ(acrylic.stress_limit, 10.3);
    EXPECT_NEAR(plywood.stress_limit, 18.8 / 4, kRounding);
    const auto sag_of = [&](const ShelfSums<double>& sums, const Case& c, double modulus) {
        const ShelfPlan plan = first(solved(c)).plan;
        return shelf_bending({plan.model, plan.span, plan.breadth, plan.bulge, sums.pressure,
                              modulus, 0.3, 12})
            .deflection;
    };
    EXPECT_NEAR(glass.sag, sag_of(glass, with_shelf("float-glass"), 70000), kRounding);
    EXPECT_NEAR(acrylic.sag, 2 * sag_of(acrylic, with_shelf("cast-acrylic"), 3200), kRounding);
}

TEST(ShelfSums, of_timber_grow_across_the_grain_with_the_damp) {
    const Case c = with_shelf("cherry", ShelfSupport::rails);
    const auto all = solved(c);
    const ShelfSums<double>& of = first(all).sums;
    const double rise = equilibrium_moisture(15, 0.6) - equilibrium_moisture(20, 0.45);
    const double growth = 0.00248 * rise * first(all).plan.breadth;
    // ISO 2768-1, class m, 400 to 1000 mm: 0.8 mm.
    EXPECT_NEAR(of.post_gap - of.post_gap_least, growth / 2 + 0.8, kRounding);
}

TEST(ShelfSums, of_a_sheet_thinner_than_its_tolerance_stay_sums) {
    Case c = with_shelf("cast-acrylic");
    c.shelves[0].thickness.value = 0.3;  // ± 0.43 mm by ISO 7823-1
    const ShelfSums<double> of = first(solved(c)).sums;
    EXPECT_EQ(of.thickness_least, 0.15);
    EXPECT_NEAR(of.sag_worst / of.sag, 8, kRounding);
}

struct Refused {
    const char* name;
    Case (*made)();
    const char* pointer;
    const char* found;
    friend void PrintTo(const Refused& shown, std::ostream* out) { *out << shown.name; }
};

class ShelfObjections : public testing::TestWithParam<Refused> {};

TEST_P(ShelfObjections, are_made_to_what_can_t_be) {
    const Case c = GetParam().made();
    ASSERT_THAT(objections(c), IsEmpty());
    const auto all = solved(c);
    ASSERT_THAT(all.shelves.objections, SizeIs(1));
    EXPECT_EQ(all.shelves.objections[0].pointer, GetParam().pointer);
    EXPECT_THAT(all.shelves.objections[0].found, HasSubstr(GetParam().found));
    EXPECT_FALSE(all.shelves.objections[0].wanted.empty());
}

template <class Change>
Case changed(Case c, Change change) {
    change(c);
    return c;
}

const Refused kRefused[] = {
    {"no_room",
     [] {
         return changed(with_shelf("plywood"), [](Case& c) { c.shelves[0].clearance.value = 200; });
     },
     "/shelves/0/clearance", "leave no room"},
    {"above_the_clear_height",
     [] {
         return changed(with_shelf("plywood"), [](Case& c) { c.shelves[0].height.value = 380.1; });
     },
     "/shelves/0/height", "would stand in the top"},
    {"in_the_base",
     [] {
         return changed(with_shelf("plywood"), [](Case& c) { c.shelves[0].height.value = 16.9; });
     },
     "/shelves/0/height", "would stand in the base"},
    {"two_in_one_place",
     [] {
         return changed(with_shelf("plywood"), [](Case& c) {
             c.shelves.push_back(sample::shelf("plywood", 136.9));
             c.shelves[1].pointer = "/shelves/1";
         });
     },
     "/shelves/1/height", "in one place with /shelves/0"},
    {"lifted_and_dropped",
     [] {
         Case c = sample::lift_and_drop();
         c.shelves.push_back(sample::shelf("plywood", 120));
         c.shelves[0].support.value = ShelfSupport::rails;
         return c;
     },
     "/shelves/0", "goes in from above before the top"},
    {"timber_on_pins", [] { return with_shelf("cherry"); }, "/shelves/0/support",
     "along its grain only"}};

INSTANTIATE_TEST_SUITE_P(All, ShelfObjections, testing::ValuesIn(kRefused),
                         [](const auto& tested) { return std::string(tested.param.name); });

std::vector<Finding> checked(const Case& c) {
    const auto all = solved(c);
    return shelf_checks(c, all.sums, all.shelves);
}

const Finding& named(const std::vector<Finding>& findings, std::string_view id) {
    return *std::ranges::find(findings, id, &Finding::id);
}

// Acrylic sags before it breaks, glass the other way.
TEST(ShelfChecks, name_the_smallest_thickness_that_bears) {
    for (const auto& [id, code, material, load] :
         {std::tuple{"shelf-sag", Code::shelf_sag, "cast-acrylic", 5.0},
          std::tuple{"shelf-stress", Code::shelf_stress, "float-glass", 25.0}}) {
        Case c = with_shelf(material);
        c.shelves[0].thickness.value = 5;
        c.shelves[0].clearance.value = 15;  // over any thickness: the notches stay as they are
        c.shelves[0].load.value = load;
        auto findings = checked(c);
        const Finding found = named(findings, id);
        EXPECT_EQ(found.code, code);
        ASSERT_EQ(found.status, Status::fail);
        const auto numbers = numbers_in(found.advice);
        ASSERT_FALSE(numbers.empty()) << found.advice;
        c.shelves[0].thickness.value = numbers[0];
        findings = checked(c);
        EXPECT_EQ(named(findings, "shelf-sag").status, Status::pass);
        EXPECT_EQ(named(findings, "shelf-stress").status, Status::pass);
        c.shelves[0].thickness.value -= 0.5;
        EXPECT_NE(named(checked(c), id).status, Status::pass);
    }
}

TEST(ShelfChecks, want_room_to_a_pane_that_leans) {
    Case c = with_shelf("plywood");
    c.shelves[0].clearance.value = 0.5;
    auto findings = checked(c);
    const Finding found = named(findings, "shelf-room");
    EXPECT_EQ(found.code, Code::shelf_room);
    EXPECT_EQ(found.about, "shelf-1/panes");
    ASSERT_EQ(found.status, Status::warn);
    c.shelves[0].clearance.value += numbers_in(found.advice)[0];
    EXPECT_EQ(named(checked(c), "shelf-room").status, Status::pass);
}

TEST(ShelfChecks, warn_of_what_tips_off_its_pins) {
    Case c = with_shelf("plywood");
    c.plan.front->value.value = 262;  // bows out far beyond the pins
    c.shelves[0].load.value = 20;
    const auto all = solved(c);
    const auto findings = shelf_checks(c, all.sums, all.shelves);
    const Finding& found = named(findings, "shelf-tip");
    EXPECT_EQ(found.code, Code::shelf_tip);
    EXPECT_EQ(found.status, Status::warn);
    // Moments about the edge: what stands alone at the outermost edge balances the shelf.
    const Shelf& shelf = first(all);
    EXPECT_NEAR(*shelf.sums.edge_load * shelf.plan.overhang, shelf.sums.mass * shelf.plan.hold,
                kRounding * 100);
    EXPECT_EQ(named(checked(rectangle_with_shelf("plywood")), "shelf-tip").status, Status::pass);
}

class RandomShelves : public RandomCases {};

TEST_F(RandomShelves, are_clear_of_panes_and_posts_and_rest_within_themselves) {
    constexpr int kShelves = 60;
    int laid = 0;
    for (int i = 0; i < kShelves; ++i) {
        SCOPED_TRACE(i);
        Case c = sound();
        if (c.frame.loading.value == Loading::lift_and_drop) {
            continue;
        }
        c.shelves.push_back(sample::shelf(i % 2 == 0 ? "plywood" : "float-glass", 120));
        c.shelves[0].clearance.value = draw(0.5, 6);
        c.shelves[0].support.value = i % 3 == 0 ? ShelfSupport::rails : ShelfSupport::pins;
        const auto all = solved(c);
        if (all.shelves.list.empty()) {
            ASSERT_FALSE(all.shelves.objections.empty());
            continue;
        }
        ++laid;
        const ShelfPlan& plan = first(all).plan;
        const std::vector<Region> shelf{{plan.outline, {}}};
        const double clearance = c.shelves[0].clearance.value;
        for (const PaneSums<double>& pane : all.sums.panes) {
            const Contour stands = band(all.frame.line.sides[index(pane.side)], pane.thickest,
                                        BandEnd::square, BandEnd::square);
            EXPECT_GE(gap(plan.outline, stands), clearance - kRounding);
            EXPECT_THAT(intersect(shelf, {{stands, {}}}), IsEmpty());
        }
        for (const PostLayout& post : all.frame.posts) {
            EXPECT_GE(gap(plan.outline, post.outline), clearance - kRounding);
            EXPECT_THAT(intersect(shelf, {{post.outline, {}}}), IsEmpty());
        }
        for (const ShelfRest& rest : plan.rests) {
            EXPECT_GE(rest.share, 0);
            EXPECT_LE(rest.share, 1 + kRounding);
        }
        EXPECT_GT(plan.hold, 0);
    }
    EXPECT_GT(laid, kShelves / 3);
}

TEST(ShelfFigures, are_those_of_the_sums) {
    for (const Case& c : {with_shelf("float-glass"), with_shelf("cherry", ShelfSupport::rails)}) {
        const auto all = solved(c);
        Workings workings;
        explain_shelves(c, solve(c, workings), all.shelves, workings);
        const ShelfSums<double>& of = first(all).sums;
        const auto value = [&](const std::string& key) {
            return workings.find("shelves/shelf-1/" + key)->value;
        };
        EXPECT_EQ(value("sag/worst"), of.sag_worst);
        EXPECT_EQ(value("stress/nominal"), of.stress);
        EXPECT_EQ(value("gap/panes/least"), of.pane_gap_least);
        EXPECT_EQ(value("tip/worst"), of.tip_worst);
        EXPECT_EQ(value("supports/" + first(all).plan.rests[0].id + "/reaction"), of.reactions[0]);
    }
}

}  // namespace
}  // namespace bowfront::fit
