#pragma once
/// \file
/// What to change in a case so that a finding passes: found by doing the sums again.

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "bowfront/base/change.hpp"
#include "bowfront/base/finding.hpp"
#include "bowfront/model/case.hpp"
#include "bowfront/study/chance.hpp"

namespace bowfront::study {

/// The most changes that are told of one finding.
inline constexpr std::size_t kMostChanges = 3;

/// What is known of the file that a case was read from.
struct CaseFile {
    /// The value at a JSON pointer as the file spells it; empty where the file leaves it out. Not
    /// set: nothing is known of the spelling, and bare lengths are in the file's units.
    std::function<std::string(const std::string& pointer)> spelling;
    /// Why a file with these values would be refused by its own rules; empty where it would not.
    std::function<std::string(const Case&)> contradiction;
};

/// Looks for single changes of a case file that settle its findings.
///
/// A number is changed in steps that a shop can set (0.1 mm for play, grooves, panes and blanks,
/// 0.5 mm for timber and plan, 1/64 in throughout in inch files, whole degrees and newtons, sheets
/// and cutters by the sizes that are sold), a word is replaced by each other one. The smallest
/// change counts with which the finding passes and no other one fails that did not; where none makes
/// it pass, the smallest that turns a fail into a warning. Where a fail is settled, others may warn
/// that did not, and are named; changes without that come first. Sizes that follow others by
/// the file's own rules (a pane its grooves, a post's depth its width) follow them here.
class Adviser {
  public:
    /// @param c         free of objections; must outlive the adviser
    /// @param findings  all that was found of `c`, its chance included where it is to be held
    /// @param chance    how the chance of a first-time fit was estimated
    Adviser(const Case& c, const std::vector<Finding>& findings, const ChanceOptions& chance,
            CaseFile file);
    Adviser(const Adviser&) = delete;
    Adviser& operator=(const Adviser&) = delete;
    ~Adviser();

    /// Up to kMostChanges of different values that make the finding pass; where there is none, that
    /// leave a warning of a fail. What is hidden and how it is worked come before the look of the
    /// case, and that before what is asked of case and shop; among them the smaller change against
    /// its value first. Empty where no single change helps.
    /// @param finding  one of the findings that does not pass
    [[nodiscard]] std::vector<Change> changes(const Finding& finding);

    /// The change to make in the maker's place: hidden sizes before the way of working, these
    /// before the look of the case; the smallest of its kind. The look is only changed for a check
    /// that fails, what is asked of case and shop never, and a sheet that was not measured is left
    /// to the maker.
    /// @param finding  one of the findings that does not pass
    [[nodiscard]] std::optional<Change> correction(const Finding& finding);

  private:
    class Search;
    std::unique_ptr<Search> search_;
};

/// Gives each finding that does not pass its changes, and sums them up in its advice. Where none
/// was found the advice says so, and what stood there before is told as a hint. Checks of the whole
/// case (`BF-CASE-…`) keep their advice: they need parts, which are not made for trials.
void advise(const Case& c, std::vector<Finding>& findings, const ChanceOptions& chance,
            const CaseFile& file);

}  // namespace bowfront::study
