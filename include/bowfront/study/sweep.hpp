#pragma once
/// \file
/// One case in many variants: a table of their verdicts and figures.

#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "bowfront/model/case.hpp"
#include "bowfront/study/chance.hpp"
#include "bowfront/study/steps.hpp"

namespace bowfront::study {

/// A value of an axis in the units used inside, or why no case can have it.
struct AxisValue {
    double value = 0;
    std::string fault;  ///< empty where there is a value
};

/// One varied number.
struct Axis {
    std::string name;                 ///< JSON pointer, for the heading
    Steps steps;                      ///< as the case file would write them
    std::vector<std::size_t> places;  ///< the values of the case that it sets, by `visit_values`
    /// The value at a place of `steps`; called by several threads at once.
    std::function<AxisValue(std::size_t)> value;
};

/// A run of neighbouring variants: part `number` of `of`.
struct Shard {
    std::size_t number = 1;  ///< 1 to `of`
    std::size_t of = 1;      ///< ≥ 1
};

/// What to sweep over.
struct Sweep {
    Case base;
    std::vector<Axis> axes;  ///< the last varies fastest; at most kMostVariants variants
    /// Why the values of a variant can't hold together by the rules of its file; empty where they
    /// can. Called by several threads at once.
    std::function<std::string(const Case&)> contradiction;
    std::optional<ChanceOptions> chance;  ///< nothing: the chance is not estimated
    std::size_t jobs = 1;                 ///< threads, ≥ 1; the table does not depend on it
    Shard shard;

    /// All variants, whatever the shard.
    [[nodiscard]] std::size_t count() const noexcept;
};

/// How a variant came out.
enum class Outcome { pass, warn, fail, impossible };

/// A variant in short.
struct Judgement {
    Outcome outcome = Outcome::impossible;
    double margin = 0;  ///< least worst margin, mm; 0 where impossible
};

/// Some lines of the table, in order.
struct TablePart {
    std::string text;  ///< CSV as RFC 4180 has it; the first shard's begins with the heading
    std::vector<Judgement> judgements;  ///< one a line
};

/// Solves and checks every variant of a shard; `take` gets the table in parts, in order, on the
/// calling thread. The memory needed does not grow with the number of variants.
///
/// Columns: the varied numbers as the file would write them; `verdict`; `margin`, the least worst
/// margin of all checks that hold a length of pane or frame against its limit, mm, and in `check`
/// and `about` which one that is; the chance of a first-time fit where it is estimated; for each
/// pane its figures by their paths in the report, mm; `reason`: why a variant can't be built (all
/// figures are then empty), or the first check that fails.
/// @throws ContractError where a range above is broken; what `take` throws ends the sweep
void run(const Sweep& sweep, const std::function<void(const TablePart&)>& take);

}  // namespace bowfront::study
