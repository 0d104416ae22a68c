#include "bowfront/geom/elliptic_arc.hpp"

#include <numbers>

namespace bowfront {

EllipticArc EllipticArc::moved(const Motion& motion) const {
    EllipticArc there = *this;
    there.centre = motion(centre);
    if (motion.mirrored) {
        // The mirror in Y turns X round: half a turn puts it right, and what is left of the mirror
        // is the angle run the other way.
        there.rotation = motion.angle + std::numbers::pi - rotation;
        there.from = -from;
        there.to = -to;
    } else {
        there.rotation = motion.angle + rotation;
    }
    return there;
}

EllipticArc EllipticArc::reversed() const {
    EllipticArc back = *this;
    back.from = to;
    back.to = from;
    return back;
}

CurveDerivatives EllipticArc::derivatives(double t) const {
    const double sweep = to - from;
    const Point turn = direction(rotation);
    // Both ends by their own angle, so that they are exact.
    const Point unit = direction(t < 1 ? from + t * sweep : to);
    const auto placed = [&](double x, double y) {
        return turn * (semi_x * x) + left_of(turn) * (semi_y * y);
    };
    const Point spoke = placed(unit.x, unit.y);
    return {centre + spoke, placed(-unit.y, unit.x) * sweep, spoke * (-sweep * sweep)};
}

std::vector<double> EllipticArc::vertices() const {
    constexpr double kQuarter = std::numbers::pi / 2;
    const double sweep = to - from;
    const double low = std::min(from, to);
    const double high = std::max(from, to);
    std::vector<double> angles;
    for (double k = std::ceil(low / kQuarter); k * kQuarter < high; ++k) {
        angles.push_back(k * kQuarter);
    }
    if (sweep < 0) {
        angles = {angles.rbegin(), angles.rend()};
    }
    std::vector<double> found{0};
    for (const double angle : angles) {
        const double t = (angle - from) / sweep;
        if (t > found.back() && t < 1) {
            found.push_back(t);
        }
    }
    found.push_back(1);
    return found;
}

}  // namespace bowfront
