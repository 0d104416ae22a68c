#include "bowfront/study/chance.hpp"

#include <cmath>
#include <string>
#include <vector>

#include "bowfront/base/contract.hpp"
#include "trial.hpp"

namespace bowfront::study {

Share share_of(int hits, int samples) {
    BOWFRONT_EXPECTS(samples >= 1 && hits >= 0 && hits <= samples);
    const double value = static_cast<double>(hits) / samples;
    return {value, std::sqrt(value * (1 - value) / samples)};
}

Chance first_time_fit(const Case& c, const CaseSums<double>& sums, const ChanceOptions& options) {
    BOWFRONT_EXPECTS(options.samples >= 1 && options.samples <= kMostSamples);
    Trials trials(c, sums, options.seed);
    std::vector<int> hits(sums.panes.size());
    int all_hits = 0;
    for (int sample = 0; sample < options.samples; ++sample) {
        bool all = true;
        trials.next([&](std::size_t pane, const Trial& trial) {
            const bool fits = trial.fits();
            hits[pane] += fits ? 1 : 0;
            all = all && fits;
        });
        all_hits += all ? 1 : 0;
    }
    Chance chance{options, share_of(all_hits, options.samples), {}};
    for (std::size_t i = 0; i < sums.panes.size(); ++i) {
        chance.panes.push_back({sums.panes[i].side, share_of(hits[i], options.samples)});
    }
    return chance;
}

std::vector<Finding> chance_checks(const Chance& chance) {
    std::vector<Finding> findings;
    for (const PaneChance& pane : chance.panes) {
        Finding finding;
        finding.code = Code::fit_chance;
        finding.id = "first-time-fit";
        finding.about = side_text(pane.side);
        finding.state = "share of " + std::to_string(chance.options.samples) +
                        " samples in which every limit of every edge holds";
        finding.value = finding.worst = pane.fit.value;
        finding.limit = kLeastChance;
        if (pane.fit.value < kLeastChance) {
            finding.status = Status::fail;
            finding.advice =
                "see the checks of this pane that warn: give the edge with the least margin more "
                "room or more engagement, or measure the sheet's shrink and thickness";
        }
        findings.push_back(std::move(finding));
    }
    return findings;
}

}  // namespace bowfront::study
