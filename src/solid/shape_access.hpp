#pragma once
/// \file
/// The one door between a Solid and the kernel's shape.

#include <TopLoc_Location.hxx>
#include <TopoDS_Shape.hxx>
#include <gp_Pnt.hxx>

#include "bowfront/solid/solid.hpp"

namespace bowfront {

/// What stays of a shape wherever it is moved, but for the centroid that moves along.
struct MassProperties {
    double volume = 0;  ///< mm³
    double area = 0;    ///< mm²
    gp_Pnt centroid;
    int faces = 0;
};

/// The integrals are taken once, when a shape becomes a solid: they cost more than anything else
/// that is done with it but booleans.
struct Solid::Impl {
    TopoDS_Shape shape;  ///< of type TopAbs_SOLID, in its place
    MassProperties mass;
};

struct ShapeAccess {
    /// @param shape  of type TopAbs_SOLID
    [[nodiscard]] static Solid wrap(const TopoDS_Shape& shape);
    /// The solid moved from where it is.
    [[nodiscard]] static Solid moved(const Solid& solid, const TopLoc_Location& by);
    [[nodiscard]] static const TopoDS_Shape& shape(const Solid& solid) {
        return solid.impl_->shape;
    }
    [[nodiscard]] static const MassProperties& mass(const Solid& solid) {
        return solid.impl_->mass;
    }
};

}  // namespace bowfront
