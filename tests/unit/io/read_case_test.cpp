#include "bowfront/io/read_case.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <numbers>
#include <random>
#include <regex>

#include "bowfront/materials/sheet.hpp"
#include "case_text.hpp"
#include "support/comma_locale.hpp"

namespace bowfront::io {
namespace {

using ::testing::HasSubstr;
using Kind = Origin::Kind;

Case pilot() {
    return read_case(pilot_boat(), "case.json").value;
}

TEST(ReadCase, takes_the_reference_file_as_it_stands) {
    const Case boat = pilot();
    EXPECT_EQ(boat.name, "pilot-boat model case");
    EXPECT_EQ(boat.units, LengthUnit::millimetre);
    EXPECT_EQ(boat.plan.shape, PlanShape::bow_front);
    EXPECT_EQ(*boat.plan.width, 520);
    EXPECT_EQ(*boat.plan.depth, 240);
    ASSERT_TRUE(boat.plan.front);
    EXPECT_EQ(boat.plan.front->measure, ArcMeasure::radius);
    EXPECT_EQ(*boat.plan.front->value, 420);
    EXPECT_EQ(*boat.frame.timber, "cherry");
    EXPECT_EQ(*boat.frame.clear_height, 380);
    EXPECT_EQ(*boat.frame.base.thickness, 20);
    EXPECT_EQ(*boat.frame.base.margin, 24);
    EXPECT_EQ(*boat.frame.top.thickness, 24);
    EXPECT_EQ(*boat.frame.top.margin, 24);
    EXPECT_EQ(*boat.frame.post.width, 42);
    EXPECT_EQ(*boat.frame.post.depth, 42);
    EXPECT_EQ(*boat.frame.post.section, PostSection::fitted);
    EXPECT_EQ(*boat.frame.post.hold, Hold::groove);
    EXPECT_EQ(*boat.frame.groove.width, 4.8);
    EXPECT_EQ(*boat.frame.groove.base_depth, 6);
    EXPECT_EQ(*boat.frame.groove.top_depth, 12);
    EXPECT_EQ(*boat.frame.groove.post_depth, 15);
    EXPECT_EQ(*boat.frame.loading, Loading::slide_in);
}

TEST(ReadCase, takes_the_reference_file_s_panes) {
    const Case boat = pilot();
    ASSERT_EQ(boat.panes.size(), 4U);
    const std::array sides{CaseSide::front, CaseSide::left, CaseSide::right, CaseSide::back};
    for (std::size_t i = 0; i < sides.size(); ++i) {
        const PaneSpec& pane = boat.panes[i];
        EXPECT_EQ(pane.side, sides[i]);
        EXPECT_EQ(pane.sheet, "cast-acrylic");
        EXPECT_EQ(*pane.thickness, 3);
        EXPECT_EQ(pane.pointer, "/panes/" + std::to_string(i));
        EXPECT_EQ(*pane.bend, Bend::heat);
        EXPECT_EQ(*pane.blank.method, BlankMethod::allow_shrink);
        EXPECT_FALSE(pane.length || pane.height);
    }
    EXPECT_EQ(boat.pane(CaseSide::left), &boat.panes[1]);
    ASSERT_EQ(boat.sheets.size(), 1U);
    EXPECT_EQ(boat.sheets.at("cast-acrylic").like, find_sheet("cast-acrylic"));
}

TEST(ReadCase, takes_the_reference_file_s_making) {
    const Case boat = pilot();
    EXPECT_EQ(*boat.fit.end_clearance, 3);
    EXPECT_EQ(*boat.fit.top_clearance, 4.5);
    ASSERT_TRUE(boat.fit.least_engagement);
    EXPECT_EQ(**boat.fit.least_engagement, 3);
    EXPECT_EQ(*boat.form.skin, 3);
    EXPECT_EQ(*boat.form.cover, 0.6);
    EXPECT_EQ(*boat.form.overrun, 60);
    EXPECT_EQ(*boat.form.rib_thickness, 18);
    EXPECT_EQ(*boat.form.rib_depth, 70);
    EXPECT_EQ(*boat.form.rib_spacing, 180);
    ASSERT_TRUE(boat.oven);
    EXPECT_EQ(*boat.oven->inside[0], 900);
    EXPECT_EQ(*boat.oven->inside[1], 600);
    EXPECT_EQ(*boat.oven->inside[2], 400);
    EXPECT_EQ(*boat.oven->accuracy, 5);
    EXPECT_FALSE(boat.oven->set);
    EXPECT_EQ(*boat.service.built_temperature, 20);
    EXPECT_EQ(*boat.service.built_humidity, 0.45);
    EXPECT_EQ(*boat.service.temperature[0], 15);
    EXPECT_EQ(*boat.service.temperature[1], 28);
    EXPECT_EQ(*boat.service.humidity[0], 0.35);
    EXPECT_EQ(*boat.service.humidity[1], 0.6);
    ASSERT_EQ(boat.stock.size(), 2U);
    EXPECT_EQ(boat.stock[0].material, "plywood");
    EXPECT_EQ(boat.stock[0].thickness, 18);
    EXPECT_EQ(boat.stock[0].size, (std::array{1220.0, 2440.0}));
    EXPECT_EQ(boat.stock[0].count, 2);
    EXPECT_EQ(boat.stock[1].count, std::nullopt);
    EXPECT_EQ(boat.stock[1].pointer, "/stock/1");
    EXPECT_EQ(*boat.cutter.diameter, 3.175);
    EXPECT_EQ(*boat.cutter.spacing, 8);
}

TEST(ReadCase, says_where_each_given_value_stands) {
    const Case boat = pilot();
    EXPECT_TRUE(boat.plan.width.given());
    EXPECT_EQ(boat.plan.width.origin.pointer, "/plan/width");
    EXPECT_EQ(boat.plan.width.origin.line, 5U);
    EXPECT_EQ(boat.service.humidity[1].origin.pointer, "/service/humidity/1");
    EXPECT_EQ(boat.service.humidity[1].origin.line, 29U);
    EXPECT_EQ(boat.plan.front->value.origin.pointer, "/plan/front/radius");
}

TEST(ReadCase, says_why_a_value_left_out_is_what_it_is) {
    const Case boat = pilot();
    EXPECT_EQ(boat.form.overhang.origin.kind, Kind::assumed);
    EXPECT_EQ(boat.form.overhang.origin.pointer, "/form/overhang");
    EXPECT_EQ(boat.form.overhang.origin.source, "common practice, no source");
}

TEST(ReadCase, names_the_library_as_the_origin_of_a_shrink) {
    const Case boat = pilot();
    const SheetSpec& sheet = boat.sheets.at("cast-acrylic");
    EXPECT_EQ(sheet.shrink_along.origin.kind, Kind::library);
    EXPECT_EQ(*sheet.shrink_along, sheet.like->shrink_along.value);
    EXPECT_THAT(sheet.shrink_along.origin.source,
                HasSubstr(std::string(sheet.like->shrink_along.source)));
}

// Every number of a case, in the order of the model.
std::vector<double> numbers_of(const Case& c) {
    std::vector<double> all{*c.plan.width,
                            *c.plan.depth,
                            *c.plan.front->value,
                            *c.frame.clear_height,
                            *c.frame.base.thickness,
                            *c.frame.base.margin,
                            *c.frame.top.thickness,
                            *c.frame.top.margin,
                            *c.frame.post.width,
                            *c.frame.post.depth,
                            *c.frame.groove.width,
                            *c.frame.groove.base_depth,
                            *c.frame.groove.top_depth,
                            *c.frame.groove.post_depth,
                            *c.frame.bead_width,
                            *c.fit.end_clearance,
                            *c.fit.top_clearance,
                            *c.fit.loading_clearance,
                            **c.fit.least_engagement,
                            *c.webs.web,
                            *c.webs.cheek,
                            *c.webs.floor,
                            *c.form.skin,
                            *c.form.cover,
                            *c.form.overrun,
                            *c.form.overhang,
                            *c.form.rib_thickness,
                            *c.form.rib_depth,
                            *c.form.rib_spacing,
                            *c.form.foot,
                            *c.form.joint_allowance,
                            *c.form.fence_depth,
                            *c.form.fence_clearance,
                            *c.oven->inside[0],
                            *c.oven->inside[1],
                            *c.oven->inside[2],
                            *c.oven->accuracy,
                            *c.cutter.diameter,
                            *c.cutter.spacing};
    for (const PaneSpec& pane : c.panes) {
        all.push_back(*pane.thickness);
    }
    for (const StockItem& item : c.stock) {
        all.insert(all.end(), {item.thickness, item.size[0], item.size[1]});
    }
    return all;
}

TEST(ReadCase, reads_the_same_case_in_inches) {
    // Bare lengths of the reference file get their unit, so that a file in inches can hold them.
    const std::regex bare(R"((: |\[|, )([0-9.]+)(?=[,\] ]))");
    std::string inches = std::regex_replace(pilot_boat(), bare, "$1\"$2 mm\"");
    inches = with(with(inches, "\"bowfront\": \"1 mm\"", "\"bowfront\": 1"), "\"count\": \"2 mm\"",
                  "\"count\": 2");
    inches = with(inches, "\"units\": \"mm\"", "\"units\": \"in\"");
    EXPECT_EQ(numbers_of(read_case(inches, "case.json").value), numbers_of(pilot()));

    const std::string metric =
        with(pilot_boat_with("\"radius\": 420", "\"radius\": 439.7375"), "520", "514.35");
    inches = with(with(inches, "\"420 mm\"", "\"17 5/16 in\""), "\"520 mm\"", "20.25");
    EXPECT_EQ(numbers_of(read_case(inches, "case.json").value),
              numbers_of(read_case(metric, "case.json").value));
}

TEST(ReadCase, reads_a_front_by_any_of_its_measures) {
    const auto front = [](std::string_view measure) {
        return *read_case(pilot_boat_with("\"radius\": 420", measure), "case.json")
                    .value.plan.front;
    };
    EXPECT_EQ(front("\"rise\": 90").measure, ArcMeasure::rise);
    EXPECT_EQ(*front("\"rise\": 90").value, 90);
    EXPECT_EQ(front("\"sweep\": 90").measure, ArcMeasure::sweep);
    EXPECT_EQ(*front("\"sweep\": 90").value, std::numbers::pi / 2);
    EXPECT_EQ(*front("\"sweep\": \"1.2 rad\"").value, 1.2);
    EXPECT_EQ(front("\"length\": 560").measure, ArcMeasure::length);
}

TEST(ReadCase, reads_a_rectangle) {
    const std::string text = with(pilot_boat_with("\"bow-front\"", "\"rectangle\""),
                                  ", \"front\": { \"radius\": 420 }", "");
    const ReadCase read = read_case(text, "case.json");
    EXPECT_EQ(read.value.plan.shape, PlanShape::rectangle);
    EXPECT_FALSE(read.value.plan.front);
}

TEST(ReadCase, reads_a_sheet_of_the_case_s_own) {
    const std::string sheets = R"("sheets": { "batch-7": { "like": "extruded-acrylic",
        "shrink": { "along": "2.8 %", "across": "-0.4 %", "spread": "0.3 %" },
        "springback": { "radius": "1 %" } } }, "fit":)";
    const std::string text =
        with(pilot_boat_with("\"fit\":", sheets), "\"sheet\": \"cast-acrylic\", \"thickness\": 3",
             "\"sheet\": \"batch-7\", \"thickness\": 3, \"along\": \"height\"");
    const ReadCase read = read_case(text, "case.json");
    const SheetSpec& sheet = read.value.sheets.at("batch-7");
    EXPECT_EQ(sheet.key, "batch-7");
    EXPECT_EQ(sheet.like, find_sheet("extruded-acrylic"));
    EXPECT_EQ(*sheet.shrink_along, 0.028);
    EXPECT_EQ(*sheet.shrink_across, -0.004);
    EXPECT_EQ(*sheet.spread_along, 0.003);
    EXPECT_EQ(*sheet.spread_across, 0.003);
    EXPECT_EQ(*sheet.springback, 0.01);
    EXPECT_EQ(sheet.springback_spread.origin.kind, Kind::library);
    EXPECT_EQ(*read.value.panes[0].along, Extrusion::height);
    EXPECT_TRUE(read.value.panes[0].along.given());
    EXPECT_EQ(assumed_at(read, "/sheets/batch-7/shrink/along").value, "");
    EXPECT_EQ(assumed_at(read, "/sheets/batch-7/springback/spread").value, "1 %");
}

