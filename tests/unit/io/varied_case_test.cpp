#include "bowfront/io/varied_case.hpp"

#include <gtest/gtest.h>

#include <map>
#include <nlohmann/json.hpp>
#include <regex>
#include <set>

#include "bowfront/base/error.hpp"
#include "bowfront/io/schema.hpp"
#include "bowfront/model/values.hpp"

namespace bowfront::io {
namespace {

using nlohmann::json;

// A case that gives every number that the schema knows: a blank has a method or a size, and the
// front one of its measures, so that there are two of it.
const char* const kEveryNumber = R"({
  "bowfront": 1, "name": "all numbers", "units": "mm",
  "plan": { "shape": "bow-front", "width": 520, "depth": 240, "front": FRONT },
  "frame": { "timber": "cherry", "clear_height": 380, "base": { "thickness": 20, "margin": 24,
      "build": "rails", "inset": 25, "board_width": 120, "run_out": 12 },
    "top": { "thickness": 24, "margin": 24,
      "build": "rails", "inset": 25, "board_width": 120, "run_out": 12 },
    "post": { "width": 42, "depth": 42, "joint": "tenon", "joint_size": 14 },
    "groove": { "width": 4.8, "depth": { "base": 6, "top": 12, "post": 15 } },
    "bead": { "width": 8 } },
  "panes": [
    { "side": "front", "sheet": "batch", "thickness": 3, "blank": BLANK, "size": SIZE },
    { "side": "left", "sheet": "other", "thickness": 3 } ],
  "blank": { "method": "trim-after", "trim": 10 },
  "sheets": {
    "batch": { "like": "cast-acrylic", "shrink": { "along": "1 %", "across": "1 %", "spread": "1 %" },
               "springback": "1 %" },
    "other": { "like": "cast-acrylic",
               "shrink": { "along": "1 %", "across": "1 %",
                           "spread": { "along": "1 %", "across": "1 %" } },
               "springback": { "radius": "1 %", "spread": "1 %" } } },
  "fit": { "end_clearance": 3, "top_clearance": 4, "loading_clearance": 1, "least_engagement": 3 },
  "tolerance": { "cut": 0.5, "groove_depth": 0.2, "groove_width": 0.1, "opening": 0.5,
                 "sheet_thickness": 0.3 },
  "webs": { "web": 4, "cheek": 6, "floor": "30 %" },
  "form": { "skin": { "thickness": 3 }, "cover": { "thickness": 0.6 }, "overrun": 60,
    "overhang": 20, "ribs": { "thickness": 18, "depth": 70, "max_spacing": 180, "foot": 60 },
    "fence": { "depth": 25, "clearance": 1 }, "joint_allowance": 0.2 },
  "oven": { "inside": [900, 600, 400], "accuracy": "5 C", "set": "165 C" },
  "service": { "built_at": { "temperature": "20 C", "humidity": "45 %" },
    "temperature": ["15 C", "28 C"], "humidity": ["35 %", "60 %"], "push": "100 N" },
  "cutter": { "diameter": 3.175, "spacing": 8 },
  "shop": { "step": 0.5, "allowance": { "length": 25, "width": 6, "thickness": 3 } },
  "shelves": [ { "height": 120, "material": "plywood", "thickness": 12, "clearance": 3,
                 "load": "5 kg" } ],
  "contents": { "mass": "12 kg", "height": 150, "x": 20, "y": 90 } })";

std::string filled(std::string front, std::string blank, const std::string& size) {
    std::string text = kEveryNumber;
    const std::map<std::string, std::string> places{
        {"FRONT", std::move(front)}, {"BLANK", std::move(blank)}, {"SIZE", size}};
    for (const auto& [place, value] : places) {
        text.replace(text.find(place), place.size(), value);
    }
    return text;
}

const std::string kOwnSize = R"({ "length": 540, "height": 393 })";

