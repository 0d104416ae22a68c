#include "geom/meetings.hpp"

#include <algorithm>
#include <utility>

#include "bowfront/geom/region.hpp"

namespace bowfront {
namespace {

/// An endless straight.
struct Line {
    Point through;
    Point along;  ///< of length 1
};

Line line_of(const Segment& straight) {
    const Point chord = straight.to - straight.from;
    return {straight.from, chord * (1 / norm(chord))};
}

std::vector<Point> straight_crossing(const Segment& a, const Segment& b) {
    const Point u = a.to - a.from;
    const Point v = b.to - b.from;
    const double turn = cross(u, v);
    if (turn == 0) {
        return {};
    }
    const double share = cross(b.from - a.from, v) / turn;
    return {a.from + u * share};
}

/// A line and the circle of an arc. With the arc's chord along X and the line given from its foot
/// under the middle of the chord, the circle is a quadratic in the distance s along the line:
/// A·s² + B·s + C = 0. Its leading factor is the bulge, so that for ever flatter arcs one root
/// goes over into the crossing of two straights and the other to infinity.
std::vector<Point> circle_crossings(const Line& line, const Segment& arc, double reach) {
    const double chord = distance(arc.from, arc.to);
    const double bulge = arc.bulge;
    const double rise = chord * (1 - bulge * bulge);
    const Point axis = (arc.to - arc.from) * (1 / chord);
    const Point middle = (arc.from + arc.to) * 0.5;
    const Point to_foot = left_of(line.along) * cross(line.along, line.through - middle);
    const double a = 4 * bulge;
    const double b = -2 * rise * cross(axis, line.along);
    const double c =
        a * (dot(to_foot, to_foot) - chord * chord / 4) - 2 * rise * cross(axis, to_foot);
    const double discriminant = b * b - 4 * a * c;
    const auto point = [&](double s) { return middle + to_foot + line.along * s; };
    // How deep the line cuts into the circle, or how far it passes by, is the quadratic's extreme
    // over its slope across the circle, 2·chord·(1 + bulge²).
    if (std::abs(discriminant) <= reach * 8 * std::abs(a) * chord * (1 + bulge * bulge)) {
        return {point(-b / (2 * a))};
    }
    if (discriminant < 0) {
        return {};
    }
    const double q = -(b + std::copysign(std::sqrt(discriminant), b)) / 2;
    if (q == 0) {
        return {point(0)};
    }
    return {point(q / a), point(c / q)};
}

/// @param a of the smaller radius
std::vector<Point> arc_crossings(const Segment& a, const Segment& b, double reach) {
    const Point centre = a.centre();
    const Point apart = b.centre() - centre;
    const double spread = norm(apart);
    if (spread <= reach) {
        return {};
    }
    const Point toward = apart * (1 / spread);
    const double ra = a.radius();
    const double rb = b.radius();
    if (const double clear = spread - (ra + rb); std::abs(clear) <= reach) {
        return {centre + toward * (ra + clear / 2)};
    } else if (clear > 0) {
        return {};
    }
    if (const double clear = (rb - ra) - spread; std::abs(clear) <= reach) {
        return {centre - toward * ra};
    } else if (clear > 0) {
        return {};
    }
    // The line through both crossings, from the difference of the two circles' equations. It runs
    // along the larger circle the more, the larger that is, but crosses the smaller one well.
    const double along = (spread + (ra - rb) * (ra + rb) / spread) / 2;
    return circle_crossings({centre + toward * along, left_of(toward)}, a, 0);
}

std::vector<Point> crossings(const Segment& a, const Segment& b, double reach) {
    if (a.straight() && b.straight()) {
        return straight_crossing(a, b);
    }
    if (a.straight()) {
        return circle_crossings(line_of(a), b, reach);
    }
    if (b.straight()) {
        return circle_crossings(line_of(b), a, reach);
    }
    return a.radius() <= b.radius() ? arc_crossings(a, b, reach) : arc_crossings(b, a, reach);
}

/// Meeting points, each once, by where they lie along one of the segments.
class Meetings {
  public:
    Meetings(const Segment& a, const Segment& b, double reach) : a_(a), b_(b), reach_(reach) {}

    void add(Point p) {
        const auto same = [&](const Found& other) { return distance(other.at, p) <= reach_; };
        if (near(a_, p) && near(b_, p) && std::ranges::none_of(found_, same)) {
            found_.push_back({a_.nearest(p), p});
        }
    }

    void sort() {
        std::ranges::sort(found_, {}, [](const Found& found) { return found.share; });
    }

    /// Marks the stretches between neighbouring points over which the segments run together.
    void find_shared_stretches() {
        for (std::size_t i = 1; i < found_.size(); ++i) {
            const double from = found_[i - 1].share;
            const double to = found_[i].share;
            if (near(b_, a_.at((from + to) / 2))) {
                shared_.emplace_back(from, to);
            }
        }
    }

    [[nodiscard]] bool within_shared_stretch(Point p) const {
        const double share = a_.nearest(p);
        return std::ranges::any_of(shared_, [&](const auto& stretch) {
            return stretch.first < share && share < stretch.second;
        });
    }

    [[nodiscard]] std::vector<Point> points() const {
        std::vector<Point> all;
        all.reserve(found_.size());
        for (const Found& found : found_) {
            all.push_back(found.at);
        }
        return all;
    }

  private:
    struct Found {
        double share;
        Point at;
    };

    [[nodiscard]] bool near(const Segment& segment, Point p) const {
        return segment.distance_to(p) <= reach_;
    }

    const Segment& a_;
    const Segment& b_;
    double reach_;
    std::vector<Found> found_;
    std::vector<std::pair<double, double>> shared_;
};

}  // namespace

std::vector<Point> meetings_within(const Segment& a, const Segment& b, double reach) {
    if (a.from == a.to || b.from == b.to || !within(a.box(), b.box(), reach)) {
        return {};
    }
    Meetings found(a, b, reach);
    // Ends go first: where an end and a crossing are one point, the end's coordinates are kept.
    for (const Point end : {a.from, a.to, b.from, b.to}) {
        found.add(end);
    }
    found.sort();
    found.find_shared_stretches();
    for (const Point crossing : crossings(a, b, reach)) {
        if (!found.within_shared_stretch(crossing)) {
            found.add(crossing);
        }
    }
    found.sort();
    return found.points();
}

std::vector<Point> meetings(const Segment& a, const Segment& b) {
    return meetings_within(a, b, kJoint);
}

}  // namespace bowfront
