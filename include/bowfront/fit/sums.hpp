#pragma once
/// \file
/// The sums of a whole case: every size of every pane, edge, form and soak, each computed once and
/// named where it is computed. Everything else reads them here.
///
/// Lengths in mm, angles in rad, temperatures in °C. Nominal figures are those as built. Worst cases
/// take all tolerances and spreads at their limits at once, in the worst of the service states.

#include <array>
#include <vector>

#include "bowfront/figure/book.hpp"
#include "bowfront/fit/plan.hpp"
#include "bowfront/fit/states.hpp"
#include "bowfront/forming/arc.hpp"
#include "bowfront/forming/form.hpp"
#include "bowfront/model/case.hpp"

namespace bowfront {

/// One edge of a pane in its groove.
template <class N>
struct EdgeSums {
    N engagement;        ///< pane standing in the bottom groove, centred sideways
    N engagement_least;  ///< wherever it can lie, worst case
    N engagement_most;
    N settled;           ///< gravity; sideways shoved hard against the other post; nominal sizes
    N clearance;         ///< edge clearance, nominal as for `engagement`
    N clearance_least;
    N face_clearance;    ///< groove width less what the pane takes of it
    N face_clearance_least;
};

/// Room for a pane between two groove bottoms.
template <class N>
struct RoomSums {
    N nominal;
    N worst;
};

/// How a pane goes in.
template <class N>
struct LoadingSums {
    N play;               ///< nominal: what is left in the tightest place of the way in
    N play_worst;
    N tilt_width;         ///< lift-and-drop: groove width that the tilted top edge takes
    N tilt_width_worst;
    N tilt_rise;          ///< lift-and-drop: depth of top groove that the swing takes
    N tilt_rise_worst;
};

/// One bend of a pane of several pieces: an arc, or all that bows to one side of a curve that is made
/// of several arcs. Lengths along the pane are taken from its start edge.
template <class N>
struct BendSums {
    Bow bow = Bow::out;
    std::size_t tightest = 0;  ///< of the pane's pieces, the one whose radii these are
    N radius;                ///< of the mid-surface, as formed; of a curve the smallest
    N inside_radius;         ///< of its hollow face
    N sweep;                 ///< angle that it turns through, > 0
    N start;                 ///< where it begins on the formed pane's mid-surface
    N end;
    N blank_start;           ///< where it begins on the blank as cut, before the shrink
    N blank_end;
    N free_radius;           ///< of the mid-surface as it comes off the form
    N free_radius_least;     ///< at the limits of the springback
    N free_radius_most;
    N free_sweep;            ///< that it turns through, as it comes off the form
    N free_sweep_least;      ///< at the limits of the springback
    N free_sweep_most;
    N groove_radius_least;   ///< that it stands in, over states and plates
    N groove_radius_most;
    N flexing_strain;        ///< in its faces where it is flexed to the groove's radius, at worst
    N flexing_stress;        ///< of that, MPa
};

/// A curved pane's own curve against the grooves in base and top. Free, it has the radius that the
/// springback left it; the grooves have the one that the timber's movement left them. Laid to best
/// advantage it presses on one cheek at mid-span and on the other at its ends.
/// A pane of several pieces opens or closes at each bend, and its straights swing: radii are those of
/// its tightest bend, what is used up of the face clearance is that of the whole pane.
template <class N>
struct RadiusSums {
    N free_radius;           ///< of a heated pane's mid-surface as it comes off the form, mm; 0 for a
                             ///< pane that is held cold, which is flat when nothing holds it
    N free_radius_least;     ///< at the limits of the springback
    N free_radius_most;
    N groove_radius;         ///< that the pane stands in, as built, mm
    N groove_radius_least;   ///< over states and plates
    N groove_radius_most;
    N share;                 ///< of a difference of the radii, that it uses up of the face clearance;
                             ///< of several bends: of the tightest one's, all opened alike
    N rise_off;              ///< face clearance that the difference of the radii uses up, as built
                             ///< and with nominal springback
    N rise_off_worst;        ///< springback at its limits, in the worst state and plate
    N clearance_left;        ///< face clearance less that; negative where the pane touches both cheeks
    N clearance_left_worst;
    N flexed_worst;          ///< where it touches: radius that it is flexed by at most, mm
    N strain;                ///< in its faces as built: of a pane that is held cold
    N strain_worst;          ///< of a heated pane that touches, or of a cold one in the worst state
    N stress;                ///< in its faces as built, MPa: of a pane that is held cold
    N stress_worst;          ///< as `strain_worst`
    N flexing_strain;        ///< in its faces where it is flexed all the way from the radius that it
                             ///< has to the groove's, both at their worst, whether it touches or not
    N flexing_stress;        ///< of that, MPa
};

/// What a load square to a pane does to it. The pane rests on all four edges.
template <class N>
struct LoadSums {
    N force;             ///< N
    N deflection;        ///< of its middle
    N deflection_worst;  ///< of the thinnest sheet
    N stress;            ///< in its faces, MPa
    N stress_worst;
    N held;              ///< settled engagement that the bow leaves at the edge that it leaves least
    N held_worst;
};

/// Tolerances of the frame as one pane meets them, ± mm.
template <class N>
struct FrameTolerances {
    N opening_height;
    N opening_length;
    N base_depth;
    N top_depth;
    N post_depth;
    N groove_width;
};

/// A pane and its place in the frame in one state of the air.
template <class N>
struct PaneState {
    N temperature;    ///< of the air, °C
    N humidity;       ///< of the air, 0 to 1
    N moisture;       ///< of the timber, %
    N sheet;          ///< size of the pane over its size as built
    N base;           ///< depth of the base's groove over its depth as built
    N top;            ///< the same of the top's groove
    N post;           ///< the same of a post's groove
    N opening_least;  ///< opening along the glazing line, the smaller of those at base and top, mm,
                      ///< between posts that move as much as they may
    N opening_most;   ///< the larger of both, mm, between posts that move as little
    N length;         ///< of the pane, mm
    N height;         ///< of the pane, mm
    N opening_height; ///< along the posts' grain, which stands still, mm
    N base_depth;     ///< of the base's groove, mm
    N top_depth;      ///< of the top's groove, mm
    N post_depth;     ///< of a post's groove, mm
    N base_radius;    ///< curved: of the circle through crown and ends of the base's groove, mm;
                      ///< of several bends: of the tightest one's part of it
    N top_radius;     ///< the same of the top's groove
};

/// One pane.
template <class N>
struct PaneSums {
    CaseSide side;
    bool curved = false;
    Bow bow = Bow::out;       ///< curved: into the case, its hollow face looks outwards
    bool heated = false;
    N thickness;              ///< as bought
    N thickness_tolerance;    ///< ±
    N side_length;            ///< of the glazing line, corner to corner
    N start_in_post;          ///< of the glazing line inside the post at the pane's start
    N end_in_post;
    N opening_length;         ///< glazing line outside both posts
    N opening_height;
    N length;                 ///< as formed, on the mid-surface
    N height;
    N length_tolerance;       ///< ±: cut and spread of shrink, as formed
    N height_tolerance;
    N blank_length;
    N blank_width;
    N formed_thickness;
    N thinnest_formed;        ///< formed thickness at its least
    N thickest;               ///< formed thickness at its most
    N bearing_thickness;      ///< that loads are borne by: as bought; of a pane that was measured, at
                              ///< its thinnest place and as it was before it was heated
    N bearing_thickness_least;
    N start_reach;            ///< how far the start can go into its post groove before it touches
    N end_reach;
    N reach;                  ///< the smaller of both
    // Curved panes; 0 for flat ones.
    N start_radius;           ///< of the mid-surface where the start stands in its post; 0 for a
                              ///< straight
    N end_radius;
    N radius;                 ///< of the mid-surface; of several bends the smallest
    N inside_radius;
    N sweep;                  ///< of several bends all together, whichever way they bow
    N chord;                  ///< from end to end
    N rise;                   ///< how far it stands off its chord; of several bends to both sides
                              ///< together
    N cold_radius;            ///< smallest inside radius that the sheet may be held to cold; 0 where
                              ///< none is known
    N flexing_stress;         ///< in the faces of a pane that is held to its radius cold, MPa
    /// Of a pane of several pieces: these, from its start edge to its end edge, as they stand in the
    /// plan. Empty for a pane that is one straight or one arc.
    std::vector<SidePiece<N>> path;
    std::vector<BendSums<N>> bends;  ///< of such a pane, in their order
    std::array<PaneState<N>, kAirStates.size()> states;  ///< in the order of kAirStates
    std::array<EdgeSums<N>, 4> edges;                    ///< in the order of kPaneEdges
    FrameTolerances<N> tolerances;
    N least_engagement;
    RoomSums<N> room_vertical;
    RoomSums<N> room_sideways;
    LoadingSums<N> loading;
    RadiusSums<N> radius_error;                          ///< 0 for flat panes
    LoadSums<N> push;     ///< a hand in its middle
    LoadSums<N> carried;  ///< its own weight, doubled, when the case lies on that side

