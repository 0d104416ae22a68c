#include "bowfront/materials/catalogue.hpp"

#include <algorithm>
#include <cstddef>

#include "bowfront/base/number_text.hpp"
#include "materials/property_table.hpp"

namespace bowfront {
namespace {

constexpr Shown kPercent{.decimals = 4, .as_percent = true};
constexpr Shown kCoefficient{.decimals = 5};
constexpr Shown kWhole{.decimals = 0};

std::string heading(std::string_view name, std::string_view title) {
    return std::string(name).append(": ").append(title);
}

void add_forming(PropertyTable& table, const Forming& forming) {
    table.add("forming, core at least", forming.core_min);
    table.add("forming, oven set to", forming.set);
    table.add("forming, face at most", forming.face_max);
    table.add("drying before forming", forming.drying);
}

void add_forming_changes(PropertyTable& table, const Sheet& sheet) {
    table.add("shrink along", sheet.shrink_along, kPercent);
    table.add("shrink along, +-", sheet.shrink_spread_along, kPercent);
    table.add("shrink across", sheet.shrink_across, kPercent);
    table.add("shrink across, +-", sheet.shrink_spread_across, kPercent);
    table.add("springback of radius", sheet.springback, kPercent);
    table.add("springback, +-", sheet.springback_spread, kPercent);
}

void add_moisture(PropertyTable& table, const MoistureCurve& curve) {
    for (const MoisturePoint& point : curve.points.subspan(1)) {
        const Property growth{.value = point.growth,
                              .unit = "ratio",
                              .source = curve.source,
                              .certainty = curve.certainty,
                              .note = curve.note};
        table.add("growth at " + rounded_text(100 * point.humidity, 0) + " % humidity", growth,
                  kPercent);
    }
}

void add_by_thickness(PropertyTable& table, const Sheet& sheet) {
    for (const double thickness : {2.0, 3.0, 4.0, 5.0, 6.0, 8.0}) {
        const std::string size = rounded_text(thickness, 1) + " mm";
        table.add("thickness of " + size + ", +-", thickness_tolerance(sheet, thickness));
        table.add("drying time of " + size, drying_time(sheet, thickness));
    }
}

// One group of the listing: names in a column, what follows in the next ones.
class Listing {
  public:
    Listing() {
        for (const std::string_view name : material_names()) {
            width_ = std::max(width_, name.size());
        }
    }
    void group(std::string_view title) {
        text_.append(text_.empty() ? "" : "\n").append(title) += '\n';
    }
    void line(std::string_view name, std::string_view title, std::string_view values) {
        text_.append("  ").append(name).append(width_ - name.size() + 2, ' ').append(title);
        if (!values.empty()) {
            text_.append("; ").append(values);
        }
        text_ += '\n';
    }
    [[nodiscard]] const std::string& text() const noexcept { return text_; }

  private:
    std::size_t width_ = 0;
    std::string text_;
};

std::string density_text(const Property& density) {
    return rounded_text(density.value, 0) + " kg/m3";
}

std::string sheet_values(const Sheet& sheet) {
    std::string values = density_text(sheet.density);
    if (sheet.forming) {
        values += ", formed at " + rounded_text(sheet.forming->set.value, 0) + " degC";
    }
    return values;
}

std::string timber_values(const Timber& timber) {
    std::string values;
    if (const auto density = timber.density()) {
        values = density_text(*density) + ", ";
    }
    if (timber.radial_coefficient && timber.tangential_coefficient) {
        values += "moves " + rounded_text(100 * timber.radial_coefficient->value, 3) +
                  " % radially, " + rounded_text(100 * timber.tangential_coefficient->value, 3) +
                  " % tangentially per 1 % moisture";
    }
    return values;
}

}  // namespace

std::vector<std::string_view> material_names() {
    std::vector<std::string_view> names;
    for (const Sheet& sheet : sheets()) {
        names.push_back(sheet.name);
    }
    for (const Timber& timber : timbers()) {
        names.push_back(timber.name);
    }
    for (const Board& board : boards()) {
        names.push_back(board.name);
    }
    return names;
}

std::string list_materials() {
    Listing listing;
    listing.group("Sheets for panes");
    for (const Sheet& sheet : sheets()) {
        listing.line(sheet.name, sheet.title, sheet_values(sheet));
    }
    listing.group("Timbers for the frame");
    for (const Timber& timber : timbers()) {
        listing.line(timber.name, timber.title, timber_values(timber));
    }
    listing.group("Boards for the bending form");
    for (const Board& board : boards()) {
        listing.line(board.name, board.title, density_text(board.density));
    }
    return listing.text();
}

std::string describe(const Sheet& sheet) {
    PropertyTable table(heading(sheet.name, sheet.title));
    table.add("density", sheet.density);
    table.add("modulus of elasticity", sheet.modulus);
    table.add("Poisson's ratio", sheet.poisson);
    table.add("thermal expansion", sheet.expansion, {.decimals = 7});
    table.add("bending strength, short time", sheet.flexural_strength);
    table.add("long-term stress limit", sheet.long_term_stress);
    table.add("cold bend, radius / thickness", sheet.cold_bend_multiple);
    table.add("thermal conductivity", sheet.conductivity);
    table.add("heat capacity", sheet.heat_capacity, kWhole);
    table.add("glass transition", sheet.glass_transition);
    table.add("highest service temperature", sheet.service_max);
    if (sheet.forming) {
        add_forming(table, *sheet.forming);
    }
    add_forming_changes(table, sheet);
    if (sheet.moisture) {
        add_moisture(table, *sheet.moisture);
    }
    add_by_thickness(table, sheet);
    return table.text();
}

std::string describe(const Timber& timber) {
    PropertyTable table(heading(timber.name, timber.title));
    table.add("radial movement", timber.radial_coefficient, kCoefficient);
    table.add("tangential movement", timber.tangential_coefficient, kCoefficient);
    table.add("radial shrinkage", timber.radial_shrinkage, kPercent);
    table.add("tangential shrinkage", timber.tangential_shrinkage, kPercent);
    table.add("specific gravity", timber.specific_gravity);
    table.add("density", timber.density(), kWhole);
    table.add("modulus of elasticity", timber.modulus);
    table.add("modulus of rupture", timber.modulus_of_rupture);
    table.add("compression along the grain", timber.compression_parallel);
    table.add("compression across the grain", timber.compression_perpendicular);
    table.add("shear along the grain", timber.shear);
    table.add("side hardness", timber.hardness);
    return table.text();
}

std::string describe(const Board& board) {
    PropertyTable table(heading(board.name, board.title));
    table.add("density", board.density);
    table.add("modulus of elasticity", board.modulus);
    table.add("bending strength, short time", board.bending_strength);
    for (const double thickness : {1.0, 1.5, 2.0, 3.0, 4.0, 6.0, 9.0, 12.0, 15.0, 18.0}) {
        const std::string size = rounded_text(thickness, 1) + " mm";
        table.add("least radius dry, " + size, bend_radius(board, thickness, BendState::dry));
        table.add("least radius soaked, " + size, bend_radius(board, thickness, BendState::soaked));
    }
    return table.text();
}

}  // namespace bowfront
