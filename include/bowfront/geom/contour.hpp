#pragma once
/// \file
/// Outlines of straights and true arcs: the one kind of path that plan, grooves, patterns and
/// solids are made of. An arc stays an arc from the case file to the cutter.
///
/// Segments are held as in a polyline with bulges: each vertex begins a segment, and its bulge is
/// the tangent of a quarter of the angle that the segment turns through, positive when it turns
/// to the left (counter-clockwise), 0 for a straight.
/// Source: bulge identities of the public DXF reference.

#include <optional>
#include <span>
#include <utility>
#include <vector>

#include "bowfront/geom/point.hpp"

namespace bowfront {

/// How far two ends may lie apart and still be one point, mm. Several hundred times the rounding
/// of coordinates of 10 m in double arithmetic, and far under anything a cutter can make.
inline constexpr double kJoint = 1e-9;

/// A vertex and the segment that begins there.
struct Vertex {
    Point at;
    double bulge = 0;  ///< −1 to 1; arcs over half a turn are split
    friend bool operator==(const Vertex&, const Vertex&) = default;
};

/// One straight or arc between two points.
struct Segment {
    Point from;
    Point to;
    double bulge = 0;

    [[nodiscard]] bool straight() const { return bulge == 0; }
    /// Length along the segment, mm.
    [[nodiscard]] double length() const;
    /// Angle turned through, rad, signed; 0 for a straight.
    [[nodiscard]] double sweep() const { return 4 * std::atan(bulge); }
    /// Radius of an arc, mm. @throws ContractError for a straight
    [[nodiscard]] double radius() const;
    /// Centre of an arc. @throws ContractError for a straight
    [[nodiscard]] Point centre() const;
    /// The point at a share `t` of the length, 0 to 1; exactly an end at 0 and at 1.
    [[nodiscard]] Point at(double t) const;
    /// Unit tangent at a share `t` of the length.
    [[nodiscard]] Point tangent(double t) const;
    [[nodiscard]] Segment reversed() const { return {to, from, -bulge}; }
    /// The part between shares `t0` < `t1` of the length, 0 to 1.
    [[nodiscard]] Segment part(double t0, double t1) const;
    /// Distance from `p` to the nearest point of the segment, mm.
    [[nodiscard]] double distance_to(Point p) const;
    /// Share of the length, 0 to 1, at which the segment comes nearest to `p`.
    [[nodiscard]] double nearest(Point p) const;
    [[nodiscard]] Box box() const;
};

/// A segment that runs round `centre` from angle `start` through `sweep` (signed), rad.
/// @param radius > 0  @param sweep in magnitude over 0 and not over π
[[nodiscard]] Segment arc_segment(Point centre, double radius, double start, double sweep);

/// A closed outline. Counter-clockwise outlines have a positive area.
class Contour {
  public:
    Contour() = default;
    explicit Contour(std::vector<Vertex> vertices) : vertices_(std::move(vertices)) {}
    /// From segments that follow each other; ends within `kJoint` of the next start are joined,
    /// segments no longer than that are left out, and arcs of more than half a turn are split.
    /// @throws ContractError where a gap is larger, or no two segments are left
    [[nodiscard]] static Contour from_segments(std::span<const Segment> segments);
    /// @throws ContractError unless `low` lies left of and below `high`
    [[nodiscard]] static Contour rectangle(Point low, Point high);
    /// Two half turns, counter-clockwise from the point at angle 0. @param radius > 0
    [[nodiscard]] static Contour circle(Point centre, double radius);
    /// @throws ContractError for fewer than three points
    [[nodiscard]] static Contour polygon(std::span<const Point> points);

    [[nodiscard]] const std::vector<Vertex>& vertices() const { return vertices_; }
    [[nodiscard]] std::size_t size() const { return vertices_.size(); }
    [[nodiscard]] bool empty() const { return vertices_.empty(); }
    [[nodiscard]] Segment segment(std::size_t index) const;
    [[nodiscard]] std::vector<Segment> segments() const;

    /// Signed area, mm². Source: shoelace formula plus circular segments (r²/2·(θ − sin θ)).
    [[nodiscard]] double area() const;
    /// mm
    [[nodiscard]] double perimeter() const;
    /// Centre of gravity of the area. @throws ContractError where the area is 0
    [[nodiscard]] Point centroid() const;
    [[nodiscard]] Box box() const;
    /// The same outline run the other way from the same first vertex.
    [[nodiscard]] Contour reversed() const;
    [[nodiscard]] Contour moved(const Motion& motion) const;  ///< a mirror turns the sense round
    /// Counter-clockwise (`area() > 0`).
    [[nodiscard]] Contour counter_clockwise() const;

  private:
    std::vector<Vertex> vertices_;
};

/// An open chain of segments: a scribed mark.
struct Path {
    std::vector<Segment> segments;
    [[nodiscard]] Path moved(const Motion& motion) const;
    [[nodiscard]] double length() const;
    [[nodiscard]] Box box() const;
};

}  // namespace bowfront
