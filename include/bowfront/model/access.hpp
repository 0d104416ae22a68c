#pragma once
/// \file
/// How a case is opened once it is built: to clean it, to change a pane, to reach what stands in it.
///
/// Lengths in mm, angles in rad.

#include <optional>
#include <string_view>
#include <variant>

#include "bowfront/base/origin.hpp"
#include "bowfront/model/case_side.hpp"

namespace bowfront {

/// What keeps a top that is lifted off in its place: pegs in the posts, or the panes' engagement
/// alone. Nothing holds it down.
enum class TopHeld { pegs, panes };

/// The top comes off upwards, and then every pane.
struct LiftOffTop {
    Sourced<TopHeld> held;
    Sourced<double> peg_diameter;              ///< > 0
    Sourced<double> peg_length;                ///< half of it in the post, > 0
    std::optional<Sourced<double>> headroom;   ///< free above the case where it stands, ≥ 0
};

/// The grooves of base and top that an opening side has of its own.
struct AccessGroove {
    Sourced<double> width;       ///< > 0
    Sourced<double> base_depth;  ///< > 0
    Sourced<double> top_depth;   ///< > 0, over the base's
};

/// One flat pane between the posts, lifted into a deeper top groove and taken out over the base's.
struct LiftOutPane {
    AccessGroove groove;
    Sourced<double> clearance;       ///< between pane and post, at each end, > 0
    Sourced<double> lift_clearance;  ///< under the foot once the pane is lifted, ≥ 0
    Sourced<double> pull;            ///< diameter of the finger bores, > 0
};

/// Two flat panes between the posts in twin grooves; either slides behind the other.
struct SlidingPair {
    AccessGroove groove;
    Sourced<double> web;             ///< timber between the two grooves, > 0
    Sourced<double> overlap;         ///< of the shut panes, > 0
    Sourced<double> lift_clearance;  ///< under the foot once a pane is lifted, ≥ 0
    Sourced<double> pull;            ///< diameter of the finger bores, > 0
};

/// Which end of its side a door hangs on; the ends follow the counter-clockwise way round.
enum class HingeEnd { start, end };

/// A pane without a frame that turns outwards on two pivots, one in the base and one in the top.
struct PivotDoor {
    Sourced<HingeEnd> hinge;
    Sourced<double> clearance;  ///< all round the shut door, > 0
    Sourced<double> pivot;      ///< from the hinge post's face to the pin's axis, > 0
    Sourced<double> pin;        ///< diameter of the pins, > 0
    Sourced<double> angle;      ///< that it opens to, 0 to π
};

/// How a case is opened.
struct Access {
    using Way = std::variant<LiftOffTop, LiftOutPane, SlidingPair, PivotDoor>;

    Way way;
    CaseSide side;  ///< that opens; of no meaning where the top comes off

    /// The way of one kind; null for another.
    template <class Kind>
    [[nodiscard]] const Kind* as() const noexcept {
        return std::get_if<Kind>(&way);
    }
};

/// The word for a way in the case file: `lift-off-top`, `lift-out-pane`, `sliding-pair`,
/// `hinged-door`.
[[nodiscard]] std::string_view access_text(const Access& access) noexcept;

}  // namespace bowfront
