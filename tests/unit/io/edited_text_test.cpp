#include "bowfront/io/edited_text.hpp"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "bowfront/base/contract.hpp"
#include "bowfront/io/read_case.hpp"
#include "bowfront/io/starter.hpp"
#include "case_text.hpp"

namespace bowfront::io {
namespace {

using nlohmann::json;

std::string put(std::string text, const std::string& pointer, const std::string& value) {
    EditedText edited(std::move(text));
    edited.put(pointer, value);
    return edited.text();
}

json meant(const std::string& text) {
    return json::parse(text, nullptr, true, true);
}

TEST(EditedText, replaces_a_value_and_nothing_else) {
    const std::string text = "{ // a case\n  \"a\": { \"b\" : [1, /* two */ 2 ] , \"c\":3 }\n}\n";
    EXPECT_EQ(put(text, "/a/b/1", "2.5"),
              "{ // a case\n  \"a\": { \"b\" : [1, /* two */ 2.5 ] , \"c\":3 }\n}\n");
    EXPECT_EQ(put(text, "/a/c", "\"x\""),
              "{ // a case\n  \"a\": { \"b\" : [1, /* two */ 2 ] , \"c\":\"x\" }\n}\n");
    EXPECT_EQ(put(text, "/a/b", "7"), "{ // a case\n  \"a\": { \"b\" : 7 , \"c\":3 }\n}\n");
}

TEST(EditedText, gives_a_new_value_a_line_where_the_others_have_theirs) {
    EXPECT_EQ(put("{\n    \"a\": 1 // one\n    // and no more\n}\n", "/b", "2"),
              "{\n    \"a\": 1, // one\n    // and no more\n    \"b\": 2\n}\n");
    EXPECT_EQ(put("{\r\n\t\"a\": 1\r\n}\r\n", "/b", "2"), "{\r\n\t\"a\": 1,\r\n\t\"b\": 2\r\n}\r\n");
}

TEST(EditedText, goes_on_in_the_line_where_the_others_do) {
    EXPECT_EQ(put("{ \"a\": 1 }", "/b", "2"), "{ \"a\": 1, \"b\": 2 }");
    EXPECT_EQ(put("{ \"a\": 1 // one\n}", "/b", "2"), "{ \"a\": 1, \"b\": 2 // one\n}");
    EXPECT_EQ(put("{\n  \"a\": 1,\n  \"b\": 2 }", "/c", "3"), "{\n  \"a\": 1,\n  \"b\": 2, \"c\": 3 }");
}

TEST(EditedText, makes_the_objects_that_are_missing) {
    EXPECT_EQ(put("{}", "/a/b/c", "1"), "{ \"a\": { \"b\": { \"c\": 1 } } }");
    EXPECT_EQ(put("{ \"a\": {} }", "/a/b~1c", "1"), "{ \"a\": { \"b/c\": 1 } }");
    EXPECT_EQ(put("\xEF\xBB\xBF{\n  \"a\": 1\n}", "/b/c", "2"),
              "\xEF\xBB\xBF{\n  \"a\": 1,\n  \"b\": { \"c\": 2 }\n}");
}

TEST(EditedText, refuses_a_way_that_leads_nowhere) {
    EditedText text("{ \"a\": [1], \"b\": 2 }");
    EXPECT_THROW(text.put("/a/1", "2"), ContractError);
    EXPECT_THROW(text.put("/b/c", "2"), ContractError);
    EXPECT_THROW(EditedText("{ \"a\": [1 "), ContractError);
}

TEST(EditedText, tells_how_a_value_is_spelt) {
    const EditedText text(R"({ "a": "17 5/16 in", "b": [1, { "c" : 1.50 }], "u\u006Ed": null })");
    EXPECT_EQ(text.spelling("/a"), "\"17 5/16 in\"");
    EXPECT_EQ(text.spelling("/b/1"), "{ \"c\" : 1.50 }");
    EXPECT_EQ(text.spelling("/b/1/c"), "1.50");
    EXPECT_EQ(text.spelling("/und"), "null");
    EXPECT_EQ(text.spelling("/b/2"), "");
    EXPECT_EQ(text.spelling("/d/e"), "");
}

// Every value of a real, commented file, taken away one by one and put back in its place.
TEST(EditedText, means_what_was_put_wherever_it_is_put) {
    const std::string text = starter("bow-front");
    const json before = meant(text);
    const json leaves = before.flatten();
    for (const auto& [pointer, value] : leaves.items()) {
        const std::string edited = put(text, pointer, "\"put here\"");
        json after = meant(edited);
        EXPECT_EQ(after[json::json_pointer(pointer)], "put here") << pointer;
        after[json::json_pointer(pointer)] = value;
        EXPECT_EQ(after, before) << pointer;
        EXPECT_EQ(put(edited, pointer, EditedText(text).spelling(pointer)), text) << pointer;
    }
    for (const char* const pointer : {"/new", "/frame/new", "/frame/groove/depth/new", "/fit/new/er",
                                      "/service/built_at/new", "/panes/0/new"}) {
        json after = meant(put(text, pointer, "12"));
        EXPECT_EQ(after[json::json_pointer(pointer)], 12) << pointer;
        EXPECT_EQ(after.flatten().size(), leaves.size() + 1) << pointer;
    }
}

}  // namespace
}  // namespace bowfront::io
