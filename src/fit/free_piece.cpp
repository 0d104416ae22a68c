#include "free_piece.hpp"

#include <cmath>
#include <numbers>

#include "check_list.hpp"

namespace bowfront::fit {
namespace {

constexpr double kTwoPi = 2 * std::numbers::pi;

// The eccentric angle of the point that is seen from the centre at an angle, of the same turn.
double eccentric(double seen, double semi_x, double semi_y) {
    const double angle = std::atan2(semi_x * std::sin(seen), semi_y * std::cos(seen));
    return angle + kTwoPi * std::round((seen - angle) / kTwoPi);
}

FreePieceFault fault_of_ellipse(const EllipseSpec& ellipse) {
    const double turned = std::abs(ellipse.to.value - ellipse.from.value);
    if (!(ellipse.semi_axes[0].value > 0 && ellipse.semi_axes[1].value > 0)) {
        return {"an ellipse has two half axes over 0", "lengths over 0"};
    }
    if (!(turned > 0 && turned <= kTwoPi)) {
        return {"the ellipse does not run from one angle to another within a full turn",
                "two angles that differ by at most 360 degrees"};
    }
    return {};
}

FreePieceFault fault_of_points(const CurveSpec& curve) {
    constexpr std::size_t kLeast = 3;
    if (curve.through.size() < kLeast) {
        return {"a curve through " + std::to_string(curve.through.size()) + " points is a straight",
                "at least 3 points"};
    }
    for (std::size_t i = 1; i < curve.through.size(); ++i) {
        const auto& a = curve.through[i - 1];
        const auto& b = curve.through[i];
        if (std::hypot(b[0].value - a[0].value, b[1].value - a[1].value) <= kCrossing) {
            return {"the curve's points " + std::to_string(i) + " and " + std::to_string(i + 1) +
                        " lie in one place",
                    "leave one of them out"};
        }
    }
    return {};
}

}  // namespace

SmoothCurve smooth_curve(const PieceSpec& spec) {
    if (spec.ellipse) {
        const double a = spec.ellipse->semi_axes[0].value;
        const double b = spec.ellipse->semi_axes[1].value;
        const double from = eccentric(spec.ellipse->from.value, a, b);
        const double to = eccentric(spec.ellipse->to.value, a, b);
        return SmoothCurve(EllipticArc{{}, a, b, 0, from, to});
    }
    FreeLine line;
    for (const auto& point : spec.curve->through) {
        line.points.push_back({point[0].value, point[1].value});
    }
    return SmoothCurve(line);
}

FreePieceFault fault_of(const PieceSpec& spec) {
    FreePieceFault fault =
        spec.ellipse ? fault_of_ellipse(*spec.ellipse) : fault_of_points(*spec.curve);
    const double error = spec.chord_error.value;
    constexpr double kMostError = 1;  // mm
    if (fault.found.empty() && !(error >= kFinestChordError && error <= kMostError)) {
        return {"arcs can't be held to " + mm(error) + " of a curve", "1e-6 to 1 mm"};
    }
    if (!fault.found.empty()) {
        return fault;
    }
    const SmoothCurve curve = smooth_curve(spec);
    if (curve.self_crossing()) {
        return {"the curve crosses itself", "points in the order that the glazing line runs"};
    }
    if (const double radius = curve.tightest().radius(); radius <= error) {
        return {"the curve bends to a radius of " + mm(radius), "points that turn less sharply"};
    }
    return {};
}

}  // namespace bowfront::fit
