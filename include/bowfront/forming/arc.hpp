#pragma once
/// \file
/// An arc over a known chord, from whichever of its measures was given.

#include "bowfront/figure/book.hpp"
#include "bowfront/model/case.hpp"

namespace bowfront {

/// All measures of an arc: mm, and rad for the sweep.
template <class N>
struct ArcSizes {
    N radius;
    N sweep;
    N chord;
    N rise;
    N length;
};

namespace forming {

/// The arc over `chord` with one measure given.
/// @param measure  what `value` is; not the chord
/// @param value    in the range that FrontArc states
/// @param chord    > 0
/// @param path     first pieces of the figures' paths, as `plan/front`
/// @throws ContractError outside these ranges
/// Source:  geometry of the circle: R = (c²/4 + f²)/(2f), θ = 2·asin(c/2R) (2π minus that where
///          f > R), L = R·θ; a length is solved for by (θ/2)/sin(θ/2) = L/c
/// Example: chord 520 mm, radius 420 mm -> rise 90.1515 mm, sweep 76.493 deg, length 560.725 mm
template <class N>
[[nodiscard]] ArcSizes<N> arc_over_chord(ArcMeasure measure, N value, N chord,
                                         std::string_view path, Book<N>& book);

/// An arc that nothing but two different measures of it tells.
/// @param first, second  what the values are
/// @param path           first pieces of the figures' paths, as `plan/front`
/// @throws ContractError where no arc has both (see `measures_agree`)
/// Source:  geometry of the circle, as `arc_over_chord`; f = R·(1 − cos(θ/2)); a rise and a length
///          are solved for by (1 − cos(θ/2))/θ = f/L
/// Example: radius 420 mm and sweep 76.493 deg -> chord 520 mm
template <class N>
[[nodiscard]] ArcSizes<N> free_arc(ArcMeasure first, N first_value, ArcMeasure second,
                                   N second_value, std::string_view path, Book<N>& book);

/// Whether there is an arc with two measures, both of the ranges that FrontArc states. Of two arcs
/// that have the same chord and radius the shorter is meant, of two with the same rise and length
/// the flatter.
[[nodiscard]] bool measures_agree(ArcMeasure first, double first_value, ArcMeasure second,
                                  double second_value);

/// The most that an arc can rise over its length, and its sweep there, rad.
/// Source: geometry: the maximum of (1 − cos(θ/2))/θ, at tan(θ/4) = θ/2
inline constexpr double kMostRise = 0.36230567688835424;
inline constexpr double kMostRiseSweep = 4.662244740828845;

/// The sweep of an arc whose length is `ratio` times its chord, rad, to the last digits of double.
/// @param ratio  > 1
[[nodiscard]] double sweep_of_length_ratio(double ratio);

extern template ArcSizes<double> arc_over_chord(ArcMeasure, double, double, std::string_view,
                                                Book<double>&);
extern template ArcSizes<Traced> arc_over_chord(ArcMeasure, Traced, Traced, std::string_view,
                                                Book<Traced>&);

extern template ArcSizes<double> free_arc(ArcMeasure, double, ArcMeasure, double, std::string_view,
                                          Book<double>&);
extern template ArcSizes<Traced> free_arc(ArcMeasure, Traced, ArcMeasure, Traced, std::string_view,
                                          Book<Traced>&);

}  // namespace forming
}  // namespace bowfront
