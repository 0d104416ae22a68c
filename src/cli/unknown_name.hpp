#pragma once
/// \file
/// The answer to a name on the command line that nothing bears.

#include <span>
#include <string>
#include <string_view>

namespace bowfront::cli {

/// Says so, with the name that was likely meant, or with all there are.
/// @param kind  what the name is of, as `material`
/// @throws InputError always
[[noreturn]] void refuse_unknown(std::string_view kind, const std::string& name,
                                 std::span<const std::string_view> known);

}  // namespace bowfront::cli
