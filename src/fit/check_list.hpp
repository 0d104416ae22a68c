#pragma once
/// \file
/// How a check is entered: status by nominal and worst case, advice only where it is needed.

#include <string>
#include <string_view>
#include <vector>

#include "bowfront/base/finding.hpp"
#include "bowfront/base/number_text.hpp"

namespace bowfront::fit {

/// A length as advice names it: rounded up to 0.1 mm, so that what is advised is enough.
[[nodiscard]] std::string at_least_text(double length);

/// A length in a sentence: two decimals at most.
[[nodiscard]] inline std::string mm(double length) { return rounded_text(length, 2) + " mm"; }

/// What a check is called and what it is about.
struct Subject {
    Code code;
    std::string_view id;
    std::string about;
    std::string state;
    std::string_view unit = "mm";
    std::string figure = {};  ///< path of the value's figure
};

/// The findings, as they are entered.
class CheckList {
  public:
    CheckList() { findings_.reserve(kMostExpected); }

    /// Enters one check; `advise` is called with what is missing (positive, in the check's unit)
    /// only where it does not pass.
    template <class Advise>
    void enter(Subject subject, double value, double worst, double limit, Bound bound,
               Advise advise) {
        Finding& finding = add(std::move(subject), value, worst, limit, bound);
        if (finding.status == Status::fail) {
            finding.advice = advise(-finding.margin());
        } else if (finding.status == Status::warn) {
            finding.advice = advise(-finding.worst_margin());
        }
    }
    template <class Advise>
    void at_least(Subject subject, double value, double worst, double limit, Advise advise) {
        enter(std::move(subject), value, worst, limit, Bound::at_least, advise);
    }
    /// Enters a check without a worst case.
    template <class Advise>
    void at_least(Subject subject, double value, double limit, Advise advise) {
        enter(std::move(subject), value, value, limit, Bound::at_least, advise);
    }

    /// The last one entered, to mark it by hand.
    [[nodiscard]] Finding& last() { return findings_.back(); }
    [[nodiscard]] std::vector<Finding> take() { return std::move(findings_); }

  private:
    // Four panes of some twenty-five checks each; a longer list grows as usual.
    static constexpr std::size_t kMostExpected = 128;

    Finding& add(Subject subject, double value, double worst, double limit, Bound bound);
    std::vector<Finding> findings_;
};

}  // namespace bowfront::fit
