#include "bowfront/io/nearest.hpp"

#include <gtest/gtest.h>

#include <array>

namespace bowfront::io {
namespace {

TEST(SpellingDistance, counts_each_kind_of_slip_once) {
    EXPECT_EQ(spelling_distance("radius", "radius"), 0U);
    EXPECT_EQ(spelling_distance("radus", "radius"), 1U);
    EXPECT_EQ(spelling_distance("raddius", "radius"), 1U);
    EXPECT_EQ(spelling_distance("rafius", "radius"), 1U);
    EXPECT_EQ(spelling_distance("raduis", "radius"), 1U);
    EXPECT_EQ(spelling_distance("RADIUS", "radius"), 0U);
    EXPECT_EQ(spelling_distance("", "rise"), 4U);
    EXPECT_EQ(spelling_distance("rise", ""), 4U);
}

// No letter is touched twice: "ca" to "abc" is three slips, where swapping and then putting a
// letter between would be two.
TEST(SpellingDistance, touches_no_letter_twice) {
    EXPECT_EQ(spelling_distance("ca", "abc"), 3U);
}

TEST(Nearest, finds_the_word_that_was_meant) {
    constexpr std::array<std::string_view, 5> kKeys = {"width", "depth", "front", "shape", "axis"};
    EXPECT_EQ(nearest("widht", kKeys), "width");
    EXPECT_EQ(nearest("dept", kKeys), "depth");
    EXPECT_EQ(nearest("Front", kKeys), "front");
    EXPECT_EQ(nearest("shapes", kKeys), "shape");
}

TEST(Nearest, offers_nothing_far_fetched) {
    constexpr std::array<std::string_view, 3> kKeys = {"width", "rise", "m"};
    EXPECT_EQ(nearest("colour", kKeys), "");
    EXPECT_EQ(nearest("x", kKeys), "");
    EXPECT_EQ(nearest("", kKeys), "");
    EXPECT_EQ(nearest("width", {}), "");
    EXPECT_EQ(nearest(std::string(10'000, 'w'), kKeys), "");
}

TEST(Nearest, takes_the_first_of_equals) {
    constexpr std::array<std::string_view, 2> kKeys = {"base", "case"};
    EXPECT_EQ(nearest("vase", kKeys), "base");
}

}  // namespace
}  // namespace bowfront::io
