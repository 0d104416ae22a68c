#include "bowfront/materials/sheet.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "bowfront/base/contract.hpp"
#include "materials/acrylic_sheets.hpp"
#include "materials/float_glass_sheet.hpp"
#include "materials/petg_sheet.hpp"
#include "materials/polycarbonate_sheet.hpp"

namespace bowfront {
namespace {

constexpr std::array kSheets{kCastAcrylic, kExtrudedAcrylic, kPolycarbonate, kPetg, kFloatGlass};

struct GlassTolerance {
    double thickest;  // mm
    double tolerance;
};
constexpr std::array kGlassTolerances{GlassTolerance{6, 0.2}, GlassTolerance{12, 0.3},
                                      GlassTolerance{15, 0.5}, GlassTolerance{19, 1.0}};
constexpr double kThinnestGlass = 3;  // mm, first row of the table

struct DryingRow {
    double thickness;  // mm
    double hours;
};
constexpr std::array kPolycarbonateDryingRows{DryingRow{1, 1.5}, DryingRow{2, 4},  DryingRow{3, 7},
                                              DryingRow{4, 12},  DryingRow{5, 18}, DryingRow{6, 26},
                                              DryingRow{8, 45}};

Property cast_thickness(double thickness) {
    return property(0.4 + 0.1 * thickness, "mm", sourcing::reproduced(source::kCastThickness));
}

Property extruded_thickness(double thickness, Sourcing from) {
    constexpr double kThickFrom = 3;  // mm
    return property(thickness < kThickFrom ? 0.10 * thickness : 0.05 * thickness, "mm", from);
}

Property glass_thickness(double thickness) {
    const auto row = std::find_if(kGlassTolerances.begin(), kGlassTolerances.end(),
                                  [&](const auto& r) { return thickness <= r.thickest; });
    if (row != kGlassTolerances.end() && thickness >= kThinnestGlass) {
        return property(row->tolerance, "mm", sourcing::reproduced(source::kGlassTolerances));
    }
    const double nearest = thickness < kThinnestGlass ? kGlassTolerances.front().tolerance
                                                      : kGlassTolerances.back().tolerance;
    return noted(property(nearest, "mm", sourcing::choice(source::kGlassTolerances)),
                 "the table runs from 3 to 19 mm; its nearest row is taken");
}

}  // namespace

std::span<const Sheet> sheets() noexcept {
    return kSheets;
}

const Sheet* find_sheet(std::string_view name) noexcept {
    const auto found = std::find_if(kSheets.begin(), kSheets.end(),
                                    [&](const Sheet& sheet) { return sheet.name == name; });
    return found == kSheets.end() ? nullptr : &*found;
}

Property thickness_tolerance(const Sheet& sheet, double thickness) {
    BOWFRONT_EXPECTS(thickness > 0 && std::isfinite(thickness));
    switch (sheet.kind) {
        case SheetKind::cast_acrylic:
            return cast_thickness(thickness);
        case SheetKind::extruded_acrylic:
            return extruded_thickness(thickness, sourcing::reproduced(source::kExtrudedThickness));
        case SheetKind::float_glass:
            return glass_thickness(thickness);
        case SheetKind::polycarbonate:
        case SheetKind::petg:
            break;
    }
    return noted(extruded_thickness(thickness, sourcing::choice(source::kExtrudedThickness)),
                 "extruded acrylic's rule: no table for this sheet was read, and it is extruded "
                 "too; measure the sheet");
}

double moisture_growth(const Sheet& sheet, double humidity) {
    BOWFRONT_EXPECTS(humidity >= 0 && humidity <= 1);
    if (!sheet.moisture) {
        return 0;
    }
    const auto points = sheet.moisture->points;
    const auto above = std::find_if(points.begin() + 1, points.end() - 1,
                                    [&](const auto& point) { return humidity <= point.humidity; });
    const MoisturePoint& low = *(above - 1);
    const double part = (humidity - low.humidity) / (above->humidity - low.humidity);
    return std::lerp(low.growth, above->growth, part);
}

std::optional<Property> drying_time(const Sheet& sheet, double thickness) {
    BOWFRONT_EXPECTS(thickness > 0 && std::isfinite(thickness));
    const auto& rows = kPolycarbonateDryingRows;
    if (sheet.kind != SheetKind::polycarbonate || thickness < rows.front().thickness ||
        thickness > rows.back().thickness) {
        return std::nullopt;
    }
    const auto above = std::find_if(rows.begin() + 1, rows.end(),
                                    [&](const auto& row) { return thickness <= row.thickness; });
    const DryingRow& low = *(above - 1);
    const double part = (thickness - low.thickness) / (above->thickness - low.thickness);
    return property(std::lerp(low.hours, above->hours, part), "h",
                    sourcing::seen(source::kPolycarbonateDrying));
}

}  // namespace bowfront
