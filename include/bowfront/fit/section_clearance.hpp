#pragma once
/// \file
/// A pane's section in plan against the timber that it passes on its way down.

#include "bowfront/fit/layout.hpp"
#include "bowfront/fit/sums.hpp"

namespace bowfront::fit {

/// A pane in plan, as it stands when nothing flexes it.
struct PaneSection {
    double length = 0;         ///< on the mid-surface, mm, > 0
    double thickness = 0;      ///< mm, > 0
    double own_radius = 0;     ///< of the mid-surface, mm; ignored for a flat pane
    double groove_radius = 0;  ///< of the groove in the base, mm; ignored for a flat pane
    double play = 0;           ///< how far it can be shifted from the groove's middle, mm, >= 0
};

/// Least distance, mm, between a pane's section in plan, at its place, and the timber that it
/// passes on its way down the posts and into the base; negative where they would share a place: by
/// half of what the pane would have to be thinner (found to 1/16384 of its thickness), or by half
/// its thickness where that is no help.
/// The pane lies on the groove's middle; a curved one that meets timber there is shifted between the
/// cheeks of the base's groove to where it leaves most at all cheeks.
/// Posts are prisms and the pane's section is the same all the way up, so one section of each
/// serves for every height.
struct SectionClearance {
    double posts = 0;
    double base = 0;
};

/// As built, of nominal sizes.
/// @param pane        of the sums that `layout` was made from
/// @param own_radius  of the mid-surface when nothing holds the pane; ignored for a flat pane
[[nodiscard]] SectionClearance section_clearance(const PaneSums<double>& pane, const Layout& layout,
                                                 double own_radius);

/// In a frame that has moved.
/// @param section  of that pane, in that state
/// @param layout   `layout_in` that state
/// @param state    of that pane
[[nodiscard]] SectionClearance section_clearance(const PaneSums<double>& pane,
                                                 const PaneSection& section, const Layout& layout,
                                                 const PaneState<double>& state);

}  // namespace bowfront::fit
