#pragma once
/// \file
/// The convex hull of an outline of straights and arcs: what a thing that stands on the outline is
/// held up by. Exact; the hull itself is never drawn.

#include "bowfront/geom/contour.hpp"

namespace bowfront {

/// How far an outline reaches in a direction: the largest `dot(p, outward)` of its points, mm. The
/// same for its convex hull.
/// @param outward  a unit vector
[[nodiscard]] double reach(const Contour& outline, Point outward);

/// An edge of a convex hull as seen from a point.
struct HullEdge {
    double distance = 0;  ///< mm; negative for a point outside
    Point outward;        ///< unit vector square to the edge there, away from the hull
};

/// The edge of an outline's convex hull that is nearest to a point: a straight, an arc, or a line
/// across a hollow. Of edges that are equally near (within `kJoint`) the one that faces most to
/// −Y, then to −X.
///
/// The distance is the least of `reach(u) − p·u` over all directions u. Between two directions in
/// which the reach passes from one piece of the outline to another it is a wave in u, so it is
/// least either where two pieces reach equally far, or where u points from a piece's centre to p:
/// a finite number of directions, all tried.
/// Source: geometry, the support function of a convex set
[[nodiscard]] HullEdge nearest_hull_edge(const Contour& outline, Point p);

}  // namespace bowfront
