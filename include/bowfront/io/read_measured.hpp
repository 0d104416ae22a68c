#pragma once
/// \file
/// From the text of a file of measurements to what was measured.

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "bowfront/io/case_keys.hpp"
#include "bowfront/io/places.hpp"
#include "bowfront/model/measured.hpp"

namespace bowfront::io {

/// The most places that one size may be measured in.
inline constexpr std::size_t kMostMeasuredPlaces = 1000;

/// Measurements, with what was assumed of their uncertainty where the file is silent.
struct ReadMeasured {
    Measured value;
    std::vector<Assumption> assumed;
    Places places;
};

/// Every object of a file of measurements, as `case_keys` for a case file.
[[nodiscard]] std::span<const ObjectKeys> measured_keys() noexcept;

/// The measurements that a text describes.
///
/// A value of `null` and an empty list are sizes that were not measured. The bounds of
/// `io/read_case.hpp` hold here too.
/// @param text       JSON as described by `schemas/measured.schema.json`; comments allowed, UTF-8
/// @param file_name  as the user named it, for messages only
/// @param c          the case that was measured: only sides that have a pane can have been
/// @throws InputError  with every fault of the text, in the order in which they stand there
[[nodiscard]] ReadMeasured read_measured(std::string_view text, const std::string& file_name,
                                         const Case& c);

}  // namespace bowfront::io