TEST(ReadCase, reads_a_spread_for_each_direction_and_a_springback_alone) {
    const std::string sheets = R"("sheets": { "b": { "like": "cast-acrylic",
        "shrink": { "spread": { "along": "0.3 %", "across": "0.2 %" } }, "springback": "2 %" } },
        "fit":)";
    const Case read = read_case(pilot_boat_with("\"fit\":", sheets), "case.json").value;
    const SheetSpec& sheet = read.sheets.at("b");
    EXPECT_EQ(*sheet.spread_along, 0.003);
    EXPECT_EQ(*sheet.spread_across, 0.002);
    EXPECT_EQ(*sheet.springback, 0.02);
    EXPECT_EQ(sheet.shrink_along.origin.kind, Kind::library);
}

TEST(ReadCase, reads_every_way_to_cut_a_blank) {
    const auto blank = [](std::string_view value) {
        const std::string text = pilot_boat_with(
            "\"thickness\": 3 }", "\"thickness\": 3, \"blank\": " + std::string(value) + " }");
        return read_case(text, "case.json").value.panes[0].blank;
    };
    EXPECT_EQ(*blank("\"allow-shrink\"").method, BlankMethod::allow_shrink);
    EXPECT_EQ(*blank("\"trim-after\"").method, BlankMethod::trim_after);
    EXPECT_EQ(*blank("\"trim-after\"").trim, 10);
    EXPECT_EQ(*blank(R"({ "method": "trim-after", "trim": "1/2 in" })").trim, 12.7);
    EXPECT_EQ(*blank(R"({ "method": "allow-shrink" })").method, BlankMethod::allow_shrink);
    const BlankSpec cut = blank(R"({ "length": 560, "width": 400 })");
    EXPECT_EQ(*cut.method, BlankMethod::as_cut);
    EXPECT_TRUE(cut.method.given());
    EXPECT_EQ(**cut.length, 560);
    EXPECT_EQ(**cut.width, 400);
}

