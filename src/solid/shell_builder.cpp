#include "solid/shell_builder.hpp"

#include <BRep_Tool.hxx>
#include <Geom2d_Line.hxx>
#include <GeomAPI.hxx>
#include <Geom_Circle.hxx>
#include <Geom_CylindricalSurface.hxx>
#include <Geom_Line.hxx>
#include <Geom_Plane.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Wire.hxx>
#include <cmath>
#include <gp_Ax3.hxx>
#include <gp_Pln.hxx>

namespace bowfront::solid {
namespace {

constexpr double kTolerance = 1e-7;  // the kernel's own, Precision::Confusion()

/// Where an arc begins and ends on its circle, taken counter-clockwise from its first end.
struct Turn {
    Point centre;
    double radius = 0;
    Point x_axis;  ///< from the centre to the end that a counter-clockwise walk meets first
    double angle = 0;

    explicit Turn(const Segment& arc)
        : centre(arc.centre()), radius(arc.radius()), angle(std::abs(arc.sweep())) {
        const Point first = arc.bulge > 0 ? arc.from : arc.to;
        x_axis = (first - centre) * (1 / distance(centre, first));
    }
    [[nodiscard]] gp_Ax3 frame(double z) const {
        return {gp_Pnt(centre.x, centre.y, z), gp_Dir(0, 0, 1), gp_Dir(x_axis.x, x_axis.y, 0)};
    }
};

}  // namespace

Ring Ring::reversed() const {
    Ring other{outline.reversed(), {}};
    for (auto edge = edges.rbegin(); edge != edges.rend(); ++edge) {
        other.edges.push_back(TopoDS::Edge(edge->Reversed()));
    }
    return other;
}

std::vector<TopoDS_Vertex> ShellBuilder::corners(const Contour& outline, double z) {
    std::vector<TopoDS_Vertex> made;
    for (const Vertex& vertex : outline.vertices()) {
        TopoDS_Vertex& corner = made.emplace_back();
        topology_.MakeVertex(corner, gp_Pnt(vertex.at.x, vertex.at.y, z), kTolerance);
    }
    return made;
}

TopoDS_Edge ShellBuilder::curve(const Segment& segment, double z, const TopoDS_Vertex& from,
                                const TopoDS_Vertex& to) {
    TopoDS_Edge edge;
    const bool against = segment.bulge < 0;  // the kernel's circles run counter-clockwise
    double length = 0;
    if (segment.straight()) {
        const Point way = segment.to - segment.from;
        length = norm(way);
        topology_.MakeEdge(
            edge, new Geom_Line(gp_Pnt(segment.from.x, segment.from.y, z), gp_Dir(way.x, way.y, 0)),
            kTolerance);
    } else {
        const Turn turn(segment);
        length = turn.angle;
        topology_.MakeEdge(edge, new Geom_Circle(turn.frame(z).Ax2(), turn.radius), kTolerance);
    }
    topology_.Add(edge, (against ? to : from).Oriented(TopAbs_FORWARD));
    topology_.Add(edge, (against ? from : to).Oriented(TopAbs_REVERSED));
    topology_.Range(edge, 0, length);
    return against ? TopoDS::Edge(edge.Reversed()) : edge;
}

TopoDS_Edge ShellBuilder::upright(Point at, double low, double high, const TopoDS_Vertex& foot,
                                  const TopoDS_Vertex& head) {
    TopoDS_Edge edge;
    topology_.MakeEdge(edge, new Geom_Line(gp_Pnt(at.x, at.y, low), gp_Dir(0, 0, 1)), kTolerance);
    topology_.Add(edge, foot.Oriented(TopAbs_FORWARD));
    topology_.Add(edge, head.Oriented(TopAbs_REVERSED));
    topology_.Range(edge, 0, high - low);
    return edge;
}

Ring ShellBuilder::ring(const Contour& outline, double z,
                        const std::vector<TopoDS_Vertex>& corners) {
    Ring made{outline, {}};
    for (std::size_t i = 0; i < outline.size(); ++i) {
        made.edges.push_back(
            curve(outline.segment(i), z, corners[i], corners[(i + 1) % corners.size()]));
    }
    return made;
}

/// Gives an edge its curve in a plane. The kernel could do without, but it would work the curve
/// out anew each time that it looks at the face: that makes up a third of all checking.
void ShellBuilder::trace_on_plane(const TopoDS_Edge& edge, const Handle(Geom_Plane) & plane) {
    double first = 0;
    double last = 0;
    const Handle(Geom_Curve) curve = BRep_Tool::Curve(edge, first, last);
    topology_.UpdateEdge(edge, GeomAPI::To2d(curve, plane->Pln()), plane, TopLoc_Location(),
                         kTolerance);
}

TopoDS_Face ShellBuilder::flat_face(const Segment& segment, double low, const Border& border) {
    const Point way = segment.to - segment.from;
    const Handle(Geom_Plane) plane =
        new Geom_Plane(gp_Ax3(gp_Pnt(segment.from.x, segment.from.y, low), gp_Dir(way.y, -way.x, 0),
                              gp_Dir(way.x, way.y, 0)));
    for (const TopoDS_Edge& edge : {border.bottom, border.end, border.top, border.start}) {
        trace_on_plane(edge, plane);
    }
    TopoDS_Face face;
    topology_.MakeFace(face, plane, kTolerance);
    return face;
}

TopoDS_Face ShellBuilder::round_face(const Segment& segment, double low, double high,
                                     const Border& border) {
    const Turn turn(segment);
    const Handle(Geom_Surface) cylinder = new Geom_CylindricalSurface(turn.frame(low), turn.radius);
    const auto trace = [&](const TopoDS_Edge& edge, double u, double v, gp_Dir2d way) {
        topology_.UpdateEdge(edge, new Geom2d_Line(gp_Pnt2d(u, v), way), cylinder,
                             TopLoc_Location(), kTolerance);
    };
    const bool with = segment.bulge > 0;
    trace(border.bottom, 0, 0, gp_Dir2d(1, 0));
    trace(border.top, 0, high - low, gp_Dir2d(1, 0));
    trace(with ? border.start : border.end, 0, 0, gp_Dir2d(0, 1));
    trace(with ? border.end : border.start, turn.angle, 0, gp_Dir2d(0, 1));
    TopoDS_Face face;
    topology_.MakeFace(face, cylinder, kTolerance);
    return face;
}

/// Adds a wire in the face's own sense; `turned` where the face will be turned round afterwards.
void ShellBuilder::add_wire(TopoDS_Face& face, const std::vector<TopoDS_Edge>& edges, bool turned) {
    TopoDS_Wire wire;
    topology_.MakeWire(wire);
    for (const TopoDS_Edge& edge : edges) {
        topology_.Add(wire, edge);
    }
    wire.Closed(true);
    topology_.Add(face, turned ? wire.Reversed() : wire);
}

void ShellBuilder::wall_face(const Segment& segment, double low, double high,
                             const Border& border) {
    TopoDS_Face face = segment.straight() ? flat_face(segment, low, border)
                                          : round_face(segment, low, high, border);
    const bool turned = segment.bulge < 0;  // a cylinder's own side is away from its axis
    add_wire(face,
             {border.bottom, border.end, TopoDS::Edge(border.top.Reversed()),
              TopoDS::Edge(border.start.Reversed())},
             turned);
    topology_.Add(shell_, turned ? face.Reversed() : face);
}

Rings ShellBuilder::wall(const Contour& outline, double low, double high) {
    const auto feet = corners(outline, low);
    const auto heads = corners(outline, high);
    Rings rings{ring(outline, low, feet), ring(outline, high, heads)};
    std::vector<TopoDS_Edge> uprights;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        uprights.push_back(upright(outline.vertices()[i].at, low, high, feet[i], heads[i]));
    }
    for (std::size_t i = 0; i < outline.size(); ++i) {
        wall_face(outline.segment(i), low, high,
                  {rings.low.edges[i], uprights[(i + 1) % uprights.size()], rings.high.edges[i],
                   uprights[i]});
    }
    return rings;
}

void ShellBuilder::cap(double z, Facing facing, const std::vector<const Ring*>& rings) {
    const Handle(Geom_Plane) plane = new Geom_Plane(gp_Pnt(0, 0, z), gp_Dir(0, 0, 1));
    TopoDS_Face face;
    topology_.MakeFace(face, plane, kTolerance);
    for (const Ring* ring : rings) {
        for (const TopoDS_Edge& edge : ring->edges) {
            trace_on_plane(edge, plane);
        }
        add_wire(face, ring->edges, false);
    }
    topology_.Add(shell_, facing == Facing::up ? face : face.Reversed());
}

TopoDS_Solid ShellBuilder::solid() {
    shell_.Closed(true);
    TopoDS_Solid made;
    topology_.MakeSolid(made);
    topology_.Add(made, shell_);
    return made;
}

}  // namespace bowfront::solid
