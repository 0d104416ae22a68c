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
        case ArcMeasure::chord: contract_failed("a measure beside the chord", __FILE__, __LINE__);
    }
    arc.length = figure("length", "S_f", Kind::length, arc.radius * arc.sweep);
    arc.rise = figure("rise", "f", Kind::length, arc.radius * (1 - cos(arc.sweep / 2)));
    return arc;
}

namespace {

// The sweep with (1 − cos(θ/2))/θ = ratio, the smaller of two. The left side grows up to its top.
double sweep_of_rise_ratio(double ratio) {
    double low = 0;
    double high = kMostRiseSweep;
    for (int step = 0; step < 200; ++step) {
        const double middle = (low + high) / 2;
        if (middle == low || middle == high) {
            break;
        }
        // 1 − cos x = 2·sin²(x/2) keeps the digits of a small angle.
        const double sine = std::sin(middle / 4);
        (2 * sine * sine < ratio * middle ? low : high) = middle;
    }
    return (low + high) / 2;
}

}  // namespace

bool measures_agree(ArcMeasure first, double first_value, ArcMeasure second, double second_value) {
    using enum ArcMeasure;
    constexpr double kTwoPi = 2 * std::numbers::pi;
    if (first == second) {
        return false;
    }
    if (first > second) {
        return measures_agree(second, second_value, first, first_value);
    }
    switch (first) {
        case radius:
            switch (second) {
                case rise: return second_value < 2 * first_value;
                case sweep: return second_value <= kTwoPi;
                case length: return second_value <= kTwoPi * first_value;
                default: return second_value <= 2 * first_value;
            }
        case rise:
            switch (second) {
                case length: return first_value <= kMostRise * second_value;
                case sweep: return second_value < kTwoPi;
                default: return true;
            }
        case sweep: return second == length ? first_value <= kTwoPi : first_value < kTwoPi;
        default: return second_value < first_value;  // a length over its chord
    }
}

template <class N>
ArcSizes<N> free_arc(ArcMeasure first, N first_value, ArcMeasure second, N second_value,
                     std::string_view path, Book<N>& book) {
    using enum ArcMeasure;
    using std::acos;
    using std::cos;
    using std::sin;
    BOWFRONT_EXPECTS(measures_agree(first, value_of(first_value), second, value_of(second_value)));
    if (first > second) {
        return free_arc(second, second_value, first, first_value, path, book);
    }
    if (second == chord) {
        return arc_over_chord(first, first_value, second_value, path, book);
    }
    const auto figure = [&](std::string_view key, std::string_view symbol, Kind kind, N number) {
        return book.figure({path, key}, symbol, kind, number, kCircle);
    };
    ArcSizes<N> arc;
    if (first == radius) {
        arc.radius = figure("radius", "R", Kind::length, first_value);
        arc.sweep = figure("sweep", "θ", Kind::angle,
                           second == sweep    ? second_value
                           : second == length ? second_value / arc.radius
                                              : 2 * acos(1 - second_value / arc.radius));
    } else if (second == sweep) {  // and a rise
        arc.sweep = figure("sweep", "θ", Kind::angle, second_value);
        arc.radius = figure("radius", "R", Kind::length, first_value / (1 - cos(arc.sweep / 2)));
    } else if (first == sweep) {  // and a length
        arc.sweep = figure("sweep", "θ", Kind::angle, first_value);
        arc.radius = figure("radius", "R", Kind::length, second_value / arc.sweep);
    } else {
        arc.sweep = book.solved(
            {path, "sweep"}, "θ", Kind::angle,
            sweep_of_rise_ratio(value_of(first_value) / value_of(second_value)),
            "the angle with (1 − cos(θ/2))/θ = f/L", {first_value, second_value}, kCircle);
        arc.radius = figure("radius", "R", Kind::length, second_value / arc.sweep);
    }
    arc.chord = figure("chord", "c", Kind::length, 2 * arc.radius * sin(arc.sweep / 2));
    arc.length = figure("length", "S_f", Kind::length, arc.radius * arc.sweep);
    arc.rise = figure("rise", "f", Kind::length, arc.radius * (1 - cos(arc.sweep / 2)));
    return arc;
}

template ArcSizes<double> free_arc(ArcMeasure, double, ArcMeasure, double, std::string_view,
                                   Book<double>&);
template ArcSizes<Traced> free_arc(ArcMeasure, Traced, ArcMeasure, Traced, std::string_view,
                                   Book<Traced>&);

template ArcSizes<double> arc_over_chord(ArcMeasure, double, double, std::string_view,
                                         Book<double>&);
template ArcSizes<Traced> arc_over_chord(ArcMeasure, Traced, Traced, std::string_view,
                                         Book<Traced>&);

}  // namespace bowfront::forming
