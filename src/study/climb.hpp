#pragma once
/// \file
/// The search along the values of one setting.

#include <functional>
#include <map>
#include <optional>

#include "setting.hpp"
#include "tryouts.hpp"

namespace bowfront::study {

/// Looks for the first rung of a ladder at which a finding is settled.
///
/// Most of what is missing of a limit falls along straight lines, so that a second rung tells about
/// where the limit is held; then the neighbours are tried. Where a value helps first and harms
/// later, the search goes back to before its best. A rung at which the case can't be built ends the
/// ladder.
class Climb {
  public:
    /// @param missing  of the limit as the case stands
    /// @param tried    how the case comes out at a rung; asked once for each
    Climb(const Ladder& ladder, double missing, std::function<TriedCase(std::size_t)> tried);

    /// @param wanted  the status that is good enough
    [[nodiscard]] std::optional<std::size_t> first(Status wanted);

    /// How the case comes out at a rung.
    [[nodiscard]] const TriedCase& outcome(std::size_t rung);

  private:
    struct Step {
        double rung = -1;  // the value as it stands is one rung before the first
        double missing = 0;
    };

    [[nodiscard]] bool good(const TriedCase& outcome) const;
    [[nodiscard]] static double aimed(const Step& before, const Step& now);
    [[nodiscard]] std::optional<std::size_t> bracketed(double missing_at_first);
    [[nodiscard]] std::size_t narrowed(double low, double high);

    const Ladder& ladder_;
    double missing_;
    std::function<TriedCase(std::size_t)> tried_;
    std::map<std::size_t, TriedCase> known_;
    Status wanted_ = Status::pass;
};

}  // namespace bowfront::study
