#pragma once
/// \file
/// The publications behind the library, each called what it is.

#include <string_view>

namespace bowfront::source {

// Acrylic.
inline constexpr std::string_view kAcrylicDataSheets = "data sheets of acrylic sheet";
inline constexpr std::string_view kFacilitiesCriteria =
    "US facilities criteria 4-159-01, Table 3-1";
inline constexpr std::string_view kThermoformingBrief = "a sheet maker's thermoforming brief";
inline constexpr std::string_view kFabricationManual = "a sheet maker's fabrication manual";
inline constexpr std::string_view kDesignStresses =
    "a distributor's table of design stresses for acrylic sheet";
inline constexpr std::string_view kGlazingExpansion =
    "a sheet maker's note on the expansion of acrylic glazing";
inline constexpr std::string_view kMoistureSpecification =
    "a sheet maker's specification of extruded acrylic sheet";
inline constexpr std::string_view kColdBending = "a sheet maker's note on cold bending";
inline constexpr std::string_view kServiceTemperatures =
    "a sheet maker's page on acrylic and temperature";
inline constexpr std::string_view kAcrylicForming =
    "forming ranges of sheet makers, fabricators and a distributor";
inline constexpr std::string_view kSpecificHeat =
    "NIST Standard Reference Database 69, poly(methyl methacrylate), specific heat";

// Polycarbonate and PETG.
inline constexpr std::string_view kPolycarbonateDataSheets = "data sheets of polycarbonate sheet";
inline constexpr std::string_view kPolycarbonateForming = "a fabricator's forming guide";
inline constexpr std::string_view kPolycarbonateColdForming =
    "a fabricator's and a distributor's notes on cold forming";
inline constexpr std::string_view kPolycarbonateDrying =
    "a sheet maker's processing manual for polycarbonate";
inline constexpr std::string_view kPetgDataSheet = "a sheet maker's data sheet of PETG";
inline constexpr std::string_view kPetgForming = "a dealer's data sheet of PETG sheet";
inline constexpr std::string_view kFabricatorNotes = "a fabricator's notes on forming plastics";

// Glass.
inline constexpr std::string_view kGlassProperties = "EN 572 as reproduced by a glass processor";
inline constexpr std::string_view kGlassTolerances =
    "EN 12150 (an older edition) as reproduced by a glass processor";
inline constexpr std::string_view kGlassHandbook = "a glass maker's handbook";

// Thickness of acrylic.
inline constexpr std::string_view kCastThickness = "ISO 7823-1 as reproduced by a sheet maker";
inline constexpr std::string_view kExtrudedThickness = "ISO 7823-2 as reproduced by a sheet maker";

// Timber and boards.
inline constexpr std::string_view kMovementTable = "Wood Handbook FPL-GTR-190, Table 13-5";
inline constexpr std::string_view kMovementRule =
    "C = 1/(3000/S - 20) from the shrinkage in Wood Handbook FPL-GTR-190, Table 4-3";
inline constexpr std::string_view kShrinkageTable = "Wood Handbook FPL-GTR-190, Table 4-3";
inline constexpr std::string_view kImportedShrinkageTable = "Wood Handbook FPL-GTR-190, Table 4-4";
inline constexpr std::string_view kStrengthTable = "Wood Handbook FPL-GTR-190, Table 5-3a";
inline constexpr std::string_view kImportedStrengthTable = "Wood Handbook FPL-GTR-190, Table 5-5a";
inline constexpr std::string_view kAircraftPlywood =
    "FAA Advisory Circular 43.13-1B, Table 1-2, as reproduced";
inline constexpr std::string_view kConstructionPlywood =
    "an industry association's bending table, as reproduced in a concrete forming journal";

inline constexpr std::string_view kPlywoodStrength =
    "J. Korean Wood Sci. Technol. 53(4), p. 429, Table 3 (five plywoods, along the face grain)";

inline constexpr std::string_view kNoDocument = "no document seen";

}  // namespace bowfront::source
