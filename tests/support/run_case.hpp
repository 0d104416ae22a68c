#pragma once
/// \file
/// Cases with a side of several pieces.

#include <array>
#include <vector>

#include "bowfront/model/case.hpp"
#include "support/random_cases.hpp"

namespace bowfront::sample {

/// A straight of a length, mm.
[[nodiscard]] PieceSpec straight_piece(double length);
/// An arc by radius, mm, and sweep, rad.
[[nodiscard]] PieceSpec arc_piece(double radius, double sweep, Bow bow = Bow::out);

/// A part of an ellipse by its half axes, mm, and the angles that it is seen under, rad.
[[nodiscard]] PieceSpec ellipse_piece(double semi_x, double semi_y, double from, double to,
                                      double chord_error = 0.01);
/// A line through points, mm.
[[nodiscard]] PieceSpec curve_piece(const std::vector<std::array<double, 2>>& points,
                                    double chord_error = 0.01);

/// The pilot boat's case with a chain of two sides in the place of its plan: these pieces as the
/// front, and a straight that closes them; a pane in each.
[[nodiscard]] Case case_with_front(std::vector<PieceSpec> pieces);

/// The same with a front whose pieces stand in the opposite order: the front seen in a mirror.
[[nodiscard]] Case mirrored(const Case& c);

/// A front of two to five pieces that the pilot boat's case can have, the same for the same draws.
[[nodiscard]] Case random_run(RandomCases& random);

}  // namespace bowfront::sample
