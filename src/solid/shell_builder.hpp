#pragma once
/// \file
/// A closed shell, put together from upright walls and level caps that share their edges.
///
/// Every outline is held with the material on its left: a section's outer outline runs
/// counter-clockwise, its holes clockwise, and the edge of a recess against the recess. A wall's
/// outward side is then always the right of its outline, and all orientations follow.

#include <BRep_Builder.hxx>
#include <Geom_Plane.hxx>
#include <TopoDS_Edge.hxx>
#include <TopoDS_Face.hxx>
#include <TopoDS_Shell.hxx>
#include <TopoDS_Solid.hxx>
#include <TopoDS_Vertex.hxx>
#include <vector>

#include "bowfront/geom/contour.hpp"

namespace bowfront::solid {

/// Which way a cap's outward side looks.
enum class Facing { up, down };

/// An outline at one height: its edges, each running the way that the outline runs.
struct Ring {
    Contour outline;
    std::vector<TopoDS_Edge> edges;

    [[nodiscard]] Ring reversed() const;
};

/// The two ends of a wall.
struct Rings {
    Ring low;
    Ring high;
};

/// The edges round one wall face, seen from outside: the rings' edges run with the outline, the
/// uprights run up.
struct Border {
    TopoDS_Edge bottom;
    TopoDS_Edge end;
    TopoDS_Edge top;
    TopoDS_Edge start;
};

/// Collects the faces of one solid.
class ShellBuilder {
  public:
    ShellBuilder() { topology_.MakeShell(shell_); }

    /// The faces of one outline between two heights. @param low < high
    Rings wall(const Contour& outline, double low, double high);
    /// A level face: the ring around it first, then the rings of its holes; counter-clockwise and
    /// clockwise seen from above, whichever way the face looks.
    void cap(double z, Facing facing, const std::vector<const Ring*>& rings);
    /// The finished solid; the shell is taken to be closed.
    [[nodiscard]] TopoDS_Solid solid();

  private:
    std::vector<TopoDS_Vertex> corners(const Contour& outline, double z);
    Ring ring(const Contour& outline, double z, const std::vector<TopoDS_Vertex>& corners);
    TopoDS_Edge curve(const Segment& segment, double z, const TopoDS_Vertex& from,
                      const TopoDS_Vertex& to);
    TopoDS_Edge upright(Point at, double low, double high, const TopoDS_Vertex& foot,
                        const TopoDS_Vertex& head);
    void wall_face(const Segment& segment, double low, double high, const Border& border);
    TopoDS_Face flat_face(const Segment& segment, double low, const Border& border);
    TopoDS_Face round_face(const Segment& segment, double low, double high, const Border& border);
    void add_wire(TopoDS_Face& face, const std::vector<TopoDS_Edge>& edges, bool turned);
    void trace_on_plane(const TopoDS_Edge& edge, const Handle(Geom_Plane) & plane);

    BRep_Builder topology_;
    TopoDS_Shell shell_;
};

}  // namespace bowfront::solid
