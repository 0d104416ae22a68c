#pragma once
/// \file
/// Sizes as a shop can set them: what is cut by hand goes on the cutting list in whole steps of a
/// saw's fence or a rule, and the fit is checked once more at those sizes.

#include <optional>
#include <vector>

#include "bowfront/base/finding.hpp"
#include "bowfront/figure/workings.hpp"
#include "bowfront/fit/sums.hpp"

namespace bowfront::study {

/// One size, exact and in whole steps. Lengths in mm.
struct ShopSize {
    double exact = 0;
    double size = 0;  ///< whole steps; the exact size where nothing is to be rounded

    /// How much larger the shop's size is; negative where it is smaller.
    [[nodiscard]] double over() const noexcept { return size - exact; }
};

/// What the limits of one pane leave, the least of them, mm; negative where one is broken. Those
/// that its size decides: engagement settled, room, and of a lifted pane its play and its tilt.
struct Slack {
    double nominal = 0;
    double worst = 0;  ///< at the worst of tolerances, spreads and service states
};

/// One pane.
struct PaneShopSizes {
    CaseSide side;
    ShopSize length;  ///< of the blank
    ShopSize width;   ///< of the blank
    /// Trimmed after forming: what it is trimmed to.
    std::optional<ShopSize> trimmed_length;
    std::optional<ShopSize> trimmed_height;
    Slack exact;  ///< of the exact sizes
    Slack slack;  ///< of the shop's sizes, with posts of either length
};

/// A case.
struct ShopSizes {
    double step = 0;
    ShopSize post;  ///< length of the posts
    std::vector<PaneShopSizes> panes;  ///< in the order of the case file
};

/// Which way a size is taken to whole steps.
enum class Rounding { down, up };

/// Whole steps at or under a length, or at or over it. A length that is whole steps but for the
/// rounding of the sums stays.
/// @param length  mm, ≥ 0
/// @param step    mm, > 0
[[nodiscard]] double whole_steps(double length, double step, Rounding rounding);

/// The sizes of everything that decides the fit. A pane's size and the posts' length go whichever
/// way leaves more to the limit that it leaves least to, at worst; down where both leave the same.
/// A blank that is trimmed after forming goes up. A blank that is cut already stays as it is.
/// @param c     free of objections
/// @param sums  `fit::solve(c)`
[[nodiscard]] ShopSizes shop_sizes(const Case& c, const CaseSums<double>& sums);

/// One check for each pane: what the shop's sizes leave of its limits; fails and warns as the other
/// checks do. Where the exact sizes leave less than nothing, nominally or at worst, the shop's must
/// leave no less than those.
[[nodiscard]] std::vector<Finding> shop_checks(const ShopSizes& sizes);

/// Enters the figures `panes/<side>/blank/shop/...` and `shop/...`.
/// @param workings  already holds the sums of the case
void explain_shop_sizes(const Case& c, const ShopSizes& sizes, Workings& workings);

}  // namespace bowfront::study
