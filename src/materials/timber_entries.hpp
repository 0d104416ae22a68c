#pragma once
/// \file
/// The rows of the library of timbers.

#include <array>

#include "bowfront/materials/timber.hpp"
#include "materials/property_terms.hpp"

namespace bowfront {

/// C = 1 / (3000/S - 20), S the shrinkage in percent; see movement_coefficient().
constexpr double coefficient_of_shrinkage(double shrinkage) {
    return 1.0 / (3000.0 / (100.0 * shrinkage) - 20.0);
}

namespace timber_terms {

constexpr std::string_view kPerPercent = "1/% MC";

constexpr Property printed(double coefficient) {
    return property(coefficient, kPerPercent, sourcing::seen(source::kMovementTable));
}
constexpr Property ruled(double shrinkage_percent) {
    return property(coefficient_of_shrinkage(shrinkage_percent / 100), kPerPercent,
                    sourcing::computed(source::kMovementRule));
}
constexpr Property shrinkage(double percent) {
    return ratio(percent / 100, sourcing::seen(source::kShrinkageTable));
}
constexpr Property gravity(double value) {
    return ratio(value, sourcing::reproduced(source::kStrengthTable));
}
constexpr Property strength(double value) {
    return stress(value, sourcing::reproduced(source::kStrengthTable));
}
constexpr Property hardness(double value) {
    return property(value, "N", sourcing::reproduced(source::kStrengthTable));
}

constexpr std::string_view kRedOakRow = "row of northern red oak, Quercus rubra";
constexpr std::string_view kWhiteOakRow = "row of the species white oak, Quercus alba";
constexpr std::string_view kGroupAverage = "average of the commercial group";
constexpr Sourcing kImportedShrinkage = sourcing::reproduced(source::kImportedShrinkageTable);
constexpr Sourcing kImportedStrength{source::kImportedStrengthTable, Certainty::remembered};
constexpr Sourcing kRememberedMovement{source::kMovementTable, Certainty::remembered};
constexpr std::string_view kMahoganyConflict =
    "conflict: the coefficients 0.00172 and 0.00238 are from memory of Table 13-5, while the "
    "shrinkage of 3.0 and 4.1 % (Table 4-4) gives 0.00102 and 0.00141; the larger are used";

}  // namespace timber_terms

inline constexpr std::array kTimbers = [] {
    using namespace timber_terms;
    return std::array{
        Timber{.name = "cherry",
               .title = "black cherry (Prunus serotina)",
               .radial_coefficient = printed(0.00126),
               .tangential_coefficient = printed(0.00248),
               .radial_shrinkage = shrinkage(3.7),
               .tangential_shrinkage = shrinkage(7.1),
               .specific_gravity = gravity(0.50),
               .modulus = strength(10300),
               .modulus_of_rupture = strength(85),
               .compression_parallel = strength(49.0),
               .compression_perpendicular = strength(4.8),
               .shear = strength(11.7),
               .hardness = hardness(4200)},
        Timber{.name = "walnut",
               .title = "black walnut (Juglans nigra)",
               .radial_coefficient = printed(0.00190),
               .tangential_coefficient = printed(0.00274),
               .radial_shrinkage = shrinkage(5.5),
               .tangential_shrinkage = shrinkage(7.8),
               .specific_gravity = gravity(0.55),
               .modulus = strength(11600),
               .modulus_of_rupture = strength(101),
               .compression_parallel = strength(52.3),
               .compression_perpendicular = strength(7.0),
               .shear = strength(9.4),
               .hardness = hardness(4500)},
        Timber{.name = "white-oak",
               .title = "white oak, commercial (Quercus, white oak group)",
               .radial_coefficient = noted(printed(0.00180), kGroupAverage),
               .tangential_coefficient = noted(printed(0.00365), kGroupAverage),
               .radial_shrinkage = noted(shrinkage(5.6), kWhiteOakRow),
               .tangential_shrinkage = noted(shrinkage(10.5), kWhiteOakRow),
               .specific_gravity = noted(gravity(0.68), kWhiteOakRow),
               .modulus = noted(strength(12300), kWhiteOakRow),
               .modulus_of_rupture = noted(strength(105), kWhiteOakRow),
               .compression_parallel = noted(strength(51.3), kWhiteOakRow),
               .compression_perpendicular = noted(strength(7.4), kWhiteOakRow),
               .shear = noted(strength(13.8), kWhiteOakRow),
               .hardness = noted(hardness(6000), kWhiteOakRow)},
        Timber{.name = "red-oak",
               .title = "red oak, commercial (Quercus, red oak group)",
               .radial_coefficient = noted(printed(0.00158), kGroupAverage),
               .tangential_coefficient = noted(printed(0.00369), kGroupAverage),
               .specific_gravity = noted(gravity(0.63), kRedOakRow),
               .modulus = noted(strength(12500), kRedOakRow),
               .modulus_of_rupture = noted(strength(99), kRedOakRow),
               .compression_parallel = noted(strength(46.6), kRedOakRow),
               .compression_perpendicular = noted(strength(7.0), kRedOakRow),
               .shear = noted(strength(12.3), kRedOakRow),
               .hardness = noted(hardness(5700), kRedOakRow)},
        Timber{.name = "maple",
               .title = "sugar (hard) maple (Acer saccharum)",
               .radial_coefficient = printed(0.00165),
               .tangential_coefficient = printed(0.00353),
               .radial_shrinkage = shrinkage(4.8),
               .tangential_shrinkage = shrinkage(9.9),
               .specific_gravity = gravity(0.63),
               .modulus = strength(12600),
               .modulus_of_rupture = strength(109),
               .compression_parallel = strength(54.0),
               .compression_perpendicular = strength(10.1),
               .shear = strength(16.1),
               .hardness = hardness(6400)},
        Timber{.name = "red-maple",
               .title = "red (soft) maple (Acer rubrum)",
               .radial_coefficient = printed(0.00137),
               .tangential_coefficient = printed(0.00289),
               .specific_gravity = gravity(0.54),
               .modulus = strength(11300),
               .modulus_of_rupture = strength(92),
               .compression_parallel = strength(45.1),
               .compression_perpendicular = strength(6.9),
               .shear = strength(12.8),
               .hardness = hardness(4200)},
        Timber{.name = "ash",
               .title = "white ash (Fraxinus americana)",
               .radial_coefficient = printed(0.00169),
               .tangential_coefficient = printed(0.00274),
               .radial_shrinkage = shrinkage(4.9),
               .tangential_shrinkage = shrinkage(7.8),
               .specific_gravity = gravity(0.60),
               .modulus = strength(12000),
               .modulus_of_rupture = noted(between(strength(103), 103, 106),
                                           "a print with errata of 2018 is quoted with 106 MPa"),
               .compression_parallel = strength(51.1),
               .compression_perpendicular = strength(8.0),
               .shear = strength(13.2),
               .hardness = hardness(5900)},
        Timber{.name = "beech",
               .title = "American beech (Fagus grandifolia)",
               .radial_coefficient = printed(0.00190),
               .tangential_coefficient = printed(0.00431),
               .radial_shrinkage = shrinkage(5.5),
               .tangential_shrinkage = shrinkage(11.9),
               .specific_gravity = gravity(0.64),
               .modulus = strength(11900),
               .modulus_of_rupture = strength(103),
               .compression_parallel = strength(50.3),
               .compression_perpendicular = strength(7.0),
               .shear = strength(13.9),
               .hardness = hardness(5800)},
        Timber{.name = "basswood",
               .title = "American basswood (Tilia americana)",
               .radial_coefficient = printed(0.00230),
               .tangential_coefficient = printed(0.00330),
               .radial_shrinkage = shrinkage(6.6),
               .tangential_shrinkage = shrinkage(9.3),
               .specific_gravity = gravity(0.37),
               .modulus = strength(10100),
               .modulus_of_rupture = strength(60),
               .compression_parallel = strength(32.6),
               .compression_perpendicular = strength(2.6),
               .shear = strength(6.8),
               .hardness = hardness(1800)},
        Timber{.name = "birch",
               .title = "yellow birch (Betula alleghaniensis)",
               .radial_coefficient = printed(0.00256),
               .tangential_coefficient = printed(0.00338),
               .radial_shrinkage = shrinkage(7.3),
               .tangential_shrinkage = shrinkage(9.5),
               .specific_gravity = gravity(0.62),
               .modulus = strength(13900),
               .modulus_of_rupture = strength(114),
               .compression_parallel = strength(56.3),
               .compression_perpendicular = strength(6.7),
               .shear = strength(13.0),
               .hardness = hardness(5600)},
        Timber{.name = "yellow-poplar",
               .title = "yellow-poplar, tulipwood (Liriodendron tulipifera)",
               .radial_coefficient = ruled(4.6),
               .tangential_coefficient = ruled(8.2),
               .radial_shrinkage = shrinkage(4.6),
               .tangential_shrinkage = shrinkage(8.2),
               .specific_gravity = gravity(0.42),
               .modulus = strength(10900),
               .modulus_of_rupture = strength(70),
               .compression_parallel = strength(38.2),
               .compression_perpendicular = strength(3.4),
               .shear = strength(8.2),
               .hardness = hardness(2400)},
        Timber{
            .name = "mahogany",
            .title = "true mahogany (Swietenia macrophylla)",
            .radial_coefficient = noted(between(property(0.00172, kPerPercent, kRememberedMovement),
                                                coefficient_of_shrinkage(0.030), 0.00172),
                                        kMahoganyConflict),
            .tangential_coefficient =
                noted(between(property(0.00238, kPerPercent, kRememberedMovement),
                              coefficient_of_shrinkage(0.041), 0.00238),
                      kMahoganyConflict),
            .radial_shrinkage = noted(ratio(0.030, kImportedShrinkage), kMahoganyConflict),
            .tangential_shrinkage = noted(ratio(0.041, kImportedShrinkage), kMahoganyConflict),
            .specific_gravity = ratio(0.45, kImportedStrength),
            .modulus = stress(10300, kImportedStrength),
            .modulus_of_rupture = stress(79, kImportedStrength),
            .compression_parallel = stress(46.7, kImportedStrength),
            .shear = stress(8.5, kImportedStrength),
            .hardness = property(3600, "N", kImportedStrength)},
        Timber{.name = "douglas-fir",
               .title = "Douglas-fir, coast (Pseudotsuga menziesii)",
               .radial_coefficient = ruled(4.8),
               .tangential_coefficient = ruled(7.6),
               .radial_shrinkage = shrinkage(4.8),
               .tangential_shrinkage = shrinkage(7.6),
               .specific_gravity = gravity(0.48),
               .modulus = strength(13400),
               .modulus_of_rupture = strength(85),
               .compression_parallel = strength(49.9),
               .compression_perpendicular = strength(5.5),
               .shear = strength(7.8),
               .hardness = hardness(3200)},
        Timber{.name = "douglas-fir-interior",
               .title = "Douglas-fir, interior north (Pseudotsuga menziesii)",
               .radial_coefficient = ruled(3.8),
               .tangential_coefficient = ruled(6.9),
               .radial_shrinkage = shrinkage(3.8),
               .tangential_shrinkage = shrinkage(6.9)},
        Timber{
            .name = "white-pine",
            .title = "eastern white pine (Pinus strobus)",
            .radial_coefficient = property(0.00071, kPerPercent, kRememberedMovement),
            .tangential_coefficient = property(0.00212, kPerPercent, kRememberedMovement),
            .radial_shrinkage = ratio(0.021, {source::kShrinkageTable, Certainty::remembered}),
            .tangential_shrinkage = ratio(0.061, {source::kShrinkageTable, Certainty::remembered}),
            .specific_gravity = gravity(0.35),
            .modulus = strength(8500),
            .modulus_of_rupture = strength(59),
            .compression_parallel = strength(33.1),
            .compression_perpendicular = strength(3.0),
            .shear = strength(6.2),
            .hardness = hardness(1700)},
    };
}();

}  // namespace bowfront
