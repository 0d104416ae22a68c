#pragma once
/// \file
/// A JSON file as a tree in which every value and key knows its place.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "bowfront/io/places.hpp"

namespace bowfront::io {

struct JsonMember;

/// One value. Owns what is in it; never deeper than kMostDepth.
struct JsonNode {
    enum class Kind { null, truth, number, text, list, object } kind = Kind::null;
    Place place;
    std::string text;             ///< a text without its escapes; a number or truth as it is spelt
    std::vector<JsonNode> items;  ///< of a list
    std::vector<JsonMember> members;  ///< of an object, in file order, each key once

    /// The member of that key, or null.
    [[nodiscard]] const JsonMember* find(std::string_view key) const noexcept;
};

/// A key with its value.
struct JsonMember {
    std::string key;
    Place place;  ///< of the key
    JsonNode value;
};

/// What a value is, for messages: `a number`, `a text`, `a list`, `an object`, `null`, ...
[[nodiscard]] std::string_view kind_text(JsonNode::Kind kind) noexcept;

/// A pointer with one more step; `/` and `~` in it are escaped as RFC 6901 says.
[[nodiscard]] std::string pointer_step(std::string_view pointer, std::string_view step);
[[nodiscard]] std::string pointer_step(std::string_view pointer, std::size_t index);

}  // namespace bowfront::io
