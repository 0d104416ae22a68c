#include "bowfront/geom/offset.hpp"

#include <cmath>
#include <numbers>
#include <optional>

#include "geom/overlay.hpp"

namespace bowfront {
namespace {

/// What the distance sweeps over beside the edges of areas, on one side of them. Its pieces have
/// their edges in common and no gaps between them.
class Swept {
  public:
    /// @param left  how far to the left of the edges, mm; to the right where it is under 0; not 0
    Swept(double left, OffsetCorner corners) : left_(left), corners_(corners) {}

    /// @param outline  with the area on its left
    void add(const Contour& outline) {
        const std::vector<Segment> segments = outline.segments();
        for (std::size_t i = 0; i < segments.size(); ++i) {
            add_band(segments[i]);
            const Segment& next = segments[(i + 1) % segments.size()];
            add_corner(next.from, segments[i].tangent(1), next.tangent(0), outline);
        }
    }

    [[nodiscard]] const std::vector<Region>& pieces() const { return pieces_; }

  private:
    [[nodiscard]] Point off(Point at, Point tangent) const { return at + left_of(tangent) * left_; }

    void add_piece(std::vector<Vertex> vertices) {
        pieces_.push_back({Contour(std::move(vertices)).counter_clockwise(), {}});
    }

    void add_band(const Segment& s) {
        const bool towards_centre = s.bulge * left_ > 0;
        if (towards_centre && s.radius() - std::abs(left_) <= kSliver) {
            // Past its centre an arc is nearer at its ends: what it sweeps over itself is its
            // sector.
            add_piece({{s.from, s.bulge}, {s.to}, {s.centre()}});
            return;
        }
        add_piece({{s.from, s.bulge},
                   {s.to},
                   {off(s.to, s.tangent(1)), -s.bulge},
                   {off(s.from, s.tangent(0))}});
    }

    /// The angle that a corner's sector opens through, rad; 0 where the bands overlap instead.
    [[nodiscard]] double opening(Point corner, Point arriving, Point leaving,
                                 const Contour& outline) const {
        // Rounding of tangents: a cusp turns through half a turn, to the left or to the right.
        constexpr double kCusp = 1e-9;
        const double turn = std::atan2(cross(arriving, leaving), dot(arriving, leaving));
        if (std::numbers::pi - std::abs(turn) > kCusp) {
            return left_ < 0 ? turn : -turn;
        }
        // Past the tip of a spike lies what is outside, past that of a notch the area itself.
        constexpr double kBeyond = 1e-3;
        const bool spike = where(outline, corner + arriving * kBeyond) == Side::outside;
        return spike == (left_ < 0) ? std::numbers::pi : 0;
    }

    void add_corner(Point corner, Point arriving, Point leaving, const Contour& outline) {
        const double angle = opening(corner, arriving, leaving, outline);
        const double distance = std::abs(left_);
        if (angle * distance <= kSliver) {
            return;
        }
        const Point from = off(corner, arriving);
        const Point to = off(corner, leaving);
        const double sense = left_ < 0 ? 1 : -1;
        const double reach = 1 / std::cos(angle / 2);
        if (corners_ == OffsetCorner::mitre && reach > 0 && reach <= kMostMitre) {
            const Point tip = from + arriving * (distance * std::tan(angle / 2));
            add_piece({{corner}, {from}, {tip}, {to}});
        } else {
            add_piece({{corner}, {from, sense * std::tan(angle / 4)}, {to}});
        }
    }

    double left_;
    OffsetCorner corners_;
    std::vector<Region> pieces_;
};

std::vector<Region> joined(const std::vector<Region>& a, const std::vector<Region>& b) {
    std::vector<Region> all = a;
    all.insert(all.end(), b.begin(), b.end());
    return unite(all);
}

}  // namespace

std::vector<Region> offset(const std::vector<Region>& areas, double by, OffsetCorner corners) {
    const std::vector<Region> whole = unite(areas);
    if (std::abs(by) <= kSliver) {
        return whole;
    }
    // Areas have their outer outlines counter-clockwise and their holes clockwise: outside is
    // right.
    Swept swept(-by, corners);
    for (const Region& area : whole) {
        swept.add(area.outer);
        for (const Contour& hole : area.holes) {
            swept.add(hole);
        }
    }
    return by > 0 ? joined(whole, swept.pieces()) : subtract(whole, swept.pieces());
}

std::vector<Region> offset(const Contour& outline, double by, OffsetCorner corners) {
    return offset({{outline.counter_clockwise(), {}}}, by, corners);
}

}  // namespace bowfront