    /// Whether it has several pieces.
    [[nodiscard]] bool is_run() const { return !path.empty(); }
    [[nodiscard]] const EdgeSums<N>& edge(PaneEdge which) const {
        return edges[static_cast<std::size_t>(which)];
    }
};

/// Oven and soak of one heated pane.
template <class N>
struct HeatingSums {
    CaseSide side;
    N oven_set;
    N core_min;         ///< temperature that the core must reach
    N face_limit;       ///< temperature that the face must not pass
    N accuracy;         ///< ± K of the oven; 0 where no oven is described
    N margin_to_limit;  ///< face limit less set and accuracy, K
    N margin_to_core;   ///< set less accuracy and core minimum, K
    N shop_rule;        ///< minutes: one for each 0.01 in of thickness
};

/// The form of one heated curved pane.
template <class N>
struct PaneForm {
    CaseSide side;
    FormSizes<N> sizes;
};

/// All sums of a case.
template <class N>
struct CaseSums {
    std::vector<SideSums<N>> sides;          ///< of the glazing line, in order
    std::vector<PaneSums<N>> panes;          ///< in the order of the case file
    std::vector<PaneForm<N>> forms;
    std::vector<HeatingSums<N>> heating;

    [[nodiscard]] const PaneSums<N>* pane(const CaseSide& side) const {
        for (const auto& pane : panes) {
            if (pane.side == side) {
                return &pane;
            }
        }
        return nullptr;
    }
};

namespace fit {

/// All sums of a case.
/// @param c  free of objections (`fit::objections`)
/// @throws ContractError where it is not
[[nodiscard]] CaseSums<double> solve(const Case& c);

/// The same sums by the same code, with every figure entered in `workings`.
[[nodiscard]] CaseSums<Traced> solve(const Case& c, Workings& workings);

}  // namespace fit
}  // namespace bowfront
