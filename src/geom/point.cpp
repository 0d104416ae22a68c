#include "bowfront/geom/point.hpp"

#include <algorithm>
#include <limits>

namespace bowfront {
namespace {

/// A whole turn as a double is off by at most this, rad: smaller parts of a direction are rounding.
constexpr double kTurnRounding = 2 * std::numeric_limits<double>::epsilon();

}  // namespace

Point direction(double angle) {
    const double x = std::cos(angle);
    const double y = std::sin(angle);
    if (std::abs(x) < kTurnRounding) {
        return {0, std::copysign(1.0, y)};
    }
    if (std::abs(y) < kTurnRounding) {
        return {std::copysign(1.0, x), 0};
    }
    return {x, y};
}

Point Motion::operator()(Point p) const {
    const Point start = mirrored ? Point{-p.x, p.y} : p;
    const Point turn = direction(angle);
    return Point{turn.x * start.x - turn.y * start.y, turn.y * start.x + turn.x * start.y} + shift;
}

void Box::add(Point p) {
    low = {std::min(low.x, p.x), std::min(low.y, p.y)};
    high = {std::max(high.x, p.x), std::max(high.y, p.y)};
}

void Box::add(const Box& other) {
    if (!other.empty()) {
        add(other.low);
        add(other.high);
    }
}

}  // namespace bowfront
