#pragma once
/// \file
/// A part of an ellipse.

#include <vector>

#include "bowfront/geom/derivatives.hpp"

namespace bowfront {

/// A part of an ellipse, run with its eccentric angle: centre + turned(semi_x·cos, semi_y·sin).
///
/// The parameter `t` runs from 0 to 1 as the angle runs from `from` to `to`.
struct EllipticArc {
    Point centre;
    double semi_x = 0;    ///< half the axis that lies along `rotation`, mm, > 0
    double semi_y = 0;    ///< half the other one, mm, > 0; may be the larger
    double rotation = 0;  ///< rad
    double from = 0;      ///< eccentric angle at the start, rad
    double to = 0;        ///< at the end, up to 2π from `from`; less than it runs clockwise

    /// The same arc in another place; in a mirror it runs the other way round.
    [[nodiscard]] EllipticArc moved(const Motion& motion) const;
    [[nodiscard]] EllipticArc reversed() const;

    /// @param t  0 to 1
    [[nodiscard]] CurveDerivatives derivatives(double t) const;
    /// Start, end and the vertices between them, ascending: the curvature grows or falls all the
    /// way from one to the next.
    [[nodiscard]] std::vector<double> vertices() const;
};

}  // namespace bowfront
