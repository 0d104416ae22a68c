#include "climb.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace bowfront::study {
namespace {

// A change of what is missing that is more than the rounding of the sums.
constexpr double kGain = 1e-9;
// Far more than a search of thousands of rungs takes.
constexpr int kMostTries = 40;

}  // namespace

Climb::Climb(const Ladder& ladder, double missing, std::function<TriedCase(std::size_t)> tried)
    : ladder_(ladder), missing_(missing), tried_(std::move(tried)) {}

const TriedCase& Climb::outcome(std::size_t rung) {
    const auto known = known_.find(rung);
    return known != known_.end() ? known->second
                                 : known_.emplace(rung, tried_(rung)).first->second;
}

bool Climb::good(const TriedCase& outcome) const {
    return outcome.sound && outcome.status <= wanted_;
}

std::optional<std::size_t> Climb::first(Status wanted) {
    wanted_ = wanted;
    if (ladder_.count == 0) {
        return std::nullopt;
    }
    const TriedCase& now = outcome(0);
    if (good(now)) {
        return 0;
    }
    // Beside a rung that can't be built: no help, or the wrong way.
    if (!now.sound || ladder_.count == 1 || missing_ - now.missing <= kGain) {
        return std::nullopt;
    }
    return bracketed(now.missing);
}

// Where a straight line through two steps holds the limit; twice as far where it does not tell.
double Climb::aimed(const Step& before, const Step& now) {
    const double slope = (before.missing - now.missing) / (now.rung - before.rung);
    if (slope <= 0 || now.missing <= 0) {
        return 2 * now.rung + 2;
    }
    return now.rung + std::max(1.0, std::ceil(now.missing / slope - kGain));
}

std::optional<std::size_t> Climb::bracketed(double missing_at_first) {
    Step before{-1, missing_};
    Step now{0, missing_at_first};
    double end = static_cast<double>(ladder_.count);  // no rung from here on is of use
    for (int i = 0; i < kMostTries && now.rung + 1 < end; ++i) {
        double next = std::min(aimed(before, now), static_cast<double>(ladder_.count) - 1);
        next = next < end ? next : std::floor((now.rung + end) / 2);
        const TriedCase& there = outcome(static_cast<std::size_t>(next));
        if (good(there)) {
            return narrowed(now.rung, next);
        }
        if (!there.sound || now.missing - there.missing <= kGain) {
            end = next;  // past its best: what there may be lies before
        } else {
            before = now;
            now = {next, there.missing};
        }
    }
    return std::nullopt;
}

// Between a rung that does not do and one that does.
std::size_t Climb::narrowed(double low, double high) {
    if (high - low > 1 && !good(outcome(static_cast<std::size_t>(high - 1)))) {
        return static_cast<std::size_t>(high);  // as aimed
    }
    while (high - low > 1) {
        const double middle = std::floor((low + high) / 2);
        (good(outcome(static_cast<std::size_t>(middle))) ? high : low) = middle;
    }
    return static_cast<std::size_t>(high);
}

}  // namespace bowfront::study
