#pragma once
/// \file
/// The glazing line in plan: corner points, sides, directions.

#include <array>
#include <vector>

#include "bowfront/fit/post.hpp"
#include "bowfront/forming/arc.hpp"
#include "bowfront/geom/contour.hpp"
#include "bowfront/model/case.hpp"

namespace bowfront::fit {

/// The corner points, numbered by the side that starts there: front left, front right, back right,
/// back left.
inline constexpr std::array kCorners{CaseSide::front, CaseSide::right, CaseSide::back,
                                     CaseSide::left};

/// `front-left`, `front-right`, `back-right`, `back-left`.
[[nodiscard]] std::string_view corner_text(CaseSide starts) noexcept;

/// The side that ends where `side` starts.
[[nodiscard]] CaseSide previous(CaseSide side) noexcept;
/// The side that starts where `side` ends.
[[nodiscard]] CaseSide next(CaseSide side) noexcept;

/// The glazing line of a whole case in plan, counter-clockwise from above.
struct GlazingLine {
    std::array<Point, 4> corners;                 ///< by the side that starts there
    std::array<std::vector<Segment>, 4> sides;    ///< by side; arcs over half a turn in two pieces
    std::array<CornerDirections, 4> directions;   ///< by the side that starts at the corner
};

[[nodiscard]] constexpr std::size_t index(CaseSide side) { return static_cast<std::size_t>(side); }

/// @param front  the front's arc; empty for a straight front
[[nodiscard]] GlazingLine glazing_line(const Plan& plan,
                                       const std::optional<ArcSizes<double>>& front);

/// The stretch of a chain between two lengths from its start, mm. Lengths outside the chain run
/// on along the first or last piece, as it is curved.
[[nodiscard]] std::vector<Segment> stretch(const std::vector<Segment>& chain, double from,
                                           double to);

/// The point at a length from the chain's start.
[[nodiscard]] Point point_at(const std::vector<Segment>& chain, double length);

/// The unit tangent there.
[[nodiscard]] Point tangent_at(const std::vector<Segment>& chain, double length);

}  // namespace bowfront::fit
