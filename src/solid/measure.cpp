#include <BRepBndLib.hxx>
#include <BRepGProp.hxx>
#include <Bnd_Box.hxx>
#include <GProp_GProps.hxx>
#include <TopExp.hxx>
#include <TopTools_IndexedMapOfShape.hxx>

#include "solid/exact_box.hpp"
#include "solid/kernel_guard.hpp"
#include "solid/placing.hpp"
#include "solid/shape_access.hpp"

namespace bowfront {
namespace {

Point3 point(const gp_Pnt& at) {
    return {at.X(), at.Y(), at.Z()};
}

MassProperties mass_properties(const TopoDS_Shape& shape) {
    GProp_GProps in_volume;
    BRepGProp::VolumeProperties(shape, in_volume);
    GProp_GProps on_surface;
    BRepGProp::SurfaceProperties(shape, on_surface);
    TopTools_IndexedMapOfShape faces;
    TopExp::MapShapes(shape, TopAbs_FACE, faces);
    return {in_volume.Mass(), on_surface.Mass(), in_volume.CentreOfMass(), faces.Extent()};
}

}  // namespace

Solid ShapeAccess::wrap(const TopoDS_Shape& shape) {
    return Solid(std::make_shared<const Solid::Impl>(Solid::Impl{shape, mass_properties(shape)}));
}

Solid ShapeAccess::moved(const Solid& solid, const TopLoc_Location& by) {
    MassProperties mass = solid.impl_->mass;
    mass.centroid.Transform(by.Transformation());
    return Solid(
        std::make_shared<const Solid::Impl>(Solid::Impl{solid.impl_->shape.Moved(by), mass}));
}

Solid Solid::placed(const Placement& placement) const {
    return guarded("place", "solid",
                   [&] { return ShapeAccess::moved(*this, solid::location(placement)); });
}

namespace solid {

Box3 exact_box(const TopoDS_Shape& shape) {
    Bnd_Box box;
    BRepBndLib::AddOptimal(shape, box, /*useTriangulation=*/false, /*useShapeTolerance=*/false);
    box.SetGap(0);
    return {point(box.CornerMin()), point(box.CornerMax())};
}

Box3 box(const Solid& solid) {
    return guarded("measure", "solid", [&] { return exact_box(ShapeAccess::shape(solid)); });
}

Measures measure(const Solid& solid) {
    const auto& [volume, area, centroid, faces] = ShapeAccess::mass(solid);
    return {volume, area, point(centroid), box(solid), faces};
}

}  // namespace solid
}  // namespace bowfront
