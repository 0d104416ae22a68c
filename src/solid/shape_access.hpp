#pragma once
/// \file
/// The one door between a Solid and the kernel's shape.

#include <TopoDS_Shape.hxx>
#include <utility>

#include "bowfront/solid/solid.hpp"

namespace bowfront {

struct Solid::Impl {
    TopoDS_Shape shape;  ///< of type TopAbs_SOLID, in its place
};

struct ShapeAccess {
    [[nodiscard]] static Solid wrap(TopoDS_Shape shape) {
        return Solid(std::make_shared<const Solid::Impl>(Solid::Impl{std::move(shape)}));
    }
    [[nodiscard]] static const TopoDS_Shape& shape(const Solid& solid) {
        return solid.impl_->shape;
    }
};

}  // namespace bowfront
