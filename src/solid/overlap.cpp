#include <BRepAlgoAPI_Common.hxx>
#include <BRepGProp.hxx>
#include <GProp_GProps.hxx>
#include <TopExp_Explorer.hxx>
#include <TopTools_ListOfShape.hxx>
#include <algorithm>
#include <cmath>

#include "solid/apart.hpp"
#include "solid/kernel_guard.hpp"
#include "solid/shape_access.hpp"

namespace bowfront::solid {
namespace {

// The kernel's boolean misses or misjudges overlaps between 1e-8 and 1e-6 mm; with this fuzziness
// it takes such surfaces for one, and finds no false overlap where two lie flush (measured).
constexpr double kFuzziness = 1e-4;

TopoDS_Shape shared_piece(const TopoDS_Shape& first, const TopoDS_Shape& second) {
    TopTools_ListOfShape one;
    one.Append(first);
    TopTools_ListOfShape other;
    other.Append(second);
    BRepAlgoAPI_Common operation;
    operation.SetArguments(one);
    operation.SetTools(other);
    operation.SetFuzzyValue(kFuzziness);
    operation.SetNonDestructive(true);
    operation.SetToFillHistory(false);
    operation.Build();
    if (!operation.IsDone() || operation.HasErrors()) {
        throw KernelError("intersect", "two solids", "the kernel found no answer");
    }
    return operation.Shape();
}

double largest_face(const TopoDS_Shape& piece) {
    double largest = 0;
    for (TopExp_Explorer faces(piece, TopAbs_FACE); faces.More(); faces.Next()) {
        GProp_GProps properties;
        BRepGProp::SurfaceProperties(faces.Current(), properties);
        largest = std::max(largest, std::abs(properties.Mass()));
    }
    return largest;
}

/// Volume and depth of what two solids share.
Overlap measured(const TopoDS_Shape& shared) {
    Overlap overlap;
    for (TopExp_Explorer pieces(shared, TopAbs_SOLID); pieces.More(); pieces.Next()) {
        GProp_GProps properties;
        BRepGProp::VolumeProperties(pieces.Current(), properties);
        const double volume = std::abs(properties.Mass());
        overlap.volume += volume;
        if (volume > 0) {
            overlap.depth = std::max(overlap.depth, volume / largest_face(pieces.Current()));
        }
    }
    return overlap;
}

}  // namespace

std::vector<Overlap> overlaps(const std::vector<Solid>& solids, double depth) {
    return guarded("intersect", "all solids", [&] {
        std::vector<Bystander> standing(solids.begin(), solids.end());
        std::vector<Overlap> found;
        for (std::size_t i = 0; i < solids.size(); ++i) {
            for (std::size_t k = i + 1; k < solids.size(); ++k) {
                if (standing[i].plainly_apart(standing[k], depth)) {
                    continue;
                }
                Overlap overlap = measured(
                    shared_piece(ShapeAccess::shape(solids[i]), ShapeAccess::shape(solids[k])));
                overlap.first = i;
                overlap.second = k;
                if (overlap.depth > depth) {
                    found.push_back(overlap);
                }
            }
        }
        return found;
    });
}

}  // namespace bowfront::solid
