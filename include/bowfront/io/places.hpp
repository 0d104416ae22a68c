#pragma once
/// \file
/// Where in its text each value of a JSON file stands.

#include <cstddef>
#include <memory>
#include <string_view>

namespace bowfront::io {

struct JsonNode;

/// A place in a text.
struct Place {
    std::size_t line = 0;    ///< from 1; 0 for no place
    std::size_t column = 0;  ///< from 1, in bytes

    friend constexpr bool operator==(Place a, Place b) = default;
};

/// The places of the values and keys of one file, asked by JSON pointer (RFC 6901).
class Places {
  public:
    /// No file: every place asked for is {0, 0}.
    Places() = default;
    explicit Places(std::shared_ptr<const JsonNode> root) noexcept;

    /// Whether the file holds a value at the pointer.
    [[nodiscard]] bool holds(std::string_view pointer) const;

    /// Where the value at the pointer begins; for a value that the file leaves out, where the
    /// nearest value round it begins.
    [[nodiscard]] Place of_value(std::string_view pointer) const;

    /// Where the key of the value at the pointer begins; for an item of a list or the whole file,
    /// which have no key, and for a value that is left out, as `of_value`.
    [[nodiscard]] Place of_key(std::string_view pointer) const;

  private:
    std::shared_ptr<const JsonNode> root_;
};

}  // namespace bowfront::io
