#pragma once
/// \file
/// A pane that is lifted into the top's groove and let down into the base's: what its swing takes of
/// the top's groove, followed position by position.

namespace bowfront::fit {

/// A pane that is swung under the top plate, foot last, about a level axis.
struct Swing {
    double height = 0;         ///< of the pane, mm, > 0
    double opening = 0;        ///< between the plates, mm, > 0
    double thickness = 0;      ///< mm, > 0
    double radius = 0;         ///< of the pane's mid-surface, mm; 0 for a flat pane
    double sweep = 0;          ///< of the pane, rad; 0 for a flat pane
    double groove_radius = 0;  ///< of the top's groove, mm; 0 where it is the pane's own
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
/// under the groove's mouth. For a flat pane they are those of the sums' closed formulas,
/// `loading.tilt_width` and `loading.tilt_rise`, which measure what stands in the groove along the
/// pane's higher face; for a curved pane the formulas are bounds, since they take crown and ends at
/// their worst at once.
struct SwingExtremes {
    SwingPosition widest;
    SwingPosition deepest;
};
[[nodiscard]] SwingExtremes swing_extremes(const Swing& swing);

}  // namespace bowfront::fit
