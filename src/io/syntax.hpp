#pragma once
/// \file
/// What is wrong with a text that is no JSON, in plain words.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "bowfront/io/places.hpp"

namespace bowfront::io {

struct SyntaxFault {
    Place place;
    std::string found;
    std::string wanted;
};

/// The first place where a text leaves the grammar of JSON (RFC 8259, comments allowed); none for
/// a text that keeps to it.
[[nodiscard]] std::optional<SyntaxFault> find_syntax_fault(std::string_view text);

/// The fault of a text that is JSON, yet holds a number at an offset that no double can hold.
[[nodiscard]] SyntaxFault number_too_large(std::string_view text, std::size_t offset);

}  // namespace bowfront::io
