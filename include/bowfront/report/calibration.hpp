#pragma once
/// \file
/// What people and programs are told of measured samples: the entry for the case file, the table.

#include <string>
#include <string_view>
#include <vector>

#include "bowfront/materials/sheet.hpp"
#include "bowfront/study/calibrate.hpp"

namespace bowfront::report {

/// All that is told of a calibration. References must outlive the call.
struct CalibrationContent {
    const std::vector<study::Series>& series;
    const Sheet& like;  ///< for what was not measured
    std::string key;    ///< of the sheet in the case file
};

/// `shrink along`, `shrink across`, `springback`.
[[nodiscard]] std::string_view measure_text(study::Measure measure) noexcept;

/// `{"sheets": {key: …}}`, as it can stand in a case file: `like`, and each mean and spread that the
/// samples tell. Percent with four decimals, the spread rounded up. A mean whose spread passes what
/// a case file takes is left out with it; a spread that is unknown is left out alone, so that the
/// library's holds.
[[nodiscard]] std::string sheets_entry(const CalibrationContent& content);

/// The same entry with all figures behind it, as JSON; ratios are plain numbers.
[[nodiscard]] std::string calibration_json(const CalibrationContent& content);

/// The table, what is doubtful, and what to do with the entry.
[[nodiscard]] std::string calibration_text(const CalibrationContent& content);

}  // namespace bowfront::report
