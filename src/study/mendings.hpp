#pragma once
/// \file
/// What can still be done at one side of a case as made: changes in words, and as they enter the sums.

#include <functional>
#include <string>
#include <vector>

#include "as_made.hpp"

namespace bowfront::study {

/// A length rounded up to what can be set in a shop, 0.1 mm.
[[nodiscard]] double stepped(double length);

/// One change; `apply` puts it into a case as made and is false where nothing would be left.
struct Mending {
    std::string words;
    std::function<bool(CaseAsMade&)> apply;
};

/// What may help a finding that misses its limit by some length: of what is made by mending it, of
/// what is not made yet by making it otherwise than drawn.
/// @param pane     that the finding is about, by the sums of `made`
/// @param missing  mm, > 0
[[nodiscard]] std::vector<Mending> mendings_for(const Finding& finding, const CaseAsMade& made,
                                              const PaneSums<double>& pane, double missing);

/// A new pane for the frame as it is; of one that is not cut yet, its right size.
[[nodiscard]] Mending cut_anew(const Case& designed, const CaseAsMade& made,
                              const PaneSums<double>& pane);

}  // namespace bowfront::study
