// What the reader says of values that are wrong, alone or together.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "bowfront/io/case_keys.hpp"
#include "case_text.hpp"

namespace bowfront::io {
namespace {

using ::testing::HasSubstr;

struct Wrong {
    std::string_view words;   ///< of the reference file
    std::string_view others;  ///< what stands there instead
    std::string_view told;    ///< without file, line and column
};

void PrintTo(const Wrong& wrong, std::ostream* out) {
    *out << wrong.others;
}

class WrongValue : public ::testing::TestWithParam<Wrong> {};

TEST_P(WrongValue, is_told_with_what_would_be_right) {
    const auto faults = faults_of(pilot_boat_with(GetParam().words, GetParam().others));
    ASSERT_EQ(faults.size(), 1U) << fault_text(
        pilot_boat_with(GetParam().words, GetParam().others));
    std::string told = faults[0].text();
    told.erase(0, told.find("BF-"));
    EXPECT_EQ(told, GetParam().told);
}

INSTANTIATE_TEST_SUITE_P(
    Plan, WrongValue,
    ::testing::Values(
        Wrong{"\"bowfront\": 1", "\"bowfront\": 2",
              "BF-IN-004 /bowfront: a case file of version 2 can't be read; version 1"},
        Wrong{"\"bowfront\": 1", "\"bowfront\": \"1\"",
              "BF-IN-003 /bowfront: a text stands here; the number 1"},
        Wrong{"\"bowfront\": 1,", "",
              "BF-IN-006 /bowfront: \"bowfront\" is missing; it has no default"},
        Wrong{"pilot-boat model case", "",
              "BF-IN-004 /name: the text is empty; a name for the case of 1 to 200 characters on "
              "one line"},
        Wrong{"pilot-boat model case", "a\\u0007b",
              "BF-IN-004 /name: the text holds a control character; a name for the case of 1 to "
              "200 characters on one line"},
        Wrong{"\"units\": \"mm\"", "\"units\": \"cm\"",
              "BF-IN-004 /units: \"cm\" is not known here; did you mean \"mm\"?"},
        Wrong{"bow-front\"", "triangle\"",
              "BF-IN-004 /plan/shape: \"triangle\" is not known here; a shape: \"rectangle\", "
              "\"bow-front\", \"quarter-round\", \"half-round\", \"bow-ends\", \"serpentine\", "
              "\"polygon\" or \"sides\""},
        Wrong{"\"depth\": 240", "\"depth\": 240, \"arcs\": 2",
              "BF-IN-008 /plan/arcs: a bow-front has no \"arcs\"; no \"arcs\", or the shape "
              "\"serpentine\""},
        Wrong{"\"shape\": \"bow-front\"", "\"shape\": \"rectangle\"",
              "BF-IN-008 /plan/front: a rectangle has no \"front\"; no \"front\", or the shape "
              "\"bow-front\", \"quarter-round\", \"half-round\" or \"serpentine\""},
        Wrong{"\"depth\": 240", "\"axis\": \"horizontal\", \"depth\": 240",
              "BF-IN-004 /plan/axis: a case lying down is not made by this version; \"vertical\""},
        Wrong{", \"front\": { \"radius\": 420 }", "",
              "BF-IN-006 /plan/front: \"front\" is missing; it has no default"},
        Wrong{"\"radius\": 420", "",
              "BF-IN-006 /plan/front: the front has no measure; exactly one of \"radius\", "
              "\"rise\", \"sweep\" or \"length\"; the chord is the plan's width"},
        Wrong{"\"radius\": 420", "\"radius\": 420, \"rise\": 90",
              "BF-IN-008 /plan/front: the front has 2 measures; exactly one of \"radius\", "
              "\"rise\", \"sweep\" or \"length\"; the chord is the plan's width"},
        Wrong{"\"width\": 520", "\"width\": 0",
              "BF-IN-004 /plan/width: 0 mm is out of range; more than 0 mm, up to 20000 mm"},
        Wrong{"\"width\": 520", "\"width\": \"20001 mm\"",
              "BF-IN-004 /plan/width: 20001 mm is out of range; more than 0 mm, up to 20000 mm"},
        Wrong{"\"width\": 520", "\"width\": \"1//2 in\"",
              "BF-IN-004 /plan/width: \"1//2 in\" has a fraction with nothing to divide by; a "
              "length with its unit, such as \"18 mm\", \"3/4 in\" or \"2 ft 3 1/2 in\""},
        Wrong{"\"width\": 520", "\"width\": \"1e308 m\"",
              "BF-IN-009 /plan/width: \"1e308 m\" is too large to be held; a length with its unit, "
              "such as \"18 mm\", \"3/4 in\" or \"2 ft 3 1/2 in\""},
        Wrong{"\"width\": 520", "\"width\": null",
              "BF-IN-003 /plan/width: null stands here; a number of millimetres, or a text such as "
              "\"3/4 in\""}));

INSTANTIATE_TEST_SUITE_P(
    Arc, WrongValue,
    ::testing::Values(
        Wrong{
            "\"radius\": 420", "\"radius\": 250",
            "BF-IN-008 /plan/front/radius: a front of radius 250 mm can't reach over a width (the "
            "front's chord) of 520 mm; a radius of at least half the width, 260 mm, or a width "
            "of at most 500 mm"},
        Wrong{"\"radius\": 420", "\"length\": 520",
              "BF-IN-008 /plan/front/length: a front 520 mm long can't be curved over a width (the "
              "front's chord) of 520 mm; a length of more than 520 mm"},
        Wrong{"\"radius\": 420", "\"length\": 520.01",
              "BF-IN-008 /plan/front/length: a front so flat over a width (the front's chord) of "
              "520 mm has a radius of more than 20000 mm; at least 520.015 mm, or the shape "
              "\"rectangle\""},
        // f = 20000 − √(20000² − 260²) = 1.69007 mm
        Wrong{"\"radius\": 420", "\"rise\": 1",
              "BF-IN-008 /plan/front/rise: a front so flat over a width (the front's chord) of 520 "
              "mm has a radius of more than 20000 mm; at least 1.69 mm, or the shape "
              "\"rectangle\""},
        // θ = 2·asin(260/20000) = 1.48973°
        Wrong{
            "\"radius\": 420", "\"sweep\": 1",
            "BF-IN-008 /plan/front/sweep: a front so flat over a width (the front's chord) of 520 "
            "mm has a radius of more than 20000 mm; at least 1.49 deg, or the shape "
            "\"rectangle\""},
        Wrong{"\"radius\": 420", "\"sweep\": 360",
              "BF-IN-008 /plan/front/sweep: a front with a sweep of 360 deg over a width (the "
              "front's chord) of 520 mm has a radius of more than 20000 mm; a sweep of at most "
              "358.51 deg"},
        Wrong{"\"radius\": 420", "\"sweep\": \"7 rad\"",
              "BF-IN-004 /plan/front/sweep: 401.07 deg is out of range; more than 0 deg, up to 360 "
              "deg"},
        Wrong{"\"radius\": 420", "\"sweep\": 0",
              "BF-IN-004 /plan/front/sweep: 0 deg is out of range; more than 0 deg, up to 360 "
              "deg"}));

INSTANTIATE_TEST_SUITE_P(
    Frame, WrongValue,
    ::testing::Values(
        Wrong{"\"cherry\"", "\"chery\"",
              "BF-IN-004 /frame/timber: \"chery\" is not known here; did you mean \"cherry\"?"},
        Wrong{"\"base\": 6", "\"base\": 20",
              "BF-IN-008 /frame/groove/depth/base: a groove 20 mm deep goes through a base of 20 "
              "mm; less than 20 mm, or a thicker base"},
        Wrong{"\"top\": 12", "\"top\": 25",
              "BF-IN-008 /frame/groove/depth/top: a groove 25 mm deep goes through a top of 24 mm; "
              "less than 24 mm, or a thicker top"},
        Wrong{"\"post\": 15", "\"post\": 21",
              "BF-IN-008 /frame/groove/depth/post: a groove 21 mm deep is deeper than half the "
              "post: the grooves would meet; less than 21 mm, or a post wider than 42 mm"},
        Wrong{"\"depth\": 42", "\"depth\": 40",
              "BF-IN-008 /frame/post/depth: a fitted post 40 mm deep and 42 mm wide; a depth of at "
              "least 42 mm"},
        Wrong{"\"depth\": 42, \"section\": \"fitted\"", "\"depth\": 44, \"section\": \"round\"",
              "BF-IN-008 /frame/post/depth: a round post 44 mm deep and 42 mm wide; a depth of 42 "
              "mm, or none"},
        Wrong{
            "\"depth\": 240", "\"depth\": 42",
            "BF-IN-008 /plan/depth: a side of 42 mm is no longer than the posts take, 42 mm; more "
            "than 42 mm"},
        Wrong{"\"slide-in\"", "3",
              "BF-IN-003 /frame/loading: a number stands here; a loading: \"slide-in\", \"beaded\" "
              "or \"lift-and-drop\""},
        Wrong{"\"hold\": \"groove\"", "\"holds\": \"groove\"",
              "BF-IN-005 /frame/post/holds: the key \"holds\" is not known here; did you mean "
              "\"hold\"?"},
        Wrong{"\"timber\"", "\"overrun\": 3, \"timber\"",
              "BF-IN-005 /frame/overrun: the key \"overrun\" is not known here; \"overrun\" stands "
              "in /form"},
        Wrong{"\"margin\": 24 },\n    \"top\"", "\"colour\": 1, \"margin\": 24 },\n    \"top\"",
              "BF-IN-005 /frame/base/colour: the key \"colour\" is not known here; one of "
              "\"thickness\", \"margin\", \"build\", \"grain\", \"sawn\", \"inset\", "
              "\"board_width\", \"corner\", \"run_out\" or \"segments\""},
        Wrong{"{ \"thickness\": 20, \"margin\": 24 }", "20",
              "BF-IN-003 /frame/base: a number stands here; an object with \"thickness\", "
              "\"margin\", \"build\", \"grain\", \"sawn\", \"inset\", \"board_width\", "
              "\"corner\", \"run_out\" or \"segments\""}));

INSTANTIATE_TEST_SUITE_P(
    Panes, WrongValue,
    ::testing::Values(
        Wrong{"\"side\": \"left\"", "\"side\": \"front\"",
              "BF-IN-008 /panes/1/side: a second pane on the front; one pane a side; the first is "
              "/panes/0"},
        Wrong{"\"side\": \"left\"", "\"side\": \"lfet\"",
              "BF-IN-004 /panes/1/side: \"lfet\" is not known here; did you mean \"left\"?"},
        Wrong{"\"front\", \"sheet\": \"cast-acrylic\"", "\"front\", \"sheet\": \"float-glass\"",
              "BF-IN-008 /panes/0/sheet: \"float-glass\" stays flat, and the front is curved; a "
              "sheet that can be bent, such as \"cast-acrylic\""},
        Wrong{"\"front\", \"sheet\": \"cast-acrylic\"", "\"front\", \"sheet\": \"cast-acrilic\"",
              "BF-IN-004 /panes/0/sheet: \"cast-acrilic\" is not known here; did you mean "
              "\"cast-acrylic\"?"},
        Wrong{"\"cast-acrylic\", \"thickness\": 3 }",
              "\"cast-acrylic\", \"thickness\": 3, \"along\": \"height\" }",
              "BF-IN-008 /panes/0/along: \"cast-acrylic\" shrinks the same both ways; no "
              "\"along\": a direction has no meaning here"},
        Wrong{"\"left\",", "\"left\", \"bend\": \"cold\",",
              "BF-IN-008 /panes/1/bend: the left is flat; no \"bend\": only a side that is "
              "an arc is bent"},
        Wrong{"\"left\",", "\"left\", \"blank\": \"as-cut\",",
              "BF-IN-004 /panes/1/blank: a blank as it is cut is given by its size; "
              "\"allow-shrink\", \"trim-after\" or { \"length\": ..., \"width\": ... } of a blank "
              "as it is cut"},
        Wrong{"\"left\",", "\"left\", \"blank\": { \"length\": 3 },",
              "BF-IN-006 /panes/1/blank: the blank has half a size; \"allow-shrink\", "
              "\"trim-after\" or { \"length\": ..., \"width\": ... } of a blank as it is cut"},
        Wrong{"\"left\",", "\"left\", \"blank\": {},",
              "BF-IN-006 /panes/1/blank: the blank has no method; \"allow-shrink\", \"trim-after\" "
              "or { \"length\": ..., \"width\": ... } of a blank as it is cut"},
        Wrong{"\"left\",", "\"left\", \"blank\": { \"method\": \"trim-after\", \"width\": 3 },",
              "BF-IN-008 /panes/1/blank: the blank has a method and a size; \"allow-shrink\", "
              "\"trim-after\" or { \"length\": ..., \"width\": ... } of a blank as it is cut"},
        Wrong{"\"left\",", "\"left\", \"blank\": { \"method\": \"allow-shrink\", \"trim\": 3 },",
              "BF-IN-008 /panes/1/blank: a trim for a blank that is not trimmed; the method "
              "\"trim-after\""},
        Wrong{"\"left\",", "\"left\", \"size\": {},",
              "BF-IN-006 /panes/1/size: the size is empty; \"length\", \"height\" or both"},
        Wrong{"\"fit\":", "\"blank\": { \"length\": 3, \"method\": \"trim-after\" }, \"fit\":",
              "BF-IN-005 /blank/length: the key \"length\" is not known here; one of \"method\" or "
              "\"trim\""},
        Wrong{"\"fit\":", "\"blank\": {}, \"fit\":",
              "BF-IN-006 /blank: the blank has no method; \"method\" with \"allow-shrink\" or "
              "\"trim-after\""}));

INSTANTIATE_TEST_SUITE_P(
    Sheets, WrongValue,
    ::testing::Values(
        Wrong{"\"fit\":", "\"sheets\": { \"petg\": { \"like\": \"petg\" } }, \"fit\":",
              "BF-IN-004 /sheets/petg: \"petg\" is a sheet of the library; a name of its own, with "
              "the library's under \"like\""},
        Wrong{"\"fit\":", "\"sheets\": { \"b\": {} }, \"fit\":",
              "BF-IN-006 /sheets/b/like: \"like\" is missing; it has no default"},
        Wrong{"\"fit\":",
              "\"sheets\": { \"b\": { \"like\": \"petg\", \"shrink\": { \"along\": 0.015 } } }, "
              "\"fit\":",
              "BF-IN-010 /sheets/b/shrink/along: a bare number, 0.015; a ratio with its unit, such "
              "as \"1.5 %\", or a fraction, such as \"1/3\""},
        Wrong{"\"fit\":",
              "\"sheets\": { \"b\": { \"like\": \"petg\", \"springback\": \"51 %\" } }, \"fit\":",
              "BF-IN-004 /sheets/b/springback: 51 % is out of range; -20 % to 50 %"},
        Wrong{"\"fit\":", "\"sheets\": [], \"fit\":",
              "BF-IN-003 /sheets: a list stands here; an object: the case's own sheets by their "
              "names"}));

INSTANTIATE_TEST_SUITE_P(
    Making, WrongValue,
    ::testing::Values(
        Wrong{"\"end_clearance\": 3", "\"end_clearance\": -3",
              "BF-IN-004 /fit/end_clearance: -3 mm is out of range; 0 mm to 20000 mm"},
        Wrong{"\"accuracy\": \"5 C\"", "\"accuracy\": 5",
              "BF-IN-010 /oven/accuracy: a bare number, 5; a difference of temperatures with its "
              "unit, such as \"5 C\" or \"9 F\""},
        Wrong{"[900, 600, 400]", "[900, 600]",
              "BF-IN-003 /oven/inside: a list of 2 stands here; a list of width, depth and height"},
        Wrong{"\"accuracy\": \"5 C\"", "\"set\": \"500 C\"",
              "BF-IN-004 /oven/set: 500 C is out of range; -50 C to 400 C"},
        Wrong{"\"20 C\"", "\"20\"",
              "BF-IN-010 /service/built_at/temperature: \"20\" has no unit; a temperature with its "
              "unit, such as \"20 C\", \"68 F\" or \"293 K\""},
        Wrong{"\"45 %\"", "\"97 %\"",
              "BF-IN-004 /service/built_at/humidity: 97 % is out of range; 5 % to 95 %"},
        Wrong{"[\"15 C\", \"28 C\"]", "[\"28 C\", \"15 C\"]",
              "BF-IN-008 /service/temperature: the first is higher than the second; the lower of "
              "the two first"},
        Wrong{
            "\"count\": 2", "\"count\": 2.5",
            "BF-IN-004 /stock/0/count: \"2.5\" is no such count; a whole number from 1 to 100000"},
        Wrong{"\"count\": 2", "\"count\": 0",
              "BF-IN-004 /stock/0/count: \"0\" is no such count; a whole number from 1 to 100000"},
        Wrong{"\"fit\":", "\"tolerance\": { \"cut\": \"x\" }, \"fit\":",
              "BF-IN-004 /tolerance/cut: \"x\" is no class and no length; a class of ISO 2768-1 "
              "(\"f\", \"m\", \"c\" or \"v\") or a length such as \"0.2 mm\""},
        Wrong{"\"fit\":", "\"tolerance\": { \"cut\": true }, \"fit\":",
              "BF-IN-003 /tolerance/cut: true or false stands here; a class of ISO 2768-1 (\"f\", "
              "\"m\", \"c\" or \"v\") or a length such as \"0.2 mm\""},
        Wrong{"\"cutter\"", "\"cuttre\"",
              "BF-IN-005 /cuttre: the key \"cuttre\" is not known here; did you mean "
              "\"cutter\"?"}));

// Ten faults of ten kinds, told together in the order of the file.
TEST(Faults, of_a_file_are_told_all_at_once) {
    constexpr std::string_view kText = R"({
  "bowfront": 1,
  "plan": { "shape": "bow-front", "width": 520, "depth": 240, "front": { "radius": 250 } },
  "name": "pilot\tboat",
  "frame": {
    "timber": "chery",
    "clear_height": "380 mn",
    "base": { "thickness": 20, "margin": 24, "margin": 25 },
    "top":  { "thickness": 24 },
    "post": { "widht": 42, "width": 42 },
    "groove": { "width": true, "depth": { "base": 6, "top": 12, "post": 15 } }
  },
  "panes": [ { "side": "front", "sheet": "float-glass", "thickness": 3 } ],
  "oven": { "inside": [900, 600, 400], "accuracy": 5 }
}
)";
    EXPECT_EQ(
        fault_text(kText),
        R"(case.json:3:84: BF-IN-008 /plan/front/radius: a front of radius 250 mm can't reach over a width (the front's chord) of 520 mm; a radius of at least half the width, 260 mm, or a width of at most 500 mm
case.json:4:11: BF-IN-004 /name: the text holds a control character; a name for the case of 1 to 200 characters on one line
case.json:6:15: BF-IN-004 /frame/timber: "chery" is not known here; did you mean "cherry"?
case.json:7:21: BF-IN-010 /frame/clear_height: "380 mn" has "mn" for a unit; a length with its unit, such as "18 mm", "3/4 in" or "2 ft 3 1/2 in"
case.json:8:46: BF-IN-007 /frame/base/margin: the key "margin" stands a second time; once in an object; the first is on line 8
case.json:9:13: BF-IN-006 /frame/top/margin: "margin" is missing; it has no default
case.json:10:15: BF-IN-005 /frame/post/widht: the key "widht" is not known here; did you mean "width"?
case.json:11:26: BF-IN-003 /frame/groove/width: true or false stands here; a number of millimetres, or a text such as "3/4 in"
case.json:13:42: BF-IN-008 /panes/0/sheet: "float-glass" stays flat, and the front is curved; a sheet that can be bent, such as "cast-acrylic"
case.json:14:52: BF-IN-010 /oven/accuracy: a bare number, 5; a difference of temperatures with its unit, such as "5 C" or "9 F")");
}

