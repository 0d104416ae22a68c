// Feeds any bytes to the reader of case files. It may read them or throw InputError; anything else
// is a crash. Seeds: examples/*/case.json and src/io/starters.

#include <cstddef>
#include <cstdint>
#include <string_view>

#include "bowfront/base/error.hpp"
#include "bowfront/io/read_case.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
    const std::string_view text(reinterpret_cast<const char*>(bytes), size);
    try {
        (void)bowfront::io::read_case(text, "case.json");
    } catch (const bowfront::InputError& error) {
        if (error.diagnostics().empty()) {
            __builtin_trap();
        }
    }
    return 0;
}
