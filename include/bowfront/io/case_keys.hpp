#pragma once
/// \file
/// The keys of a case file, in one table.

#include <span>
#include <string_view>

namespace bowfront::io {

/// The keys that one object of the file may have.
struct ObjectKeys {
    /// JSON pointer of the object; `*` stands for any index of a list or any key of the maker's
    /// own.
    std::string_view object;
    std::span<const std::string_view> keys;
};

/// Every object of a case file. The reader takes these keys and no others, and
/// `schemas/case.schema.json` lists the same.
[[nodiscard]] std::span<const ObjectKeys> case_keys() noexcept;

/// The keys of the object at a pointer with `*` in a table of keys.
/// @throws ContractError for an object that the table does not have
[[nodiscard]] std::span<const std::string_view> keys_of(std::span<const ObjectKeys> table,
                                                        std::string_view object);

/// The keys of the object at a pointer with `*` in a case file.
/// @throws ContractError for an object that a case file does not have
[[nodiscard]] std::span<const std::string_view> keys_of(std::string_view object);

}  // namespace bowfront::io
