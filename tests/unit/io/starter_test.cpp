#include "bowfront/io/starter.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "bowfront/base/contract.hpp"
#include "case_text.hpp"

namespace bowfront::io {
namespace {

using ::testing::ElementsAre;

TEST(Starter, is_there_for_each_shape_and_each_way_to_open_a_case) {
    EXPECT_THAT(starter_shapes(),
                ElementsAre("access-hinged-door", "access-lift-off-top", "access-lift-out-pane",
                            "access-sliding-pair", "bow-ends", "bow-front", "half-round", "polygon",
                            "quarter-round", "rectangle", "serpentine", "sides"));
    EXPECT_THROW((void)starter("spiral"), ContractError);
}

// The name of a starter says what it shows: a shape, or a way to open a case.
TEST(Starter, is_read_without_a_fault_and_shows_what_its_name_says) {
    constexpr std::string_view kAccess = "access-";
    for (const std::string_view name : starter_shapes()) {
        EXPECT_EQ(fault_text(starter(name)), "");
        const Case c = read_case(starter(name), "case.json").value;
        if (name.starts_with(kAccess)) {
            ASSERT_TRUE(c.access) << name;
            EXPECT_EQ(access_text(*c.access), name.substr(kAccess.size()));
        } else {
            EXPECT_EQ(shape_text(c.plan.shape), name);
        }
    }
}

// Every section of the file is explained: a comment stands before it or beside it.
TEST(Starter, explains_what_it_holds) {
    for (const std::string_view shape : starter_shapes()) {
        const std::string text = starter(shape);
        std::size_t comments = 0;
        for (std::size_t at = text.find("//"); at != std::string::npos;
             at = text.find("//", at + 2)) {
            ++comments;
        }
        const ReadCase read = read_case(text, "case.json");
        for (const std::string_view section :
             {"/plan", "/frame", "/panes", "/fit", "/service", "/stock", "/cutter"}) {
            EXPECT_TRUE(read.places.holds(section)) << section;
        }
        EXPECT_GE(comments, 18U) << shape;
    }
}

}  // namespace
}  // namespace bowfront::io
