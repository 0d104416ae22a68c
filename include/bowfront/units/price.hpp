#pragma once
/// \file
/// Prices as people write them: so much of a currency for one of a unit, `62 /m2`.

#include <optional>
#include <string_view>

#include "bowfront/units/quantity.hpp"

namespace bowfront {

/// What a price is for one of.
enum class PriceUnit { square_metre, square_foot, sheet, cubic_metre, board_foot, each };

/// `m2`, `ft2`, `sheet`, `m3`, `bf`, `each`.
[[nodiscard]] std::string_view price_unit_text(PriceUnit unit) noexcept;

/// What things are counted by.
enum class Measure { area, volume, sheets, pieces };

/// What a unit of price counts.
[[nodiscard]] Measure measure_of(PriceUnit unit) noexcept;

/// How large one of a unit is: mm² of an area, mm³ of a volume; 1 of sheets and pieces, which have
/// no size of their own.
/// Source: 1 ft = 304.8 mm, international yard and pound agreement of 1959; a board foot is a
/// square foot one inch thick, 144 in³
[[nodiscard]] double unit_size(PriceUnit unit) noexcept;

/// A price: an amount of money, in a currency that is told elsewhere, for one of a unit.
struct Price {
    double amount = 0;  ///< ≥ 0
    PriceUnit unit = PriceUnit::each;
};

/// A price, or the reason why there is none.
class PriceRead {
  public:
    explicit PriceRead(Price price) noexcept : price_(price) {}
    explicit PriceRead(QuantityFault fault) noexcept : fault_(std::move(fault)) {}

    [[nodiscard]] explicit operator bool() const noexcept { return price_.has_value(); }
    /// @throws std::bad_optional_access where there is a fault instead
    [[nodiscard]] Price value() const { return price_.value(); }
    /// Empty where there is a value.
    [[nodiscard]] const QuantityFault& fault() const noexcept { return fault_; }

  private:
    std::optional<Price> price_;
    QuantityFault fault_;
};

/// A price: a number without a sign, `/` or `per`, and a unit. Units `m2`, `ft2`, `sheet`, `m3`,
/// `bf` (also `board foot`, `board ft`), `each` (also `piece`); `m²`, `ft²`, `m³` are taken, too.
/// Example: `62 /m2` -> 62 for a square metre; `9.50 per board foot` -> 9.5 for a board foot
[[nodiscard]] PriceRead parse_price(std::string_view text);

}  // namespace bowfront
