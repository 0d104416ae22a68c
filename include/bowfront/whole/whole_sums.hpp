#pragma once
/// \file
/// The sums of a case as one thing: what it weighs, where its centre of gravity is, when it tips,
/// and how it is lifted. From the parts themselves; the bending form is no part of the case.

#include <numbers>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "bowfront/base/finding.hpp"
#include "bowfront/fit/layout.hpp"
#include "bowfront/model/case.hpp"
#include "bowfront/pattern/part.hpp"
#include "bowfront/whole/weight.hpp"

namespace bowfront::whole {

/// A case must not tip on a floor that slopes by this, rad: 10°.
/// Source: the inclined plane of IEC 60335-1, clause 20.1, for appliances that stand on floor or
/// table (read in a quotation); no standard of display cases was found, and ISO 7170, for storage
/// furniture, states tests without limits.
inline constexpr double kLeastTippingAngle = 10 * std::numbers::pi / 180;

/// What one person may lift under the best of conditions, kg.
/// Source: load constant of the revised NIOSH lifting equation (Waters et al. 1993), as restated by
/// the Canadian Centre for Occupational Health and Safety
inline constexpr double kOnePersonLifts = 23;

/// The size and weight from which a case counts as tall and heavy: mm and kg.
/// Source: scope of ASTM F2057-23, clause 1.1: 27 in (686 mm) and 30 lb (13.6 kg). That standard is
/// for clothing storage; display cases are outside its scope.
inline constexpr double kTall = 686;
inline constexpr double kHeavy = 13.6;

/// The assembly whose parts are weighed.
inline constexpr std::string_view kWeighed = "case";

/// When a case tips about the nearest edge of what it stands on: the convex hull of the base's
/// underside.
template <class N>
struct Tipping {
    N distance;   ///< mm, from the centre of gravity, seen from above, to that edge
    N direction;  ///< rad, the way it tips, from X counter-clockwise
    N angle;      ///< rad, of a floor on which it would just tip
    N force;      ///< N, level, at the upper edge, that begins to tip it
};

/// How far the centre of gravity lies inside the base's outermost points, mm.
template <class N>
struct Edges {
    N left;
    N right;
    N front;
    N back;
};

/// A case as it stands.
template <class N>
struct Standing {
    Weight<N> weight;
    Tipping<N> tipping;
    Edges<N> edges;
    std::optional<N> people;  ///< that it takes to lift it; nothing where four are not enough
};

/// All of it.
template <class N>
struct WholeSums {
    std::vector<std::pair<std::string, N>> groups;  ///< mass of each group of parts, kg
    std::vector<std::string> unknown;  ///< ids of the parts whose density the library doesn't have
    N unknown_parts{};                 ///< how many those are
    N height{};                        ///< mm, underside of the base to upper face of the top
    std::optional<Weight<N>> contents;
    std::optional<Standing<N>> empty;   ///< nothing where a part's mass is not known
    std::optional<Standing<N>> loaded;  ///< with its contents, where the case file names any
};

/// How many people lift a mass, where a team's capability is less than the sum of its members': two
/// thirds of it for two, half for three. Nothing where four are not enough.
/// Source: HSE L23, Manual handling, guidance on regulation 4, paragraph 120; four, for which it
/// states no share but that more are unlikely to work, as three (a choice of this tool)
/// Example: 25 kg -> 2
[[nodiscard]] std::optional<int> lifters(double mass);

/// @param c       free of objections
/// @param layout  of the case
/// @param parts   `pattern::case_parts`; parts of other assemblies are passed over
[[nodiscard]] WholeSums<double> whole_sums(const Case& c, const fit::Layout& layout,
                                           const std::vector<Part>& parts);

/// The same sums by the same code, with every figure entered in `workings`, below `whole` and
/// `parts/ID`.
WholeSums<Traced> whole_sums(const Case& c, const fit::Layout& layout,
                             const std::vector<Part>& parts, Workings& workings);

/// Whether the case stands, empty and loaded, and whether its mass is known. Too small a tipping
/// angle fails a case that stands free, and warns where the case is fixed.
[[nodiscard]] std::vector<Finding> whole_checks(const Case& c, const WholeSums<double>& sums);

/// A direction in plan in words: `front`, `front right`, `right`, ...
/// @param angle  rad, from X counter-clockwise
[[nodiscard]] std::string direction_text(double angle);

}  // namespace bowfront::whole