TEST(Faults, speak_of_lengths_in_the_file_s_unit) {
    const std::string text = with(with(std::string(R"({
  "bowfront": 1, "name": "dredger", "units": "in",
  "plan": { "shape": "bow-front", "width": "20 1/4 in", "depth": 10, "front": { "radius": 10 } },
  "frame": { "timber": "cherry", "clear_height": 15,
    "base": { "thickness": 0.75, "margin": 1 }, "top": { "thickness": 1, "margin": 1 },
    "post": { "width": 1.625 },
    "groove": { "width": 0.1875, "depth": { "base": 0.25, "top": 0.5, "post": 0.5 } } },
  "panes": [ { "side": "front", "sheet": "cast-acrylic", "thickness": "3 mm" } ]
})"),
                                       "0.75", "\"3/4\\\"\""),
                                  "\"margin\": 1 }, \"top\"", "\"margin\": 1 }, \"top\"");
    EXPECT_EQ(
        fault_text(text),
        "case.json:3:91: BF-IN-008 /plan/front/radius: a front of radius 10 in can't reach over "
        "a width (the front's chord) of 20 1/4 in; a radius of at least half the width, 10 1/8 "
        "in, or a width of at most 20 in");
}

TEST(Faults, of_a_section_are_not_told_of_its_values) {
    EXPECT_EQ(
        fault_text(pilot_boat_with("{ \"base\": 6, \"top\": 12, \"post\": 15 }", "6")),
        "case.json:12:40: BF-IN-003 /frame/groove/depth: a number stands here; an object with "
        "\"base\", \"top\" or \"post\"");
    const std::string empty = fault_text("{}");
    EXPECT_EQ(empty, R"(case.json:1:1: BF-IN-006 /bowfront: "bowfront" is missing; it has no default
case.json:1:1: BF-IN-006 /name: "name" is missing; it has no default
case.json:1:1: BF-IN-006 /plan: "plan" is missing; it has no default
case.json:1:1: BF-IN-006 /frame: "frame" is missing; it has no default
case.json:1:1: BF-IN-006 /panes: "panes" is missing; it has no default)");
}

