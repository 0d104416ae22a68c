#pragma once
/// \file
/// How a pane gets to its place, followed position by position in every state of the air that it
/// may be loaded in, with nominal and with worst sizes, and told in steps.
///
/// The search meets outlines and turns corners; it takes a few milliseconds a case, and is no part
/// of `solve` and `checks`.

#include <string>
#include <vector>

#include "bowfront/base/finding.hpp"
#include "bowfront/fit/layout.hpp"
#include "bowfront/fit/sums.hpp"

namespace bowfront::fit {

/// Where a way in is tightest.
enum class Narrow {
    posts,          ///< between pane and posts, in plan
    base,           ///< in the base's groove, in plan
    upright,        ///< between the grooves' bottoms in base and top
    top_cheeks,     ///< tilted, between the cheeks of the top's groove
    top_bottom,     ///< tilted, under the bottom of the top's groove
    between_posts,  ///< swung in between the posts' rabbets, both ends together
};

/// One way in, followed to its end.
struct Passage {
    Narrow at = Narrow::posts;
    std::string tightest;    ///< the same in words
    double clearance = 0;    ///< there, mm, of the pane as it is when nothing holds it (of one that
                             ///< is held cold, as it is held); negative: what is missing
    double flexed = 0;       ///< the same of a pane that is flexed to its groove's radius, mm

    /// Whether it goes in, flexed where it must be.
    [[nodiscard]] bool possible() const noexcept { return clearance >= 0 || flexed >= 0; }
    /// Whether it goes in only where it is flexed.
    [[nodiscard]] bool must_flex() const noexcept { return clearance < 0 && flexed >= 0; }
};

/// The way in, in one state of the air: a pane may be changed years after the case was built.
struct PassageInState {
    AirState state = AirState::built;
    Passage nominal;  ///< of nominal sizes, a formed pane of the radius its form was made for
    Passage worst;    ///< of all tolerances at their limits and the worse limit of the springback
};

/// The way in of one pane.
struct LoadingPath {
    CaseSide side;
    bool possible = false;           ///< as built, with nominal sizes
    std::string still_off;           ///< what must not be on yet: `the top`
    std::vector<std::string> steps;  ///< in order, one sentence each
    std::string tightest;            ///< the tightest place on the way, as built
    double clearance = 0;            ///< there, mm; negative: what is missing
    std::vector<PassageInState> states;  ///< in the order of kAirStates; empty where the pane can't
                                         ///< move as its loading asks, whatever its size
    /// The state in which the worst passage is tightest; none where `states` is empty.
    [[nodiscard]] const PassageInState* tightest_state() const noexcept;
};

/// The way in of one pane.
/// @param pane    of `sums` that `layout` was made from
[[nodiscard]] LoadingPath loading_path(const Case& c, const PaneSums<double>& pane,
                                       const Layout& layout);

/// The ways in of all panes, in the order of the sums.
[[nodiscard]] std::vector<LoadingPath> loading_paths(const Case& c, const CaseSums<double>& sums,
                                                     const Layout& layout);

/// Whether a check that does not pass says what would help: how wide a groove is enough is searched
/// for, and costs many times the check itself.
enum class Hint { none, wanted };

/// One check for each pane: fails where the way in is impossible as built with nominal sizes, warns
/// where it is in a state or at worst, or where the pane goes in only flexed.
/// @param paths  `loading_paths` of the same
[[nodiscard]] std::vector<Finding> path_checks(const Case& c, const CaseSums<double>& sums,
                                               const std::vector<LoadingPath>& paths,
                                               Hint hint = Hint::wanted);

}  // namespace bowfront::fit
