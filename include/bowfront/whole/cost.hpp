#pragma once
/// \file
/// What the material of a case and its forms costs: net sizes, a share of waste, prices of the case
/// file.

#include <optional>
#include <string>
#include <vector>

#include "bowfront/figure/book.hpp"
#include "bowfront/model/case.hpp"
#include "bowfront/pattern/part.hpp"

namespace bowfront::whole {

/// One kind of material, or of hardware.
template <class N>
struct CostRow {
    std::string id;              ///< `cherry`, `cast-acrylic-3`, `hardware-1`
    std::string what;            ///< for people: `cast-acrylic 3 mm`
    std::optional<N> thickness;  ///< mm, of sheets and boards
    N net;                       ///< of the parts, in the price's unit
    N quantity;                  ///< with the waste; whole sheets where bought by the sheet
    PriceUnit unit = PriceUnit::each;
    N price;
    N cost;
};

template <class N>
struct CostSums {
    std::string currency;
    N waste;
    std::vector<CostRow<N>> rows;  ///< in the order of the parts; hardware last
    N total;
    std::vector<std::string> not_priced;  ///< materials without a price, for people
};

/// The cost of parts. A part counts by the rectangle that it is sawn from: the box of its pattern,
/// times its thickness where it is of timber.
/// @param c      with prices
/// @param parts  of the case and its forms
/// @throws ContractError where the case has no prices
[[nodiscard]] CostSums<double> cost_sums(const Case& c, const std::vector<Part>& parts);

/// The same sums by the same code, with every figure entered in `workings`, below `cost`.
CostSums<Traced> cost_sums(const Case& c, const std::vector<Part>& parts, Workings& workings);

}  // namespace bowfront::whole
