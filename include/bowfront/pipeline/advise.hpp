#pragma once
/// \file
/// What a maker could change: told of every finding, or written to a corrected case file.

#include <string>
#include <string_view>
#include <vector>

#include "bowfront/base/change.hpp"
#include "bowfront/pipeline/design.hpp"

namespace bowfront {

/// Gives each finding of a design that does not pass the changes that would settle it
/// (`study::advise`).
/// @param text  the case file that the design is of
void advise(Design& design, std::string_view text);

/// A change that was made, and the finding that it was made for.
struct Correction {
    std::string check;  ///< id and about of the finding
    Change change;
};

/// A case file with its findings corrected one by one.
struct Corrected {
    Design before;     ///< of the file as it was given
    Design after;      ///< of `text`, read anew; with the changes that were found for what is left
    std::string text;  ///< the file's own, with the changed values put in
    std::vector<Correction> made;  ///< in the order in which they were made; empty: nothing helps
};

/// Makes the one change that serves the worst finding best (`study::Adviser::correction`), works
/// the case out again, and so on until all passes or nothing helps any more.
/// @param file_name  as the user named it, for messages
/// @throws InputError as `design`
[[nodiscard]] Corrected corrected(std::string_view text, const std::string& file_name,
                                  const study::ChanceOptions& chance);

}  // namespace bowfront
