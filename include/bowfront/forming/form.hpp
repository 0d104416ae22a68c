#pragma once
/// \file
/// The form that a pane is bent on: radii, sweep, ribs, skin.

#include <vector>

#include "bowfront/figure/book.hpp"
#include "bowfront/model/case.hpp"

namespace bowfront {

/// A straight or a bend of a form's face, the overruns included.
template <class N>
struct FormPiece {
    N length;             ///< on the face
    N radius;             ///< of the face; 0 for a straight
    N sweep;              ///< 0 for a straight
    bool hollow = false;  ///< the form is hollow there: the sheet has to be held down into it
};

/// Sizes of a male form, mm and rad.
template <class N>
struct FormSizes {
    N face_radius;    ///< of the cover's outer face, on which the sheet lies; of several bends the
                      ///< smallest that the form is not hollow in
    N rib_radius;     ///< of the ribs' arc edge, under the same bend
    N rib_sweep;      ///< of the ribs' edge; of several bends between its steepest directions
    N skin_radius;    ///< smallest that the skin bends to, of its hollow face
    N pane_sweep;     ///< as `rib_sweep`, of the pane when released
    N rib_count;      ///< a whole number, at least 2
    N width;          ///< along the form's axis; also the skin's
    N rib_pitch;      ///< distance of rib centres
    N skin_length;    ///< flat, on its mid-surface
    N fence_gap;      ///< between the fences' inner faces
    /// Of a pane of several pieces, from its start on. Empty for a pane of one arc.
    std::vector<FormPiece<N>> pieces;
};

/// A straight or a bend of a pane of several pieces.
template <class N>
struct BentPiece {
    N length;             ///< on the mid-surface
    N inside_radius;      ///< when released; 0 for a straight
    bool hollow = false;  ///< it bows away from the form, which is hollow there
};

/// What the form is made to.
template <class N>
struct FormTask {
    N inside_radius;     ///< of the pane when released, > 0; not of one of several pieces
    N sweep;             ///< of the pane, over 0; not of one of several pieces
    N blank_width;       ///< along the form's axis, before heating
    N widest_hot;        ///< width of the hot sheet when it has shrunk least
    N springback;        ///< growth of radius on release, > −1
    N thickness{};       ///< of the pane
    std::vector<BentPiece<N>> pieces{};  ///< of a pane of several pieces, from its start on
};

namespace forming {

/// @param pane  side of the pane, for the figures' paths
/// @throws ContractError where the ribs' radius would not be positive
/// Source:  radius chain, geometry: Rs = Ri/(1 + k); rib = Rs − cover − skin; the form's arc is the
///          pane's inside arc and an overrun at each end, at the face radius
/// Example: Ri 418.5, cover 0.6, skin 3, k 0 -> rib radius 414.9 mm
///
/// Of several pieces each bend has a radius of its own by the same chain, and turns through its
/// mid-surface's length over the mid-surface's radius on the form: further than the pane by as much
/// as springback opens it. Straights keep their length; the overruns run on straight, or along the
/// arc that the pane ends in.
template <class N>
[[nodiscard]] FormSizes<N> form_sizes(const FormTask<N>& task, const FormSpec& spec,
                                      std::string_view pane, Book<N>& book);

/// How much more than half a turn is half a turn, rad: far above the rounding of a sum of bends.
inline constexpr double kHalfTurnRounding = 1e-9;

/// Whether hot sheet can be laid over a form and drawn off it: an arc of less than half a turn, with
/// its overruns. Several bends together may come to half a turn; where they are bent further only to
/// allow for springback, the pane opens when it is released, and comes off.
[[nodiscard]] bool can_be_drawn_off(const FormSizes<double>& form);

/// The smallest pane radius for which the chain leaves ribs a radius, mm: Ri over (1 + k)·(cover +
/// skin).
[[nodiscard]] double least_inside_radius(const FormSpec& spec, double springback);

extern template FormSizes<double> form_sizes(const FormTask<double>&, const FormSpec&,
                                             std::string_view, Book<double>&);
extern template FormSizes<Traced> form_sizes(const FormTask<Traced>&, const FormSpec&,
                                             std::string_view, Book<Traced>&);

}  // namespace forming
}  // namespace bowfront
