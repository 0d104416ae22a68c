#pragma once
/// \file
/// A case with what was measured put in, ready to be asked again and again with changes.

#include <map>
#include <optional>
#include <vector>

#include "bowfront/study/inspect.hpp"

namespace bowfront::study {

/// The depths of the grooves in both posts, where they were measured, at the shallowest place.
struct PostDepths {
    std::optional<MeasuredSize> start;
    std::optional<MeasuredSize> end;
};

/// A case as made. What was not measured is not made yet: panes have the sizes of the design, for
/// which they are to be cut, whatever the frame has become.
struct CaseAsMade {
    Case c;
    std::map<CaseSide, PostDepths> posts;
    Case frame;  ///< with the deepest and widest grooves: the least timber that is left round them

    [[nodiscard]] PaneSpec& pane(const CaseSide& side);
    [[nodiscard]] const PaneSpec& pane(const CaseSide& side) const;
    /// How far the work on a pane has come.
    [[nodiscard]] PaneStage stage(const CaseSide& side) const;
    /// Whether a pane is bent in heat.
    [[nodiscard]] bool heated(const CaseSide& side) const;
    /// Whether something was measured of the place that the pane of a side stands in.
    [[nodiscard]] bool place_measured(const CaseSide& side) const;
    /// The post grooves of a side; without depths where none was measured.
    [[nodiscard]] PostDepths posts_of(const CaseSide& side) const;
};

/// @param sums  of the design
[[nodiscard]] CaseAsMade as_made(const Case& c, const CaseSums<double>& sums,
                                 const Measured& measured);

/// The inside radius by chord and rise, both ± `uncertainty`.
/// @param chord  > uncertainty
/// @param rise   > uncertainty
/// Source: geometry, R = (c²/4 + f²)/(2f), over the rectangle of both limits
[[nodiscard]] MeasuredRadius radius_of(double chord, double rise, double uncertainty);

/// What was measured that can't be of what was drawn: a slip of the pen, or of the unit.
[[nodiscard]] std::vector<Objection> implausible(const Case& c, const CaseSums<double>& sums,
                                                 const Measured& measured);

/// Whether a check of the design is still to be asked of a case as made.
[[nodiscard]] bool still_asked(const CaseAsMade& made, const Finding& finding);

/// The sums and what they come to.
struct Assessment {
    std::vector<InspectedPane> panes;
    std::vector<Finding> findings;
};
[[nodiscard]] Assessment assess(const CaseAsMade& made);

/// A new pane for the frame as it is, by the clearances of the design.
struct NewPane {
    PaneSpec spec;
    CutSize size;
};
[[nodiscard]] NewPane new_pane(const Case& designed, const CaseAsMade& made, const CaseSide& side);

/// Fills `rescues` and `beyond_rescue`, and each finding's advice from them.
void find_rescues(const Case& designed, const CaseAsMade& made, Inspection& inspection);

}  // namespace bowfront::study
