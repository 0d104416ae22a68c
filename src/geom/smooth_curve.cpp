#include "bowfront/geom/smooth_curve.hpp"

#include <algorithm>
#include <limits>
#include <numbers>
#include <utility>

#include "bowfront/base/contract.hpp"
#include "geom/quadrature.hpp"

namespace bowfront {
namespace {

/// By how much the two rules may differ over a panel, as a share of its length. The finer rule is
/// then right to nearly all digits, by about the power of 3/2 of this.
constexpr double kPanelDifference = 1e-10;
/// Halvings after which a panel is shorter than 1e-12 of the parameter: only a cusp goes so far.
constexpr int kMostHalvings = 40;

const EllipticArc& checked(const EllipticArc& arc) {
    // A whole turn that was worked out in degrees may pass 2π by its rounding.
    constexpr double kRounding = 1e-12;
    BOWFRONT_EXPECTS(arc.semi_x > 0 && arc.semi_y > 0);
    BOWFRONT_EXPECTS(arc.from != arc.to);
    BOWFRONT_EXPECTS(std::abs(arc.to - arc.from) <= 2 * std::numbers::pi + kRounding);
    return arc;
}

/// Calls `found(from, to, length)` for panels from `from` to `to`, in order.
template <class Speed, class Found>
void each_panel(const Speed& speed, double from, double to, int halvings, const Found& found) {
    const Integral length = integral(speed, from, to);
    if (length.difference <= kPanelDifference * length.value || halvings == 0) {
        found(from, to, length.value);
        return;
    }
    const double middle = (from + to) / 2;
    each_panel(speed, from, middle, halvings - 1, found);
    each_panel(speed, middle, to, halvings - 1, found);
}

}  // namespace

SmoothCurve::SmoothCurve(const EllipticArc& arc) : SmoothCurve(Shape(checked(arc))) {}

SmoothCurve::SmoothCurve(const FreeLine& line) : SmoothCurve(Shape(CubicSpline(line))) {}

SmoothCurve::SmoothCurve(Shape shape) : shape_(std::move(shape)) {
    const auto speed = [this](double t) { return derivatives(t).speed(); };
    const std::vector<double> ends = pieces();
    double behind = 0;
    for (std::size_t i = 1; i < ends.size(); ++i) {
        each_panel(speed, ends[i - 1], ends[i], kMostHalvings,
                   [&](double from, double to, double length) {
                       panels_.push_back({from, to, behind, behind + length});
                       behind += length;
                   });
    }
}

SmoothCurve SmoothCurve::moved(const Motion& motion) const {
    return std::visit([&](const auto& shape) { return SmoothCurve(Shape(shape.moved(motion))); },
                      shape_);
}

SmoothCurve SmoothCurve::reversed() const {
    return std::visit([](const auto& shape) { return SmoothCurve(Shape(shape.reversed())); },
                      shape_);
}

CurveDerivatives SmoothCurve::derivatives(double t) const {
    BOWFRONT_EXPECTS(0 <= t && t <= 1);
    return std::visit([&](const auto& shape) { return shape.derivatives(t); }, shape_);
}

Point SmoothCurve::tangent(double t) const {
    const CurveDerivatives here = derivatives(t);
    BOWFRONT_EXPECTS(here.speed() > 0);
    return here.first * (1 / here.speed());
}

double SmoothCurve::curvature(double t) const {
    const CurveDerivatives here = derivatives(t);
    BOWFRONT_EXPECTS(here.speed() > 0);
    return here.curvature();
}

double SmoothCurve::length_to(double t) const {
    BOWFRONT_EXPECTS(0 <= t && t <= 1);
    const auto panel = std::lower_bound(panels_.begin(), panels_.end(), t,
                                        [](const Panel& p, double at) { return p.to < at; });
    if (t == panel->to) {
        return panel->end_length;
    }
    const auto speed = [this](double at) { return derivatives(at).speed(); };
    return panel->start_length + integral(speed, panel->from, t).value;
}

double SmoothCurve::parameter_at(double length) const {
    BOWFRONT_EXPECTS(0 <= length && length <= this->length());
    const auto panel =
        std::lower_bound(panels_.begin(), panels_.end(), length,
                         [](const Panel& p, double at) { return p.end_length < at; });
    const double wanted = length - panel->start_length;
    if (wanted == panel->end_length - panel->start_length) {
        return panel->to;
    }
    // Newton's steps, kept between bounds that close in: near a cusp the speed is no guide.
    const auto speed = [this](double at) { return derivatives(at).speed(); };
    double low = panel->from;
    double high = panel->to;
    double t = low + (high - low) * wanted / (panel->end_length - panel->start_length);
    for (int step = 0; step < 200 && low < t && t < high; ++step) {
        const double over = integral(speed, panel->from, t).value - wanted;
        (over > 0 ? high : low) = t;
        const double newton = t - over / speed(t);
        const double next = newton > low && newton < high ? newton : (low + high) / 2;
        if (std::abs(next - t) <= std::numeric_limits<double>::epsilon() * t) {
            break;
        }
        t = next;
    }
    return t;
}

TightestBend SmoothCurve::tightest() const {
    TightestBend found;
    for (const double t : std::visit([](const auto& shape) { return shape.vertices(); }, shape_)) {
        const CurveDerivatives here = derivatives(t);
        const double curvature = here.speed() > 0 ? here.curvature() : HUGE_VAL;
        if (std::abs(curvature) > std::abs(found.curvature)) {
            found = {t, curvature};
        }
    }
    return found;
}

std::vector<double> SmoothCurve::inflections() const {
    const auto* spline = std::get_if<CubicSpline>(&shape_);
    if (spline == nullptr) {
        return {};
    }
    std::vector<double> found;
    double last = 0;      // curvature of the last bend
    double last_end = 0;  // and the parameter at which it ended
    const std::vector<double> ends = spline->sign_changes();
    for (std::size_t i = 1; i < ends.size(); ++i) {
        const double here = derivatives((ends[i - 1] + ends[i]) / 2).curvature();
        if (!(std::abs(here) * length() > kStraightTurn)) {
            continue;
        }
        if (here * last < 0) {
            found.push_back((last_end + ends[i - 1]) / 2);
        }
        last = here;
        last_end = ends[i];
    }
    return found;
}

std::optional<CurveCrossing> SmoothCurve::self_crossing() const {
    const auto* spline = std::get_if<CubicSpline>(&shape_);
    return spline == nullptr ? std::nullopt : spline->self_crossing();
}

std::vector<double> SmoothCurve::pieces() const {
    const auto* spline = std::get_if<CubicSpline>(&shape_);
    return spline == nullptr ? std::vector<double>{0, 1} : spline->knots();
}

}  // namespace bowfront
