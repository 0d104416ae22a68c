#pragma once
/// \file
/// How base and top are built of timber. Ranges stand beside each field.

#include <optional>

#include "bowfront/base/origin.hpp"

namespace bowfront {

/// One board, or a ring of rails along the glazing line.
enum class PlateBuild { plate, rails };

/// How two rails meet under a post: cut along the corner, or one running through.
enum class RailCorner { mitre, butt };

/// How a post is joined to base and top: its end on their face, a tenon in a mortise, or two dowels.
enum class PostJoint { butt, tenon, dowel };

/// How base or top is built. The rails' values count only where it is built of rails.
struct Build {
    Sourced<PlateBuild> kind;
    Sourced<double> inset;        ///< rails: inner edge set in from the glazing line, mm, > 0
    Sourced<double> board_width;  ///< of the boards that rails are sawn from, planed, mm, > 0
    Sourced<RailCorner> corner;
    Sourced<double> run_out;      ///< rails: most angle of the grain to the edge, rad, > 0, under π/4
    std::optional<Sourced<int>> segments;  ///< of each curved rail, ≥ 1; as many as needed where
                                           ///< left out

    [[nodiscard]] bool rails() const noexcept { return kind.value == PlateBuild::rails; }
};

/// What is added to a finished size of solid timber for sawing and planing, mm, each ≥ 0.
struct Allowance {
    Sourced<double> length;     ///< along the grain
    Sourced<double> width;      ///< across it
    Sourced<double> thickness;
};

}  // namespace bowfront
