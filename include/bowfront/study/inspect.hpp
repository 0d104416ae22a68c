#pragma once
/// \file
/// The fit of what was really made: sizes that were measured take the place of those assumed, and
/// the sums are done again. For what does not hold: what can still be done about it.

#include <optional>
#include <string>
#include <vector>

#include "bowfront/base/finding.hpp"
#include "bowfront/fit/sums.hpp"
#include "bowfront/model/measured.hpp"

namespace bowfront::study {

/// The curve of a pane's inside face against the one that its grooves ask for. Lengths in mm.
struct MeasuredCurve {
    double radius = 0;  ///< by chord and rise: R = (c²/4 + f²)/(2f)
    double wanted = 0;
    double gap = 0;        ///< between both curves at mid-length, over the measured chord
    double gap_worst = 0;  ///< with chord and rise at the worst of their uncertainty
    double stress = 0;     ///< in the faces once the grooves hold it to the wanted radius, MPa
};

/// One pane as made.
struct InspectedPane {
    PaneSums<double> sums;  ///< by the same sums as the design's
    std::optional<MeasuredCurve> curve;
    std::optional<double> shrink_length;  ///< that it had, ratio; where blank and pane were measured
    std::optional<double> shrink_height;
};

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
    std::vector<StateFindings> states;  ///< in the order of kAirStates
    std::vector<Rescue> rescues;       ///< in the order of the findings; each is verified
    /// Findings (`id about`) that only a new pane, or new frame parts, can mend.
    std::vector<std::string> beyond_rescue;

    [[nodiscard]] Status verdict() const noexcept { return bowfront::verdict(findings); }
};

/// Why measurements can't be of this case; empty where they can. Pointers are into the case file.
[[nodiscard]] std::vector<Objection> objections(const Case& c, const CaseSums<double>& sums,
                                                const Measured& measured);

/// The fit of what was made. What was not measured keeps the design's size and tolerance; a pane
/// stands on the shallowest place of a groove, and its thickest place meets the narrowest.
/// @param c         free of `fit::objections`
/// @param sums      `fit::solve(c)`
/// @param measured  free of `objections`
[[nodiscard]] Inspection inspect(const Case& c, const CaseSums<double>& sums,
                                 const Measured& measured);

}  // namespace bowfront::study
