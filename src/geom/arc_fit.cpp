#include "bowfront/geom/arc_fit.hpp"

#include <algorithm>
#include <array>
#include <numbers>
#include <optional>

#include "bowfront/base/contract.hpp"
#include "geom/biarc.hpp"

namespace bowfront {
namespace {

/// A biarc doesn't turn further than this, rad. Then the nearest point on it moves on as a point
/// runs along the curve, so that what is measured from the curve holds from the chain, too.
constexpr double kMostTurn = std::numbers::pi / 2 + 1e-9;  // a quarter turn, and its rounding
/// Places of each analytic piece of a stretch at which its distance from the biarc is measured; the
/// distance rises and falls only a few times over a stretch.
constexpr int kPlaces = 24;
/// A parabola is laid over the greatest one. What it still misses is under this share of it.
constexpr double kMissed = 0.01;
/// A stretch of 10 m is halved to 1e-8 mm before this; then the curve has a cusp.
constexpr int kMostHalvings = 40;
/// Steps of each analytic piece over which the change of curvature is taken.
constexpr int kWeighed = 64;
/// Change of curvature times the square of the length that counts even where there is none, so that
/// rounding shares out nothing: a hundred times the rounding of a curvature over a step.
constexpr double kLeastChange = 1e-12;

/// How far a stretch of a curve lies from its biarc, and how far the curve turns there.
struct Stretch {
    double deviation = 0;
    double turn = 0;  ///< sum of the tangents' changes, rad; short of the angles by 0.1 %
};

/// Parameters at which a curve is cut into stretches, from 0 to 1.
using Cuts = std::vector<double>;

/// A parameter, and what lies behind it of something that is shared out along a curve.
struct Mark {
    double at = 0;
    double behind = 0;
};

/// The cube root of the change of curvature, summed up along a curve: a short biarc strays by that
/// change times the cube of its length, so equal shares stray alike.
std::vector<Mark> error_marks(const SmoothCurve& curve) {
    const double least = kLeastChange / (curve.length() * curve.length());
    const std::vector<double> pieces = curve.pieces();
    std::vector<Mark> marks{{}};
    double length_before = 0;
    double curvature_before = curve.curvature(0);
    for (std::size_t i = 1; i < pieces.size(); ++i) {
        const double step = (pieces[i] - pieces[i - 1]) / kWeighed;
        for (int k = 1; k <= kWeighed; ++k) {
            const double t = k < kWeighed ? pieces[i - 1] + k * step : pieces[i];
            const double length = curve.length_to(t);
            const double curvature = curve.curvature(t);
            const double run = length - length_before;
            const double change = std::abs(curvature - curvature_before) / run;
            marks.push_back({t, marks.back().behind + std::cbrt(change + least) * run});
            length_before = length;
            curvature_before = curvature;
        }
    }
    return marks;
}

/// The parameter behind which a share, 0 to 1, of the whole lies.
double shared_at(const std::vector<Mark>& marks, double share) {
    const double wanted = share * marks.back().behind;
    const auto next =
        std::upper_bound(marks.begin() + 1, marks.end() - 1, wanted,
                         [](double value, const Mark& m) { return value < m.behind; });
    const Mark& before = next[-1];
    const double part = (wanted - before.behind) / (next->behind - before.behind);
    return before.at + part * (next->at - before.at);
}

/// Lays biarcs along a curve.
class Fitter {
  public:
    Fitter(const SmoothCurve& curve, double chord_error)
        : curve_(curve), pieces_(curve.pieces()), allowed_(chord_error - kJoint) {}

    /// Cuts by halving, by their length, all stretches whose biarcs are not near.
    [[nodiscard]] Cuts halved() const {
        Cuts cuts{0};
        halve(cuts, 0, 1, kMostHalvings);
        return cuts;
    }

    /// Cuts into the fewest stretches of equal shares whose biarcs are all near, from half of a
    /// number that will do to less than it: halving rarely takes more than twice the fewest.
    [[nodiscard]] std::optional<Cuts> shared_out(std::size_t will_do) const {
        const std::vector<Mark> marks = error_marks(curve_);
        for (std::size_t count = (will_do + 1) / 2; count < will_do; ++count) {
            Cuts cuts{0};
            for (std::size_t i = 1; i <= count; ++i) {
                const double share = static_cast<double>(i) / static_cast<double>(count);
                const double cut = i < count ? shared_at(marks, share) : 1;
                if (!near(cuts.back(), cut)) {
                    break;
                }
                cuts.push_back(cut);
            }
            if (cuts.size() == count + 1) {
                return cuts;
            }
        }
        return std::nullopt;
    }

