#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "random_cases.hpp"

namespace bowfront::fit {
namespace {

using WorstCase = RandomCases;

// What one shop made of a case: every size drawn within its tolerance, at the limits as often as not.
class Shop {
  public:
    Shop(const Case& c, const CaseSums<double>& sums, std::mt19937_64& random)
        : made_(c), random_(random) {
        for (PaneSpec& spec : made_.panes) {
            make(spec, *sums.pane(spec.side));
        }
    }
    [[nodiscard]] CaseSums<double> sums() const { return solve(made_); }

  private:
    double within(double limit) {
        const double share = std::uniform_real_distribution<double>(-1.6, 1.6)(random_);
        return limit * std::clamp(share, -1.0, 1.0);
    }
    void make(PaneSpec& spec, const PaneSums<double>& pane) {
        const Groove& groove = made_.frame.groove;
        const auto size = [&](double nominal, double limit) {
            return MeasuredSize{nominal + within(limit), 0};
        };
        AsMade& made = spec.made;
        made.length = size(pane.length, pane.length_tolerance);
        made.height = size(pane.height, pane.height_tolerance);
        made.thickness = size(pane.formed_thickness, 0);
        made.thickness->value += std::min(within(pane.thickest - pane.formed_thickness), 0.0) +
                                 (pane.thickest - pane.formed_thickness);
        made.opening_length = size(pane.opening_length, pane.tolerances.opening_length);
        made.opening_height = size(pane.opening_height, pane.tolerances.opening_height);
        made.base_depth = size(groove.base_depth.value, pane.tolerances.base_depth);
        made.top_depth = size(groove.top_depth.value, pane.tolerances.top_depth);
        made.post_depth = size(groove.post_depth.value, pane.tolerances.post_depth);
        made.groove_width = size(groove.width.value, pane.tolerances.groove_width);
    }

    Case made_;
    std::mt19937_64& random_;
};

// Some 40 operations on sizes under 3 m; products of a tolerance and a movement that the limits,
// added, leave out: 1 mm of 0.5 %, at four places.
constexpr double kProducts = 0.02;

// Every sample of what a shop may make, in every state of the air, lies within the worst case.
TEST_F(WorstCase, bounds_every_sample_of_what_may_be_made) {
    std::mt19937_64 random(kSeed + 1);
    constexpr int kSamples = 40;
    for (int i = 0; i < kCases / 8; ++i) {
        const Case c = sound();
        const auto sums = solve(c);
        for (int sample = 0; sample < kSamples; ++sample) {
            const auto made = Shop(c, sums, random).sums();
            for (std::size_t p = 0; p < sums.panes.size(); ++p) {
                const PaneSums<double>& worst = sums.panes[p];
                const PaneSums<double>& is = made.panes[p];
                SCOPED_TRACE(testing::Message() << "seed " << kSeed << ", case " << i << ", sample "
                                                << sample << ", " << side_text(is.side));
                for (const PaneEdge edge : kPaneEdges) {
                    EXPECT_GE(is.edge(edge).settled,
                              worst.edge(edge).engagement_least - kRounding);
                    if (is.room_sideways.nominal < 0 || is.room_vertical.nominal < 0) {
                        continue;  // it does not go in at all
                    }
                    EXPECT_LE(is.edge(edge).engagement,
                              worst.edge(edge).engagement_most + kRounding);
                    EXPECT_GE(is.edge(edge).face_clearance,
                              worst.edge(edge).face_clearance_least - kRounding);
                }
                EXPECT_GE(is.room_vertical.nominal, worst.room_vertical.worst - kRounding);
                EXPECT_GE(is.loading.play, worst.loading.play_worst - kProducts);
                for (const PaneState<double>& state : is.states) {
                    const double up = state.height - state.opening_height - state.base_depth;
                    EXPECT_GE(up, worst.edge(PaneEdge::top).engagement_least - kProducts);
                    EXPECT_GE(state.top_depth - up, worst.room_vertical.worst - kProducts);
                    EXPECT_GE(state.length - state.opening_most - state.post_depth,
                              worst.edge(PaneEdge::end).engagement_least - kProducts);
                    EXPECT_GE(state.base_depth,
                              worst.edge(PaneEdge::bottom).engagement_least - kProducts);
                }
            }
        }
    }
}

}  // namespace
}  // namespace bowfront::fit
