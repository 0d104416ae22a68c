#pragma once
/// \file
/// Sections of upright shapes, read off the kernel's faces: the way back from a solid to outlines.

#include <TopoDS_Shape.hxx>
#include <optional>
#include <vector>

#include "bowfront/geom/contour.hpp"

namespace bowfront::solid {

/// The axis that sections are taken across. Plan coordinates are the two axes that follow it, so
/// that they stay right-handed: (x, y) across z, (y, z) across x, (z, x) across y.
enum class Axis { x, y, z };

/// A stretch of the axis over which the section does not change.
struct Slice {
    double low = 0;                 ///< mm
    double high = 0;                ///< mm, > low
    std::vector<Contour> outlines;  ///< with the material on their left
};

/// The slices of a shape, upwards, whose every face lies square to the axis or stands along it;
/// nothing for any other shape.
[[nodiscard]] std::optional<std::vector<Slice>> slices(const TopoDS_Shape& shape, Axis axis);

}  // namespace bowfront::solid
