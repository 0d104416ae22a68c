/// Measures of one straight or arc. All are worked out from chord and bulge without passing by the
/// centre, which runs off to infinity as the bulge goes to 0 and would take the digits with it.

#include <algorithm>
#include <numbers>
#include <optional>

#include "bowfront/base/contract.hpp"
#include "bowfront/geom/contour.hpp"
#include "geom/arc_view.hpp"

namespace bowfront {
namespace {

/// `a` turned counter-clockwise by an angle, rad.
Point turned(Point a, double angle) {
    const double c = std::cos(angle);
    const double s = std::sin(angle);
    return {c * a.x - s * a.y, s * a.x + c * a.y};
}

}  // namespace

double Segment::length() const {
    const double chord = distance(from, to);
    return straight() ? chord : chord * (1 + bulge * bulge) * (std::atan(bulge) / bulge);
}

double Segment::radius() const {
    BOWFRONT_EXPECTS(!straight());
    return distance(from, to) * (1 + bulge * bulge) / (4 * std::abs(bulge));
}

Point Segment::centre() const {
    BOWFRONT_EXPECTS(!straight());
    return (from + to) * 0.5 + left_of(to - from) * ((1 - bulge) * (1 + bulge) / (4 * bulge));
}

Point Segment::at(double t) const {
    BOWFRONT_EXPECTS(0 <= t && t <= 1);
    if (t > 0.5) {
        return reversed().at(1 - t);
    }
    if (straight()) {
        return from + (to - from) * t;
    }
    // The chord to the point is a chord of a share of the sweep; half of what it lacks of the
    // sweep lies between the two chords.
    const double half = sweep() / 2;
    return from + turned(to - from, -(1 - t) * half) * (std::sin(t * half) / std::sin(half));
}

Point Segment::tangent(double t) const {
    BOWFRONT_EXPECTS(0 <= t && t <= 1);
    const Point chord = to - from;
    return turned(chord * (1 / norm(chord)), (t - 0.5) * sweep());
}

Segment Segment::part(double t0, double t1) const {
    BOWFRONT_EXPECTS(t0 < t1);
    if (t0 == 0 && t1 == 1) {
        return *this;
    }
    return {at(t0), at(t1), straight() ? 0 : std::tan((t1 - t0) * std::atan(bulge))};
}

double Segment::nearest(Point p) const {
    if (from == to) {
        return 0;
    }
    if (straight()) {
        const Point chord = to - from;
        return std::clamp(dot(p - from, chord) / dot(chord, chord), 0.0, 1.0);
    }
    const double share = 0.5 + ArcView(*this, p).angle_from_middle() / std::abs(sweep());
    if (share < 0 || share > 1) {
        return distance(p, from) <= distance(p, to) ? 0 : 1;
    }
    return share;
}

double Segment::distance_to(Point p) const {
    const double share = nearest(p);
    if (share <= 0 || share >= 1) {
        return distance(p, share <= 0 ? from : to);
    }
    if (straight()) {
        const Point chord = to - from;
        return std::abs(cross(chord, p - from)) / norm(chord);
    }
    return std::abs(ArcView(*this, p).height_over_circle());
}

Box Segment::box() const {
    Box box;
    box.add(from);
    box.add(to);
    if (straight() || from == to) {
        return box;
    }
    for (const Point axis : {Point{1, 0}, Point{0, 1}, Point{-1, 0}, Point{0, -1}}) {
        if (const auto share = share_facing(*this, axis)) {
            // Only the coordinate that is extreme there: the other may be off by the square root
            // of the rounding and would make a needless corner.
            const Point extreme = at(*share);
            box.add(axis.x != 0 ? Point{extreme.x, from.y} : Point{from.x, extreme.y});
        }
    }
    return box;
}

std::optional<double> share_facing(const Segment& arc, Point outward) {
    const double turn = std::copysign(1.0, arc.bulge);
    const Point start = left_of(arc.tangent(0)) * -turn;
    double angle = turn * std::atan2(cross(start, outward), dot(start, outward));
    if (angle < 0) {
        angle += 2 * std::numbers::pi;
    }
    const double share = angle / std::abs(arc.sweep());
    return share <= 1 ? std::optional(share) : std::nullopt;
}

Segment arc_segment(Point centre, double radius, double start, double sweep) {
    // A half turn that was summed up from parts may pass π by its rounding.
    constexpr double kRounding = 1e-12;
    BOWFRONT_EXPECTS(radius > 0);
    BOWFRONT_EXPECTS(sweep != 0 && std::abs(sweep) <= std::numbers::pi + kRounding);
    const Point from = centre + direction(start) * radius;
    if (std::abs(sweep) >= std::numbers::pi - kRounding) {
        return {from, centre - direction(start) * radius, std::copysign(1.0, sweep)};
    }
    return {from, centre + direction(start + sweep) * radius, std::tan(sweep / 4)};
}

}  // namespace bowfront
