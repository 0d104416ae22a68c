#pragma once
/// \file
/// A free smooth line through given points.

#include <array>
#include <optional>
#include <vector>

#include "bowfront/geom/derivatives.hpp"

namespace bowfront {

/// A line that comes back to itself so near counts as crossing itself, mm.
inline constexpr double kCrossing = 1e-6;

/// How far the parameter runs from one point of a spline to the next.
enum class PointSpacing {
    /// With the distance. The line then comes nearest to a smooth one that the points were taken
    /// from, however unevenly: its error falls with the fourth power of the distances.
    /// Source: Floater and Surazhsky, Parameterization for curve interpolation, 2006
    chord_length,
    /// With the square root of the distance. For points that turn sharply: the line swings out less
    /// between points that lie far apart. Source: Lee, Choosing nodes in parametric curve
    /// interpolation, Computer-Aided Design 21 (1989)
    centripetal,
};

/// The points that a free line runs through, and how it starts and ends.
struct FreeLine {
    std::vector<Point> points;  ///< at least 2; neighbours further apart than `kCrossing`
    PointSpacing spacing = PointSpacing::chord_length;
    /// Direction at the first point, of any length but 0. Left out: the line runs out straight
    /// there (no curvature, a natural spline).
    std::optional<Point> start_direction = {};
    std::optional<Point> end_direction = {};  ///< the same at the last point
};

/// Two parameters at which a line is in one place.
struct CurveCrossing {
    double first = 0;
    double second = 0;
};

/// Cubic polynomials from point to point whose place, direction and curvature run on at every point
/// (C2). The parameter `t` runs from 0 at the first point to 1 at the last.
/// Source: interpolation by cubic splines, de Boor, A Practical Guide to Splines, chapter IV
class CubicSpline {
  public:
    /// @throws ContractError outside the ranges of FreeLine
    explicit CubicSpline(const FreeLine& line);

    [[nodiscard]] CubicSpline moved(const Motion& motion) const;
    [[nodiscard]] CubicSpline reversed() const;

    /// Exactly a given point at its knot. @param t  0 to 1
    [[nodiscard]] CurveDerivatives derivatives(double t) const;
    /// The parameters of the points, ascending.
    [[nodiscard]] std::vector<double> knots() const;
    /// Knots, and between them the parameters at which the curvature has a greatest or least value:
    /// all real roots of its derivative's numerator, a polynomial of degree 5 from knot to knot.
    [[nodiscard]] std::vector<double> vertices() const;
    /// Knots, and between them the parameters at which the curvature changes its sign: roots of a
    /// polynomial of degree 2 from knot to knot.
    [[nodiscard]] std::vector<double> sign_changes() const;
    /// A crossing, or a place where the line comes back to within `kCrossing`; none where it only
    /// ends where it began. Found by halving the hulls of its pieces, so that none is missed.
    [[nodiscard]] std::optional<CurveCrossing> self_crossing() const;

  private:
    /// Between two points, as c₀ + c₁·w + c₂·w² + c₃·w³ for w from 0 to 1.
    struct Piece {
        double from = 0;  ///< parameter
        double to = 0;
        std::array<Point, 4> c;
        Point end;  ///< the sum of all four, without its rounding
    };
    CubicSpline() = default;
    /// All knots, and the sign changes of a polynomial that belongs to each piece.
    template <class PolynomialOf>
    [[nodiscard]] std::vector<double> knots_and_roots(const PolynomialOf& polynomial_of) const;

    std::vector<Piece> pieces_;
};

}  // namespace bowfront
