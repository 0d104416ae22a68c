// Feeds any bytes to the reader of coupons files, and what it reads to the sums. It may read them
// or throw InputError; anything else is a crash. Seeds: examples/*/coupons.csv.

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <string_view>

#include "bowfront/base/error.hpp"
#include "bowfront/io/read_coupons.hpp"
#include "bowfront/study/calibrate.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
    const std::string_view text(reinterpret_cast<const char*>(bytes), size);
    try {
        const auto measurements = bowfront::io::read_coupons(text, "coupons.csv");
        for (const auto& series : bowfront::study::calibrate(measurements)) {
            if (!std::isfinite(series.sample.mean)) {
                __builtin_trap();
            }
        }
    } catch (const bowfront::InputError& error) {
        if (error.diagnostics().empty()) {
            __builtin_trap();
        }
    }
    return 0;
}
