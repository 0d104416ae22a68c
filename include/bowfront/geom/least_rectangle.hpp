#pragma once
/// \file
/// The least rectangle that an outline can be cut from.

#include "bowfront/geom/contour.hpp"

namespace bowfront {

/// A rectangle round an outline.
struct EnclosingRectangle {
    double angle = 0;  ///< rad, −π/2 to π/2: how far the outline is turned to lie along X in it
    double length = 0;  ///< along X, mm; the longer side
    double width = 0;   ///< along Y, mm
    [[nodiscard]] double area() const { return length * width; }
};

/// The rectangle of least area that holds the outline; of equal ones the one that needs the least
/// turn. Its sides touch straights, arcs and corners alike.
///
/// @param contour  not empty
/// Source:  geometry: the outline's exact box in each of 180 directions over a quarter turn and
///          along each straight; from there to the nearest least value by the golden section. The
///          area is right to 1e-12 of itself
/// Example: a square standing on its corner, 100 mm across -> 70.711 mm square, turned by 45 deg
[[nodiscard]] EnclosingRectangle least_rectangle(const Contour& contour);

}  // namespace bowfront
