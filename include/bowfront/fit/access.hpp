#pragma once
/// \file
/// The sums of how a case is opened: what comes off or out, its room, its way, its hold when shut.
///
/// Lengths in mm. Nominal figures are those as built; worst ones take all tolerances at their limits
/// at once, in the worst of the service states. They stand beside `solve`, as the loading paths do:
/// no pane of `Case::panes` goes by them.

#include <optional>
#include <string>
#include <vector>

#include "bowfront/base/finding.hpp"
#include "bowfront/fit/layout.hpp"
#include "bowfront/fit/sums.hpp"

namespace bowfront {

/// A figure as built and at worst.
template <class N>
struct NominalAndWorst {
    N nominal;
    N worst;
};

/// A top that is lifted off, and the panes after it.
template <class N>
struct TopOffSums {
    N travel;    ///< of a pane, until its foot is clear of the post grooves
    N headroom;  ///< above the closed case, that the tallest pane takes on that way
};

/// Panes in grooves of base and top, with nothing at their ends.
template <class N>
struct GroovedSums {
    N length;                       ///< of one pane
    N height;
    NominalAndWorst<N> bottom;      ///< engagement at rest
    NominalAndWorst<N> top;         ///< the same
    NominalAndWorst<N> lift;        ///< clear under the foot of a pane that is lifted all the way
    NominalAndWorst<N> tilt;        ///< groove width that the top takes while the foot swings out
    N push;                         ///< N, in the middle of the shut pane
    NominalAndWorst<N> bow;         ///< of that push
    NominalAndWorst<N> held;        ///< engagement of the top that the bow leaves
    std::optional<NominalAndWorst<N>> play;  ///< of a single pane between its posts
};

/// What a sliding pair has besides.
template <class N>
struct SlidingSums {
    NominalAndWorst<N> overlap;  ///< both panes shut against their posts
    N open;                      ///< of the opening, that one open pane leaves
    N share;                     ///< of the opening's length
    NominalAndWorst<N> faces;    ///< between the panes, one of them bowed by the hand that slides it
};

/// A door on pivots.
template <class N>
struct DoorSums {
    N length;
    N height;
    NominalAndWorst<N> latch;     ///< at the post where it shuts, by the corner's way about the pin
    NominalAndWorst<N> heel;      ///< the same at the hinge post
    NominalAndWorst<N> above;     ///< under the top
    N passage;                    ///< of the opening's length, that a door open by 90° leaves
};

/// How a case is opened.
template <class N>
struct AccessSums {
    CaseSide side;
    std::optional<PaneSums<N>> pane;  ///< opening, states and tolerances of the side that opens
    std::optional<TopOffSums<N>> top;
    std::optional<GroovedSums<N>> grooved;
    std::optional<SlidingSums<N>> sliding;
    std::optional<DoorSums<N>> door;
};

namespace fit {

/// A hand that slides a pane presses on it by so much, N. Common practice, no source.
inline constexpr double kSlidingHand = 10;
/// Shut sliding panes overlap by at least this, mm. Common practice, no source.
inline constexpr double kLeastOverlap = 10;
/// A finger goes into a bore of this diameter, mm. Common practice, no source.
inline constexpr double kFinger = 20;

/// @param c     with `access`, free of objections
/// @throws ContractError where the case has none
[[nodiscard]] AccessSums<double> solve_access(const Case& c);
/// The same sums by the same code, with every figure entered in `workings`, below `access`. The
/// frame about the side that opens enters its figures, too: these are other workings than those of
/// `solve`.
AccessSums<Traced> solve_access(const Case& c, Workings& workings);

/// Values of an access that leave nothing to build. @param c  otherwise free of objections
[[nodiscard]] std::vector<Objection> access_objections(const Case& c);

/// A pane that opens, in plan, as it stands shut.
struct AccessPane {
    std::string id;   ///< `pane-back`; of a pair `pane-back-start` and `pane-back-end`
    Contour outline;
};

/// A round hole for a peg, and the least timber about it in post and top, mm; 0 or less where there
/// is no place for it.
struct PegPlace {
    Point at;
    double timber = 0;
};

/// What is cut and what stands for the opening, in plan.
struct AccessLayout {
    std::vector<Contour> grooves;   ///< in base and top, each its full width from post to post
    std::vector<AccessPane> panes;
    Contour clear;                  ///< the whole opening, as wide as what is cut for it
    std::optional<Point> pin;       ///< of a door
    double turn = 0;                ///< of a door, rad, positive to the left
    std::optional<Contour> stop;    ///< strip on the post that a door shuts against
    std::vector<PegPlace> pegs;     ///< one a post, by its place
};

/// @param sums    `solve_access(c)`
/// @param layout  of the case
[[nodiscard]] AccessLayout access_layout(const Case& c, const AccessSums<double>& sums,
                                         const Layout& layout);

/// The least gap between a door and the frame while it opens, mm, by the outlines turned about the
/// pin: each degree, and where a corner comes nearest to a post.
[[nodiscard]] double swing_gap(const AccessLayout& access, const Layout& layout);

/// The checks of how a case is opened.
[[nodiscard]] std::vector<Finding> access_checks(const Case& c, const AccessSums<double>& sums,
                                                 const AccessLayout& access, const Layout& layout);

}  // namespace fit
}  // namespace bowfront
