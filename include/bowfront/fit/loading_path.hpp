#pragma once
/// \file
/// How a pane gets to its place, followed position by position as the case is built, and told in
/// steps.

#include <string>
#include <vector>

#include "bowfront/fit/layout.hpp"
#include "bowfront/fit/sums.hpp"

namespace bowfront::fit {

/// The way in of one pane.
struct LoadingPath {
    bool possible = false;           ///< without flexing the pane or cutting anything
    std::string still_off;           ///< what must not be on yet: `the top`
    std::vector<std::string> steps;  ///< in order, one sentence each
    std::string tightest;            ///< the tightest place on the way
    double clearance = 0;            ///< there, mm; negative: what is missing
};

/// A pane that is swung under the top plate, foot last, about a level axis.
struct Swing {
    double height = 0;     ///< of the pane, mm, > 0
    double opening = 0;    ///< between the plates, mm, > 0
    double thickness = 0;  ///< mm, > 0
    double radius = 0;     ///< of the pane's mid-surface, mm; 0 for a flat pane
    double sweep = 0;      ///< of the pane, rad; 0 for a flat pane
};

/// What a position of a swing takes of the top groove.
struct SwingPosition {
    double tilt = 0;   ///< rad from upright
    double width = 0;  ///< square to the groove, mm
    double depth = 0;  ///< above the groove's mouth, mm; negative under it
};

/// The position at a tilt, the pane's lowest point just clear of the base's face and its top laid
/// to best advantage in the groove. Every corner of the sections at many places along the arc is
/// turned and measured; no closed formula is used.
/// @param tilt  rad, 0 to under π/2
[[nodiscard]] SwingPosition swing_position(const Swing& swing, double tilt);

/// The positions of most width and of most depth, over all tilts from where the top edge comes
/// under the groove's mouth.
struct SwingExtremes {
    SwingPosition widest;
    SwingPosition deepest;
};
[[nodiscard]] SwingExtremes swing_extremes(const Swing& swing);

/// Least distance, mm, between a pane's section in plan, at its place, and the timber that it
/// passes on its way down the posts and into the base; negative where they would share a place: by
/// half of what the pane would have to be thinner, or by half its thickness where that is no help.
/// The pane lies on the groove's middle; a curved one that meets timber there is shifted to one of
/// 16 places between the cheeks of the base's groove.
/// Posts are prisms and the pane's section is the same all the way up, so one section of each
/// serves for every height.
/// @param own_radius  of the mid-surface when nothing holds the pane; ignored for a flat pane
struct SectionClearance {
    double posts = 0;
    double base = 0;
};
[[nodiscard]] SectionClearance section_clearance(const PaneSums<double>& pane, const Layout& layout,
                                                 double own_radius);

/// The way in, as built and with nominal sizes.
/// @param pane    of `sums` that `layout` was made from
[[nodiscard]] LoadingPath loading_path(const Case& c, const PaneSums<double>& pane,
                                       const Layout& layout);

}  // namespace bowfront::fit
