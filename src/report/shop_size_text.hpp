#pragma once
/// \file
/// Sizes in whole steps of a shop's settings, as people read them.

#include <string>

#include "bowfront/study/shop_sizes.hpp"

namespace bowfront::report {

/// `550.5 mm`; in inches and a fraction where the step is whole 64ths of an inch.
/// @param step  mm, > 0
[[nodiscard]] std::string shop_size_text(double size, double step);

/// How far a size is from the exact one: `0.47 mm under`, `0.02 mm over`, `exact`.
[[nodiscard]] std::string over_text(const study::ShopSize& size);

/// Two sizes with what they are over or under: `550.5 x 399 mm (0.47 and 0.49 mm under)`.
[[nodiscard]] std::string shop_sizes_text(const study::ShopSize& first,
                                          const study::ShopSize& second, double step);

}  // namespace bowfront::report
