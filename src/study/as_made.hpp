#pragma once
/// \file
/// A case with what was measured put in, ready to be asked again and again with changes.

#include <map>
#include <optional>
#include <vector>

#include "bowfront/study/inspect.hpp"

namespace bowfront::study {

/// Chord and rise of the inside face of a curved pane.
struct MeasuredBow {
    MeasuredSize chord;
    MeasuredSize rise;
};

/// The depths of the grooves in both posts, where they were measured, at the shallowest place.
struct PostDepths {
    std::optional<MeasuredSize> start;
    std::optional<MeasuredSize> end;
};

/// A case as made. Panes have the sizes of the design unless they were measured: they were cut for
/// it, whatever the frame has become.
struct CaseAsMade {
    Case c;
    std::map<CaseSide, PostDepths> posts;
    std::map<CaseSide, MeasuredBow> bows;
    Case frame;  ///< with the deepest and widest grooves: the least timber that is left round them

    [[nodiscard]] PaneSpec& pane(CaseSide side);
    [[nodiscard]] const PaneSpec& pane(CaseSide side) const;
};

/// @param sums  of the design
[[nodiscard]] CaseAsMade as_made(const Case& c, const CaseSums<double>& sums,
                                 const Measured& measured);

/// The sums and what they come to.
struct Assessment {
    std::vector<InspectedPane> panes;
    std::vector<Finding> findings;
};
[[nodiscard]] Assessment assess(const CaseAsMade& made);

/// Fills `rescues` and `beyond_rescue`, and each finding's advice from them.
void find_rescues(const Case& designed, const CaseAsMade& made, Inspection& inspection);

}  // namespace bowfront::study
