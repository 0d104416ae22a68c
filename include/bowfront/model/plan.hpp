#pragma once
/// \file
/// The plan of the glazing line, as the case file describes it.
///
/// Lengths in mm, angles in rad. Seen from above, sides run counter-clockwise.

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "bowfront/base/origin.hpp"
#include "bowfront/model/case_side.hpp"

namespace bowfront {

/// Shape of the glazing line in plan.
enum class PlanShape {
    rectangle,
    bow_front,      ///< an arc in front of three straight sides
    quarter_round,  ///< two straight sides at a right angle, and an arc
    half_round,     ///< a straight back, and an arc
    bow_ends,       ///< straight front and back, an arc at each end
    serpentine,     ///< a front of arcs that bow out and in by turns, before three straight sides
    polygon,        ///< straight sides
    sides           ///< a chain of straights, arcs and turns
};

/// `rectangle`, `bow-front`, `quarter-round`, …
[[nodiscard]] std::string_view shape_text(PlanShape shape) noexcept;

/// A measure of an arc.
enum class ArcMeasure { radius, rise, sweep, length, chord };

/// `radius`, `rise`, `sweep`, `length`, `chord`.
[[nodiscard]] std::string_view measure_text(ArcMeasure measure) noexcept;

/// One measure of an arc on the glazing line. Over a known chord: radius ≥ half the chord (minor
/// arc); rise > 0; sweep over 0 and under 2π; length > chord.
struct FrontArc {
    ArcMeasure measure = ArcMeasure::radius;
    Sourced<double> value;  ///< mm, or rad for a sweep
};

/// To which side an arc bows: out of the case, or into it. The hollow face of a pane that bows into
/// the case looks outwards.
enum class Bow { out, in };

/// A part of an ellipse. Angles are seen from its centre, from its first axis on, as the glazing line
/// runs: from the smaller to the larger it bows out, the other way in.
struct EllipseSpec {
    std::array<Sourced<double>, 2> semi_axes;  ///< half of each axis, > 0
    Sourced<double> from;  ///< −2π to 2π
    Sourced<double> to;    ///< −2π to 2π, at most a full turn from `from` and not the same
};

/// A smooth line through points, in the order that the glazing line runs. Their axes are their own:
/// only the shape counts, its place follows from the chain.
struct CurveSpec {
    std::vector<std::array<Sourced<double>, 2>> through;  ///< at least 3
};

/// A straight, an arc or a curve, of which the sides of the general chain are made.
struct PieceSpec {
    std::optional<Sourced<double>> straight;  ///< length, > 0; of a straight
    std::vector<FrontArc> arc;  ///< two measures; one where the chord is solved for
    Sourced<Bow> bow;           ///< of an arc
    std::optional<EllipseSpec> ellipse;
    std::optional<CurveSpec> curve;
    /// Of an ellipse or a curve: how far the arcs that it is made of may lie off it, 1e-6 to 1.
    Sourced<double> chord_error;
    std::string pointer;

    /// Whether it is a part of an ellipse or a line through points.
    [[nodiscard]] bool is_free() const { return ellipse.has_value() || curve.has_value(); }
    /// Whether it is anything but a straight.
    [[nodiscard]] bool is_curved() const { return !arc.empty() || is_free(); }
};

/// A side of the general chain.
struct SideSpec {
    std::string name;
    /// What it is made of, from its start to its end, each piece tangent to the next: at least one.
    /// Several are glazed by one pane that is bent from one blank. No two straights in a row.
    std::vector<PieceSpec> pieces = std::vector<PieceSpec>(1);
    /// Its chord is solved for; a straight one has no length of its own. It has one piece.
    bool closing = false;
    int panes = 1;          ///< it is divided into so many equal panes, ≥ 1; one of several pieces: 1
    Sourced<double> turn;   ///< from its end to the next side's start, to the left, −π to π
    bool turn_follows = false;  ///< from the other sides: of the last, and of the one before a
                                ///< closing one
    std::string pointer;
};

/// Plan, measured on the glazing line between corner points.
struct Plan {
    PlanShape shape = PlanShape::bow_front;
    Sourced<double> width;  ///< back, > 0; not of a polygon or a chain
    Sourced<double> depth;  ///< straight sides, > 0; not of half-round, polygon, chain
    /// Bow-front, quarter-round, half-round: the front; bow-ends: either end; serpentine: each arc.
    std::optional<FrontArc> front;
    int arcs = 2;         ///< serpentine: of the front, ≥ 2
    int arc_panes = 1;    ///< each arc is divided into so many equal panes, ≥ 1
    int count = 0;        ///< regular polygon: its sides, ≥ 3
    Sourced<double> side;  ///< regular polygon: length of a side, > 0
    std::vector<std::array<Sourced<double>, 2>> corners;  ///< free polygon: X and Y of each
    std::vector<SideSpec> chain;                          ///< sides; a closing one stands last
};

/// The sides of a plan, in their order.
[[nodiscard]] std::vector<CaseSide> sides_of(const Plan& plan);

/// The name of the corner point where the side of a place starts: `front-left`, or `corner-2`.
[[nodiscard]] std::string corner_name(const Plan& plan, std::size_t place);

/// Where the case file describes the side of a place: a JSON pointer.
[[nodiscard]] std::string side_pointer(const Plan& plan, std::size_t place);

/// Whether the side of a place follows an arc, or has an arc among its pieces.
[[nodiscard]] bool is_curved(const Plan& plan, std::size_t place);

/// Whether the side of a place is a run of several pieces, or a curve that is made of several arcs.
[[nodiscard]] bool has_several_pieces(const Plan& plan, std::size_t place);

/// How the arcs that a side follows are given: the measures that a pane there can be changed by.
/// Empty for a straight.
[[nodiscard]] std::vector<const FrontArc*> arc_measures(const Plan& plan, std::size_t place);

}  // namespace bowfront
