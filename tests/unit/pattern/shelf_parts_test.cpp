#include "bowfront/pattern/shelf_parts.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <stdexcept>

#include "bowfront/fit/checks.hpp"
#include "bowfront/pattern/case_parts.hpp"
#include "support/sample_shelf.hpp"

namespace bowfront::pattern {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::SizeIs;

// A board of 2e6 mm³ to 1e-11.
constexpr double kVolume = 1e-4;

struct Made {
    fit::Shelves shelves;
    std::vector<Part> frame;
    std::vector<Part> parts;
};

Made made(const Case& c) {
    const auto sums = fit::solve(c);
    const auto layout = fit::layout(c, sums);
    Made out{fit::shelves(c, sums, layout), case_parts(c, sums, layout), {}};
    mark_pins(c, out.shelves, out.frame);
    out.parts = shelf_parts(c, out.shelves);
    return out;
}

TEST(ShelfParts, are_the_shelf_and_its_rails_in_their_places) {
    const Case c = sample::with_shelf("cherry", ShelfSupport::rails);
    const Made all = made(c);
    std::vector<std::string> ids;
    for (const Part& part : all.parts) {
        ids.push_back(part.id);
    }
    EXPECT_THAT(ids, ElementsAre("shelf-1", "shelf-1-rail-right", "shelf-1-rail-back",
                                 "shelf-1-rail-left"));
    EXPECT_EQ(all.parts[0].placements[0].origin.z, 108);
    EXPECT_EQ(all.parts[1].placements[0].origin.z, 108 - fit::kRailHeight);
    EXPECT_THAT(all.parts[0].note, HasSubstr("grain runs from rail to rail"));
    EXPECT_EQ(all.parts[1].material, "cherry");
}

TEST(ShelfParts, weigh_what_the_sums_say) {
    for (const char* material : {"plywood", "float-glass", "cast-acrylic"}) {
        const Made all = made(sample::with_shelf(material));
        ASSERT_THAT(all.parts, SizeIs(1));
        const Part& shelf = all.parts[0];
        EXPECT_NEAR(volume(shelf.body), all.shelves.list[0].sums.area * 12, kVolume);
        EXPECT_NEAR(shelf.mass(), all.shelves.list[0].sums.mass, kVolume * 1e-6);
        EXPECT_EQ(shelf.pattern.thickness, 12);
    }
}

TEST(ShelfParts, scribe_bores_on_the_posts_once_for_all_shelves) {
    Case c = sample::with_shelf("plywood");
    c.shelves.push_back(sample::shelf("plywood", 240));
    const Made all = made(c);
    const auto post = std::ranges::find(all.frame, "post-front-left", &Part::id);
    ASSERT_NE(post, all.frame.end());
    ASSERT_THAT(post->pattern.scribes, SizeIs(1));
    EXPECT_NEAR(post->pattern.scribes[0].length(), fit::kPinDepth, kJoint);
    EXPECT_THAT(post->note, HasSubstr("105.5 mm over the post's foot"));
    EXPECT_THAT(post->note, HasSubstr("225.5 mm over the post's foot"));
}

}  // namespace
}  // namespace bowfront::pattern
