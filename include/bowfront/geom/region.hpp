#pragma once
/// \file
/// Flat areas with holes, and exact sums and differences of them: arcs stay arcs.

#include <cstddef>
#include <optional>
#include <vector>

#include "bowfront/geom/contour.hpp"

namespace bowfront {

/// One connected area: an outer outline (counter-clockwise) and holes (clockwise).
struct Region {
    Contour outer;
    std::vector<Contour> holes;

    /// The outer outline's less the holes', whichever way they run, mm².
    [[nodiscard]] double area() const;
    /// Outer and holes together, mm.
    [[nodiscard]] double perimeter() const;
    /// Centre of gravity. @throws ContractError where nothing is left of the area
    [[nodiscard]] Point centroid() const;
    [[nodiscard]] Box box() const { return outer.box(); }
    /// In a mirror, too, the outer outline stays counter-clockwise and the holes clockwise.
    [[nodiscard]] Region moved(const Motion& motion) const;
};

/// Where a point lies.
enum class Side { inside, on_edge, outside };

/// Where `p` lies with respect to a closed outline; within `kJoint` of it counts as on it.
[[nodiscard]] Side where(const Contour& contour, Point p);
/// The same for a region; the inside of a hole is outside.
[[nodiscard]] Side where(const Region& region, Point p);

/// Boolean sums of areas; areas of one operand may overlap each other. Edges closer than 1e-7 mm
/// are taken as one, so nothing moves by more than about that (in a tangle of edges all about that
/// close, by up to 3e-6 mm). An outline that crosses itself covers what it runs round in its own
/// sense. Results are connected regions, largest first (ties
/// by lowest x, then y of their boxes), each outer outline counter-clockwise, no segment shorter
/// than 1e-7 mm, neighbouring pieces of one straight or one arc joined again (up to half a turn).
/// Shared edges, touching corners and full overlap are handled; slivers thinner than 1e-7 mm
/// are dropped.
/// @throws ContractError for a bulge over 1, or where no outlines can be made of the edges
[[nodiscard]] std::vector<Region> unite(const std::vector<Region>& regions);
[[nodiscard]] std::vector<Region> subtract(const std::vector<Region>& from,
                                           const std::vector<Region>& tools);
[[nodiscard]] std::vector<Region> intersect(const std::vector<Region>& a,
                                            const std::vector<Region>& b);

/// Least distance between the edges of two outlines, mm; 0 where they touch or cross. An outline
/// inside the other has a gap to it as well.
[[nodiscard]] double gap(const Contour& a, const Contour& b);

/// Least distance from `p` to the edge of an outline, mm, inside and outside alike.
[[nodiscard]] double distance_to_edge(const Contour& contour, Point p);

/// Whether the edges of two outlines touch or cross: a `gap` of 0, sooner told.
[[nodiscard]] bool touch(const Contour& a, const Contour& b);

/// Two segments of an outline that touch or cross where they should not: anywhere but in the vertex
/// that neighbours share.
struct SelfCrossing {
    std::size_t first = 0;   ///< index of a segment
    std::size_t second = 0;  ///< of another, larger
};
/// The first pair of segments, by the left ends of their boxes, that touch or cross; empty where the
/// outline keeps clear of itself. Takes time in proportion to the segments, unless many of them
/// stand over each other.
[[nodiscard]] std::optional<SelfCrossing> self_crossing(const Contour& contour);

/// Where two segments meet: points, and for overlapping collinear or concentric segments the
/// ends of the shared stretch. Touching counts, within `kJoint`. In order along `a`.
[[nodiscard]] std::vector<Point> meetings(const Segment& a, const Segment& b);

/// The band of a given width along a chain of tangent-continuous segments (a groove): two edges
/// set off by half the width to each side, with ends as told.
enum class BandEnd {
    square,  ///< cut square at the chain's end points
    round,   ///< a half circle of the width's diameter whose crown stands at the chain's end point
};
/// The outline runs counter-clockwise. The chain has to keep clear of itself by the width.
/// @param width > 0, and less than twice the radius of any arc of the chain
/// @throws ContractError where the chain is not tangent-continuous, or with round ends is shorter
///         than the width
[[nodiscard]] Contour band(const std::vector<Segment>& chain, double width, BandEnd start,
                           BandEnd end);

}  // namespace bowfront
