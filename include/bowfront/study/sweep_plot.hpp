#pragma once
/// \file
/// A sweep drawn: its least worst margin over one or two varied numbers, as SVG.

#include <cstddef>
#include <string>
#include <vector>

#include "bowfront/study/sweep.hpp"

namespace bowfront::study {

/// The most variants that a drawing shows: more would be finer than it is printed.
inline constexpr std::size_t kMostDrawn = 40'000;

/// Collects a sweep's judgements and draws them: a curve for one varied number, a field of cells
/// for two, the first upwards and the second to the right. Where a check fails is marked.
class SweepPlot {
  public:
    /// @throws InputError where the sweep has more than two axes, one of several shards, or more
    ///         than kMostDrawn variants
    explicit SweepPlot(const Sweep& sweep);

    /// The next part of the table.
    void add(const TablePart& part);
    /// The drawing. @throws ContractError before all parts were added
    [[nodiscard]] std::string svg() const;

  private:
    std::string title_;
    std::vector<Axis> axes_;
    std::vector<Judgement> judgements_;
};

}  // namespace bowfront::study
