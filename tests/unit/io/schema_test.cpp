// The schema, the reader's table of keys and its defaults say the same.

#include "bowfront/io/schema.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <map>
#include <nlohmann/json.hpp>
#include <regex>
#include <set>

#include "bowfront/io/case_keys.hpp"
#include "bowfront/io/defaults.hpp"
#include "bowfront/units/price.hpp"
#include "bowfront/units/quantity.hpp"
#include "case_text.hpp"

namespace bowfront::io {
namespace {

using nlohmann::json;
using ::testing::Contains;

json case_schema() {
    return json::parse(schema_text("case").value());
}

// What a schema says of the keys and defaults of each object, found by following it from the root.
struct Described {
    json root;
    std::map<std::string, std::set<std::string>> keys;  // of the object at a pointer with `*`
    std::map<std::string, json> defaults;               // at a pointer with `*`

    void follow(const json& schema, const std::string& pointer) {
        if (schema.contains("default")) {
            defaults[pointer] = schema["default"];
        }
        if (schema.contains("$ref")) {
            const std::string name = schema["$ref"];
            follow(root["definitions"][name.substr(name.rfind('/') + 1)], pointer);
        }
        for (const char* branch : {"anyOf", "oneOf", "allOf"}) {
            for (const json& part : schema.value(branch, json::array())) {
                follow(part, pointer);
            }
        }
        if (schema.contains("properties") && schema.value("type", "") == "object") {
            for (const auto& [key, value] : schema["properties"].items()) {
                keys[pointer].insert(key);
                follow(value, pointer + '/' + key);
            }
        }
        if (schema.contains("additionalProperties") && schema["additionalProperties"].is_object()) {
            follow(schema["additionalProperties"], pointer + "/*");
        }
        if (!schema.contains("items")) {
            return;
        }
        if (schema["items"].is_array()) {
            for (std::size_t i = 0; i < schema["items"].size(); ++i) {
                follow(schema["items"][i], pointer + '/' + std::to_string(i));
            }
        } else {
            follow(schema["items"], pointer + "/*");
        }
    }
};

Described described() {
    Described out{case_schema(), {}, {}};
    out.follow(out.root, "");
    return out;
}

TEST(CaseSchema, has_the_keys_that_the_reader_takes) {
    std::map<std::string, std::set<std::string>> taken;
    for (const ObjectKeys& row : case_keys()) {
        taken[std::string(row.object)] = {row.keys.begin(), row.keys.end()};
    }
    EXPECT_EQ(described().keys, taken);
}

TEST(CaseSchema, has_the_defaults_that_the_reader_puts_in) {
    std::map<std::string, json> put_in;
    for (const Default& row : case_defaults()) {
        if (row.kind == Default::Kind::value) {
            const bool count = row.value.find_first_not_of("0123456789") == std::string_view::npos;
            put_in[std::string(row.pointer)] =
                count ? json(std::stoi(std::string(row.value))) : json(row.value);
        }
    }
    EXPECT_EQ(described().defaults, put_in);
}

// Every object is closed, so that an editor finds a misspelt key as the reader does.
void expect_closed(const json& schema) {
    if (schema.is_object() && schema.contains("properties") &&
        schema.value("type", "") == "object") {
        EXPECT_EQ(schema.value("additionalProperties", json()), json(false)) << schema.dump();
        EXPECT_TRUE(schema.contains("description"));
        for (const auto& [key, value] : schema["properties"].items()) {
            EXPECT_TRUE(value.contains("description")) << key;
        }
    }
    if (schema.is_structured()) {
        for (const json& part : schema) {
            expect_closed(part);
        }
    }
}

TEST(CaseSchema, describes_every_key_and_takes_no_other) {
    expect_closed(case_schema());
}

struct Spelling {
    std::string_view definition;
    std::string_view text;
};

std::regex pattern_of(std::string_view definition) {
    const json rule = case_schema()["definitions"][std::string(definition)];
    return std::regex(rule.contains("pattern") ? rule["pattern"].get<std::string>()
                                               : rule["anyOf"][1]["pattern"].get<std::string>());
}

using Parse = Quantity (*)(std::string_view);

const std::map<std::string_view, Parse> kParsers = {
    {"length", parse_length},
    {"angle", parse_angle},
    {"ratio", parse_ratio},
    {"temperature", parse_temperature},
    {"temperature_difference", parse_temperature_difference},
    {"mass", parse_mass},
    {"position", parse_length}};

TEST(CaseSchema, takes_every_spelling_that_the_reader_takes) {
    for (const auto& [definition, text] :
         std::vector<Spelling>{{"length", "17 5/16 in"},
                               {"length", "17-5/16\""},
                               {"length", "3/4\""},
                               {"length", "2 ft 3 1/2 in"},
                               {"length", "2' 3 1/2\""},
                               {"length", "2ft3.5in"},
                               {"length", "18mm"},
                               {"length", " 18 mm "},
                               {"length", ".5 cm"},
                               {"length", "1e3 mm"},
                               {"length", "1.2 m"},
                               {"length", "3 feet"},
                               {"length", "2′ 3″"},
                               {"length", "3⁄4 inch"},
                               {"length", "1. mm"},
                               {"angle", "90 deg"},
                               {"angle", "90°"},
                               {"angle", "1.2 rad"},
                               {"angle", "90 degrees"},
                               {"ratio", "1.5 %"},
                               {"ratio", "-0.4%"},
                               {"ratio", "1/3"},
                               {"ratio", "−2 %"},
                               {"temperature", "177 C"},
                               {"temperature", "20 °C"},
                               {"temperature", "350 F"},
                               {"temperature", "450 K"},
                               {"temperature", "-5 degC"},
                               {"temperature_difference", "15 F"},
                               {"temperature_difference", "5 °C"},
                               {"temperature_difference", "5 K"},
                               {"mass", "12 kg"},
                               {"mass", "850g"},
                               {"mass", "26 1/2 lb"},
                               {"mass", "6 oz"},
                               {"position", "-20 mm"},
                               {"position", "−3/4 in"},
                               {"position", "2 ft"}}) {
        EXPECT_TRUE(kParsers.at(definition)(text)) << text;
        EXPECT_TRUE(std::regex_search(std::string(text), pattern_of(definition))) << text;
    }
}

TEST(CaseSchema, takes_no_spelling_that_the_reader_refuses) {
    for (const auto& [definition, text] :
         std::vector<Spelling>{{"length", ""},           {"length", "18"},
                               {"length", "18 parsecs"}, {"length", "mm"},
                               {"length", "1//2 in"},    {"length", "1,5 mm"},
                               {"length", "18 mm wide"}, {"length", "nan mm"},
                               {"length", "2 ft 3"},     {"length", "2 ft 3 mm"},
                               {"length", "--1 mm"},     {"angle", "90"},
                               {"angle", "90 mm"},       {"ratio", "0.015"},
                               {"ratio", "1.5"},         {"ratio", "% 3"},
                               {"temperature", "20"},    {"temperature", "20 Q"},
                               {"temperature", "C"},     {"temperature_difference", "5"},
                               {"mass", "12"},           {"mass", "12 mm"},
                               {"mass", "kg"},           {"position", "20"},
                               {"position", "mm"}}) {
        EXPECT_FALSE(kParsers.at(definition)(text)) << text;
        EXPECT_FALSE(std::regex_search(std::string(text), pattern_of(definition))) << text;
    }
}

TEST(CaseSchema, takes_the_prices_that_the_reader_takes) {
    for (const std::string text : {"62 /m2", "62/m²", "5.5 per ft2", "38 / sheet", "2400 /m3",
                                   "9.50 /bf", "9 1/2 per board foot", "0.15 /each", "1 /piece"}) {
        EXPECT_TRUE(parse_price(text)) << text;
        EXPECT_TRUE(std::regex_search(text, pattern_of("price"))) << text;
    }
    for (const std::string text : {"", "62", "62 m2", "62 /kg", "-62 /m2", "EUR 62 /m2", "/m2"}) {
        EXPECT_FALSE(parse_price(text)) << text;
        EXPECT_FALSE(std::regex_search(text, pattern_of("price"))) << text;
    }
}

TEST(SchemaText, is_the_file_s) {
    EXPECT_THAT(schema_names(), Contains("case"));
    for (const std::string_view name : schema_names()) {
        EXPECT_EQ(schema_text(name), project_file("schemas/" + std::string(name) + ".schema.json"));
    }
}

TEST(SchemaText, of_an_unknown_name_is_none) {
    EXPECT_EQ(schema_text("cases"), std::nullopt);
    EXPECT_EQ(schema_text(""), std::nullopt);
}

}  // namespace
}  // namespace bowfront::io
