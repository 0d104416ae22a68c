#pragma once
/// \file
/// The checks of a case: every limit, its margin, and a hint where one does not pass.

#include <vector>

#include "bowfront/base/finding.hpp"
#include "bowfront/fit/layout.hpp"
#include "bowfront/fit/sums.hpp"

namespace bowfront::fit {

/// Room that a pane must have between two groove bottoms at worst, mm.
/// Common practice, no source.
inline constexpr double kLeastRoom = 0.5;

/// Under this margin to the sheet's face limit a heat check warns, K. A choice of this tool.
inline constexpr double kHeatReserve = 5;

/// Values that can't hold together, or that leave nothing to build; empty for a sound case. Solve
/// and lay out only a case that has none.
[[nodiscard]] std::vector<Objection> objections(const Case& c);

/// A case solved and laid out, or why it can't be.
struct Solution {
    std::vector<Objection> objections;  ///< as `fit::objections`; where any, the rest is unfinished
    CaseSums<double> sums;
    Layout layout;
};

/// The objections to a case together with the sums and the layout that they are found by, each
/// worked out once.
[[nodiscard]] Solution solution(const Case& c);

/// The same without the layout, and without what could be objected to it: enough for all that the
/// frame's outlines have no part in, and far cheaper.
[[nodiscard]] Solution solution_of_sums(const Case& c);

/// All checks of a case, in a fixed order: panes in file order, then the frame, then the forms.
/// A check fails when its nominal breaks the limit, and warns when only the worst case does.
/// @param c       free of objections
/// @param sums    `solve(c)`
/// @param layout  `layout(c, sums)`
[[nodiscard]] std::vector<Finding> checks(const Case& c, const CaseSums<double>& sums,
                                          const Layout& layout);

/// Those of `checks` that need no layout, panes then forms.
[[nodiscard]] std::vector<Finding> checks_of_sums(const Case& c, const CaseSums<double>& sums);

/// The others: those of the frame's outlines.
[[nodiscard]] std::vector<Finding> checks_of_frame(const Case& c, const Layout& layout);

}  // namespace bowfront::fit
