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

Point3 point(const gp_Pnt& at) { return {at.X(), at.Y(), at.Z()}; }

}  // namespace

Solid Solid::placed(const Placement& placement) const {
    return guarded("place", "solid", [&] {
        return ShapeAccess::wrap(impl_->shape.Moved(solid::location(placement)));
    });
}

namespace solid {

Box3 exact_box(const TopoDS_Shape& shape) {
    Bnd_Box box;
    BRepBndLib::AddOptimal(shape, box, /*useTriangulation=*/false, /*useShapeTolerance=*/false);
    box.SetGap(0);
    return {point(box.CornerMin()), point(box.CornerMax())};
}

Measures measure(const Solid& solid) {
    return guarded("measure", "solid", [&] {
        const TopoDS_Shape& shape = ShapeAccess::shape(solid);
        GProp_GProps in_volume;
        BRepGProp::VolumeProperties(shape, in_volume);
        GProp_GProps on_surface;
        BRepGProp::SurfaceProperties(shape, on_surface);
        TopTools_IndexedMapOfShape faces;
        TopExp::MapShapes(shape, TopAbs_FACE, faces);
        return Measures{in_volume.Mass(), on_surface.Mass(), point(in_volume.CentreOfMass()),
                        exact_box(shape), faces.Extent()};
    });
}

Box3 box(const Solid& solid) {
    return guarded("measure", "solid", [&] { return exact_box(ShapeAccess::shape(solid)); });
}

}  // namespace solid
}  // namespace bowfront
