#pragma once
// Random smooth curves of the size of a case, the same for a seed on every machine.

#include <cmath>
#include <cstdint>
#include <numbers>
#include <random>

#include "bowfront/geom/smooth_curve.hpp"

namespace bowfront::testing_support {

/// A stream of numbers; not by std::uniform_real_distribution, which every library does its own
/// way.
class Draw {
  public:
    explicit Draw(unsigned seed) : random_(seed) {}
    double between(double low, double high) {
        return low + (high - low) * (static_cast<double>(random_()) / 4294967296.0);
    }
    bool heads() { return between(0, 1) < 0.5; }

  private:
    std::mt19937 random_;
};

/// Half axes of 40 to 400 mm, from a tenth of a turn to a whole one, either way round.
inline EllipticArc random_ellipse(Draw& draw) {
    const double from = draw.between(-4, 4);
    const double sweep = draw.between(0.6, 2 * std::numbers::pi);
    return {.centre = {draw.between(-300, 300), draw.between(-300, 300)},
            .semi_x = draw.between(40, 400),
            .semi_y = draw.between(40, 400),
            .rotation = draw.between(-4, 4),
            .from = from,
            .to = draw.heads() ? from + sweep : from - sweep};
}

/// Three to nine points, some 600 mm along and up to 60 mm to either side.
inline FreeLine random_line(Draw& draw) {
    FreeLine line;
    double x = -300;
    const int count = static_cast<int>(draw.between(3, 9.99));
    for (int i = 0; i < count; ++i) {
        line.points.push_back({x, draw.between(-60, 60)});
        x += draw.between(0.6, 1.4) * 600 / count;
    }
    line.spacing = draw.heads() ? PointSpacing::chord_length : PointSpacing::centripetal;
    if (draw.heads()) {
        line.start_direction = direction(draw.between(-1, 1)) * draw.between(0.1, 10);
    }
    if (draw.heads()) {
        line.end_direction = direction(draw.between(-1, 1)) * draw.between(0.1, 10);
    }
    return line;
}

inline SmoothCurve random_curve(Draw& draw) {
    return draw.heads() ? SmoothCurve(random_ellipse(draw)) : SmoothCurve(random_line(draw));
}

}  // namespace bowfront::testing_support
