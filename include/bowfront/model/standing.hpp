#pragma once
/// \file
/// What a case holds, and how it stands in its room.

#include <optional>

#include "bowfront/base/origin.hpp"

namespace bowfront {

/// What stands in a case.
struct Contents {
    Sourced<double> mass;  ///< kg, > 0
    /// Of its centre of gravity above the base, mm, ≥ 0; default: half the clear height.
    std::optional<Sourced<double>> height;
    std::optional<Sourced<double>> x;  ///< of the same, mm; default: the plan's centroid
    std::optional<Sourced<double>> y;  ///< the same
};

/// What a case is fixed to, so that it can't tip.
enum class Fixing { none, wall, floor };

/// How a case stands.
struct Stand {
    Sourced<Fixing> fixed;
};

}  // namespace bowfront
