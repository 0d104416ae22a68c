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
/// @param measure  what `value` is
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

/// The sweep of an arc whose length is `ratio` times its chord, rad, to the last digits of double.
/// @param ratio  > 1
[[nodiscard]] double sweep_of_length_ratio(double ratio);

extern template ArcSizes<double> arc_over_chord(ArcMeasure, double, double, std::string_view,
                                                Book<double>&);
extern template ArcSizes<Traced> arc_over_chord(ArcMeasure, Traced, Traced, std::string_view,
                                                Book<Traced>&);

}  // namespace forming
}  // namespace bowfront
