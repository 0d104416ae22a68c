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

/// A case solved, or why it can't be.
struct SolvedCase {
    std::vector<Objection> objections;  ///< to values and sums; where any, the sums are unfinished
    CaseSums<double> sums;
};

/// The sums of a case and the objections that can be told without laying it out.
[[nodiscard]] SolvedCase solved_case(const Case& c);

/// The frame of a case, or why it can't be.
struct SolvedFrame {
    std::vector<Objection> objections;  ///< to the layout
    Layout layout;
    std::vector<Finding> findings;      ///< of a frame without objections
};

/// The frame laid out and judged. It goes by plan, frame, cutter, webs, the tolerance of groove depths
/// and which sides have panes: cases that are alike in these have the same.
/// @param c     with values that `solved_case` has no objections to
/// @param sums  of the same case
[[nodiscard]] SolvedFrame solved_frame(const Case& c, const CaseSums<double>& sums);

/// A case solved and laid out, or why it can't be.
struct Solution {
    std::vector<Objection> objections;  ///< as `fit::objections`; where any, the rest is unfinished
    CaseSums<double> sums;
    Layout layout;
};

/// The objections to a case together with the sums and the layout that they are found by, each
/// worked out once.
[[nodiscard]] Solution solution(const Case& c);

/// The checks of the panes, in file order, with their blanks and their heating.
/// @param c     free of objections
/// @param sums  `solve(c)`
[[nodiscard]] std::vector<Finding> pane_checks(const Case& c, const CaseSums<double>& sums);

/// The checks of the frame.
/// @param c       free of objections
/// @param layout  of the case
[[nodiscard]] std::vector<Finding> frame_checks(const Case& c, const Layout& layout);

/// The checks of the forms; parameters as for `pane_checks`.
[[nodiscard]] std::vector<Finding> form_checks(const Case& c, const CaseSums<double>& sums);

/// All checks of a case, in a fixed order: those of panes, of the frame, and of forms.
/// A check fails when its nominal breaks the limit, and warns when only the worst case does.
/// @param c       free of objections
/// @param sums    `solve(c)`
/// @param layout  `layout(c, sums)`
[[nodiscard]] std::vector<Finding> checks(const Case& c, const CaseSums<double>& sums,
                                          const Layout& layout);

}  // namespace bowfront::fit
