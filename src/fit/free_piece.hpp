#pragma once
/// \file
/// Parts of ellipses and lines through points as the straights and arcs that a side is made of.

#include "bowfront/geom/arc_fit.hpp"
#include "bowfront/model/plan.hpp"

namespace bowfront::fit {

/// The curve that a piece describes, in axes of its own.
/// @param spec  an ellipse or a curve that `fault_of` finds nothing wrong with
[[nodiscard]] SmoothCurve smooth_curve(const PieceSpec& spec);

/// What is wrong with such a piece, and what would do; empty where nothing is.
struct FreePieceFault {
    std::string found;
    std::string wanted;
};
[[nodiscard]] FreePieceFault fault_of(const PieceSpec& spec);

}  // namespace bowfront::fit
