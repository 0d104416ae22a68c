#pragma once
/// \file
/// From the text of a case file to a case.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "bowfront/io/places.hpp"
#include "bowfront/model/case.hpp"

namespace bowfront::io {

/// The largest text that is read, bytes.
inline constexpr std::size_t kMostBytes = std::size_t{4} << 20;
/// The deepest nesting of lists and objects that is read.
inline constexpr std::size_t kMostDepth = 64;
/// The most values, lists and objects counted, that a file may hold.
inline constexpr std::size_t kMostValues = 100'000;
/// The most faults that are told of one file; a last one then says how many more there are.
inline constexpr std::size_t kMostFaults = 1000;

/// A case, with what was assumed where the file is silent.
struct ReadCase {
    Case value;
    std::vector<Assumption> assumed;  ///< only what this case makes use of, in the schema's order
    Places places;
};

/// The case that a text describes.
///
/// Every value is in its range and no two contradict each other, as far as the file's own values
/// can tell; whether panes fit is not asked here.
///
/// @param text       JSON as described by `schemas/case.schema.json`; comments allowed, UTF-8
/// @param file_name  as the user named it, for messages only
/// @throws InputError  with every fault of the text, in the order in which they stand there
[[nodiscard]] ReadCase read_case(std::string_view text, const std::string& file_name);

}  // namespace bowfront::io
