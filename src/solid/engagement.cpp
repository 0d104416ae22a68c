#include "bowfront/solid/engagement.hpp"

#include <BRepAdaptor_Surface.hxx>
#include <BRepGProp.hxx>
#include <GProp_GProps.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Face.hxx>
#include <algorithm>
#include <cmath>
#include <gp_Pln.hxx>
#include <vector>

#include "bowfront/base/error.hpp"
#include "solid/exact_box.hpp"
#include "solid/kernel_guard.hpp"
#include "solid/shape_access.hpp"
#include "solid/slices.hpp"

namespace bowfront::solid {
namespace {

constexpr double kOnSkin = 1e-6;  // ten times the kernel's tolerance
constexpr double kLevel = 1e-12;  // of a normal's component, as in slices.cpp

[[noreturn]] void refuse(const std::string& why) {
    throw KernelError("measure", "engagement", why);
}

/// +1, −1 or 0: whether a face is level and which way its outward side looks.
int looks(const TopoDS_Face& face) {
    const BRepAdaptor_Surface surface(face, /*restriction=*/false);
    if (surface.GetType() != GeomAbs_Plane) {
        return 0;
    }
    const gp_Pln plane = surface.Plane();
    const double z = plane.Axis().Direction().Z() * (plane.Direct() ? 1 : -1) *
                     (face.Orientation() == TopAbs_REVERSED ? -1 : 1);
    return std::abs(z) < 1 - kLevel ? 0 : z > 0 ? 1 : -1;
}

/// Height of the largest level face of a plate on the side told.
double face_height(const TopoDS_Shape& plate, int side) {
    double largest = 0;
    double height = 0;
    for (TopExp_Explorer faces(plate, TopAbs_FACE); faces.More(); faces.Next()) {
        const TopoDS_Face& face = TopoDS::Face(faces.Current());
        if (looks(face) != side) {
            continue;
        }
        GProp_GProps properties;
        BRepGProp::SurfaceProperties(face, properties);
        if (properties.Mass() > largest) {
            largest = properties.Mass();
            height = BRepAdaptor_Surface(face, false).Plane().Location().Z();
        }
    }
    if (largest == 0) {
        refuse("the plate has no level face towards the pane");
    }
    return height;
}

/// The outlines of a shape at a height.
std::vector<Contour> section(const TopoDS_Shape& shape, double height, const std::string& what) {
    const auto all = slices(shape, Axis::z);
    if (all) {
        for (const Slice& slice : *all) {
            if (slice.low <= height && height <= slice.high) {
                return slice.outlines;
            }
        }
    }
    refuse("the " + what + " is not upright, or not beside the pane");
}

/// The pane's mid-line from the middle of the end meant, stretch by stretch, as far as its two faces
/// run alike; at least one.
std::vector<Segment> mid_line(const Contour& pane, Point near) {
    const auto sides = pane.segments();
    std::size_t end = 0;
    double nearest = HUGE_VAL;
    for (std::size_t i = 0; i < sides.size(); ++i) {
        const double away = distance(sides[i].at(0.5), near);
        if (sides[i].straight() && away < nearest) {
            nearest = away;
            end = i;
        }
    }
    if (sides.size() < 4 || nearest == HUGE_VAL) {
        refuse("the pane's section is not a band");
    }
    const auto midway = [](Point a, Point b) { return (a + b) * 0.5; };
    std::vector<Segment> line;
    for (std::size_t i = 1; 2 * i < sides.size(); ++i) {
        const Segment& right = sides[(end + i) % sides.size()];
        const Segment left = sides[(end + sides.size() - i) % sides.size()].reversed();
        if (std::abs(right.bulge - left.bulge) > kOnSkin) {
            break;
        }
        line.push_back({midway(left.from, right.from), midway(left.to, right.to), right.bulge});
    }
    if (line.empty()) {
        refuse("the pane's two faces do not run alike");
    }
    return line;
}

/// A whole line or circle in which a part of a post's skin lies, material on its left.
struct Skin {
    Segment part;

