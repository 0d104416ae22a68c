#include "geom/biarc.hpp"

#include <algorithm>
#include <numbers>

namespace bowfront {
namespace {

/// A bulge that is straight: over 1 m its arc rises 5e-8 mm, and turns by 4e-10 rad.
constexpr double kStraightBulge = 1e-10;
/// By how much the directions at the ends of a chain may change where two arcs become one: well
/// above their rounding, and so little that a thousand of them stay under 1e-9 rad.
constexpr double kSameDirection = 1e-12;

/// The arc that leaves `from` along a unit tangent.
Segment arc_to(Point from, Point tangent, Point to) {
    const Point chord = to - from;
    // Tangent of half the angle between tangent and chord, which is a quarter of the sweep.
    const double bulge = cross(tangent, chord) / (norm(chord) + dot(tangent, chord));
    return {from, to, std::abs(bulge) < kStraightBulge ? 0 : bulge};
}

/// A half turn that is summed up from its parts may pass π by its rounding.
constexpr double kHalfTurn = std::numbers::pi + 1e-12;

}  // namespace

std::optional<Biarc> biarc(Point from, Point leaving, Point to, Point arriving) {
    const Point chord = to - from;
    const double along = dot(chord, leaving + arriving);
    if (!(along > 0)) {
        return std::nullopt;
    }
    // 2(1 − T₀·T₁) is the square of T₁ − T₀, which keeps its digits for small turns.
    const Point turned = arriving - leaving;
    const double square = dot(chord, chord);
    const double leg = square / (along + std::sqrt(along * along + dot(turned, turned) * square));
    const Point joint = (from + leaving * leg + to - arriving * leg) * 0.5;
    return Biarc{arc_to(from, leaving, joint), arc_to(to, arriving * -1, joint).reversed()};
}

double distance_to(const Biarc& biarc, Point p) {
    return std::min(biarc[0].distance_to(p), biarc[1].distance_to(p));
}

void append_joined(std::vector<Segment>& chain, const Segment& arc) {
    if (!chain.empty()) {
        Segment& last = chain.back();
        const double sweep = last.sweep() + arc.sweep();
        const Segment both{last.from, arc.to, std::clamp(std::tan(sweep / 4), -1.0, 1.0)};
        // Between two ends there is one arc, and one biarc that is it, with the same directions.
        if (std::abs(sweep) <= kHalfTurn &&
            distance(both.tangent(0), last.tangent(0)) < kSameDirection &&
            distance(both.tangent(1), arc.tangent(1)) < kSameDirection) {
            last = both;
            return;
        }
    }
    chain.push_back(arc);
}

}  // namespace bowfront
