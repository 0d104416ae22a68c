#pragma once
/// \file
/// The rows of a text of comma-separated values.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "faults.hpp"

namespace bowfront::io {

/// The most fields of a row that are kept.
inline constexpr std::size_t kMostFields = 100;
/// The longest field, bytes.
inline constexpr std::size_t kMostFieldBytes = 200;

struct CsvField {
    std::string text;  ///< without quotes and without the blanks round it
    Place place;
};

struct CsvRow {
    std::vector<CsvField> fields;
    std::size_t field_count = 0;  ///< with those that were not kept
    Place place;
    bool sound = true;  ///< whether no fault was found in it
};

/// The rows of a text, but for empty ones and lines that begin with `#`. No more than `most_rows`:
/// one row more is a fault, and what follows is not read.
/// Source: RFC 4180; blanks round a field are let go, a line break inside of one is a fault
[[nodiscard]] std::vector<CsvRow> read_csv(std::string_view text, std::size_t most_rows,
                                           Faults& faults);

}  // namespace bowfront::io