    /// How far a point lies within, mm; negative outside.
    [[nodiscard]] double depth(Point p) const {
        if (part.straight()) {
            const Point way = part.to - part.from;
            return cross(way, p - part.from) * (1 / norm(way));
        }
        return part.radius() - distance(part.centre(), p);
    }
};

/// The outline's faces that have all of it behind them.
std::vector<Skin> skin(const Contour& post) {
    std::vector<Skin> found;
    const auto sides = post.segments();
    for (const Segment& side : sides) {
        const Skin candidate{side};
        const bool convex = side.bulge >= 0;
        const bool all_behind = std::all_of(sides.begin(), sides.end(), [&](const Segment& other) {
            // The middles are asked too, for arcs that swell over the line of a side.
            return candidate.depth(other.from) >= -kOnSkin &&
                   candidate.depth(other.at(0.5)) >= -kOnSkin;
        });
        if (convex && all_behind) {
            found.push_back(candidate);
        }
    }
    return found;
}

/// As long a stretch of the same line or circle, with the start of the first in its middle.
Segment about_start(const Segment& line) {
    if (line.straight()) {
        const Point half = (line.to - line.from) * 0.5;
        return {line.from - half, line.from + half, 0};
    }
    const Point spoke = line.from - line.centre();
    return arc_segment(line.centre(), line.radius(),
                       std::atan2(spoke.y, spoke.x) - line.sweep() / 2, line.sweep());
}

/// The least depth of a point under all faces of a skin.
double depth_under(const std::vector<Skin>& faces, Point p) {
    double least = HUGE_VAL;
    for (const Skin& face : faces) {
        least = std::min(least, face.depth(p));
    }
    return least;
}

/// The share of `line` at which it leaves the skin, by halving; inside at `inside`, outside at 1.
double exit_share(const Segment& line, const std::vector<Skin>& faces, double inside) {
    double outside = 1;
    // 60 halvings leave less than one rounding of the share.
    for (int i = 0; i < 60; ++i) {
        const double middle = (inside + outside) / 2;
        (depth_under(faces, line.at(middle)) > 0 ? inside : outside) = middle;
    }
    return outside;
}

double middle_height(const Box3& box) {
    return (box.low.z + box.high.z) / 2;
}

const Contour& largest(const std::vector<Contour>& outlines) {
    return *std::max_element(outlines.begin(), outlines.end(),
                             [](const auto& a, const auto& b) { return a.area() < b.area(); });
}

/// From the pane's end to where the first stretch that leaves the skin does so.
double reach_along(const std::vector<Segment>& line, const std::vector<Skin>& faces) {
    double length = 0;
    for (const Segment& stretch : line) {
        if (depth_under(faces, stretch.to) < 0) {
            return length + exit_share(stretch, faces, 0) * stretch.length();
        }
        length += stretch.length();
    }
    refuse("the pane's mid-line does not pass from inside the post to outside");
}

double reach(const Contour& pane, const Contour& post, Point near) {
    const std::vector<Segment> stretches = mid_line(pane, near);
    const Segment line = about_start(stretches.front());
    const std::vector<Skin> faces = skin(post);
    if (stretches.size() > 1 && depth_under(faces, stretches.front().from) > 0) {
        return reach_along(stretches, faces);
    }
    const double inside = line.nearest(post.centroid());
    if (depth_under(faces, line.at(inside)) <= 0 || depth_under(faces, line.to) >= 0) {
        refuse("the pane's mid-line does not pass from inside the post to outside");
    }
    return (exit_share(line, faces, inside) - 0.5) * line.length();
}

}  // namespace

double engagement_in_plate(const Solid& pane, const Solid& plate) {
    return guarded("measure", "engagement", [&] {
        const Box3 pane_box = exact_box(ShapeAccess::shape(pane));
        const TopoDS_Shape& plate_shape = ShapeAccess::shape(plate);
        const bool above = middle_height(pane_box) > middle_height(exact_box(plate_shape));
        return above ? face_height(plate_shape, +1) - pane_box.low.z
                     : pane_box.high.z - face_height(plate_shape, -1);
    });
}

double engagement_in_post(const Solid& pane, const Solid& post, Point near) {
    return guarded("measure", "engagement", [&] {
        const TopoDS_Shape& pane_shape = ShapeAccess::shape(pane);
        const TopoDS_Shape& post_shape = ShapeAccess::shape(post);
        // In the middle of the height that both share: a low case's pane may stand mostly in the
        // grooves of base and top.
        const Box3 pane_box = exact_box(pane_shape);
        const Box3 post_box = exact_box(post_shape);
        const double height = middle_height({{0, 0, std::max(pane_box.low.z, post_box.low.z)},
                                             {0, 0, std::min(pane_box.high.z, post_box.high.z)}});
        return reach(largest(section(pane_shape, height, "pane")),
                     largest(section(post_shape, height, "post")), near);
    });
}

}  // namespace bowfront::solid
