// Feeds a fuzzer's kept inputs to it again, without the fuzzing engine: inputs that once crashed,
// and a corpus that reaches the branches of the reader. A crash ends the test.

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdint>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <vector>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size);

namespace {

std::vector<std::filesystem::path> kept_inputs() {
    std::vector<std::filesystem::path> paths;
    for (const char* const folder : {BOWFRONT_CORPUS, BOWFRONT_CRASHES}) {
        if (!std::filesystem::is_directory(folder)) {
            continue;  // nothing has crashed yet
        }
        for (const auto& entry : std::filesystem::directory_iterator(folder)) {
            paths.push_back(entry.path());
        }
    }
    std::sort(paths.begin(), paths.end());
    return paths;
}

TEST(Fuzzer, takes_every_kept_input) {
    const auto paths = kept_inputs();
    ASSERT_FALSE(paths.empty());
    for (const auto& path : paths) {
        SCOPED_TRACE(path.filename().string());
        std::ifstream file(path, std::ios::binary);
        ASSERT_TRUE(file.is_open());
        const std::vector<char> text{std::istreambuf_iterator<char>(file), {}};
        EXPECT_EQ(LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(text.data()),
                                         text.size()),
                  0);
        // Cut short anywhere, it is taken as well.
        for (std::size_t part = 1; part < 8; ++part) {
            EXPECT_EQ(LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(text.data()),
                                             text.size() * part / 8),
                      0);
        }
    }
}

}  // namespace
