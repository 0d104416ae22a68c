#include "bowfront/base/contract.hpp"
#include "shelf_parts.hpp"

namespace bowfront::fit {
namespace {

// Averages of clear specimens hold a quarter in lasting use. From memory.
constexpr double kShareOfRupture = 0.25;
// Timber doubles its sag under a lasting load, acrylic loses up to half its modulus in a year.
// From memory.
constexpr double kCreep = 2;

constexpr std::string_view kTimberLimit =
    "a quarter of the bending strength of clear specimens, for years (from memory)";

std::string creep_of(SheetKind kind) {
    switch (kind) {
        case SheetKind::float_glass:
            return "glass does not creep";
        case SheetKind::cast_acrylic:
        case SheetKind::extruded_acrylic:
            return "the modulus of acrylic falls to about half over a year of load (from memory)";
        case SheetKind::polycarbonate:
        case SheetKind::petg:
            break;
    }
    return "taken as for acrylic; no source";
}

ShelfMaterial of_sheet(const Sheet& sheet) {
    BOWFRONT_EXPECTS(sheet.long_term_stress.has_value());
    ShelfMaterial out;
    out.density = sheet.density;
    out.modulus = sheet.modulus;
    out.stress_limit = *sheet.long_term_stress;
    out.creep = sheet.kind == SheetKind::float_glass ? 1 : kCreep;
    out.creep_source = creep_of(sheet.kind);
    out.limit_source = "the sheet's limit of lasting stress";
    return out;
}

}  // namespace

ShelfMaterial shelf_material(const ShelfSpec& spec) {
    BOWFRONT_EXPECTS(spec.sheet != nullptr || spec.board != nullptr || spec.timber != nullptr);
    if (spec.sheet != nullptr) {
        return of_sheet(*spec.sheet);
    }
    ShelfMaterial out;
    out.of_strength = kShareOfRupture;
    out.creep = kCreep;
    out.creep_source = "lasting load doubles the sag of timber (from memory)";
    out.limit_source = kTimberLimit;
    if (spec.board != nullptr) {
        out.density = spec.board->density;
        out.modulus = *spec.board->modulus;
        out.stress_limit = *spec.board->bending_strength;
    } else {
        out.density = *spec.timber->density();
        out.modulus = *spec.timber->modulus;
        out.stress_limit = *spec.timber->modulus_of_rupture;
    }
    return out;
}

}  // namespace bowfront::fit
