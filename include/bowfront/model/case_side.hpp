#pragma once
/// \file
/// The sides of a case.

#include <array>
#include <compare>
#include <cstddef>
#include <cstdint>
#include <string_view>

#include "bowfront/base/contract.hpp"

namespace bowfront {

/// A side of a case: its place in the plan, counter-clockwise from above, and its name. Sides of
/// one plan are told apart by their places.
class CaseSide {
  public:
    /// The longest name of a side, bytes.
    static constexpr std::size_t kLongestName = 27;

    /// The sides of a plan that has four.
    static const CaseSide front;
    static const CaseSide right;
    static const CaseSide back;
    static const CaseSide left;

    /// The first side, without a name.
    constexpr CaseSide() = default;
    /// @param place  0 for the first side, under 65536
    /// @param name   at most `kLongestName` bytes
    constexpr CaseSide(std::size_t place, std::string_view name)
        : place_(static_cast<std::uint16_t>(place)), length_(static_cast<std::uint8_t>(name.size())) {
        BOWFRONT_EXPECTS(place <= UINT16_MAX && name.size() <= kLongestName);
        for (std::size_t i = 0; i < name.size(); ++i) {
            name_[i] = name[i];
        }
    }

    [[nodiscard]] constexpr std::size_t place() const noexcept { return place_; }
    /// Valid as long as this side is.
    [[nodiscard]] constexpr std::string_view name() const noexcept { return {name_, length_}; }

    friend constexpr bool operator==(const CaseSide& a, const CaseSide& b) noexcept {
        return a.place_ == b.place_;
    }
    friend constexpr auto operator<=>(const CaseSide& a, const CaseSide& b) noexcept {
        return a.place_ <=> b.place_;
    }

  private:
    std::uint16_t place_ = 0;
    std::uint8_t length_ = 0;
    char name_[kLongestName] = {};
};

inline constexpr CaseSide CaseSide::front{0, "front"};
inline constexpr CaseSide CaseSide::right{1, "right"};
inline constexpr CaseSide CaseSide::back{2, "back"};
inline constexpr CaseSide CaseSide::left{3, "left"};

/// The sides of a plan of four, counter-clockwise from above.
inline constexpr std::array kFourSides{CaseSide::front, CaseSide::right, CaseSide::back,
                                       CaseSide::left};

/// A side's name; valid as long as the side is.
[[nodiscard]] constexpr std::string_view side_text(const CaseSide& side) noexcept {
    return side.name();
}
std::string_view side_text(CaseSide&&) = delete;  // its name would be gone with it

/// Its place among the sides.
[[nodiscard]] constexpr std::size_t index(const CaseSide& side) noexcept { return side.place(); }

}  // namespace bowfront
