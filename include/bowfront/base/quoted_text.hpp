#pragma once
/// \file
/// A user's own words inside a message.

#include <cstddef>
#include <string>
#include <string_view>

namespace bowfront {

/// The text in double quotes, as JSON would spell it, on one line and cut to at most 48 characters
/// (then ending in `…`). Bytes that are not UTF-8 and control characters are spelt out, so that no
/// terminal acts on them.
[[nodiscard]] std::string quoted_text(std::string_view text);

/// Length in bytes of the UTF-8 character that begins the text; 0 where none does (an empty text,
/// a stray or missing continuation, an overlong form, a surrogate, a value over U+10FFFF).
/// Source: RFC 3629, section 4
[[nodiscard]] std::size_t utf8_length(std::string_view text) noexcept;

}  // namespace bowfront