// The same with another plan, one bent pane and one flat one; the bent one is left out where `bent`
// is empty.
std::string of_plan(const std::string& plan, const std::string& bent, const std::string& flat) {
    std::string text = filled("{}", R"({ "method": "trim-after", "trim": 12 })", kOwnSize);
    const std::size_t from = text.find("\"shape\"");
    text.replace(from, text.find(" },\n", from) - from, plan);
    const std::size_t first = text.find("{ \"side\": \"front\"");
    if (bent.empty()) {
        const std::size_t end = text.find("},\n", text.find("\"size\"", first)) + 3;
        text.erase(first, end - first);
    } else {
        text.replace(text.find("\"front\"", first), 7, '"' + bent + '"');
    }
    text.replace(text.find("\"left\", \"sheet\""), 6, '"' + flat + '"');
    return text;
}

const std::vector<std::string>& texts() {
    static const std::vector<std::string> all{
        filled(R"({ "radius": 420 })", R"({ "method": "trim-after", "trim": 12 })", kOwnSize),
        filled(R"({ "rise": 90 })", R"({ "method": "trim-after", "trim": 12 })", kOwnSize),
        filled(R"({ "sweep": 75 })", R"({ "method": "trim-after", "trim": 12 })", kOwnSize),
        // The size of a pane and that of its blank exclude each other: none here.
        [] {
            std::string text = filled(R"({ "length": 560 })", R"({ "length": 551, "width": 399 })", "");
            const std::string empty = ", \"size\": ";
            text.erase(text.find(empty), empty.size());
            return text;
        }(),
        of_plan(R"("shape": "bow-ends", "width": 520, "depth": 240, "ends": { "rise": 30 })", "right",
                "left"),
        of_plan(R"("shape": "bow-ends", "width": 520, "depth": 240, "ends": { "sweep": 40 })",
                "right", "left"),
        of_plan(R"("shape": "bow-ends", "width": 520, "depth": 240, "ends": { "radius": 300 })",
                "right", "left"),
        of_plan(R"("shape": "bow-ends", "width": 520, "depth": 240, "ends": { "length": 260 })",
                "right", "left"),
        of_plan(R"("shape": "polygon", "count": 5, "side": 400)", "", "side-2"),
        of_plan(R"("shape": "polygon", "corners": [[0, 0], [400, 0], [300, 500]])", "", "side-2"),
        of_plan(R"("shape": "sides", "sides": [ { "arc": { "radius": 900, "chord": 500 }, "turn": 90 },
                   { "straight": 300, "turn": 90 }, { "straight": 480 }, { "closing": true } ])",
                "side-1", "side-2"),
        of_plan(R"("shape": "sides", "sides": [ { "arc": { "rise": 60, "length": 560 }, "turn": 70 },
                   { "straight": 300, "turn": 90 }, { "straight": 480 }, { "closing": true } ])",
                "side-1", "side-2"),
        of_plan(R"("shape": "sides", "sides": [ { "arc": { "sweep": 40, "length": 560 }, "turn": 70 },
                   { "straight": 300, "turn": 90 }, { "straight": 480 }, { "closing": true } ])",
                "side-1", "side-2"),
        of_plan(R"("shape": "sides", "sides": [ { "turn": 70, "run": [ { "straight": 200 },
                   { "arc": { "radius": 300, "chord": 200 } }, { "arc": { "rise": 20, "length": 200 } },
                   { "arc": { "sweep": 40, "length": 100 } }, { "chord_error": 0.02,
                     "ellipse": { "semi_axes": [300, 200], "from": -60, "to": -30 } },
                   { "curve": { "through": [[0, 0], [100, -10], [200, 0]] } } ] },
                   { "straight": 300 }, { "closing": true } ])",
                "side-1", "side-2"),
        of_plan(R"("shape": "sides", "sides": [ { "turn": 70, "chord_error": 0.02,
                     "ellipse": { "semi_axes": [300, 200], "from": -150, "to": -30 } },
                   { "turn": 70, "curve": { "through": [[0, 0], [100, -10], [200, 0]] } },
                   { "straight": 300 }, { "closing": true } ])",
                "side-1", "side-2")};
    return all;
}

// Pointers, with `*` for indices and the maker's own keys, of every number that the schema takes.
class Numbers {
  public:
    Numbers() : schema_(json::parse(schema_text("case").value())) { follow(schema_, ""); }