TEST(ReadCase, gives_all_panes_the_blank_that_they_share) {
    const std::string text = with(
        pilot_boat_with("\"fit\":", R"("blank": { "method": "trim-after", "trim": 7 }, "fit":)"),
        "\"thickness\": 3 }", "\"thickness\": 3, \"blank\": \"allow-shrink\" }");
    const Case read = read_case(text, "case.json").value;
    EXPECT_EQ(*read.panes[0].blank.method, BlankMethod::allow_shrink);
    EXPECT_EQ(*read.panes[1].blank.method, BlankMethod::trim_after);
    EXPECT_EQ(*read.panes[1].blank.trim, 7);
    EXPECT_EQ(read.panes[1].blank.method.origin.pointer, "/blank/method");
}

TEST(ReadCase, reads_a_pane_s_own_size_and_bend) {
    const std::string text = pilot_boat_with(
        "\"thickness\": 3 }",
        R"("thickness": 3, "bend": "cold", "size": { "length": 550, "height": 393 } })");
    const ReadCase read = read_case(text, "case.json");
    const PaneSpec& pane = read.value.panes[0];
    EXPECT_EQ(*pane.bend, Bend::cold);
    EXPECT_EQ(**pane.length, 550);
    EXPECT_EQ(**pane.height, 393);
}

