#pragma once
/// \file
/// What was measured on samples of a real sheet: marked coupons before and after heating, and test
/// arcs bent over a form. Lengths in mm; each carries the line of the file where it stands.

#include <cstddef>
#include <string_view>
#include <variant>
#include <vector>

namespace bowfront {

/// What a case file takes for a sheet, as ratios; `spread` is ±.
struct SheetRange {
    double low = 0;
    double high = 0;
    double most_spread = 0;
};
/// Shrink, along or across. Source: choice; five times what any sheet of the library does
inline constexpr SheetRange kShrinkRange{-0.1, 0.2, 0.1};
/// Springback. Source: choice; far beyond what a sheet that was heated through does
inline constexpr SheetRange kSpringbackRange{-0.2, 0.5, 0.2};

/// Direction in a sheet: along its extrusion or across it.
enum class SheetDirection { along, across };

/// `along`, `across`.
[[nodiscard]] std::string_view direction_text(SheetDirection direction) noexcept;

/// A strip with two marks, the distance between them measured twice at room temperature.
struct Coupon {
    SheetDirection direction = SheetDirection::along;
    double before = 0;     ///< as cut, > 0
    double after = 0;      ///< heated to forming temperature without restraint and cooled, > 0
    std::size_t line = 0;  ///< from 1

    /// Loss of length over the length before; negative where the strip grew.
    /// Source: definition of shrink
    [[nodiscard]] constexpr double shrink() const noexcept { return (before - after) / before; }
};

/// A strip bent over a form and released, measured on its inside (concave) face at room
/// temperature: that is the face which lay on the form.
struct TestArc {
    double radius_on_form = 0;  ///< of the face that the strip lay on: cover cloth included, > 0
    double chord = 0;           ///< between two points of the inside face, > 0
    double rise = 0;            ///< of the inside face over that chord, > 0
    std::size_t line = 0;       ///< from 1

    /// Radius of the inside face after release, mm.
    /// Source:  geometry of the circle, R = (c²/4 + f²)/(2f)
    /// Example: chord 300 mm, rise 27.4 mm -> 424.284 mm
    [[nodiscard]] constexpr double inside_radius() const noexcept {
        return chord / rise * chord / 8 + rise / 2;
    }
    /// Growth of the radius on release, over the radius on the form.
    /// Source: definition of springback
    [[nodiscard]] constexpr double springback() const noexcept {
        return (inside_radius() - radius_on_form) / radius_on_form;
    }
};

/// The measurements of one file, in its order: all of one kind, at least one.
using Measurements = std::variant<std::vector<Coupon>, std::vector<TestArc>>;

}  // namespace bowfront
