#include "solid/slices.hpp"

#include <BRepAdaptor_Curve.hxx>
#include <BRepAdaptor_Surface.hxx>
#include <BRep_Tool.hxx>
#include <TopExp.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Edge.hxx>
#include <TopoDS_Face.hxx>
#include <TopoDS_Vertex.hxx>
#include <algorithm>
#include <cmath>
#include <gp_Cylinder.hxx>
#include <gp_Pln.hxx>
#include <numbers>

namespace bowfront::solid {
namespace {

// How far a direction may be from along or square to the axis: over 10 m it moves a point by a
// tenth of the kernel's tolerance.
constexpr double kAligned = 1e-12;
// Points nearer than the kernel's tolerance are one.
constexpr double kOnePoint = 1e-7;

/// A face that stands along the axis.
struct Wall {
    Segment foot;  ///< in plan
    double low = 0;
    double high = 0;
};

class Frame {
  public:
    explicit Frame(Axis axis) : up_(static_cast<int>(axis) + 1) {}
    [[nodiscard]] double along(const gp_Dir& way) const { return way.Coord(up_); }
    [[nodiscard]] double height(const gp_Pnt& at) const { return at.Coord(up_); }
    [[nodiscard]] Point plan(const gp_Pnt& at) const {
        return {at.Coord(up_ % 3 + 1), at.Coord((up_ + 1) % 3 + 1)};
    }

  private:
    int up_;  ///< the kernel's number of the axis, 1 to 3
};

enum class Stance { level, upright, oblique };

Stance stance(const TopoDS_Face& face, const Frame& frame) {
    const BRepAdaptor_Surface surface(face, /*restriction=*/false);
    const auto tilt = [&](const gp_Dir& way) { return std::abs(frame.along(way)); };
    if (surface.GetType() == GeomAbs_Plane) {
        const double normal = tilt(surface.Plane().Axis().Direction());
        return normal >= 1 - kAligned ? Stance::level
               : normal <= kAligned   ? Stance::upright
                                      : Stance::oblique;
    }
    if (surface.GetType() == GeomAbs_Cylinder &&
        tilt(surface.Cylinder().Axis().Direction()) >= 1 - kAligned) {
        return Stance::upright;
    }
    return Stance::oblique;
}

/// An edge in plan, run the way it bounds its face; nothing for other curves than lines and arcs
/// up to half a turn.
std::optional<Segment> in_plan(const TopoDS_Edge& edge, const Frame& frame) {
    const BRepAdaptor_Curve curve(edge);
    Segment segment{frame.plan(BRep_Tool::Pnt(TopExp::FirstVertex(edge, true))),
                    frame.plan(BRep_Tool::Pnt(TopExp::LastVertex(edge, true))), 0};
    if (curve.GetType() == GeomAbs_Line) {
        return segment;
    }
    const double angle = curve.LastParameter() - curve.FirstParameter();
    if (curve.GetType() != GeomAbs_Circle || angle > std::numbers::pi + kAligned) {
        return std::nullopt;
    }
    const bool ccw = (frame.along(curve.Circle().Axis().Direction()) > 0) ==
                     (edge.Orientation() == TopAbs_FORWARD);
    segment.bulge = std::tan(angle / 4) * (ccw ? 1 : -1);
    return segment;
}

/// The wall that an upright face is, if it is bounded by two level edges and two uprights.
std::optional<Wall> wall(const TopoDS_Face& face, const Frame& frame) {
    Wall found{{}, HUGE_VAL, -HUGE_VAL};
    int level = 0;
    int upright = 0;
    for (TopExp_Explorer edges(face, TopAbs_EDGE); edges.More(); edges.Next()) {
        const TopoDS_Edge& edge = TopoDS::Edge(edges.Current());
        const double start = frame.height(BRep_Tool::Pnt(TopExp::FirstVertex(edge, true)));
        const double end = frame.height(BRep_Tool::Pnt(TopExp::LastVertex(edge, true)));
        if (std::abs(end - start) > kOnePoint) {
            ++upright;
            continue;
        }
        ++level;
        found.high = std::max(found.high, start);
        if (start < found.low) {
            const auto foot = in_plan(edge, frame);
            if (!foot) {
                return std::nullopt;
            }
            found.foot = *foot;
            found.low = start;
        }
    }
    const bool rectangular = level == 2 && upright == 2 && found.low < found.high;
    return rectangular ? std::optional(found) : std::nullopt;
}

std::optional<std::vector<Wall>> walls(const TopoDS_Shape& shape, const Frame& frame) {
    std::vector<Wall> all;
    for (TopExp_Explorer faces(shape, TopAbs_FACE); faces.More(); faces.Next()) {
        const TopoDS_Face& face = TopoDS::Face(faces.Current());
        const Stance how = stance(face, frame);
        if (how == Stance::level) {
            continue;
        }
        const auto found = how == Stance::upright ? wall(face, frame) : std::nullopt;
        if (!found) {
            return std::nullopt;
        }
        all.push_back(*found);
    }
    return all;
}

std::vector<double> levels(const std::vector<Wall>& walls) {
    std::vector<double> all;
    for (const Wall& wall : walls) {
        all.push_back(wall.low);
        all.push_back(wall.high);
    }
    std::sort(all.begin(), all.end());
    const auto same = [](double a, double b) { return b - a <= kOnePoint; };
    all.erase(std::unique(all.begin(), all.end(), same), all.end());
    return all;
}

/// Joins segments end to start to closed outlines; nothing where one has no follower.
std::optional<std::vector<Contour>> chained(std::vector<Segment> loose) {
    std::vector<Contour> closed;
    while (!loose.empty()) {
        const Point start = loose.back().from;
        Point end = loose.back().to;
        std::vector<Vertex> vertices{{start, loose.back().bulge}};
        loose.pop_back();
        while (distance(end, start) > kOnePoint) {
            const auto next = std::find_if(loose.begin(), loose.end(), [&](const Segment& other) {
                return distance(other.from, end) <= kOnePoint;
            });
            if (next == loose.end()) {
                return std::nullopt;
            }
            vertices.push_back({next->from, next->bulge});
            end = next->to;
            loose.erase(next);
        }
        closed.emplace_back(std::move(vertices));
    }
    return closed;
}

}  // namespace

std::optional<std::vector<Slice>> slices(const TopoDS_Shape& shape, Axis axis) {
    const auto standing = walls(shape, Frame(axis));
    if (!standing) {
        return std::nullopt;
    }
    const std::vector<double> steps = levels(*standing);
    std::vector<Slice> made;
    for (std::size_t i = 0; i + 1 < steps.size(); ++i) {
        std::vector<Segment> feet;
        for (const Wall& wall : *standing) {
            if (wall.low <= steps[i] + kOnePoint && wall.high >= steps[i + 1] - kOnePoint) {
                feet.push_back(wall.foot);
            }
        }
        auto outlines = chained(std::move(feet));
        if (!outlines) {
            return std::nullopt;
        }
        made.push_back({steps[i], steps[i + 1], std::move(*outlines)});
    }
    return made;
}

}  // namespace bowfront::solid
