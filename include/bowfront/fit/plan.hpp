#pragma once
/// \file
/// The glazing line in plan: corner points, sides, directions.

#include <vector>

#include "bowfront/fit/post.hpp"
#include "bowfront/forming/arc.hpp"
#include "bowfront/geom/contour.hpp"
#include "bowfront/model/case.hpp"

namespace bowfront {

/// A straight or an arc of the glazing line.
template <class N>
struct SidePiece {
    N length{};       ///< along it, > 0
    bool curved = false;
    Bow bow = Bow::out;
    ArcSizes<N> arc{};  ///< of a curved one
    double chord_heading = 0;  ///< of its chord, rad from X
    std::size_t spec = 0;      ///< of which of its side's pieces in the case file it is made

    /// Straight from its start to its end.
    [[nodiscard]] const N& chord() const { return curved ? arc.chord : length; }
    /// Of its tangent at the start, rad from X.
    [[nodiscard]] double start_heading() const { return chord_heading - turned() / 2; }
    /// Of its tangent at the end.
    [[nodiscard]] double end_heading() const { return chord_heading + turned() / 2; }
    /// Angle that it turns through, positive to the left; 0 for a straight.
    [[nodiscard]] double turned() const {
        return !curved ? 0 : bow == Bow::out ? value_of(arc.sweep) : -value_of(arc.sweep);
    }
};

/// A side of the glazing line: a straight, an arc, or a smooth run of several of both.
template <class N>
struct SideSums {
    CaseSide side;
    N length{};                         ///< along it from corner to corner, > 0
    N chord{};                          ///< straight from corner to corner; 0 where they are one
    double chord_heading = 0;           ///< of that, rad from X
    std::vector<SidePiece<N>> pieces;   ///< at least one, each tangent to the next

    /// Whether any of it bends.
    [[nodiscard]] bool curved() const { return pieces.size() > 1 || pieces.front().curved; }
    /// Whether it has several pieces.
    [[nodiscard]] bool is_run() const { return pieces.size() > 1; }
    /// Of its tangent at the start, rad from X.
    [[nodiscard]] double start_heading() const { return pieces.front().start_heading(); }
    /// Of its tangent at the end.
    [[nodiscard]] double end_heading() const { return pieces.back().end_heading(); }
    /// Angle that it turns through in all, positive to the left.
    [[nodiscard]] double turned() const {
        double sum = 0;
        for (const SidePiece<N>& piece : pieces) {
            sum += piece.turned();
        }
        return sum;
    }
    /// Into which side it bows, by what it turns through in all.
    [[nodiscard]] Bow bow() const { return turned() < 0 ? Bow::in : Bow::out; }
};

namespace fit {

/// A closed line by its sides, each a chain from corner to corner.
using SideChains = std::vector<std::vector<Segment>>;

/// All of it.
/// @throws ContractError where it has fewer than two segments
[[nodiscard]] Contour joined(const SideChains& sides);

/// The glazing line of a whole case in plan, counter-clockwise from above. All by the place of a
/// side, or of the side that starts at a corner.
struct GlazingLine {
    std::vector<CaseSide> order;                 ///< the sides
    std::vector<Point> corners;
    SideChains sides;                            ///< arcs over half a turn in two segments
    std::vector<CornerDirections> directions;

    [[nodiscard]] std::size_t size() const { return order.size(); }
    /// The place of the side that starts where another ends.
    [[nodiscard]] std::size_t next(std::size_t place) const { return (place + 1) % size(); }
    /// The place of the side that ends where another starts.
    [[nodiscard]] std::size_t previous(std::size_t place) const {
        return (place + size() - 1) % size();
    }
    /// The whole of it.
    /// @throws ContractError where it has fewer than two segments
    [[nodiscard]] Contour outline() const { return joined(sides); }
};

/// The sides of the glazing line, in order, under `plan/<side>/…`.
/// @param plan  free of what `fit::objections` tells of it
template <class N>
[[nodiscard]] std::vector<SideSums<N>> solve_sides(const Plan& plan, Book<N>& book);

/// @param sides  of that plan
[[nodiscard]] GlazingLine glazing_line(const Plan& plan, const std::vector<SideSums<double>>& sides);
/// For those who need the plan alone.
[[nodiscard]] GlazingLine glazing_line(const Plan& plan);

/// How far the sides end from where they start; nothing where one of them is solved for.
/// Values over `kOpenPlan` mean that the plan doesn't close.
struct PlanGap {
    Point off;        ///< from the start to the end, mm
    double turn = 0;  ///< turned through by all sides and corners, less a full turn, rad
};
[[nodiscard]] PlanGap plan_gap(const Plan& plan);

/// How far a plan may end from where it starts, mm and rad: far above the rounding of a chain whose
/// sizes were worked out to all digits, far under what a size that is rounded to 0.01 mm leaves.
inline constexpr double kOpenPlan = 1e-6;

/// The stretch of a chain between two lengths from its start, mm. Lengths outside the chain run
/// on along the first or last piece, as it is curved.
[[nodiscard]] std::vector<Segment> stretch(const std::vector<Segment>& chain, double from,
                                           double to);

/// The point at a length from the chain's start.
[[nodiscard]] Point point_at(const std::vector<Segment>& chain, double length);

/// The unit tangent there.
[[nodiscard]] Point tangent_at(const std::vector<Segment>& chain, double length);

extern template std::vector<SideSums<double>> solve_sides(const Plan&, Book<double>&);
extern template std::vector<SideSums<Traced>> solve_sides(const Plan&, Book<Traced>&);

}  // namespace fit
}  // namespace bowfront
