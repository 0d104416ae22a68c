#pragma once
/// \file
/// The form that a pane is bent on: radii, sweep, ribs, skin.

#include "bowfront/figure/book.hpp"
#include "bowfront/model/case.hpp"

namespace bowfront {

/// Sizes of a male form, mm and rad.
template <class N>
struct FormSizes {
    N face_radius;    ///< of the cover's outer face, on which the sheet lies
    N rib_radius;     ///< of the ribs' arc edge
    N rib_sweep;
    N rib_count;      ///< a whole number, at least 2
    N width;          ///< along the form's axis; also the skin's
    N rib_pitch;      ///< distance of rib centres
    N skin_length;    ///< flat, on its mid-surface
    N fence_gap;      ///< between the fences' inner faces
};

/// What the form is made to.
template <class N>
struct FormTask {
    N inside_radius;     ///< of the pane when released, > 0
    N sweep;             ///< of the pane, over 0
    N blank_width;       ///< along the form's axis, before heating
    N widest_hot;        ///< width of the hot sheet when it has shrunk least
    N springback;        ///< growth of radius on release, > −1
};

namespace forming {

/// @param pane  side of the pane, for the figures' paths
/// @throws ContractError where the ribs' radius would not be positive
/// Source:  radius chain, geometry: Rs = Ri/(1 + k); rib = Rs − cover − skin; the form's arc is the
///          pane's inside arc and an overrun at each end, at the face radius
/// Example: Ri 418.5, cover 0.6, skin 3, k 0 -> rib radius 414.9 mm
template <class N>
[[nodiscard]] FormSizes<N> form_sizes(const FormTask<N>& task, const FormSpec& spec,
                                      std::string_view pane, Book<N>& book);

/// The smallest pane radius for which the chain leaves ribs a radius, mm: Ri over (1 + k)·(cover +
/// skin).
[[nodiscard]] double least_inside_radius(const FormSpec& spec, double springback);

extern template FormSizes<double> form_sizes(const FormTask<double>&, const FormSpec&,
                                             std::string_view, Book<double>&);
extern template FormSizes<Traced> form_sizes(const FormTask<Traced>&, const FormSpec&,
                                             std::string_view, Book<Traced>&);

}  // namespace forming
}  // namespace bowfront
