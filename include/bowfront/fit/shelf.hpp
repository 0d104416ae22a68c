#pragma once
/// \file
/// Shelves: their outline within panes and posts, what they lie on, and what they bear.
///
/// Worked out beside `solve` and `checks`: a shelf takes booleans of areas, and a sweep runs those
/// for every variant. Lengths in mm, forces in N, stresses in MPa; plan as in `fit::Layout`.

#include <optional>
#include <string>
#include <vector>

#include "bowfront/base/finding.hpp"
#include "bowfront/fit/layout.hpp"
#include "bowfront/fit/sums.hpp"

namespace bowfront::fit {

/// A shelf pin of steel: a bore in the post, and how much of the pin lies under the shelf.
/// Common practice, no source.
inline constexpr double kPinDiameter = 5;
inline constexpr double kPinDepth = 10;
inline constexpr double kPinBearing = 8;
/// Timber round the bore, at least. Common practice, no source.
inline constexpr double kPinWall = 3;

/// A rail's section. Common practice, no source.
inline constexpr double kRailWidth = 12;
inline constexpr double kRailHeight = 15;

/// Longest span over sag that looks straight. Common practice (1/240 to 1/300), no source.
inline constexpr double kSpanOverSag = 300;

/// A pin in a post.
struct ShelfPin {
    CaseSide corner;    ///< of the post, by the side that starts there
    std::string name;   ///< of the post's corner point: `front-left`
    Point mouth;                        ///< where the bore's axis meets the post's outline
    Point inward;                       ///< unit vector, into the post
    Point tip;                          ///< the pin's end under the shelf
    double wall = 0;  ///< timber left between the bore and grooves or the post's other faces
};

/// A rail along a straight side.
struct ShelfRail {
    CaseSide side;
    Region outline;  ///< in plan, from post to post
};

/// A place that a shelf rests on: a pin's tip or a rail's end.
struct ShelfRest {
    std::string id;  ///< `pin-front-left`, `rail-left-start`
    Point at;
    double share = 0;  ///< of the whole weight, the most that can come to rest here
};

/// How the sums take a shelf to bend.
enum class ShelfModel {
    rails,    ///< strips from rail to rail, two of which face each other
    corners,  ///< a plate on its corners alone
    plate,    ///< a rectangle on rails all round
};

/// A shelf in plan.
struct ShelfPlan {
    std::string id;  ///< `shelf-1`, by its place in the file
    Contour outline;
    std::vector<ShelfPin> pins;
    std::vector<ShelfRail> rails;
    std::vector<ShelfRest> rests;
    ShelfModel model = ShelfModel::corners;
    double line_gap = 0;  ///< least distance to the glazing line
    double post_gap = 0;  ///< least distance to a post
    double span = 0;      ///< from rail to rail; without, the longer of both extents
    double breadth = 0;   ///< the other extent
    double bulge = 0;     ///< how far it stands out beyond what it rests on, at most
    double overhang = 0;  ///< the same beyond the edge over which it tips first
    double hold = 0;      ///< how far its centroid lies within that edge
};

/// The sums of a shelf. The worst shelf is the thinnest that the stock's tolerance allows.
template <class N>
struct ShelfSums {
    N area;      ///< mm²
    N mass;      ///< of the shelf, kg
    N force;     ///< of shelf and load, N
    N pressure;  ///< of both, MPa
    N thickness_least;
    N sag;  ///< after years under the load
    N sag_worst;
    N sag_limit;
    N stress;
    N stress_worst;
    N stress_limit;    ///< that it bears for years
    N pane_gap;        ///< to the nearest pane as drawn
    N pane_gap_least;  ///< a pane hard against its groove's inner cheek, the shelf cut as large as
                       ///< its tolerance allows and grown as much as the air makes it
    N post_gap;
    N post_gap_least;
    N tip;        ///< distance of all weight's middle from the edge it would tip over
    N tip_worst;  ///< the same with the load on the outer half alone
    std::optional<N> edge_load;  ///< that may stand at the outermost edge alone, kg; empty where
                                 ///< the shelf reaches no further than what it rests on
    std::vector<N> reactions;    ///< most that can come to each rest, N
};

/// A shelf in plan and its sums.
struct Shelf {
    ShelfPlan plan;
    ShelfSums<double> sums;
};

/// The shelves of a case, or why it can't have them.
struct Shelves {
    std::vector<Objection> objections;  ///< where any, the list is unfinished
    std::vector<Shelf> list;            ///< in the order of the case file
};

/// The shelves of a case.
///
/// A shelf's outline is the glazing line set in by half the thickest pane and the clearance, less
/// the posts grown by the clearance, or by the cutter's radius where that is more, since it rounds
/// the notch's corner; glass is notched no tighter than its thickness (common practice, no source).
/// @param c       free of objections
/// @param layout  of the case
[[nodiscard]] Shelves shelves(const Case& c, const CaseSums<double>& sums, const Layout& layout);

/// Enters the figures of the shelves under `shelves/ID`.
/// @param shelves  of the case, without objections
/// @param sums     traced, by the same workings
void explain_shelves(const Case& c, const CaseSums<Traced>& sums, const Shelves& shelves,
                     Workings& workings);

/// The checks of the shelves.
[[nodiscard]] std::vector<Finding> shelf_checks(const Case& c, const CaseSums<double>& sums,
                                                const Shelves& shelves);

/// Deflection and greatest stress of a shelf under an even pressure, small deflections.
struct ShelfBending {
    double deflection = 0;  ///< mm
    double stress = 0;      ///< MPa
};
/// A shelf as the sums bend it.
struct LoadedShelf {
    ShelfModel model = ShelfModel::corners;
    double span = 0;       ///< > 0
    double breadth = 0;    ///< > 0
    double bulge = 0;      ///< ≥ 0
    double pressure = 0;   ///< MPa
    double modulus = 0;    ///< MPa, > 0
    double poisson = 0.3;  ///< 0 to 0.5; a plate's alone
    double thickness = 0;  ///< > 0
};
/// Source:  strips, as beams on two supports: w = 5pL⁴/(32Et³), σ = 3pL²/(4t²). What hangs out
///          beyond the rails is borne by the last strips, half a span wide: both times 1 + 2o/L.
///          On its corners a plate bends both ways, each way with all of the load: w with
///          L⁴ + L·B³ for L⁴, σ times 1.25 for the edges, which bear more than the middle.
///          On rails all round, the plate of `plate_coefficients`, times 1.25, since it is notched
///          and its corners may lift. All three are more than plate theory gives (held by a plate
///          of polynomials in tests/reference).
/// Example: corners, 500 × 250, p 5e-4 MPa, E 70000 MPa, t 6 -> 0.363 mm, 3.255 MPa
[[nodiscard]] ShelfBending shelf_bending(const LoadedShelf& shelf);

}  // namespace bowfront::fit