TEST(ReadCase, reads_tolerances_by_class_or_length) {
    const std::string text =
        pilot_boat_with("\"fit\":",
                        R"("tolerance": { "cut": "f", "groove_depth": 0.3, "groove_width": "0.2 mm",
           "opening": "v", "sheet_thickness": "c" }, "fit":)");
    const Tolerances read = read_case(text, "case.json").value.tolerance;
    EXPECT_EQ(read.cut->by_class, ToleranceClass::fine);
    EXPECT_EQ(read.groove_depth->by_class, std::nullopt);
    EXPECT_EQ(read.groove_depth->value, 0.3);
    EXPECT_EQ(read.groove_width->value, 0.2);
    EXPECT_EQ(read.opening->by_class, ToleranceClass::very_coarse);
    ASSERT_TRUE(read.sheet_thickness);
    EXPECT_EQ((*read.sheet_thickness)->by_class, ToleranceClass::coarse);
}

TEST(ReadCase, does_not_mind_the_order_of_keys) {
    std::string text = pilot_boat_with("\"units\": \"mm\",\n", "");
    text = with(text, "{ \"diameter\": 3.175, \"spacing\": 8 }\n}",
                "{ \"spacing\": 8, \"diameter\": 3.175 },\n  \"units\": \"mm\"\n}");
    text = with(text, "\"width\": 520, \"depth\": 240, \"front\": { \"radius\": 420 }",
                "\"front\": { \"radius\": 420 }, \"depth\": 240, \"width\": 520");
    EXPECT_EQ(numbers_of(read_case(text, "case.json").value), numbers_of(pilot()));
}

