#pragma once
/// \file
/// What becomes of a case's findings when a value is changed.

#include <map>
#include <string>
#include <utility>
#include <vector>

#include "bowfront/study/advice.hpp"

namespace bowfront::study {

/// How a changed case comes out for one finding.
struct Outcome {
    bool sound = false;  ///< the case can be built; nothing else counts where not
    Status status = Status::fail;  ///< of the finding; one that is not made any more passes
    double missing = 0;            ///< of its limit, in its unit; negative where it is held
    bool harms = true;             ///< another finding ends worse than before, or a new one fails
    std::vector<std::string> brings = {};  ///< checks that were not made before, and warn
};

/// Which part of the checks is run.
enum class Extent {
    sums,  ///< all that needs no outlines; those of the frame count as unchanged
    whole  ///< all
};

/// Runs changed cases and compares them with the case as it stands.
class Trials {
  public:
    Trials(const std::vector<Finding>& findings, const ChanceOptions& chance, const CaseFile& file);

    /// @param watched  one of the findings
    [[nodiscard]] Outcome run(const Case& changed, const Finding& watched, Extent extent) const;

    /// Whether the outlines of the frame may change with a value.
    [[nodiscard]] static bool shapes_frame(const std::string& pointer);

  private:
    using Name = std::pair<std::string, std::string>;

    void weigh(const std::vector<Finding>& after, const Finding& watched, Outcome& outcome) const;
    [[nodiscard]] bool chance_counts(const std::vector<Finding>& after, const Finding& watched,
                                     Extent extent) const;

    const ChanceOptions& chance_;
    const CaseFile& file_;
    std::map<Name, Status> before_;
    bool with_chance_ = false;
};

}  // namespace bowfront::study