    [[nodiscard]] ArcFit chain(const Cuts& cuts) const {
        ArcFit fit;
        fit.developed = curve_.length();
        for (std::size_t i = 1; i < cuts.size(); ++i) {
            const auto one = biarc_over(cuts[i - 1], cuts[i]);
            fit.deviation = std::max(fit.deviation, measured(*one, cuts[i - 1], cuts[i]).deviation);
            for (const Segment& arc : *one) {
                append_joined(fit.chain, arc);
            }
        }
        for (const Segment& segment : fit.chain) {
            fit.length += segment.length();
        }
        return fit;
    }

  private:
    void halve(Cuts& cuts, double from, double to, int halvings) const {
        BOWFRONT_EXPECTS(halvings > 0);
        if (near(from, to)) {
            cuts.push_back(to);
            return;
        }
        const double middle =
            curve_.parameter_at((curve_.length_to(from) + curve_.length_to(to)) / 2);
        halve(cuts, from, middle, halvings - 1);
        halve(cuts, middle, to, halvings - 1);
    }

    [[nodiscard]] std::optional<Biarc> biarc_over(double from, double to) const {
        return biarc(curve_.at(from), curve_.tangent(from), curve_.at(to), curve_.tangent(to));
    }

    [[nodiscard]] bool near(double from, double to) const {
        const auto one = biarc_over(from, to);
        return one && near(measured(*one, from, to));
    }

    [[nodiscard]] bool near(const Stretch& stretch) const {
        return stretch.deviation * (1 + kMissed) <= allowed_ && stretch.turn <= kMostTurn;
    }

    /// Given up as soon as the stretch is not near: most of those that are tried are not.
    [[nodiscard]] Stretch measured(const Biarc& one, double from, double to) const {
        Stretch whole;
        auto end = std::upper_bound(pieces_.begin(), pieces_.end(), from);
        for (double start = from; start < to && near(whole); ++end) {
            const double stop = std::min(*end, to);
            const Stretch part = measured_in_piece(one, start, stop);
            whole = {std::max(whole.deviation, part.deviation), whole.turn + part.turn};
            start = stop;
        }
        return whole;
    }

    [[nodiscard]] Stretch measured_in_piece(const Biarc& one, double from, double to) const {
        const double step = (to - from) / kPlaces;
        std::array<double, kPlaces + 1> off;
        Stretch found;
        Point before = curve_.tangent(from);
        for (int i = 0; i <= kPlaces; ++i) {
            const CurveDerivatives there = curve_.derivatives(i < kPlaces ? from + i * step : to);
            const Point tangent = there.first * (1 / there.speed());
            found.turn += distance(before, tangent);
            before = tangent;
            const double here = distance_to(one, there.at);
            if (here > allowed_) {
                return {here, found.turn};
            }
            off[static_cast<std::size_t>(i)] = here;
        }
        const auto peak = std::max_element(off.begin(), off.end());
        found.deviation = *peak;
        if (peak == off.begin() || peak == off.end() - 1) {
            return found;
        }
        const double bend = peak[-1] - 2 * *peak + peak[1];
        if (bend < 0) {
            const double place =
                static_cast<double>(peak - off.begin()) + (peak[-1] - peak[1]) / (2 * bend);
            found.deviation =
                std::max(found.deviation, distance_to(one, curve_.at(from + place * step)));
        }
        return found;
    }

    const SmoothCurve& curve_;
    std::vector<double> pieces_;
    double allowed_;
};

}  // namespace

ArcFit fit_arcs(const SmoothCurve& curve, double chord_error) {
    BOWFRONT_EXPECTS(chord_error >= kFinestChordError);
    BOWFRONT_EXPECTS(curve.tightest().radius() > chord_error);
    const Fitter fitter(curve, chord_error);
    const Cuts halved = fitter.halved();
    return fitter.chain(fitter.shared_out(halved.size() - 1).value_or(halved));
}

}  // namespace bowfront
