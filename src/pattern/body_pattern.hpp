#pragma once
/// \file
/// The pattern of a part whose outline is its body's section.

#include "bowfront/pattern/part.hpp"

namespace bowfront::pattern {

/// What the cutter does to the body's face that has recesses and bores, seen from that side.
[[nodiscard]] Pattern pattern_of(const Body& body);

}  // namespace bowfront::pattern
