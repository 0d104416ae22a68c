#include "bowfront/study/spread.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>

#include "bowfront/base/contract.hpp"
#include "trial.hpp"

namespace bowfront::study {
namespace {

// Sums of one size over the samples, taken from a value near its mean so that squares stay small.
class Gathered {
  public:
    Gathered(double near, double limit) : near_(near), limit_(limit) {}

    void add(double value) {
        const double off = value - near_;
        sum_ += off;
        squares_ += off * off;
        least_ = std::min(least_, value);
        hits_ += value >= limit_ ? 1 : 0;
    }

    [[nodiscard]] Spread spread(int samples) const {
        const double mean = sum_ / samples;
        const double variance = squares_ / samples - mean * mean;
        return {near_ + mean, std::sqrt(std::max(0.0, variance)), least_, share_of(hits_, samples)};
    }

  private:
    double near_;
    double limit_;
    double sum_ = 0;
    double squares_ = 0;
    double least_ = std::numeric_limits<double>::infinity();
    int hits_ = 0;
};

class PaneGathered {
  public:
    PaneGathered(const PaneSums<double>& pane, bool lifted)
        : pane_(&pane),
          lifted_(lifted),
          bottom_(edge(PaneEdge::bottom)),
          top_(edge(PaneEdge::top)),
          start_(edge(PaneEdge::start)),
          end_(edge(PaneEdge::end)),
          vertical_(pane.room_vertical.nominal, fit::kLeastRoom),
          sideways_(pane.room_sideways.nominal, fit::kLeastRoom),
          face_(pane.edge(PaneEdge::bottom).face_clearance, 0),
          face_in_posts_(pane.edge(PaneEdge::start).face_clearance, 0),
          contact_(pane.radius_error.clearance_left, 0),
          play_(pane.loading.play, 0) {}

    void add(const Trial& trial) {
        TrialSizes least = trial.sizes_in(pane_->states.front());
        double contact = trial.contact_in(pane_->states.front());
        for (const PaneState<double>& state : pane_->states) {
            least = TrialSizes::least(least, trial.sizes_in(state));
            contact = std::min(contact, trial.contact_in(state));
        }
        contact_.add(contact);
        bottom_.add(least.bottom);
        top_.add(least.top);
        start_.add(least.start);
        end_.add(least.end);
        vertical_.add(least.vertical);
        sideways_.add(least.sideways);
        face_.add(trial.face_clearance());
        face_in_posts_.add(trial.face_clearance_in_posts());
        play_.add(least.play);
    }

    [[nodiscard]] PaneSpreads spreads(int samples) const {
        const auto of = [samples](const Gathered& size) { return size.spread(samples); };
        PaneSpreads all{pane_->side,
                        {of(bottom_), of(top_), of(start_), of(end_)},
                        of(vertical_),
                        of(sideways_),
                        of(face_),
                        of(face_in_posts_),
                        std::nullopt,
                        std::nullopt};
        if (pane_->heated) {
            all.contact = of(contact_);
        }
        if (lifted_) {
            all.play = of(play_);
        }
        return all;
    }

  private:
    [[nodiscard]] Gathered edge(PaneEdge which) const {
        return {pane_->edge(which).settled, pane_->least_engagement};
    }

    const PaneSums<double>* pane_;
    bool lifted_;
    Gathered bottom_, top_, start_, end_, vertical_, sideways_, face_, face_in_posts_, contact_,
        play_;
};

}  // namespace

std::vector<PaneSpreads> spreads(const Case& c, const CaseSums<double>& sums,
                                 const ChanceOptions& options) {
    BOWFRONT_EXPECTS(options.samples >= 1 && options.samples <= kMostSamples);
    std::vector<PaneGathered> gathered;
    for (const PaneSums<double>& pane : sums.panes) {
        gathered.emplace_back(pane, c.frame.loading.value == Loading::lift_and_drop);
    }
    Trials trials(c, sums, options.seed);
    for (int sample = 0; sample < options.samples; ++sample) {
        trials.next(
            [&](std::size_t pane, const Trial& trial) { gathered[pane].add(trial); });
    }
    std::vector<PaneSpreads> result;
    for (const PaneGathered& pane : gathered) {
        result.push_back(pane.spreads(options.samples));
    }
    return result;
}

void explain_spreads(const std::vector<PaneSpreads>& panes, const ChanceOptions& options,
                     Workings& workings) {
    const std::string over = " over " + std::to_string(options.samples) + " samples, seed " +
                             std::to_string(options.seed) +
                             ", of the least in any state of the air";
    for (const PaneSpreads& pane : panes) {
        const std::string side = "panes/" + std::string(side_text(pane.side)) + "/";
        visit_spreads(pane, [&](const std::string& below, const Spread& spread) {
            const std::string path = side + below;
            workings.figure(path + "/mean", "m", Kind::length, Traced(spread.mean),
                            "counted: mean" + over);
            workings.figure(path + "/deviation", "σ", Kind::length, Traced(spread.deviation),
                            "counted: standard deviation" + over);
            workings.figure(path + "/least", "x", Kind::length, Traced(spread.least),
                            "counted: the least" + over);
            const Traced holds = workings.figure(path + "/holds", "P", Kind::plain,
                                                 Traced(spread.holds.value),
                                                 "counted: share in which its limit holds," + over);
            workings.figure(path + "/error", "ΔP", Kind::plain,
                            sqrt(holds * (1 - holds) / Traced(options.samples)),
                            "standard error of a share");
        });
    }
}

}  // namespace bowfront::study
