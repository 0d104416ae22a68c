#pragma once
/// \file
/// What may not reach a cutter.

#include "bowfront/pattern/part.hpp"

namespace bowfront::dxf {

/// The shortest segment that is written, mm: a cutter makes nothing of less, and some stop at it.
inline constexpr double kShortest = 0.01;

/// Refuses a pattern that would be cut wrong: a number that is not finite, a segment under
/// `kShortest`, an outline without area, one that meets itself or another outline of its region,
/// a chain with a gap, one thing twice on a layer, a size that is not positive.
/// @throws ContractError that names the layer, the fault and its place
void expect_sound(const Pattern& pattern);

}  // namespace bowfront::dxf
