#include "solid/placing.hpp"

#include <cmath>
#include <gp_Ax3.hxx>
#include <gp_Trsf.hxx>

#include "bowfront/base/contract.hpp"

namespace bowfront::solid {
namespace {

// Axes come from sines, cosines and quotients: a few roundings of numbers of size 1.
constexpr double kUnitRounding = 1e-12;

double dot(const Point3& a, const Point3& b) {
    return a.x * b.x + a.y * b.y + a.z * b.z;
}

}  // namespace

TopLoc_Location location(const Placement& placement) {
    const auto& [origin, x_axis, z_axis] = placement;
    BOWFRONT_EXPECTS(std::abs(dot(x_axis, x_axis) - 1) <= kUnitRounding);
    BOWFRONT_EXPECTS(std::abs(dot(z_axis, z_axis) - 1) <= kUnitRounding);
    BOWFRONT_EXPECTS(std::abs(dot(x_axis, z_axis)) <= kUnitRounding);
    gp_Trsf motion;
    if (x_axis == Point3{1, 0, 0} && z_axis == Point3{0, 0, 1}) {
        if (origin == Point3{}) {
            return {};  // a location of an identity would not count as none
        }
        motion.SetTranslation(gp_Vec(origin.x, origin.y, origin.z));
    } else {
        motion.SetDisplacement(gp_Ax3(), gp_Ax3(gp_Pnt(origin.x, origin.y, origin.z),
                                                gp_Dir(z_axis.x, z_axis.y, z_axis.z),
                                                gp_Dir(x_axis.x, x_axis.y, x_axis.z)));
    }
    return TopLoc_Location(motion);
}

}  // namespace bowfront::solid
