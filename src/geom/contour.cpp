#include "bowfront/geom/contour.hpp"

#include "bowfront/base/contract.hpp"

namespace bowfront {
namespace {

/// Area and first moment of what lies between an arc and its chord, for a chord of 1: the area,
/// signed as the bulge, and its moment about the chord, positive to the left.
///
/// With x = bulge², the circular segment r²/2·(θ − sin θ) becomes bulge·Σ sₘ·xᵐ with
/// sₘ = (−1)ᵐ⁺¹/((2m−1)(2m+1)(2m+3)); its moment about the centre is chord³/12.
/// The series serves flat arcs, where the closed forms lose their digits.
struct ArcArea {
    double area = 0;
    double moment = 0;
};

ArcArea arc_area(double bulge) {
    constexpr double kSeriesBelow = 0.25;
    constexpr int kTerms = 12;  // 0.25^24/24³ is under the rounding of the first term
    const double x = bulge * bulge;
    if (std::abs(bulge) < kSeriesBelow) {
        double area = 1.0 / 3;
        double moment = 0;
        double previous = area;
        double power = 1;
        for (int m = 1; m <= kTerms; ++m) {
            const double sign = m % 2 == 1 ? 1 : -1;
            const double term = sign / ((2 * m - 1.0) * (2 * m + 1.0) * (2 * m + 3.0));
            power *= x;
            area += term * power;
            moment += (term - previous) * power;
            previous = term;
        }
        return {bulge * area, moment / 4};
    }
    const double area = (1 + x) * (1 + x) * std::atan(bulge) / (8 * x) - (1 - x) / (8 * bulge);
    return {area, area * (1 - x) / (4 * bulge) - 1.0 / 12};
}

/// Sums over an outline, taken from its first vertex: far from the origin of the plane the
/// products of coordinates would swallow the area.
struct AreaSums {
    double area = 0;
    Point moment;  ///< about `origin`
    Point origin;
};

AreaSums area_sums(const Contour& contour) {
    AreaSums sums;
    if (contour.empty()) {
        return sums;
    }
    sums.origin = contour.vertices().front().at;
    for (std::size_t i = 0; i < contour.size(); ++i) {
        const Segment segment = contour.segment(i);
        const Point a = segment.from - sums.origin;
        const Point b = segment.to - sums.origin;
        const double triangle = cross(a, b) / 2;
        sums.area += triangle;
        sums.moment = sums.moment + (a + b) * (triangle / 3);
        if (!segment.straight()) {
            const Point chord = b - a;
            const double square = dot(chord, chord);
            const ArcArea arc = arc_area(segment.bulge);
            sums.area += arc.area * square;
            sums.moment = sums.moment + (a + b) * (0.5 * arc.area * square) +
                          left_of(chord) * (arc.moment * square);
        }
    }
    return sums;
}

void append_with_arcs_split(std::vector<Vertex>& vertices, const Segment& segment) {
    if (std::abs(segment.bulge) <= 1) {
        vertices.push_back({segment.from, segment.bulge});
        return;
    }
    for (const Segment& half : {segment.part(0, 0.5), segment.part(0.5, 1)}) {
        vertices.push_back({half.from, half.bulge});
    }
}

Segment moved(const Segment& segment, const Motion& motion) {
    return {motion(segment.from), motion(segment.to),
            motion.mirrored ? -segment.bulge : segment.bulge};
}

}  // namespace

Contour Contour::from_segments(std::span<const Segment> segments) {
    std::vector<Vertex> vertices;
    for (std::size_t i = 0; i < segments.size(); ++i) {
        const Segment& next = segments[(i + 1) % segments.size()];
        BOWFRONT_EXPECTS(distance(segments[i].to, next.from) <= kJoint);
        if (segments[i].length() > kJoint) {
            append_with_arcs_split(vertices, segments[i]);
        }
    }
    BOWFRONT_EXPECTS(vertices.size() >= 2);
    return Contour(std::move(vertices));
}

Contour Contour::rectangle(Point low, Point high) {
    BOWFRONT_EXPECTS(low.x < high.x && low.y < high.y);
    return Contour({{low}, {{high.x, low.y}}, {high}, {{low.x, high.y}}});
}

Contour Contour::circle(Point centre, double radius) {
    BOWFRONT_EXPECTS(radius > 0);
    const Point across{radius, 0};
    return Contour({{centre + across, 1}, {centre - across, 1}});
}

Contour Contour::polygon(std::span<const Point> points) {
    BOWFRONT_EXPECTS(points.size() >= 3);
    std::vector<Vertex> vertices;
    vertices.reserve(points.size());
    for (const Point& point : points) {
        vertices.push_back({point});
    }
    return Contour(std::move(vertices));
}

Segment Contour::segment(std::size_t index) const {
    BOWFRONT_EXPECTS(index < size());
    const Vertex& start = vertices_[index];
    return {start.at, vertices_[(index + 1) % size()].at, start.bulge};
}

std::vector<Segment> Contour::segments() const {
    std::vector<Segment> all;
    all.reserve(size());
    for (std::size_t i = 0; i < size(); ++i) {
        all.push_back(segment(i));
    }
    return all;
}

double Contour::area() const {
    return area_sums(*this).area;
}

double Contour::perimeter() const {
    double total = 0;
    for (const Segment& segment : segments()) {
        total += segment.length();
    }
    return total;
}

Point Contour::centroid() const {
    const AreaSums sums = area_sums(*this);
    BOWFRONT_EXPECTS(sums.area != 0);
    return sums.origin + sums.moment * (1 / sums.area);
}

Box Contour::box() const {
    Box box;
    for (const Segment& segment : segments()) {
        box.add(segment.box());
    }
    return box;
}

Contour Contour::reversed() const {
    std::vector<Vertex> turned;
    turned.reserve(size());
    for (std::size_t i = 0; i < size(); ++i) {
        const std::size_t here = (size() - i) % size();
        const std::size_t before = (here + size() - 1) % size();
        turned.push_back({vertices_[here].at, -vertices_[before].bulge});
    }
    return Contour(std::move(turned));
}

Contour Contour::moved(const Motion& motion) const {
    std::vector<Vertex> there;
    there.reserve(size());
    for (const Vertex& vertex : vertices_) {
        there.push_back({motion(vertex.at), motion.mirrored ? -vertex.bulge : vertex.bulge});
    }
    return Contour(std::move(there));
}

Contour Contour::counter_clockwise() const {
    return area() < 0 ? reversed() : *this;
}

Path Path::moved(const Motion& motion) const {
    Path there;
    there.segments.reserve(segments.size());
    for (const Segment& segment : segments) {
        there.segments.push_back(bowfront::moved(segment, motion));
    }
    return there;
}

double Path::length() const {
    double total = 0;
    for (const Segment& segment : segments) {
        total += segment.length();
    }
    return total;
}

Box Path::box() const {
    Box box;
    for (const Segment& segment : segments) {
        box.add(segment.box());
    }
    return box;
}

}  // namespace bowfront
