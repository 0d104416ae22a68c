#include "bowfront/pipeline/output_folder.hpp"

#include <gtest/gtest.h>

#include <fstream>
#include <iterator>

#include "bowfront/base/error.hpp"
#include "support/temporary_folder.hpp"

namespace bowfront {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view kReport = R"({"bowfront_report": 1, "files": [{"path": "case.step"}]})";

class OutputFolderIn : public WithTemporaryFolder {
  protected:
    static void put(const fs::path& path, std::string_view text) {
        fs::create_directories(path.parent_path());
        std::ofstream(path, std::ios::binary) << text;
    }
    static std::string get(const fs::path& path) {
        std::ifstream stream(path, std::ios::binary);
        return {std::istreambuf_iterator<char>(stream), {}};
    }
    std::size_t entries() const {
        return static_cast<std::size_t>(
            std::distance(fs::directory_iterator(root_), fs::directory_iterator()));
    }
};

TEST_F(OutputFolderIn, stands_only_after_commit_and_leaves_nothing_beside_it) {
    OutputFolder folder((root_ / "a/b").string());
    folder.write("report.json", kReport);
    folder.write("parts/base.dxf", "x");
    EXPECT_FALSE(fs::exists(root_ / "a/b"));
    folder.commit();
    EXPECT_EQ(get(root_ / "a/b/parts/base.dxf"), "x");
    EXPECT_EQ(std::distance(fs::directory_iterator(root_ / "a"), fs::directory_iterator()), 1);
}

TEST_F(OutputFolderIn, takes_away_what_was_not_committed) {
    { OutputFolder((root_ / "a").string()).write("report.json", kReport); }
    EXPECT_EQ(entries(), 0U);
}

TEST_F(OutputFolderIn, replaces_our_files_and_keeps_those_of_others) {
    put(root_ / "out/report.json", kReport);
    put(root_ / "out/case.step", "old");
    put(root_ / "out/notes/today.txt", "clamp the left post first");
    OutputFolder folder((root_ / "out").string());
    folder.write("report.json", kReport);
    folder.commit();
    EXPECT_FALSE(fs::exists(root_ / "out/case.step"));
    EXPECT_EQ(get(root_ / "out/notes/today.txt"), "clamp the left post first");
    EXPECT_EQ(entries(), 1U);
}

Code refusal(const std::string& place) {
    try {
        OutputFolder folder(place);
    } catch (const IoError& error) {
        return std::string_view(error.what()).starts_with(code_text(Code::output_refused))
                   ? Code::output_refused
                   : Code::output_failed;
    }
    ADD_FAILURE() << place << " was accepted";
    return Code::input_value;
}

TEST_F(OutputFolderIn, refuses_a_folder_with_files_but_no_report_of_ours) {
    put(root_ / "out/letter.txt", "dear");
    EXPECT_EQ(refusal((root_ / "out").string()), Code::output_refused);
    EXPECT_EQ(get(root_ / "out/letter.txt"), "dear");
}

TEST_F(OutputFolderIn, refuses_a_file_and_fails_where_no_folder_can_be) {
    put(root_ / "file", "x");
    EXPECT_EQ(refusal((root_ / "file").string()), Code::output_refused);
    EXPECT_EQ(refusal((root_ / "file/under").string()), Code::output_failed);
    EXPECT_EQ(get(root_ / "file"), "x");
}

}  // namespace
}  // namespace bowfront
