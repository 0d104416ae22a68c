#include "digest.hpp"

#include <nettle/sha2.h>

#include <array>
#include <cstdint>

namespace bowfront {

std::string sha256(std::string_view bytes) {
    sha256_ctx context{};
    sha256_init(&context);
    const std::basic_string<std::uint8_t> data(bytes.begin(), bytes.end());
    sha256_update(&context, data.size(), data.data());
    std::array<std::uint8_t, SHA256_DIGEST_SIZE> digest{};
    sha256_digest(&context, digest.size(), digest.data());
    constexpr std::string_view kDigits = "0123456789abcdef";
    std::string text;
    for (const std::uint8_t byte : digest) {
        text += kDigits[byte >> 4];
        text += kDigits[byte & 15];
    }
    return text;
}

}  // namespace bowfront
