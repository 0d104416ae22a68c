#pragma once
/// \file
/// A conical pane: from its radii to the flat sector that is cut for it, and to the ribs that it is
/// bent on.

#include "bowfront/figure/book.hpp"
#include "bowfront/geom/contour.hpp"

namespace bowfront {

/// A part of a circular cone with an upright axis, measured on the pane's mid-surface: mm, and rad
/// for the sweep.
template <class N>
struct ConicalPane {
    N base_radius;  ///< of the lower edge, > 0
    N top_radius;   ///< of the upper edge, > 0; larger than the lower one where the pane flares
    N height;       ///< between the edges, upright, > 0
    N sweep;        ///< in plan, over 0 and not over a whole turn
};

/// The difference of a conical pane's radii is at least this share of its height: below it the apex
/// is so far off that a cylinder says it better.
inline constexpr double kLeastTaper = 1e-5;

/// What follows from a conical pane: mm, rad, and mm² for the area.
template <class N>
struct ConeSizes {
    ConicalPane<N> pane;
    N slant;         ///< length of a generator between the edges
    N half_angle;    ///< between axis and generator
    N apex_height;   ///< of the cone's apex over the lower edge; negative where the pane flares
    N base_reach;    ///< from the apex to the lower edge: its radius when laid flat
    N top_reach;     ///< from the apex to the upper edge
    N sector_angle;  ///< that the pane covers when laid flat
    N base_length;   ///< developed length of the lower edge
    N top_length;    ///< of the upper edge
    N area;          ///< of the mid-surface
};

/// Sides of the upright rectangle round a conical pane's blank, mm: its middle generator stands
/// upright in it, the lower edge is below.
template <class N>
struct ConeBlank {
    N length;
    N height;
};

/// Loss on heating over the size before, ratios under 1: across the middle generator of a blank,
/// and along it.
template <class N>
struct BlankShrink {
    N length;
    N height;
};

namespace forming {

/// The sizes of a conical pane and of its development.
/// @param path  first piece of the figures' paths
/// @throws ContractError outside the ranges of ConicalPane and `kLeastTaper`
/// Source:  geometry of the circular cone: s = √((R₁ − R₂)² + H²), sin α = abs(R₁ − R₂)/s,
///          ρ = R/sin α, φ = θ·sin α, A = θ·(R₁ + R₂)/2·s
/// Example: radii 300 and 200 mm, height 173.205 mm, half a turn -> half angle 30 deg, slant
///          200 mm, sector of 600 and 400 mm over 90 deg
template <class N>
[[nodiscard]] ConeSizes<N> cone_sizes(const ConicalPane<N>& pane, std::string_view path,
                                      Book<N>& book);

/// The rectangle round the blank, shrink allowed for.
///
/// Shrink may differ in the two directions. The flat sector is then cut stretched by as much in
/// each, and comes out of the oven as the true sector; nothing is approximated.
/// @throws ContractError for a shrink of 1 or more
/// Source:  geometry of the annular sector, up to a half turn 2ρ·sin(φ/2) by ρ − ρ′·cos(φ/2)
///          with ρ the longer reach; L₀ = L/(1 − s)
/// Example: as above, 1.5 % both ways -> 861.450 by 321.987 mm
template <class N>
[[nodiscard]] ConeBlank<N> cone_blank(const ConeSizes<N>& sizes, const BlankShrink<N>& shrink,
                                      std::string_view path, Book<N>& book);

/// The blank's outline, counter-clockwise, in the rectangle of `cone_blank` with the middle
/// generator on x = 0 and the lowest point on y = 0.
///
/// With the same shrink both ways: two true arcs and two straights, the sector itself made larger
/// (an arc of more than half a turn is two). With different shrink the arcs become parts of
/// ellipses, followed by arcs; such a blank can't be turned in the sheet, one of the same shrink
/// both ways may lie as `least_rectangle` has it.
/// @param chord_error  how far these may stray, mm; at least `kFinestChordError`
[[nodiscard]] Contour cone_outline(const ConeSizes<double>& sizes,
                                   const BlankShrink<double>& shrink, double chord_error);

/// The cone that a form has to have, so that the pane released from it is the one that is wanted,
/// by mid-surface as the pane.
///
/// On release every curvature grows flatter alike, by springback as on a cylinder, and no length
/// changes: the sector stays, and closes to a blunter cone with the same reach.
/// @param springback  growth of radius on release, over −1
/// @throws ContractError where the form would turn by more than a whole turn
/// Source:  geometry: the radius of curvature at a reach ρ is ρ·tan α, so tan α_f = tan α/(1 + k)
template <class N>
[[nodiscard]] ConicalPane<N> cone_on_form(const ConeSizes<N>& sizes, N springback,
                                          std::string_view path, Book<N>& book);

/// Radius of the mid-surface in the level plane at a height over the lower edge, mm.
/// @param height  0 to the pane's
/// Source:  geometry: linear from one edge to the other
template <class N>
[[nodiscard]] N cone_radius_at(const ConicalPane<N>& pane, N height) {
    return pane.base_radius + (pane.top_radius - pane.base_radius) * (height / pane.height);
}

/// Radius of curvature of the mid-surface square to a generator, mm: what the sheet is bent to.
/// @param height  over the lower edge, 0 to the pane's
/// Source:  Meusnier's theorem: the level section has the radius R and leans by α from that one
/// Example: R 300 mm, half angle 30 deg -> 346.410 mm
template <class N>
[[nodiscard]] N cone_bend_radius(const ConeSizes<N>& sizes, N height) {
    using std::cos;
    return cone_radius_at(sizes.pane, height) / cos(sizes.half_angle);
}

/// Radius of a level rib's edge at a height over the lower edge, mm.
/// @param depth  of the rib's edge under the mid-surface, square to it: half the thickness, cover
///               and skin. A rib has two faces at two heights: its edge is bevelled between their
///               radii, or cut square to the smaller of them
/// Source:  geometry: surfaces a depth d apart are d/cos α apart in the level plane
template <class N>
[[nodiscard]] N cone_rib_radius(const ConeSizes<N>& sizes, N height, N depth) {
    using std::cos;
    return cone_radius_at(sizes.pane, height) - depth / cos(sizes.half_angle);
}

extern template ConeSizes<double> cone_sizes(const ConicalPane<double>&, std::string_view,
                                             Book<double>&);
extern template ConeSizes<Traced> cone_sizes(const ConicalPane<Traced>&, std::string_view,
                                             Book<Traced>&);
extern template ConeBlank<double> cone_blank(const ConeSizes<double>&, const BlankShrink<double>&,
                                             std::string_view, Book<double>&);
extern template ConeBlank<Traced> cone_blank(const ConeSizes<Traced>&, const BlankShrink<Traced>&,
                                             std::string_view, Book<Traced>&);
extern template ConicalPane<double> cone_on_form(const ConeSizes<double>&, double, std::string_view,
                                                 Book<double>&);
extern template ConicalPane<Traced> cone_on_form(const ConeSizes<Traced>&, Traced, std::string_view,
                                                 Book<Traced>&);

}  // namespace forming
}  // namespace bowfront
