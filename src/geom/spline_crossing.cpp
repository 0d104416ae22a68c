#include "geom/spline_crossing.hpp"

#include <algorithm>
#include <limits>

namespace bowfront {
namespace {

double size(const CubicHull& hull) {
    double longest = 0;
    for (const Point& p : hull.control) {
        longest = std::max(longest, distance(hull.control[0], p));
    }
    return longest;
}

/// Source: de Casteljau's halving.
std::array<CubicHull, 2> halves(const CubicHull& hull) {
    const auto& p = hull.control;
    const auto middle = [](Point a, Point b) { return (a + b) * 0.5; };
    const Point a = middle(p[0], p[1]);
    const Point b = middle(p[1], p[2]);
    const Point c = middle(p[2], p[3]);
    const Point ab = middle(a, b);
    const Point bc = middle(b, c);
    const Point half = middle(ab, bc);
    const double t = (hull.from + hull.to) / 2;
    return {CubicHull{{p[0], a, ab, half}, hull.from, t},
            CubicHull{{half, bc, c, p[3]}, t, hull.to}};
}

bool advances(const CubicHull& hull) {
    const auto& p = hull.control;
    const std::array legs{p[1] - p[0], p[2] - p[1], p[3] - p[2]};
    return dot(legs[0], legs[1]) > 0 && dot(legs[1], legs[2]) > 0 && dot(legs[0], legs[2]) > 0;
}

/// Gap between what two hulls cover of a line along `axis`, mm; negative where they overlap.
double gap_along(Point axis, const CubicHull& a, const CubicHull& b) {
    const auto range = [&](const CubicHull& hull) {
        double low = std::numeric_limits<double>::max();
        double high = std::numeric_limits<double>::lowest();
        for (const Point& p : hull.control) {
            const double along = dot(axis, p);
            low = std::min(low, along);
            high = std::max(high, along);
        }
        return std::array{low, high};
    };
    const auto first = range(a);
    const auto second = range(b);
    return std::max(first[0] - second[1], second[0] - first[1]);
}

/// Whether a straight line along or across one of the chords keeps two hulls apart.
bool apart(const CubicHull& a, const CubicHull& b) {
    for (const CubicHull& hull : {a, b}) {
        const Point chord = hull.control[3] - hull.control[0];
        if (norm(chord) > 0) {
            const Point along = chord * (1 / norm(chord));
            if (gap_along(left_of(along), a, b) > kCrossing || gap_along(along, a, b) > kCrossing) {
                return true;
            }
        }
    }
    return false;
}

/// Looks for meetings of two pieces; where the whole chain ends in the point in which it begins,
/// that point is none.
struct Search {
    Point start;
    Point end;

    [[nodiscard]] bool closing(const CubicHull& a, const CubicHull& b) const {
        // Two hulls that may just touch, each no larger than kCrossing.
        constexpr double kNear = 3 * kCrossing;
        return distance(a.control[0], start) < kNear && distance(b.control[3], end) < kNear;
    }

    [[nodiscard]] std::optional<CurveCrossing> operator()(const CubicHull& a,
                                                         const CubicHull& b) const {
        if (apart(a, b)) {
            return std::nullopt;
        }
        const double size_a = size(a);
        const double size_b = size(b);
        if (std::max(size_a, size_b) <= kCrossing) {
            return closing(a, b)
                       ? std::nullopt
                       : std::optional(CurveCrossing{(a.from + a.to) / 2, (b.from + b.to) / 2});
        }
        for (const CubicHull& half : halves(size_a >= size_b ? a : b)) {
            if (const auto found = size_a >= size_b ? (*this)(half, b) : (*this)(a, half)) {
                return found;
            }
        }
        return std::nullopt;
    }
};

}  // namespace

void append_advancing(std::vector<CubicHull>& hulls, const CubicHull& hull) {
    if (advances(hull) || size(hull) <= kCrossing) {
        hulls.push_back(hull);
        return;
    }
    for (const CubicHull& half : halves(hull)) {
        append_advancing(hulls, half);
    }
}

std::optional<CurveCrossing> crossing(const std::vector<CubicHull>& chain) {
    const Search search{chain.front().control[0], chain.back().control[3]};
    for (std::size_t i = 0; i < chain.size(); ++i) {
        for (std::size_t j = i + 2; j < chain.size(); ++j) {
            if (const auto found = search(chain[i], chain[j])) {
                return found;
            }
        }
    }
    return std::nullopt;
}

}  // namespace bowfront
