#pragma once
/// \file
/// What becomes of a case's findings when a value is changed.

#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "bowfront/fit/checks.hpp"
#include "bowfront/study/advice.hpp"

namespace bowfront::study {

/// How a changed case comes out for one finding.
struct TriedCase {
    bool sound = false;  ///< the case can be built; nothing else counts where not
    Status status = Status::fail;  ///< of the finding; one that is not made any more passes
    double missing = 0;            ///< of its limit, in its unit; negative where it is held
    bool harms = true;             ///< another finding fails that did not, or comes to break its limit at worst
    std::vector<std::string> brings = {};  ///< checks that warn now and did not before
};

/// Which part of the checks is run.
enum class Scope {
    sums,  ///< all that needs no outlines; those of the frame count as unchanged
    whole  ///< all
};

/// Runs changed cases and compares them with the case as it stands.
class Tryouts {
  public:
    Tryouts(const std::vector<Finding>& findings, const ChanceOptions& chance, const CaseFile& file);

    /// A step of a search. The chance is only drawn where it is watched, and in few samples.
    /// @param watched  one of the findings
    [[nodiscard]] TriedCase tried(const Case& changed, const Finding& watched, Scope scope) const;

    /// Everything that is found of a changed case, its chance included where it may be less than
    /// certain; nothing for one that can't be built.
    [[nodiscard]] std::optional<std::vector<Finding>> found(const Case& changed) const;

    /// What findings of a changed case mean for one of those before.
    [[nodiscard]] TriedCase weighed(const std::vector<Finding>& after, const Finding& watched) const;

    /// Whether the outlines of the frame may change with a value.
    [[nodiscard]] static bool shapes_frame(const std::string& pointer);

  private:
    // What is worked out of a changed case; the layout only where all checks are asked.
    struct Checked {
        CaseSums<double> sums;
        fit::Layout layout;
        std::vector<Finding> findings;
    };
    [[nodiscard]] bool contradicts(const Case& changed) const;
    [[nodiscard]] std::optional<Checked> checked(const Case& changed, Scope scope) const;

    const ChanceOptions& chance_;
    const CaseFile& file_;
    struct Before {
        Status status = Status::pass;
        bool within = true;  // its worst case keeps the limit
    };
    std::map<std::pair<std::string, std::string>, Before> before_;  // by id and about
    bool with_chance_ = false;
    bool with_shop_ = false;
    bool with_path_ = false;
    bool with_shelves_ = false;
};

}  // namespace bowfront::study
