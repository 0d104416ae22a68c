#include "bowfront/pipeline/make.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>

#include "bowfront/base/error.hpp"

namespace bowfront {
namespace {

namespace fs = std::filesystem;
using testing::HasSubstr;

// A shop without a kernel: it answers what it is told to.
SolidShop shop_with(SolidResult result) {
    return [result](const SolidRequest&, const std::function<void(const std::string&)>&) {
        return result;
    };
}

class Make : public testing::Test {
  protected:
    Make()
        : place_(fs::path(testing::TempDir()) /
                 (std::string("bowfront-make-") +
                  testing::UnitTest::GetInstance()->current_test_info()->name())) {
        fs::remove_all(place_);
        text_ = read_text(BOWFRONT_SOURCE_DIR "/examples/pilot-boat/case.json", io::kMostBytes);
    }
    ~Make() override { fs::remove_all(place_); }

    void change(const std::string& from, const std::string& to) {
        const auto at = text_.find(from);
        ASSERT_NE(at, std::string::npos) << from;
        text_.replace(at, from.size(), to);
    }

    Made made(const SolidResult& result, bool despite_failures = false) {
        const MakeOptions options{place_.string(), despite_failures, {}, {}};
        return make(design(text_, "case.json"), options, shop_with(result), [](const auto&) {});
    }

    [[nodiscard]] bool wrote(const std::string& file) const { return fs::exists(place_ / file); }

    fs::path place_;
    std::string text_;
};

const Finding* find(const Made& made, Code code) {
    const auto found = std::find_if(made.findings.begin(), made.findings.end(),
                                    [&](const Finding& each) { return each.code == code; });
    return found == made.findings.end() ? nullptr : &*found;
}

TEST_F(Make, writes_everything_that_is_cut_from_where_no_check_fails) {
    const Made result = made({});
    EXPECT_NE(result.verdict(), Status::fail);
    for (const char* file : {"report.json", "cutlist.csv", "parts/base.dxf", "parts/top.dxf",
                             "parts/post-front-left.dxf", "parts/pane-front.dxf",
                             "parts/form-front-rib.dxf"}) {
        EXPECT_TRUE(wrote(file)) << file;
    }
}

TEST_F(Make, withholds_what_is_cut_from_where_a_check_fails) {
    change("\"top_clearance\": 4.5", "\"top_clearance\": 10");
    EXPECT_EQ(made({}).verdict(), Status::fail);
    EXPECT_TRUE(wrote("report.json"));
    EXPECT_FALSE(wrote("parts"));
    EXPECT_FALSE(wrote("cutlist.csv"));
    EXPECT_EQ(made({}, true).verdict(), Status::fail);
    EXPECT_TRUE(wrote("parts/base.dxf"));
}

TEST_F(Make, fails_a_case_whose_solids_stand_in_one_place) {
    SolidResult result;
    result.interferences.push_back({"pane-front", "post-front-left", 0.2, 12.5});
    const Made failed = made(result);
    const Finding* finding = find(failed, Code::proof_interference);
    ASSERT_NE(finding, nullptr);
    EXPECT_EQ(finding->about, "pane-front+post-front-left");
    EXPECT_EQ(finding->value, 0.2);
    EXPECT_EQ(failed.verdict(), Status::fail);
    EXPECT_FALSE(wrote("cutlist.csv"));
}

// The recess of the bead ends 0.04 mm beside the half circle of the groove's end, which leaves a
// step in the outline that no cutter can follow.
TEST_F(Make, fails_a_pattern_that_can_t_be_cut) {
    change("\"post\": 15", "\"post\": 2.36");
    change("\"end_clearance\": 3", "\"end_clearance\": 0.2");
    change("\"slide-in\"", "\"beaded\"");
    change("\"hold\": \"groove\"", "\"hold\": \"rabbet\"");
    const Made failed = made({}, true);
    const Finding* finding = find(failed, Code::proof_pattern);
    ASSERT_NE(finding, nullptr);
    EXPECT_EQ(finding->about, "base");
    EXPECT_THAT(finding->state, HasSubstr("shorter than 0.01 mm"));
    EXPECT_FALSE(wrote("parts/base.dxf")) << "written though it can't be cut";
    EXPECT_TRUE(wrote("parts/pane-back.dxf"));
}

TEST_F(Make, stops_where_solids_and_sums_contradict_each_other) {
    SolidResult wrong_engagement;
    wrong_engagement.engagements.push_back({"front/top", 7.5, 7.4});
    EXPECT_THROW((void)made(wrong_engagement), KernelError);
    SolidResult wrong_file;
    wrong_file.files.push_back({"case", "", "volume of base"});
    EXPECT_THROW((void)made(wrong_file), KernelError);
    EXPECT_FALSE(fs::exists(place_));
}

TEST_F(Make, leaves_a_folder_that_is_not_ours_alone) {
    fs::create_directories(place_);
    std::ofstream(place_ / "notes.txt") << "mine";
    try {
        (void)made({});
        FAIL() << "the folder was taken";
    } catch (const IoError& error) {
        EXPECT_THAT(error.what(), HasSubstr("BF-OUT-001"));
    }
    EXPECT_TRUE(wrote("notes.txt"));
    EXPECT_FALSE(wrote("report.json"));
}

TEST_F(Make, replaces_its_own_output_whole) {
    (void)made({});
    change("\"top_clearance\": 4.5", "\"top_clearance\": 10");
    (void)made({});
    EXPECT_TRUE(wrote("report.json"));
    EXPECT_FALSE(wrote("parts")) << "an older pattern is left";
}

TEST_F(Make, leaves_nothing_behind_where_it_is_broken_off) {
    (void)made({});
    const auto before = fs::last_write_time(place_ / "report.json");
    SolidResult wrong;
    wrong.engagements.push_back({"front/top", 7.5, 7.4});
    EXPECT_THROW((void)made(wrong), KernelError);
    EXPECT_EQ(fs::last_write_time(place_ / "report.json"), before);
    for (const auto& entry : fs::directory_iterator(place_.parent_path())) {
        EXPECT_EQ(entry.path().filename().string().find(place_.filename().string() + ".making"),
                  std::string::npos);
    }
}

}  // namespace
}  // namespace bowfront
