#include "bowfront/pipeline/make.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <iterator>

#include "bowfront/base/error.hpp"
#include "support/temporary_folder.hpp"

namespace bowfront {
namespace {

namespace fs = std::filesystem;
using testing::Contains;
using testing::Field;

std::string text_of(const fs::path& path) {
    std::ifstream stream(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(stream), {}};
}

const Design& pilot_boat() {
    static const Design kDesign = design(
        text_of(fs::path(BOWFRONT_SOURCE_DIR) / "examples/pilot-boat/case.json"), "case.json");
    return kDesign;
}

// A shop that finds the solids as the sums say, and writes a word where the STEP text would stand.
SolidResult agreeable_shop(const SolidRequest& request, const std::function<void(const std::string&)>&) {
    SolidResult result;
    result.files = {{"case", "solids", {}}};
    for (const EngagementProbe& probe : request.probes) {
        result.engagements.push_back({probe.about, probe.expected, probe.expected});
    }
    return result;
}

class Making : public WithTemporaryFolder {
  protected:
    Made make_with(const SolidShop& shop, bool despite_failures = false) const {
        MakeOptions options;
        options.folder = (root_ / "out").string();
        options.despite_failures = despite_failures;
        return make(pilot_boat(), options, shop, [](const std::string&) {});
    }
};

TEST_F(Making, probes_every_edge_of_every_pane) {
    std::size_t probes = 0;
    (void)make_with([&](const SolidRequest& request, const auto& progress) {
        probes = request.probes.size();
        return agreeable_shop(request, progress);
    });
    EXPECT_EQ(probes, 16U);
    EXPECT_TRUE(fs::exists(root_ / "out/parts/pane-front.dxf"));
}

TEST_F(Making, withholds_what_is_cut_from_where_two_solids_stand_in_one_place) {
    const SolidShop shop = [](const SolidRequest& request, const auto& progress) {
        SolidResult result = agreeable_shop(request, progress);
        result.interferences = {{"base", "pane-front", 0.2, 50}};
        return result;
    };
    const Made made = make_with(shop);
    EXPECT_EQ(made.verdict(), Status::fail);
    EXPECT_THAT(made.findings, Contains(Field(&Finding::code, Code::proof_interference)));
    EXPECT_TRUE(fs::exists(root_ / "out/case.step"));
    EXPECT_FALSE(fs::exists(root_ / "out/parts"));
    EXPECT_FALSE(fs::exists(root_ / "out/cutlist.csv"));
    (void)make_with(shop, true);
    EXPECT_THAT(text_of(root_ / "out/cutlist.csv"), testing::HasSubstr("FAILED ITS CHECKS"));
    EXPECT_THAT(text_of(root_ / "out/parts/base.dxf"), testing::HasSubstr("FAILED ITS CHECKS"));
}

TEST_F(Making, writes_nothing_where_the_solids_contradict_the_sums) {
    const SolidShop shop = [](const SolidRequest& request, const auto& progress) {
        SolidResult result = agreeable_shop(request, progress);
        result.engagements.front().measured += 2e-6;
        return result;
    };
    EXPECT_THROW((void)make_with(shop), KernelError);
    EXPECT_TRUE(fs::is_empty(root_));
}

TEST_F(Making, writes_nothing_where_an_export_reads_back_as_something_else) {
    const SolidShop shop = [](const SolidRequest& request, const auto& progress) {
        SolidResult result = agreeable_shop(request, progress);
        result.files.front().difference = "post-front-left: volume";
        return result;
    };
    EXPECT_THROW((void)make_with(shop), KernelError);
    EXPECT_TRUE(fs::is_empty(root_));
}

TEST_F(Making, ends_when_told_to_and_leaves_the_old_output_whole) {
    (void)make_with(agreeable_shop);
    const std::string before = text_of(root_ / "out/report.json");
    MakeOptions options;
    options.folder = (root_ / "out").string();
    EXPECT_THROW((void)make(pilot_boat(), options, agreeable_shop,
                            [](const std::string&) { throw IoError("out", "interrupted"); }),
                 IoError);
    EXPECT_EQ(text_of(root_ / "out/report.json"), before);
}

// Two grooves whose ends overlap by a hair leave a recess with an edge that no cutter can follow.
TEST_F(Making, answers_a_pattern_that_cannot_be_cut_with_a_finding) {
    Design design = pilot_boat();
    fit::PlateGroove& groove = design.layout.base.grooves.front();
    std::vector<Vertex> vertices = groove.band.vertices();
    const Point corner = vertices.front().at;
    vertices.insert(vertices.begin(), {{corner.x - 0.002, corner.y - 0.002}, 0});
    groove.band = Contour(vertices);
    MakeOptions options;
    options.folder = (root_ / "out").string();
    const Made made = make(design, options, agreeable_shop, [](const std::string&) {});
    EXPECT_THAT(made.findings, Contains(Field(&Finding::code, Code::proof_pattern)));
    EXPECT_FALSE(fs::exists(root_ / "out/parts"));
}

}  // namespace
}  // namespace bowfront
