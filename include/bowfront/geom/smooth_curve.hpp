#pragma once
/// \file
/// Plane curves beyond the circle that a pane can follow: parts of ellipses and free lines, with
/// all that bending, cutting and checking ask of them.

#include <optional>
#include <variant>
#include <vector>

#include "bowfront/geom/cubic_spline.hpp"
#include "bowfront/geom/elliptic_arc.hpp"

namespace bowfront {

/// Where a curve bends most.
struct TightestBend {
    double parameter = 0;
    double curvature = 0;  ///< 1/mm, signed
    /// mm; infinite where the whole curve is straight
    [[nodiscard]] double radius() const { return 1 / std::abs(curvature); }
};

/// A smooth plane curve. Its parameter `t` runs from 0 to 1 and is no share of the length:
/// `length_to` and `parameter_at` lead from one to the other.
///
/// Lengths are right to 1e-10 of the length or better; all else is exact but for rounding.
/// Source of lengths: Gauss–Kronrod quadrature with 7 and 15 points, halved where the two differ
class SmoothCurve {
  public:
    /// @throws ContractError outside the ranges of EllipticArc, or for an arc of no sweep
    explicit SmoothCurve(const EllipticArc& arc);
    /// @throws ContractError outside the ranges of FreeLine
    explicit SmoothCurve(const FreeLine& line);

    /// The same curve in another place, with the same parameters.
    [[nodiscard]] SmoothCurve moved(const Motion& motion) const;
    /// The same curve run from its end to its start: `t` becomes 1 − t.
    [[nodiscard]] SmoothCurve reversed() const;

    /// @param t  0 to 1, here and below
    /// @throws ContractError for a parameter outside
    [[nodiscard]] CurveDerivatives derivatives(double t) const;
    [[nodiscard]] Point at(double t) const { return derivatives(t).at; }
    /// Unit tangent. @throws ContractError in a cusp, where the curve has none
    [[nodiscard]] Point tangent(double t) const;
    /// 1/mm, positive where the curve turns to the left. @throws ContractError in a cusp
    [[nodiscard]] double curvature(double t) const;

    /// Developed length, mm.
    [[nodiscard]] double length() const { return panels_.back().end_length; }
    /// Length from the start to `t`, mm; exactly 0 at 0 and `length()` at 1.
    [[nodiscard]] double length_to(double t) const;
    /// The parameter at which so much of the length is behind: the inverse of `length_to`.
    /// @param length  0 to `length()`, mm
    [[nodiscard]] double parameter_at(double length) const;

    /// Where the curve bends most; the first such place of several. A cusp counts as radius 0.
    [[nodiscard]] TightestBend tightest() const;
    /// The parameters at which the curve changes from turning one way to turning the other,
    /// ascending. A stretch that over the whole length would turn by less than `kStraightTurn` is
    /// straight; between two bends the middle of it counts.
    [[nodiscard]] std::vector<double> inflections() const;
    /// See CubicSpline::self_crossing; an ellipse never crosses itself.
    [[nodiscard]] std::optional<CurveCrossing> self_crossing() const;
    /// The parameters between which the curve is one analytic piece, from 0 to 1.
    [[nodiscard]] std::vector<double> pieces() const;

  private:
    using Shape = std::variant<EllipticArc, CubicSpline>;
    /// A range of the parameter so short that one rule of 15 points gives its length.
    struct Panel {
        double from = 0;
        double to = 0;
        double start_length = 0;
        double end_length = 0;
    };
    explicit SmoothCurve(Shape shape);
    Shape shape_;
    std::vector<Panel> panels_;
};

/// A bend that turns the whole length of a curve by less than this is none, rad: a hundredth of
/// what a chain of segments may turn by in a joint without anyone noticing.
inline constexpr double kStraightTurn = 1e-9;

}  // namespace bowfront
