#include "standard_output.hpp"

#include <cerrno>
#include <cstdio>
#include <cstring>

#include "bowfront/base/error.hpp"

namespace bowfront::cli {

void print(std::string_view text) {
    if (std::fwrite(text.data(), 1, text.size(), stdout) != text.size() ||
        std::fflush(stdout) != 0) {
        throw IoError("standard output", std::strerror(errno));
    }
}

}  // namespace bowfront::cli