// A case in which every object of the table of keys stands.
std::string full_case() {
    std::string text = pilot_boat_with("\"fit\":",
                                       R"("blank": { "method": "trim-after", "trim": 8 },
  "sheets": { "batch-7": { "like": "extruded-acrylic",
    "shrink": { "along": "2.8 %", "spread": { "along": "0.3 %" } },
    "springback": { "radius": "1 %" } } },
  "tolerance": { "cut": "f" },
  "webs": { "web": 5 },
  "shelves": [
    { "height": 120, "material": "plywood", "thickness": 12, "load": "5 kg" } ],
  "fit":)");
    text = with(text, "\"stock\":", "\"shop\": { \"step\": \"1/32 in\", \"allowance\": { \"width\": 4 } }, \"stock\":");
    text = with(text, "\"stock\":",
                R"("contents": { "mass": "12 kg" }, "stand": { "fixed": "wall" },
  "prices": { "currency": "EUR", "materials": [ { "material": "cherry", "price": "2400 /m3" } ],
    "hardware": [ { "name": "screw", "count": 8, "price": "0.15 /each" } ] },
  "stock":)");
    text = with(text, "\"loading\":", "\"bead\": { \"width\": 9 }, \"loading\":");
    text = with(text, "\"overrun\": 60,", "\"overrun\": 60, \"fence\": { \"depth\": 30 },");
    return with(
        text, "\"thickness\": 3 }",
        R"("thickness": 3, "blank": { "method": "allow-shrink" }, "size": { "height": 390 } })");
}

