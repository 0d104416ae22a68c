#pragma once
/// \file
/// Boundaries of prism-like bodies, built face by face on shared edges and without booleans.

#include <TopoDS_Solid.hxx>

#include "bowfront/pattern/part.hpp"

namespace bowfront::solid {

/// The solid of a body whose recesses and bores touch neither its outlines nor each other.
/// Not proved: outlines that cross give a solid that the kernel's check refuses.
/// @throws KernelError where a recess or bore lies outside the section
[[nodiscard]] TopoDS_Solid prism(const Body& body, const std::string& part);

/// The outlines of a bore: a circle.
[[nodiscard]] Contour outline(const Bore& bore);

}  // namespace bowfront::solid
