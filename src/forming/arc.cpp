#include "bowfront/forming/arc.hpp"

#include <cmath>
#include <numbers>

#include "bowfront/base/contract.hpp"

namespace bowfront::forming {

namespace {
constexpr std::string_view kCircle = "geometry of the circle";
}

double sweep_of_length_ratio(double ratio) {
    BOWFRONT_EXPECTS(ratio > 1);
    // x/sin x = ratio has one root x = θ/2 in (0, π) and grows there. Bisection first: Newton alone
    // may leave the range where the ratio is near 1 or very large.
    double low = 0;
    double high = std::numbers::pi;
    double x = std::min(std::sqrt(6 * (ratio - 1)), 3.0);
    for (int step = 0; step < 200 && high - low > 0; ++step) {
        const double f = x - ratio * std::sin(x);
        (f > 0 ? high : low) = x;
        const double slope = 1 - ratio * std::cos(x);
        const double newton = x - f / slope;
        const double next = newton > low && newton < high ? newton : (low + high) / 2;
        if (next == x) {
            break;
        }
        x = next;
    }
    return 2 * x;
}

template <class N>
ArcSizes<N> arc_over_chord(ArcMeasure measure, N value, N chord, std::string_view path,
                           Book<N>& book) {
    using std::asin;
    using std::cos;
    using std::sin;
    using std::sqrt;
    const auto figure = [&](std::string_view key, std::string_view symbol, Kind kind, N number) {
        return book.figure({path, key}, symbol, kind, number, kCircle);
    };
    BOWFRONT_EXPECTS(value_of(chord) > 0 && value_of(value) > 0);
    constexpr double kTwoPi = 2 * std::numbers::pi;
    ArcSizes<N> arc;
    arc.chord = chord;
    switch (measure) {
        case ArcMeasure::radius:
            BOWFRONT_EXPECTS(2 * value_of(value) >= value_of(chord));
            arc.radius = figure("radius", "R", Kind::length, value);
            arc.sweep = figure("sweep", "θ", Kind::angle, 2 * asin(chord / (2 * arc.radius)));
            break;
        case ArcMeasure::rise: {
            arc.radius = figure("radius", "R", Kind::length,
                                (chord * chord / 4 + value * value) / (2 * value));
            // Over half a turn the rise is more than the radius, and the chord's angle is the rest.
            const N minor = 2 * asin(smaller(N(1), chord / (2 * arc.radius)));
            arc.sweep = figure("sweep", "θ", Kind::angle,
                               value_of(value) > value_of(arc.radius) ? kTwoPi - minor : minor);
            break;
        }
        case ArcMeasure::sweep:
            BOWFRONT_EXPECTS(value_of(value) < kTwoPi);
            arc.sweep = figure("sweep", "θ", Kind::angle, value);
            arc.radius = figure("radius", "R", Kind::length, chord / (2 * sin(arc.sweep / 2)));
            break;
        case ArcMeasure::length: {
            BOWFRONT_EXPECTS(value_of(value) > value_of(chord));
            const double sweep = sweep_of_length_ratio(value_of(value) / value_of(chord));
            arc.sweep = book.solved({path, "sweep"}, "θ", Kind::angle, sweep,
                                    "the angle with (θ/2)/sin(θ/2) = L/c", {value, chord}, kCircle);
            arc.radius = figure("radius", "R", Kind::length, value / arc.sweep);
            break;
        }
    }
    arc.length = figure("length", "S_f", Kind::length, arc.radius * arc.sweep);
    arc.rise = figure("rise", "f", Kind::length, arc.radius * (1 - cos(arc.sweep / 2)));
    return arc;
}

template ArcSizes<double> arc_over_chord(ArcMeasure, double, double, std::string_view,
                                         Book<double>&);
template ArcSizes<Traced> arc_over_chord(ArcMeasure, Traced, Traced, std::string_view,
                                         Book<Traced>&);

}  // namespace bowfront::forming
