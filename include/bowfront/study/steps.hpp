#pragma once
/// \file
/// Evenly spaced decimal numbers, free of rounding: 0 to 1 by 0.1 are eleven, and the fourth is 0.3.

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

namespace bowfront::study {

/// The most numbers in one row, and the most variants in one sweep.
inline constexpr std::size_t kMostVariants = 10'000'000;

/// FROM, FROM + STEP and so on, up to TO; TO itself where a whole number of steps reaches it.
class Steps {
  public:
    /// @param from, to, step  decimals as `12`, `-0.5` or `1e-3`
    /// @throws InputError for a text that is no such number or has over 9 digits on either side of
    ///         the point, a step of 0 or away from `to`, more than kMostVariants numbers
    Steps(std::string_view from, std::string_view to, std::string_view step);

    /// How many there are, ≥ 1.
    [[nodiscard]] std::size_t count() const noexcept { return count_; }
    /// The number at a place, from 0: shortest decimal text.
    /// @throws ContractError for a place from `count()` on
    [[nodiscard]] std::string text(std::size_t place) const;
    /// The same as a number.
    [[nodiscard]] double number(std::size_t place) const;

  private:
    std::int64_t from_ = 0;  // in units of the last decimal
    std::int64_t step_ = 0;
    std::size_t count_ = 1;
    int decimals_ = 0;
};

}  // namespace bowfront::study
