#include "bowfront/io/places.hpp"

#include <gtest/gtest.h>

#include "case_text.hpp"

namespace bowfront::io {
namespace {

TEST(Places, know_each_value_and_key) {
    const Places places = read_case(pilot_boat(), "case.json").places;
    EXPECT_EQ(places.of_value(""), (Place{1, 1}));
    EXPECT_EQ(places.of_key("/plan"), (Place{5, 3}));
    EXPECT_EQ(places.of_value("/plan"), (Place{5, 11}));
    EXPECT_EQ(places.of_key("/plan/front/radius"), (Place{5, 74}));
    EXPECT_EQ(places.of_value("/plan/front/radius"), (Place{5, 84}));
    EXPECT_EQ(places.of_value("/panes/1/side"), (Place{17, 15}));
    EXPECT_EQ(places.of_value("/service/humidity/1"), (Place{29, 59}));
}

TEST(Places, of_items_have_no_key) {
    const Places places = read_case(pilot_boat(), "case.json").places;
    EXPECT_EQ(places.of_key("/panes/1"), places.of_value("/panes/1"));
    EXPECT_EQ(places.of_key(""), places.of_value(""));
}

TEST(Places, of_what_is_left_out_are_those_of_the_nearest_value_round_it) {
    const Places places = read_case(pilot_boat(), "case.json").places;
    EXPECT_EQ(places.of_value("/form/ribs/foot"), places.of_value("/form/ribs"));
    EXPECT_EQ(places.of_value("/webs/floor"), (Place{1, 1}));
    EXPECT_EQ(places.of_value("/panes/9/side"), places.of_value("/panes"));
    EXPECT_EQ(places.of_value("/panes/first"), places.of_value("/panes"));
    EXPECT_TRUE(places.holds("/form/ribs"));
    EXPECT_FALSE(places.holds("/form/ribs/foot"));
    EXPECT_FALSE(places.holds("form"));
}

TEST(Places, are_asked_with_escaped_pointers) {
    const std::string text = pilot_boat_with(
        "\"fit\":", "\"sheets\": { \"a/b~c\": { \"like\": \"petg\" } },\n  \"fit\":");
    const Places places = read_case(text, "case.json").places;
    EXPECT_TRUE(places.holds("/sheets/a~1b~0c/like"));
    EXPECT_FALSE(places.holds("/sheets/a/b~c/like"));
}

TEST(Places, of_no_file_are_none) {
    EXPECT_EQ(Places().of_value("/plan"), (Place{0, 0}));
    EXPECT_EQ(Places().of_key("/plan"), (Place{0, 0}));
    EXPECT_FALSE(Places().holds(""));
}

}  // namespace
}  // namespace bowfront::io
