#pragma once
/// \file
/// From the text of a file of measurements to the fit of what was made.

#include <string>
#include <string_view>
#include <vector>

#include "bowfront/pipeline/design.hpp"
#include "bowfront/study/inspect.hpp"

namespace bowfront {

/// What was measured of a design, and what it comes to.
struct Inspected {
    std::vector<Assumption> assumed;  ///< of the measuring
    study::Inspection inspection;
};

/// @param text       as `schemas/measured.schema.json` describes it
/// @param file_name  as the user named it, for messages
/// @throws InputError with every fault of the file, or with every reason why such a case can't be
[[nodiscard]] Inspected inspect(const Design& design, std::string_view text,
                                const std::string& file_name);

}  // namespace bowfront