// Where a `*` of the table stands for the first item or for the case's own sheet.
std::string actual_pointer(std::string pointer) {
    for (std::size_t at = pointer.find('*'); at != std::string::npos; at = pointer.find('*')) {
        pointer.replace(at, 1, pointer.starts_with("/sheets") ? "batch-7" : "0");
    }
    return pointer;
}

// The pilot boat's case with a chain whose front is so described.
std::string chain_with(const std::string& front) {
    return pilot_boat_with(
        R"("shape": "bow-front", "width": 520, "depth": 240, "front": { "radius": 420 })",
        R"("shape": "sides", "sides": [ { "name": "front", "turn": 51, )" + front + R"( },
  { "name": "right", "straight": 240, "turn": 90 }, { "name": "back", "straight": 520 },
  { "name": "left", "closing": true } ])");
}

TEST(Faults, of_unknown_keys_are_told_in_every_object) {
    const std::vector<std::string> texts{
        full_case(),
        pilot_boat_with(R"("shape": "bow-front", "width": 520, "depth": 240, "front": { "radius": 420 })",
                        R"("shape": "bow-ends", "width": 520, "depth": 240, "ends": { "radius": 420 })"),
        pilot_boat_with(
            R"("shape": "bow-front", "width": 520, "depth": 240, "front": { "radius": 420 })",
            R"("shape": "sides", "sides": [
  { "name": "front", "arc": { "radius": 420, "chord": 520 }, "turn": 51 },
  { "name": "right", "straight": 240, "turn": 90 }, { "name": "back", "straight": 520 },
  { "name": "left", "closing": true } ])"),
        chain_with(R"("ellipse": { "semi_axes": [400, 200], "from": -120, "to": -60 })"),
        chain_with(R"("curve": { "through": [[0, 0], [200, -20], [400, 0]] })"),
        chain_with(R"("run": [ { "arc": { "radius": 420, "sweep": 60 } } ])"),
        chain_with(R"("run": [ { "ellipse": { "semi_axes": [400, 200], "from": -120, "to": -60 } } ])"),
        chain_with(R"("run": [ { "curve": { "through": [[0, 0], [200, -20], [400, 0]] } } ])"),
        pilot_boat_with("\"cutter\":",
                        R"("access": { "kind": "lift-off-top", "peg": { "diameter": 6 } },
  "cutter":)"),
        pilot_boat_with("\"cutter\":",
                        R"("access": { "kind": "sliding-pair", "side": "back",
    "groove": { "depth": { "base": 5 } } },
  "cutter":)")};
    for (const ObjectKeys& row : case_keys()) {
        const std::string pointer = actual_pointer(std::string(row.object));
        const auto text_with = std::find_if(texts.begin(), texts.end(), [&](const std::string& each) {
            return read_case(each, "case.json").places.holds(pointer);
        });
        ASSERT_NE(text_with, texts.end()) << pointer;
        const std::string& text = *text_with;
        const Place place = read_case(text, "case.json").places.of_value(pointer);
        std::size_t at = 0;
        for (std::size_t line = 1; line < place.line; ++line) {
            at = text.find('\n', at) + 1;
        }
        std::string changed = text;
        changed.insert(at + place.column, "\"unheard of\": 1, ");
        const auto faults = faults_of(changed);
        ASSERT_EQ(faults.size(), 1U) << pointer;
        EXPECT_EQ(faults[0].code, Code::input_unknown_key);
        EXPECT_EQ(faults[0].pointer, pointer + "/unheard of");
    }
}

TEST(Faults, of_a_case_without_panes_are_told) {
    const std::string text = pilot_boat();
    const std::size_t open = text.find("\"panes\": [") + 10;
    const std::string none = std::string(text).replace(open, text.find(']', open) - open, "");
    EXPECT_THAT(fault_text(none),
                HasSubstr("BF-IN-004 /panes: the case has no pane; at least one"));
}

TEST(Faults, name_lists_that_are_too_long) {
    std::string panes;
    for (int i = 0; i < 1001; ++i) {
        panes += "{},";
    }
    EXPECT_THAT(fault_text(pilot_boat_with("\"panes\": [", "\"panes\": [" + panes)),
                HasSubstr("BF-IN-009 /panes: the case has 1005 panes; at most 1000"));
    std::string sheets;
    for (int i = 0; i < 101; ++i) {
        sheets += (i == 0 ? "\"s" : ",\"s") + std::to_string(i) + "\": {}";
    }
    EXPECT_THAT(fault_text(pilot_boat_with("\"fit\":", "\"sheets\": {" + sheets + "}, \"fit\":")),
                HasSubstr("BF-IN-009 /sheets: the case has 101 sheets of its own; at most 100"));
}

}  // namespace
}  // namespace bowfront::io
