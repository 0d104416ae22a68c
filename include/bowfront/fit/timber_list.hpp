#pragma once
/// \file
/// The timber to buy for a frame: rough sizes of its pieces, board feet and cubic metres.

#include <string>
#include <vector>

#include "bowfront/figure/book.hpp"
#include "bowfront/model/case.hpp"

namespace bowfront {

/// A piece of solid timber as it is finished.
struct TimberPiece {
    std::string id;
    int count = 1;         ///< alike, ≥ 1
    double length = 0;     ///< along the grain, mm
    double width = 0;      ///< across it, mm
    double thickness = 0;  ///< mm
    double volume = 0;     ///< of one, less all that is cut out of it, mm³
};

/// Three sizes, mm.
template <class N>
struct BoardSize {
    N length;
    N width;
    N thickness;
};

/// A line of the list.
template <class N>
struct TimberRow {
    std::string id;
    N count;
    BoardSize<N> finished;
    BoardSize<N> rough;
    N board_feet;  ///< of all that are alike, by rough sizes
    N volume;      ///< the same in m³
};

/// The list.
template <class N>
struct TimberList {
    std::vector<TimberRow<N>> rows;
    N board_feet;       ///< of all rows
    N volume;           ///< m³, by rough sizes
    N finished_volume;  ///< m³, of what is left of it in the case
    N cut_away;         ///< share of the rough volume that is sawn, planed and routed away
};

namespace fit {

/// The list of a case's solid timber, under `timber`.
/// @param pieces  in the order of the parts; at least one
/// Source: rough sizes are finished sizes and the case's allowances; geometry
/// Example: 300 x 42 x 42 mm with 25, 6 and 3 mm more -> 325 x 48 x 45 mm, 0.2975 board feet
template <class N>
[[nodiscard]] TimberList<N> timber_list(const Case& c, const std::vector<TimberPiece>& pieces,
                                        Book<N>& book);

}  // namespace fit
}  // namespace bowfront
