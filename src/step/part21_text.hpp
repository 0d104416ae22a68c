#pragma once
/// \file
/// Names in the clear text of ISO 10303-21, whose strings are ASCII with escapes.

#include <string>
#include <string_view>

namespace bowfront::step {

/// A name as the kernel may be handed it: UTF-8, control characters as blanks.
[[nodiscard]] std::string printable(std::string_view name);

/// A file's text with its strings in one piece each and every character outside ASCII as `\X2\` or
/// `\X4\` escape (ISO 10303-21, 6.4.3.3). The kernel writes raw UTF-8 and breaks long strings; and
/// it reads an apostrophe before a comma or a bracket as the string's end, so that one is escaped.
[[nodiscard]] std::string escaped(std::string_view text);

}  // namespace bowfront::step
