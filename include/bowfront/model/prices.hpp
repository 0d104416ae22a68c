#pragma once
/// \file
/// What material and hardware cost the maker. Prices have no say in any sum of the fit.

#include <optional>
#include <string>
#include <vector>

#include "bowfront/base/origin.hpp"
#include "bowfront/units/price.hpp"

namespace bowfront {

/// The price of a material, or of one thickness of it.
struct MaterialPrice {
    std::string material;             ///< a timber, board or sheet of the library, or an own sheet
    std::optional<double> thickness;  ///< mm, > 0; every thickness where left out
    Sourced<double> amount;           ///< for one of the unit, ≥ 0
    PriceUnit unit = PriceUnit::square_metre;  ///< by volume for timber, else by area or the sheet
};

/// Screws, hinges, glue: what is bought by the piece.
struct Hardware {
    std::string name;
    int count = 1;           ///< ≥ 1
    Sourced<double> amount;  ///< for one, ≥ 0
};

struct Prices {
    std::string currency;   ///< as it is printed: `EUR`
    Sourced<double> waste;  ///< bought beyond the net size, as a share of it, 0 to 5
    std::vector<MaterialPrice> materials;  ///< no two of one material and thickness
    std::vector<Hardware> hardware;
};

}  // namespace bowfront
