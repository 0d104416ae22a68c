#pragma once
/// \file
/// How likely it is that every pane fits at the first try.

#include <cstdint>
#include <vector>

#include "bowfront/base/finding.hpp"
#include "bowfront/fit/sums.hpp"
#include "bowfront/model/case.hpp"

namespace bowfront::study {

/// The most samples that may be asked for.
inline constexpr int kMostSamples = 100'000'000;

/// How the chance is estimated.
struct ChanceOptions {
    int samples = 20'000;    ///< 1 to kMostSamples
    std::uint64_t seed = 1;  ///< the same seed draws the same samples on every machine
};

/// A share of samples with its standard error.
struct Share {
    double value = 0;  ///< 0 to 1
    double error = 0;  ///< standard error: sqrt(p·(1 − p)/n)
};

/// The share of hits among samples. @throws ContractError unless 0 ≤ hits ≤ samples, samples ≥ 1
[[nodiscard]] Share share_of(int hits, int samples);

/// The chance of one pane.
struct PaneChance {
    CaseSide side;
    Share fit;
};

/// The chance of a case.
struct Chance {
    ChanceOptions options;
    Share fit;                      ///< all panes at once
    std::vector<PaneChance> panes;  ///< in the order of the sums
};

/// The chance that every limit of every edge of every pane holds at once, in every service state.
///
/// Drawn together: the shrink in both directions and the thickness of each sheet (once for all
/// panes that are cut from it), the cuts of each pane, the depths of the grooves in base and top
/// (once each) and of each groove in a post, the width of the grooves (once: one cutter), the
/// clear height (once) and each opening along the glazing line. ± is a hard limit; each is normal
/// with half the limit as its standard deviation, cut at the limit.
/// @param sums  `fit::solve(c)`
/// @throws ContractError where the number of samples is out of its range
[[nodiscard]] Chance first_time_fit(const Case& c, const CaseSums<double>& sums,
                                    const ChanceOptions& options);

/// Under this chance a pane fails, whatever its nominal. Common practice, no source.
inline constexpr double kLeastChance = 0.95;

/// One check for each pane: its chance against `kLeastChance`.
[[nodiscard]] std::vector<Finding> chance_checks(const Chance& chance);

}  // namespace bowfront::study
