#pragma once
/// \file
/// From the text of a case file, and what to vary in it, to a sweep that can be run.

#include <string>
#include <string_view>
#include <vector>

#include "bowfront/study/sweep.hpp"

namespace bowfront {

/// A sweep over the variants of a case file.
/// @param file_name  as the user named it, for messages
/// @param vary       each `POINTER=FROM:TO:STEP`: a JSON pointer into the file, and decimals as the
///                   file would write them. A number without a unit is in that of the file's own
///                   value; the last axis varies fastest
/// @returns  one job, no chance, the whole table: for the caller to change
/// @throws InputError with every fault of the file, or with what is wrong in `vary`
[[nodiscard]] study::Sweep sweep_of(std::string_view text, const std::string& file_name,
                                    const std::vector<std::string>& vary);

}  // namespace bowfront
