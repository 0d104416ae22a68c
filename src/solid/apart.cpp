#include "solid/apart.hpp"

#include <algorithm>

#include "bowfront/geom/region.hpp"
#include "solid/exact_box.hpp"
#include "solid/shape_access.hpp"

namespace bowfront::solid {
namespace {

// Sections that come nearer than this are left to the kernel: ten thousand times its tolerance,
// and a tenth of the finest clearance that a workshop can hold.
constexpr double kPlain = 1e-3;

/// How far two stretches run together; negative where a gap is between them.
double shared(double low, double high, double other_low, double other_high) {
    return std::min(high, other_high) - std::max(low, other_low);
}

bool boxes_apart(const Box3& a, const Box3& b, double depth) {
    return shared(a.low.x, a.high.x, b.low.x, b.high.x) <= depth ||
           shared(a.low.y, a.high.y, b.low.y, b.high.y) <= depth ||
           shared(a.low.z, a.high.z, b.low.z, b.high.z) <= depth;
}

bool near(const Contour& one, const Contour& other) {
    const Box a = one.box();
    const Box b = other.box();
    return shared(a.low.x, a.high.x, b.low.x, b.high.x) >= -kPlain &&
           shared(a.low.y, a.high.y, b.low.y, b.high.y) >= -kPlain && gap(one, other) <= kPlain;
}

/// Whether an outline's first point lies in the material of a section: inside an odd number of
/// its outlines.
bool within(const Contour& outline, const Slice& section) {
    const Point at = outline.vertices().front().at;
    const auto around =
        std::count_if(section.outlines.begin(), section.outlines.end(),
                      [&](const Contour& outer) { return where(outer, at) == Side::inside; });
    return around % 2 == 1;
}

/// Two areas whose outlines keep away from each other are apart unless an outline of the one lies
/// within the other.
bool sections_apart(const Slice& a, const Slice& b) {
    for (const Contour& one : a.outlines) {
        for (const Contour& other : b.outlines) {
            if (near(one, other)) {
                return false;
            }
        }
    }
    const auto inside = [](const Slice& inner, const Slice& outer) {
        return std::any_of(inner.outlines.begin(), inner.outlines.end(),
                           [&](const Contour& outline) { return within(outline, outer); });
    };
    return !inside(a, b) && !inside(b, a);
}

bool slices_apart(const std::vector<Slice>& a, const std::vector<Slice>& b, double depth) {
    for (const Slice& one : a) {
        for (const Slice& other : b) {
            if (shared(one.low, one.high, other.low, other.high) > depth &&
                !sections_apart(one, other)) {
                return false;
            }
        }
    }
    return true;
}

}  // namespace

Bystander::Bystander(const Solid& solid)
    : solid_(solid), box_(exact_box(ShapeAccess::shape(solid))) {}

const Bystander::Slices& Bystander::across(Axis axis) {
    auto& made = slices_.at(static_cast<std::size_t>(axis));
    if (!made) {
        made = slices(ShapeAccess::shape(solid_), axis);
    }
    return *made;
}

bool Bystander::plainly_apart(Bystander& other, double depth) {
    if (boxes_apart(box_, other.box_, depth)) {
        return true;
    }
    for (const Axis axis : {Axis::z, Axis::x, Axis::y}) {
        const Slices& mine = across(axis);
        const Slices& theirs = other.across(axis);
        if (mine && theirs && slices_apart(*mine, *theirs, depth)) {
            return true;
        }
    }
    return false;
}

}  // namespace bowfront::solid
