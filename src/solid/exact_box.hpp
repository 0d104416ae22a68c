#pragma once
/// \file
/// The box of a kernel shape.

#include <TopoDS_Shape.hxx>

#include "bowfront/solid/solid.hpp"

namespace bowfront::solid {

/// The least box along the axes, mm: from curves and surfaces, not from triangles.
[[nodiscard]] Box3 exact_box(const TopoDS_Shape& shape);

}  // namespace bowfront::solid
