#pragma once
/// \file
/// How each limit of each edge is spread over many cases made alike.

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "bowfront/figure/workings.hpp"
#include "bowfront/fit/sums.hpp"
#include "bowfront/study/chance.hpp"

namespace bowfront::study {

/// One size that has a limit, over the samples; in each sample the least over the states of the air.
struct Spread {
    double mean = 0;       ///< mm
    double deviation = 0;  ///< standard deviation, mm
    double least = 0;      ///< of all samples, mm
    Share holds;           ///< of the samples in which the limit holds
};

/// All limits of one pane.
struct PaneSpreads {
    CaseSide side;
    std::array<Spread, 4> engagement;  ///< settled; in the order of kPaneEdges
    Spread vertical;                   ///< room between groove bottoms
    Spread sideways;
    Spread face_clearance;           ///< in base and top
    Spread face_clearance_in_posts;
    std::optional<Spread> contact;  ///< heated: face clearance that the pane's own radius leaves
    std::optional<Spread> play;  ///< lift-and-drop: over the lifted pane
};

/// The spreads of all panes by the very samples of `first_time_fit`, in the order of the sums.
/// @param sums  `fit::solve(c)`
/// @throws ContractError where the number of samples is out of its range
[[nodiscard]] std::vector<PaneSpreads> spreads(const Case& c, const CaseSums<double>& sums,
                                               const ChanceOptions& options);

/// Calls `visit(path below the pane, const Spread&)` for every spread that a pane has, as
/// `spread/engagement/top`.
template <class Visit>
void visit_spreads(const PaneSpreads& pane, const Visit& visit) {
    for (std::size_t i = 0; i < kPaneEdges.size(); ++i) {
        visit("spread/engagement/" + std::string(edge_text(kPaneEdges[i])), pane.engagement[i]);
    }
    visit(std::string("spread/room/vertical"), pane.vertical);
    visit(std::string("spread/room/sideways"), pane.sideways);
    visit(std::string("spread/face_clearance/plates"), pane.face_clearance);
    visit(std::string("spread/face_clearance/posts"), pane.face_clearance_in_posts);
    if (pane.contact) {
        visit(std::string("spread/radius/clearance_left"), *pane.contact);
    }
    if (pane.play) {
        visit(std::string("spread/loading/play"), *pane.play);
    }
}

/// Enters every figure of the spreads.
void explain_spreads(const std::vector<PaneSpreads>& panes, const ChanceOptions& options,
                     Workings& workings);

}  // namespace bowfront::study
