#include "plain_text.hpp"

#include <string>

#include "bowfront/base/quoted_text.hpp"

namespace bowfront::io {
namespace {

Place place_of(std::string_view text, std::size_t offset) {
    Place place{1, 1};
    for (std::size_t at = 0; at < offset; ++at) {
        place = text[at] == '\n' ? Place{place.line + 1, 1} : Place{place.line, place.column + 1};
    }
    return place;
}

}  // namespace

std::optional<std::string_view> plain_text(std::string_view bytes, Faults& faults) {
    constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
    for (const std::string_view mark : {"\xFF\xFE", "\xFE\xFF"}) {
        if (bytes.starts_with(mark)) {
            faults.add(Code::input_unreadable, {1, 1}, {}, "the file is UTF-16",
                       "a file saved as UTF-8");
            return std::nullopt;
        }
    }
    for (std::size_t at = 0; at < bytes.size();) {
        const std::size_t length = utf8_length(bytes.substr(at));
        if (length == 0 || bytes[at] == '\0') {
            faults.add(Code::input_unreadable, place_of(bytes, at), {},
                       length == 0 ? "a byte that is not UTF-8" : "a zero byte",
                       "a text file saved as UTF-8");
            return std::nullopt;
        }
        at += length;
    }
    if (bytes.starts_with(kByteOrderMark)) {
        bytes.remove_prefix(kByteOrderMark.size());
    }
    return bytes;
}

}  // namespace bowfront::io
