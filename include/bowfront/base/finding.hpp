#pragma once
/// \file
/// A finding: the true answer of one check, by value.

#include <string>
#include <string_view>
#include <vector>

#include "bowfront/base/code.hpp"

namespace bowfront {

/// How a check ended. `fail`: the nominal breaks the limit. `warn`: only the worst case does.
enum class Status { pass, warn, fail };

/// `pass`, `warn` or `fail`.
[[nodiscard]] std::string_view status_text(Status status) noexcept;

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
    std::string advice;          ///< the smallest change that would pass; empty for a pass
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
};

/// The worst status among findings; `pass` for none.
[[nodiscard]] Status verdict(const std::vector<Finding>& findings) noexcept;

}  // namespace bowfront
