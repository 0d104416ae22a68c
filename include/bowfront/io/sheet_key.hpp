#pragma once
/// \file
/// The names that a case file may give to sheets of its own.

#include <optional>
#include <string>
#include <string_view>

namespace bowfront::io {

/// Why a name can't be a key under `sheets`.
struct SheetKeyFault {
    std::string found;   ///< what was wrong, as a clause
    std::string wanted;  ///< what would be right, as a clause
};

/// What is wrong with a name as a key under `sheets`; nothing where it can stand there. A key is
/// one line of 1 to 200 characters, and no name of the library.
[[nodiscard]] std::optional<SheetKeyFault> sheet_key_fault(std::string_view key);

}  // namespace bowfront::io
