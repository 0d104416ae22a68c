#pragma once
/// \file
/// The fit of what was really made: sizes that were measured take the place of those assumed, and
/// the sums are done again. For what does not hold: what can still be done about it.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "bowfront/base/finding.hpp"
#include "bowfront/fit/sums.hpp"
#include "bowfront/model/measured.hpp"

namespace bowfront::study {

/// How far the work on a pane has come, by what was measured of it.
enum class PaneStage {
    not_cut,    ///< nothing of it was measured
    blank_cut,  ///< its blank was measured, and it was not heated yet
    made,       ///< it was measured itself
};

/// `not-cut`, `blank-cut`, `made`.
[[nodiscard]] std::string_view stage_text(PaneStage stage) noexcept;

/// The curve of a pane's inside face against the one that its grooves ask for, mm.
struct MeasuredCurve {
    MeasuredRadius radius;  ///< by chord and rise: R = (c²/4 + f²)/(2f)
    double wanted = 0;
};

/// What to cut for a pane, by the clearances of the design. Lengths in mm.
struct CutSize {
    double length = 0;  ///< of the pane, as formed
    double height = 0;
    double blank_length = 0;
    double blank_width = 0;
};

/// One pane as made.
struct InspectedPane {
    PaneSums<double> sums;  ///< by the same sums as the design's
    PaneStage stage = PaneStage::not_cut;
    bool as_drawn = true;  ///< nothing was measured of it, of its sheet or of its place
    std::optional<MeasuredCurve> curve;
    /// Of a pane that is not cut yet: for the opening and the grooves that were measured.
    std::optional<CutSize> to_cut;
    std::optional<double> shrink_length;  ///< that it had, ratio; where blank and pane were measured
    std::optional<double> shrink_height;
};

/// What is left at one place of the case before a check there misses its limit.
struct Margin {
    Code code = Code::fit_engagement;
    std::string about;  ///< pane and edge, or part, as in the findings
    std::string id;     ///< of the check that comes nearest to its limit there
    double margin = 0;  ///< as measured, mm; negative where it misses the limit
    double worst = 0;   ///< with the measuring, what is not made yet and the air at their worst
};

/// Every place of the case by its least margin at worst, the least first. Checks that hold a length
/// of pane or frame against its limit count: not radii, nor what is to spare of sheets and ovens.
[[nodiscard]] std::vector<Margin> margins(const std::vector<Finding>& findings);

/// What can still be done about a finding that does not pass.
struct Rescue {
    std::string id;      ///< of the finding
    std::string about;   ///< of the finding
    std::string action;  ///< in words, with its size
    Status before = Status::fail;
    Status after = Status::pass;  ///< of the finding, by the sums done again with this change
};

/// The findings of one state of the air: built in the conditions of the case, then brought there.
struct StateFindings {
    AirState state = AirState::built;
    std::vector<Finding> findings;
};

/// What came of it.
struct Inspection {
    std::vector<InspectedPane> panes;  ///< in the order of the case file
    std::vector<Finding> findings;     ///< the worst case over all states
    std::vector<Margin> margins;       ///< of the findings
    std::vector<StateFindings> states;  ///< in the order of kAirStates
    std::vector<Rescue> rescues;       ///< in the order of the findings; each is verified
    /// Findings (`id about`) that only a new pane, or new frame parts, can mend.
    std::vector<std::string> beyond_rescue;

    [[nodiscard]] Status verdict() const noexcept { return bowfront::verdict(findings); }
};

/// Why measurements can't be of this case; empty where they can. Pointers are into the case file.
[[nodiscard]] std::vector<Objection> objections(const Case& c, const CaseSums<double>& sums,
                                                const Measured& measured);

/// The fit of what was made. What was not measured is not made yet and keeps the design's size and
/// tolerance; a pane stands on the shallowest place of a groove, its thickest place meets the
/// narrowest, and its thinnest bears the loads.
///
/// The checks are the design's, each for as long as it is open: whether the blank can be had from
/// stock until it is cut; shrink, oven, heat and form until the pane is formed; how panes stand in
/// the frame, and the timber left round the grooves, always. Outlines are not measured.
/// @param c         free of `fit::objections`
/// @param sums      `fit::solve(c)`
/// @param measured  free of `objections`
[[nodiscard]] Inspection inspect(const Case& c, const CaseSums<double>& sums,
                                 const Measured& measured);

}  // namespace bowfront::study