    std::set<std::string> pointers;

  private:
    static bool is_number(const std::string& ref) {
        static const std::set<std::string> kNumbers{"length",      "length_or_zero",
                                                    "angle",       "ratio",
                                                    "temperature", "temperature_difference",
                                                    "force",       "tolerance",
                                                    "mass",        "position",
                                                    "turn",        "seen_angle"};
        return kNumbers.count(ref.substr(ref.rfind('/') + 1)) != 0;
    }

    void follow(const json& schema, const std::string& pointer) {
        if (schema.contains("$ref") && is_number(schema["$ref"])) {
            pointers.insert(pointer);
        } else if (schema.contains("$ref")) {
            const std::string name = schema["$ref"];
            follow(schema_["definitions"][name.substr(name.rfind('/') + 1)], pointer);
        }
        for (const char* branch : {"anyOf", "oneOf", "allOf"}) {
            const json parts = schema.value(branch, json::array());
            for (const json& part : parts) {
                follow(part, pointer);
            }
        }
        const json properties = schema.value("properties", json::object());
        for (const auto& [key, value] : properties.items()) {
            follow(value, pointer + '/' + key);
        }
        if (schema.contains("additionalProperties") && schema["additionalProperties"].is_object()) {
            follow(schema["additionalProperties"], pointer + "/*");
        }
        if (schema.contains("items") && schema["items"].is_object()) {
            follow(schema["items"], pointer + "/*");
        } else if (schema.contains("items")) {
            for (std::size_t i = 0; i < schema["items"].size(); ++i) {
                follow(schema["items"][i], pointer + '/' + std::to_string(i));
            }
        }
    }

    json schema_;
};

// A pointer as the schema has it: `/panes/0/thickness` is `/panes/*/thickness`.
std::string pattern_of(const std::string& pointer) {
    const std::vector<std::pair<std::string, std::string>> kStars{
        {"/panes/0/", "/panes/*/"},       {"/panes/1/", "/panes/*/"},
        {"/sheets/batch/", "/sheets/*/"}, {"/sheets/other/", "/sheets/*/"},
        {"/oven/inside/0", "/oven/inside/*"}, {"/oven/inside/1", "/oven/inside/*"},
        {"/oven/inside/2", "/oven/inside/*"}, {"/shelves/0/", "/shelves/*/"}};
    if (pointer.starts_with("/plan/")) {  // its lists stand in each other
        return std::regex_replace(pointer, std::regex("/[0-9]+"), "/*");
    }
    for (const auto& [own, star] : kStars) {
        if (pointer.starts_with(own)) {
            return star + pointer.substr(own.size());
        }
    }
    return pointer;
}

TEST(VariedCase, can_vary_every_number_of_the_schema_but_stock_prices_and_access) {
    std::set<std::string> left = Numbers().pointers;
    ASSERT_GT(left.size(), 60U);
    std::erase_if(left, [](const std::string& at) { 
        return at.starts_with("/stock/") || at.starts_with("/prices/") ||
               at.starts_with("/access/");
    });
    for (const std::string& text : texts()) {
        const json leaves = json::parse(text).flatten();
        for (const auto& [pointer, value] : leaves.items()) {
            const bool number =
                value.is_number() ||
                (value.is_string() &&
                 value.get<std::string>().find_first_of("%CNk") != std::string::npos);
            if (left.count(pattern_of(pointer)) == 0 || !number) {
                continue;
            }
            const std::string spelt = value.is_number() ? value.dump() : value.get<std::string>();
            const std::string digits = spelt.substr(0, spelt.find(' '));
            // The value that stands there: what the file holds with it is known to be right.
            const VariedCase varied(text, "case.json", {{pointer, {}, 1, [digits](std::size_t) {
                                                             return digits;
                                                         }}});
            EXPECT_FALSE(varied.places(0).empty()) << pointer;
            EXPECT_TRUE(varied.value(0, 0).fault.empty()) << pointer;
            left.erase(pattern_of(pointer));
        }
    }
    EXPECT_EQ(left, std::set<std::string>());
}

}  // namespace
}  // namespace bowfront::io
