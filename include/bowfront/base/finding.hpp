#pragma once
/// \file
/// A finding: the true answer of one check, by value.

#include <string>
#include <string_view>
#include <vector>

#include "bowfront/base/change.hpp"
#include "bowfront/base/code.hpp"
#include "bowfront/base/status.hpp"

namespace bowfront {

/// Whether a value must stay above or below its limit.
enum class Bound { at_least, at_most };

/// The answer of one check. Lengths in mm, angles in degrees, temperatures in °C, stresses in MPa.
struct Finding {
    Code code = Code::fit_engagement;
    std::string id;              ///< the check, in words joined by hyphens: `engagement`
    std::string about;           ///< pane and edge (`front/top`) or another part of the case
    std::string state;           ///< the state it was asked in, in words
    double value = 0;            ///< nominal
    double worst = 0;            ///< at the worst of all tolerances and spreads
    double limit = 0;            ///< what `value` and `worst` are held against
    Bound bound = Bound::at_least;
    std::string unit;            ///< `mm`, `degC`, `MPa`, or empty for a plain number
    Status status = Status::pass;
    std::string advice;          ///< what to do, in words; empty for a pass
    std::string hint;            ///< what to try besides, not tried out; mostly empty
    std::string note;            ///< what the finding means as things are; mostly empty
    std::vector<Change> changes;  ///< single changes that settle it, the one to try first in front
    std::string figure;          ///< path of the figure that `value` is, for its derivation; empty
                                 ///< where the value was measured on the drawn outlines

    /// How far the nominal is on the right side of the limit; negative when it breaks it.
    [[nodiscard]] double margin() const noexcept {
        return bound == Bound::at_least ? value - limit : limit - value;
    }
    /// The same for the worst case.
    [[nodiscard]] double worst_margin() const noexcept {
        return bound == Bound::at_least ? worst - limit : limit - worst;
    }
    /// What is missing of the limit, nominally or at worst, whichever is more, in the check's unit;
    /// negative where both keep it.
    [[nodiscard]] double missing() const noexcept {
        return margin() < worst_margin() ? -margin() : -worst_margin();
    }
    /// What is missing of the limit, as a share of the limit, or in the check's unit where the
    /// limit is 0: of the nominal where that fails, else of the worst case. Negative where a check
    /// warns without breaking its limit.
    [[nodiscard]] double shortfall() const noexcept;
};

/// The findings that do not pass, the worst first: fails before warnings, each by its shortfall,
/// the larger first, equals in the order given. The chance of a first-time fit comes after those
/// of its status, since it follows from them.
[[nodiscard]] std::vector<const Finding*> worst_first(const std::vector<Finding>& findings);

/// Puts findings behind others.
void append(std::vector<Finding> some, std::vector<Finding>& to);

/// The worst status among findings; `pass` for none.
[[nodiscard]] Status verdict(const std::vector<Finding>& findings) noexcept;

/// Whether something that a check is about belongs to a side: its own name, or a path below it.
[[nodiscard]] inline bool belongs_to(std::string_view about, std::string_view side) {
    return about.starts_with(side) && (about.size() == side.size() || about[side.size()] == '/');
}

}  // namespace bowfront
