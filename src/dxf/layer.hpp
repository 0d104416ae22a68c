#pragma once
/// \file
/// The layers that this tool writes and reads back: one for each operation and depth.

#include <string>
#include <string_view>
#include <vector>

namespace bowfront::dxf {

inline constexpr std::string_view kOuterLayer = "profile-outer";
inline constexpr std::string_view kInnerLayer = "profile-inner";
inline constexpr std::string_view kScribeLayer = "scribe";
inline constexpr std::string_view kLabelLayer = "label";

/// A layer with a colour of its own, by which eyes tell it from the others; it means nothing else.
struct Layer {
    std::string name;
    int colour = 0;  ///< colour index of the format, 1 to 249
};

/// Gives each name its colour. @param names  without repeats
[[nodiscard]] std::vector<Layer> coloured(const std::vector<std::string>& names);

}  // namespace bowfront::dxf
