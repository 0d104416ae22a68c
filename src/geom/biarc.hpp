#pragma once
/// \file
/// Two arcs that run into one another, between two points with given tangents.

#include <array>
#include <optional>
#include <vector>

#include "bowfront/geom/contour.hpp"

namespace bowfront {

/// The second arc begins where the first one ends, in the same direction.
using Biarc = std::array<Segment, 2>;

/// The biarc with equal legs: legs d from the ends along the tangents have their tips 2d apart, and
/// the arcs meet half way between the tips. None where the legs would have to run backwards.
/// @param leaving   unit tangent at `from`
/// @param arriving  unit tangent at `to`
/// Source:  v² − 2d·v·(T₀ + T₁) − 2d²·(1 − T₀·T₁) = 0 over the chord v; Bolton, Biarc curves,
///          Computer-Aided Design 7 (1975)
[[nodiscard]] std::optional<Biarc> biarc(Point from, Point leaving, Point to, Point arriving);

/// Distance from `p` to the nearest point of a biarc, mm.
[[nodiscard]] double distance_to(const Biarc& biarc, Point p);

/// Adds an arc to a chain that ends where it begins, or lengthens the last arc where both are of
/// one straight or circle and together no more than half a turn.
void append_joined(std::vector<Segment>& chain, const Segment& arc);

}  // namespace bowfront
