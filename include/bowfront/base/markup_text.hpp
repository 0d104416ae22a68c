#pragma once
/// \file
/// Text as it stands in HTML and SVG.

#include <string>
#include <string_view>

namespace bowfront {

/// A text with `&`, `<`, `>` and `"` as entities, for content and for quoted attributes.
[[nodiscard]] std::string markup_text(std::string_view text);

}  // namespace bowfront
