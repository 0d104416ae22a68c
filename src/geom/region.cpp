#include "bowfront/geom/region.hpp"

#include <algorithm>

#include "bowfront/base/contract.hpp"
#include "geom/winding.hpp"

namespace bowfront {

double Region::area() const {
    double total = std::abs(outer.area());
    for (const Contour& hole : holes) {
        total -= std::abs(hole.area());
    }
    return total;
}

double Region::perimeter() const {
    double total = outer.perimeter();
    for (const Contour& hole : holes) {
        total += hole.perimeter();
    }
    return total;
}

Point Region::centroid() const {
    const double whole = std::abs(outer.area());
    const Point base = outer.centroid();
    double left = whole;
    Point moment;
    for (const Contour& hole : holes) {
        const double area = std::abs(hole.area());
        left -= area;
        moment = moment - (hole.centroid() - base) * area;
    }
    BOWFRONT_EXPECTS(left > 0);
    return base + moment * (1 / left);
}

Region Region::moved(const Motion& motion) const {
    const auto placed = [&](const Contour& outline) {
        const Contour there = outline.moved(motion);
        return motion.mirrored ? there.reversed() : there;
    };
    Region there{placed(outer), {}};
    there.holes.reserve(holes.size());
    for (const Contour& hole : holes) {
        there.holes.push_back(placed(hole));
    }
    return there;
}

Side where(const Contour& contour, Point p) {
    const std::vector<Segment> segments = contour.segments();
    if (std::ranges::any_of(segments,
                            [&](const Segment& s) { return s.distance_to(p) <= kJoint; })) {
        return Side::on_edge;
    }
    return winding(segments, p) != 0 ? Side::inside : Side::outside;
}

Side where(const Region& region, Point p) {
    const Side in_outer = where(region.outer, p);
    if (in_outer != Side::inside) {
        return in_outer;
    }
    for (const Contour& hole : region.holes) {
        const Side in_hole = where(hole, p);
        if (in_hole != Side::outside) {
            return in_hole == Side::on_edge ? Side::on_edge : Side::outside;
        }
    }
    return Side::inside;
}

}  // namespace bowfront
