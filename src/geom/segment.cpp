/// Measures of one straight or arc. All are worked out from chord and bulge without passing by the
/// centre, which runs off to infinity as the bulge goes to 0 and would take the digits with it.

#include <algorithm>
#include <array>
#include <numbers>

#include "bowfront/base/contract.hpp"
#include "bowfront/geom/contour.hpp"

namespace bowfront {
namespace {

/// `a` turned counter-clockwise by an angle, rad.
Point turned(Point a, double angle) {
    const double c = std::cos(angle);
    const double s = std::sin(angle);
    return {c * a.x - s * a.y, s * a.x + c * a.y};
}

/// A point seen from an arc whose chord c lies along X with its middle at the origin. The vector
/// from the arc's centre to the point is kept multiplied by 4·bulge: in that scale the middle of
/// the arc lies straight down, whichever way the arc turns, and nothing grows as it flattens.
struct ArcView {
    double chord;
    double bulge;
    Point seen;  ///< from the middle of the chord, along and left of it
    Point from_centre;

    ArcView(const Segment& arc, Point p) : chord(distance(arc.from, arc.to)), bulge(arc.bulge) {
        const Point along = (arc.to - arc.from) * (1 / chord);
        const Point offset = p - (arc.from + arc.to) * 0.5;
        seen = {dot(along, offset), cross(along, offset)};
        from_centre = {4 * bulge * seen.x, 4 * bulge * seen.y - chord * (1 - bulge * bulge)};
    }

    /// Angle at the centre between the middle of the arc and the point, positive towards the end.
    [[nodiscard]] double angle_from_middle() const {
        return std::copysign(1.0, bulge) * std::atan2(from_centre.x, -from_centre.y);
    }

    /// Distance to the whole circle: (ρ² − R²)/(ρ + R), with ρ² − R² free of the radius' size.
    [[nodiscard]] double distance_to_circle() const {
        const double power = 4 * bulge * (dot(seen, seen) - chord * chord / 4) -
                             2 * seen.y * chord * (1 - bulge * bulge);
        return std::abs(power) / (norm(from_centre) + chord * (1 + bulge * bulge));
    }
};

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
    return ArcView(*this, p).distance_to_circle();
}

Box Segment::box() const {
    Box box;
    box.add(from);
    box.add(to);
    if (straight() || from == to) {
        return box;
    }
    const double turn = std::copysign(1.0, bulge);
    const Point outward = left_of(tangent(0)) * -turn;
    for (const Point axis : std::array{Point{1, 0}, Point{0, 1}, Point{-1, 0}, Point{0, -1}}) {
        double angle = turn * std::atan2(cross(outward, axis), dot(outward, axis));
        if (angle < 0) {
            angle += 2 * std::numbers::pi;
        }
        if (const double share = angle / std::abs(sweep()); share > 0 && share < 1) {
            // Only the coordinate that is extreme there: the other may be off by the square root
            // of the rounding and would make a needless corner.
            const Point extreme = at(share);
            box.add(axis.x != 0 ? Point{extreme.x, from.y} : Point{from.x, extreme.y});
        }
    }
    return box;
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
