// Files of measurements: what is read of them, and what is said of those that are wrong.

#include "bowfront/io/read_measured.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <map>
#include <nlohmann/json.hpp>
#include <set>
#include <string>

#include "bowfront/io/schema.hpp"
#include "case_text.hpp"

namespace bowfront::io {
namespace {

using nlohmann::json;
using ::testing::ElementsAre;

constexpr double kInch = 25.4;  // mm, by definition

Case pilot_boat_case() {
    return read_case(pilot_boat(), "case.json").value;
}

ReadMeasured read(std::string_view text) {
    return read_measured(text, "measured.json", pilot_boat_case());
}

std::string told(std::string_view text, const Case& c = pilot_boat_case()) {
    try {
        (void)read_measured(text, "measured.json", c);
    } catch (const InputError& error) {
        std::string out;
        for (const Diagnostic& fault : error.diagnostics()) {
            out += (out.empty() ? "" : "\n") + fault.text();
        }
        return out;
    }
    return {};
}

// A file with these members beside the version.
std::string file(const std::string& members) {
    return R"({"bowfront_measured": 1)" + (members.empty() ? "" : ", " + members) + "}";
}

TEST(ReadMeasured, reads_the_example) {
    const ReadMeasured read_file = read(project_file("examples/pilot-boat/measured.json"));
    const Measured& measured = read_file.value;
    EXPECT_TRUE(read_file.assumed.empty());
    EXPECT_EQ(measured.length_uncertainty.value, 0.2);
    EXPECT_EQ(measured.thickness_uncertainty.value, 0.02);
    ASSERT_EQ(measured.sides.size(), 2U);
    const MeasuredSide& front = measured.sides[0];
    EXPECT_EQ(front.side, CaseSide::front);
    EXPECT_EQ(front.pane.blank_length, 551.5);
    EXPECT_EQ(front.pane.rise, 84.5);
    EXPECT_THAT(front.pane.thickness, ElementsAre(3.05, 3.08, 3.11, 3.06));
    EXPECT_EQ(front.opening.height, 380.3);
    EXPECT_THAT(front.grooves.end, ElementsAre(14.9, 15));
    EXPECT_EQ(measured.sides[1].side, CaseSide::back);
}

TEST(ReadMeasured, an_empty_file_measures_nothing_and_assumes_how_well) {
    const ReadMeasured read_file = read(file(""));
    EXPECT_TRUE(read_file.value.sides.empty());
    EXPECT_EQ(read_file.value.length_uncertainty.value, 0.2);
    EXPECT_EQ(read_file.value.thickness_uncertainty.value, 0.02);
    ASSERT_EQ(read_file.assumed.size(), 2U);
    EXPECT_EQ(read_file.assumed[0].pointer, "/uncertainty/length");
    EXPECT_EQ(read_file.assumed[1].value, "0.02 mm");
}

TEST(ReadMeasured, null_is_a_size_that_was_not_measured) {
    const Measured measured = read(file(R"("uncertainty": null, "openings": null,
        "panes": [{"side": "back", "blank": null,
                   "formed": {"length": null, "height": 393}, "thickness": [null, 3.1]}],
        "grooves": [{"side": "back", "base": null, "top": [], "start": [15]}])")).value;
    ASSERT_EQ(measured.sides.size(), 1U);
    EXPECT_EQ(measured.sides[0].pane.length, std::nullopt);
    EXPECT_EQ(measured.sides[0].pane.height, 393);
    EXPECT_THAT(measured.sides[0].pane.thickness, ElementsAre(3.1));
    EXPECT_TRUE(measured.sides[0].grooves.base.empty());
    EXPECT_THAT(measured.sides[0].grooves.start, ElementsAre(15));
}

TEST(ReadMeasured, bare_lengths_are_in_the_file_s_unit_and_others_in_their_own) {
    const Measured measured = read(file(R"("units": "in", "openings": [
        {"side": "back", "length": 18.5, "height": "380 mm"}])")).value;
    EXPECT_EQ(measured.sides[0].opening.length, 18.5 * kInch);
    EXPECT_EQ(measured.sides[0].opening.height, 380);
}

TEST(ReadMeasured, without_a_unit_bare_lengths_are_in_the_case_s) {
    Case c = pilot_boat_case();
    c.units = LengthUnit::inch;
    const auto measured =
        read_measured(file(R"("openings": [{"side": "back", "length": 18}])"), "m.json", c).value;
    EXPECT_EQ(measured.sides[0].opening.length, 18 * kInch);
}

struct Wrong {
    std::string_view members;
    std::string_view told;  ///< from the code on
};

void PrintTo(const Wrong& wrong, std::ostream* out) {
    *out << wrong.members;
}

class WrongMeasurement : public ::testing::TestWithParam<Wrong> {};

TEST_P(WrongMeasurement, is_told_with_what_would_be_right) {
    std::string words = told(file(std::string(GetParam().members)));
    words.erase(0, words.find("BF-"));
    EXPECT_EQ(words, GetParam().told);
}

INSTANTIATE_TEST_SUITE_P(
    ReadMeasured, WrongMeasurement,
    ::testing::Values(
        Wrong{R"("panes": [{"formed": {}}])",
              "BF-IN-006 /panes/0/side: \"side\" is missing; it has no default"},
        Wrong{R"("panes": [{"side": "bakc"}])",
              "BF-IN-004 /panes/0/side: \"bakc\" is not known here; did you mean \"back\"?"},
        Wrong{R"("panes": [{"side": "back"}, {"side": "back"}])",
              "BF-IN-008 /panes/1/side: the back stands in this list a second time; each side "
              "once"},
        Wrong{R"("panes": [{"side": "back", "formed": {"chord": 400, "rise": 3}}])",
              "BF-IN-008 /panes/0: the back is flat; no \"chord\" and \"rise\": only a side that "
              "is an arc is bent"},
        Wrong{R"("panes": [{"side": "front", "formed": {"chord": 400}}])",
              "BF-IN-008 /panes/0/formed: a chord and a rise make a radius, and one of them is "
              "missing; both \"chord\" and \"rise\" of the inside face, or neither"},
        Wrong{R"("panes": [{"side": "back", "thickness": 3}])",
              "BF-IN-003 /panes/0/thickness: a number stands here; a list in square brackets"},
        Wrong{R"("grooves": [{"side": "back", "base": [6, -1]}])",
              "BF-IN-004 /grooves/0/base/1: -1 mm is out of range; more than 0 mm, up to 20000 "
              "mm"},
        Wrong{R"("grooves": [{"side": "back", "depth": [6]}])",
              "BF-IN-005 /grooves/0/depth: the key \"depth\" is not known here; one of \"side\", "
              "\"base\", \"top\", \"start\", \"end\" or \"width\""},
        Wrong{R"("uncertainty": {"length": "-1 mm"})",
              "BF-IN-004 /uncertainty/length: -1 mm is out of range; 0 mm to 20000 mm"},
        Wrong{R"("openings": [{"side": "back", "length": "18 parsecs"}])",
              "BF-IN-010 /openings/0/length: \"18 parsecs\" has \"parsecs\" for a unit; a length "
              "with its unit, such as \"18 mm\", \"3/4 in\" or \"2 ft 3 1/2 in\""}));

TEST(ReadMeasured, tells_every_fault_with_its_place) {
    EXPECT_EQ(told("{\n  \"bowfront_measured\": 2,\n  \"pane\": [],\n  \"openings\": 5\n}"),
              "measured.json:2:24: BF-IN-004 /bowfront_measured: a file of measurements of version "
              "2 can't be read; version 1\n"
              "measured.json:3:3: BF-IN-005 /pane: the key \"pane\" is not known here; did you "
              "mean \"panes\"?\n"
              "measured.json:4:15: BF-IN-003 /openings: a number stands here; a list in square "
              "brackets");
}

TEST(ReadMeasured, a_side_without_a_pane_can_t_be_measured) {
    Case c = pilot_boat_case();
    c.panes.pop_back();
    EXPECT_THAT(told(file(R"("panes": [{"side": "back"}])"), c),
                ::testing::HasSubstr("BF-IN-008 /panes/0/side: the case has no pane at the back"));
}

TEST(ReadMeasured, hostile_texts_are_refused_and_do_no_harm) {
    std::string deep = "{\"panes\": ";
    deep.append(100'000, '[');
    std::string places = "1";
    for (std::size_t i = 0; i < kMostMeasuredPlaces; ++i) {
        places += ",1";
    }
    std::string entries = "{}";
    for (int i = 0; i < 200; ++i) {
        entries += ",{}";
    }
    for (const std::string& text :
         {std::string(), std::string("null"), std::string("[]"), std::string("\xff\xfe"), deep,
          std::string(kMostBytes + 1, ' '), file("\"panes\": [" + entries + "]"),
          file("\"panes\": [null, 3, \"back\"]"), file("\"grooves\": {\"side\": \"back\"}"),
          file("\"openings\": [{\"side\": \"back\", \"length\": 1e999}]"),
          file("\"panes\": [{\"side\": \"back\", \"thickness\": [" + places + "]}]")}) {
        EXPECT_NE(told(text), "") << text.substr(0, 60);
    }
    EXPECT_THAT(told(file("\"panes\": [{\"side\": \"back\", \"thickness\": [" + places + "]}]")),
                ::testing::HasSubstr("BF-IN-009"));
}

// The keys of every object that a schema describes, by its pointer with `*`.
void follow(const json& schema, const std::string& pointer,
            std::map<std::string, std::set<std::string>>& keys) {
    if (schema.contains("properties")) {
        EXPECT_EQ(schema.value("additionalProperties", json()), json(false)) << pointer;
        for (const auto& [key, value] : schema["properties"].items()) {
            keys[pointer].insert(key);
            EXPECT_TRUE(value.contains("description") || key == "side") << key;
            follow(value, pointer + '/' + key, keys);
        }
    }
    if (schema.contains("items")) {
        follow(schema["items"], pointer + "/*", keys);
    }
}

TEST(MeasuredSchema, has_the_keys_that_the_reader_takes) {
    std::map<std::string, std::set<std::string>> described;
    follow(json::parse(schema_text("measured").value()), "", described);
    std::map<std::string, std::set<std::string>> taken;
    for (const ObjectKeys& row : measured_keys()) {
        taken[std::string(row.object)] = {row.keys.begin(), row.keys.end()};
    }
    EXPECT_EQ(described, taken);
}

TEST(MeasuredSchema, takes_the_spellings_of_lengths_that_case_files_take) {
    const json of_measured = json::parse(schema_text("measured").value());
    const json of_case = json::parse(schema_text("case").value());
    for (const char* name : {"length", "length_or_zero"}) {
        EXPECT_EQ(of_measured["definitions"][name], of_case["definitions"][name]);
    }
}

}  // namespace
}  // namespace bowfront::io
