#pragma once
/// \file
/// The order of work, with the places where measuring comes before cutting, and the card that is
/// filled in there: as a file for `inspect`, and as a page for paper. Both have the same fields.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "bowfront/fit/sums.hpp"
#include "bowfront/model/case.hpp"

namespace bowfront::report {

/// One size to measure. Lengths in mm.
struct CardField {
    std::string_view list;    ///< `panes`, `openings` or `grooves`, as in a file of measurements
    CaseSide side;
    std::string_view object;  ///< `blank` or `formed`; empty where the key stands in the side's own
    std::string_view key;
    std::string what;         ///< in words
    bool several = false;     ///< to be measured in several places
    double drawn = 0;
    /// From where to where the design's worst case holds; empty where there is no limit on that side.
    std::optional<double> low;
    std::optional<double> high;
};

/// One step of the work.
struct WorkStep {
    std::string step;
    std::string hold;               ///< what to measure before going on; empty where nothing is
    std::vector<CardField> fields;  ///< to write down then
};

/// The steps of a case in their order. What can't be changed any more comes first, and what is
/// easily fitted to it last: a bent pane before the grooves that it stands in.
/// @param sums  `fit::solve(c)`
[[nodiscard]] std::vector<WorkStep> order_of_work(const Case& c, const CaseSums<double>& sums);

/// Every field of the card, in the order of a file of measurements.
/// @param sums  `fit::solve(c)`
[[nodiscard]] std::vector<CardField> card_fields(const Case& c, const CaseSums<double>& sums);

/// A size in the case's unit: `12 mm`.
[[nodiscard]] std::string card_length(double millimetres, LengthUnit unit);

/// From where to where a field may be, in words and in the case's unit: `11.8 to 12.2 mm`.
[[nodiscard]] std::string window_text(const CardField& field, LengthUnit unit);

/// A file of measurements to fill in (schemas/measured.schema.json): every size of every pane,
/// `null` until it is measured, with the design's size and its window as a comment.
/// @param sums  `fit::solve(c)`
/// @param mark  stands at its top, on one line; nothing where empty
[[nodiscard]] std::string measuring_card(const Case& c, const CaseSums<double>& sums,
                                         std::string_view mark = {});

/// The same on paper: an HTML page for A4 with the order of work, its hold points, and a place to
/// write each size of the card.
/// @param sums  `fit::solve(c)`
/// @param mark  stands under its heading; nothing where empty
[[nodiscard]] std::string measuring_page(const Case& c, const CaseSums<double>& sums,
                                         std::string_view mark = {});

}  // namespace bowfront::report