TEST(ReadCase, reads_the_same_under_a_locale_with_a_decimal_comma) {
    const std::vector<double> numbers = numbers_of(pilot());
    const CommaLocale locale;
    if (!locale.found()) {
        GTEST_SKIP() << "no locale with a decimal comma can be had";
    }
    EXPECT_EQ(numbers_of(pilot()), numbers);
    EXPECT_THAT(fault_text(pilot_boat_with("0.6", "\"0.6\"")), HasSubstr("\"0.6\" has no unit"));
}

// The reader either reads a text or throws InputError; nothing else leaves it.
void expect_read_or_refused(const std::string& text) {
    try {
        const ReadCase read = read_case(text, "case.json");
        EXPECT_FALSE(read.value.panes.empty());
    } catch (const InputError& error) {
        ASSERT_FALSE(error.diagnostics().empty());
        std::size_t line = 0;
        for (const Diagnostic& fault : error.diagnostics()) {
            EXPECT_FALSE(fault.found.empty());
            EXPECT_FALSE(fault.wanted.empty());
            EXPECT_GE(fault.line, 1U) << fault.text();
            EXPECT_GE(fault.line, line) << "faults are out of order";
            line = fault.line;
        }
    }
}

TEST(ReadCase, survives_a_file_cut_off_anywhere) {
    const std::string whole = pilot_boat();
    const std::size_t last_brace = whole.rfind('}');
    for (std::size_t length = 0; length < whole.size(); ++length) {
        const std::string text = whole.substr(0, length);
        expect_read_or_refused(text);
        EXPECT_EQ(faults_of(text).empty(), length > last_brace) << length;
    }
}

TEST(ReadCase, survives_changed_bytes) {
    constexpr unsigned kSeed = 20'261'125;
    constexpr int kTexts = 4000;
    std::mt19937 random(kSeed);
    const std::string whole = pilot_boat();
    // Bytes that mean something to a reader of JSON come as often as any others together.
    constexpr std::string_view kMarks = "{}[],:\"\\/*-+.eE0159 \n\tntf'";
    for (int i = 0; i < kTexts; ++i) {
        std::string text = whole;
        const unsigned changes = 1 + random() % 4;
        for (unsigned j = 0; j < changes; ++j) {
            const std::size_t at = random() % text.size();
            const char byte = random() % 2 == 0 ? kMarks[random() % kMarks.size()]
                                                : static_cast<char>(random() % 256);
            switch (random() % 3) {
                case 0:
                    text[at] = byte;
                    break;
                case 1:
                    text.insert(at, 1, byte);
                    break;
                default:
                    text.erase(at, 1 + random() % 8);
                    break;
            }
        }
        SCOPED_TRACE(text);
        expect_read_or_refused(text);
        ASSERT_FALSE(HasFailure());
    }
}

// Every value of the file in turn as every kind of value there is.
TEST(ReadCase, survives_wrong_types_everywhere) {
    const std::string whole = pilot_boat();
    for (const std::string_view other :
         {"null", "true", "-1", "0", "1e308", "1e-308", "\"\"", "\"x\"", "[]", "[[]]", "{}",
          "{\"x\": 1}", "\"1/0 in\"", "\"1e308 m\""}) {
        for (std::size_t at = whole.find(": "); at != std::string::npos;
             at = whole.find(": ", at + 1)) {
            const char first = whole[at + 2];
            if (first == '{' || first == '[') {
                continue;
            }
            const std::size_t end =
                first == '"' ? whole.find('"', at + 3) + 1 : whole.find_first_of(",} \n", at + 2);
            std::string text = whole;
            text.replace(at + 2, end - at - 2, other);
            SCOPED_TRACE(text.substr(at > 20 ? at - 20 : 0, 50));
            expect_read_or_refused(text);
            ASSERT_FALSE(HasFailure());
        }
    }
}

}  // namespace
}  // namespace bowfront::io
