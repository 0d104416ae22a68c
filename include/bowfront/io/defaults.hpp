#pragma once
/// \file
/// What stands in for a value that a case file leaves out, in one table.

#include <span>
#include <string_view>

namespace bowfront::io {

/// One default.
struct Default {
    enum class Kind {
        value,  ///< `value` is spelt as it could stand in the file
        rule    ///< `value` says in words what the value follows from
    };
    /// JSON pointer of the value; `*` stands for any index of a list or any key of the maker's own.
    std::string_view pointer;
    std::string_view value;
    std::string_view why;
    Kind kind = Kind::value;
};

/// Every default of the case file, in the file's order.
[[nodiscard]] std::span<const Default> case_defaults() noexcept;

/// The default for the value at a pointer with `*`.
/// @throws ContractError for a value that has no default
[[nodiscard]] const Default& default_of(std::string_view pointer);

}  // namespace bowfront::io
