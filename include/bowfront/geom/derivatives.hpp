#pragma once
/// \file
/// What a plane curve does at one parameter.

#include "bowfront/geom/point.hpp"

namespace bowfront {

/// Place, and first and second derivative by the parameter, mm.
struct CurveDerivatives {
    Point at;
    Point first;
    Point second;

    /// Length run for a unit of the parameter, mm.
    [[nodiscard]] double speed() const { return norm(first); }
    /// 1/mm, positive where the curve turns to the left; infinite or NaN where the speed is 0.
    /// Source: differential geometry, κ = (x′·y″ − y′·x″)/(x′² + y′²)^(3/2)
    [[nodiscard]] double curvature() const {
        return cross(first, second) / (dot(first, first) * speed());
    }
};

}  // namespace bowfront
