// Feeds any bytes to the reader of files of measurements, and what it reads to the inspection and
// its report. It may read them or throw InputError; anything else is a crash, a figure that is not
// finite among them. Seeds: examples/*/measured.json.

#include <cstddef>
#include <cstdint>
#include <string_view>

#include "bowfront/base/error.hpp"
#include "bowfront/fit/sums.hpp"
#include "bowfront/io/read_case.hpp"
#include "bowfront/io/read_measured.hpp"
#include "bowfront/io/starter.hpp"
#include "bowfront/report/inspection.hpp"
#include "bowfront/study/inspect.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
    static const bowfront::Case kCase =
        bowfront::io::read_case(bowfront::io::starter("bow-front"), "case.json").value;
    static const auto kSums = bowfront::fit::solve(kCase);
    const std::string_view text(reinterpret_cast<const char*>(bytes), size);
    try {
        const auto read = bowfront::io::read_measured(text, "measured.json", kCase);
        if (bowfront::study::objections(kCase, kSums, read.value).empty()) {
            const auto inspection = bowfront::study::inspect(kCase, kSums, read.value);
            (void)bowfront::report::inspection_json(kCase, read.assumed, inspection);
            (void)bowfront::report::inspection_text(kCase, read.assumed, inspection);
        }
    } catch (const bowfront::InputError& error) {
        if (error.diagnostics().empty()) {
            __builtin_trap();
        }
    }
    return 0;
}
