#include <algorithm>
#include <cmath>

#include "bowfront/fit/layout.hpp"
#include "geom/biarc.hpp"

namespace bowfront::fit {
namespace {

// Stretched about the origin along X and Y, then moved.
struct Stretch {
    double along_x = 1;
    double along_y = 1;
    Point by;

    [[nodiscard]] Point operator()(Point p) const {
        return Point{p.x * along_x, p.y * along_y} + by;
    }
    // The arc through the moved ends and the moved middle: half of its sweep is the angle that it
    // turns by from one half's chord to the other's.
    [[nodiscard]] Segment operator()(const Segment& s) const {
        Segment moved{(*this)(s.from), (*this)(s.to), 0};
        if (!s.straight()) {
            const Point middle = (*this)(s.at(0.5));
            const Point first = middle - moved.from;
            const Point second = moved.to - middle;
            moved.bulge = std::tan(std::atan2(cross(first, second), dot(first, second)) / 2);
            // Half a turn that is stretched across its chord turns by a little more.
            moved.bulge = std::clamp(moved.bulge, -1.0, 1.0);
        }
        return moved;
    }
    // A line of several pieces stays as smooth as it was: in the place of each arc stand two that
    // leave and arrive along the moved tangents.
    [[nodiscard]] std::vector<Segment> line(const std::vector<Segment>& chain) const {
        std::vector<Segment> moved;
        for (const Segment& s : chain) {
            const auto pair = chain.size() > 1 && !s.straight()
                                  ? biarc((*this)(s.from), along(s.tangent(0)), (*this)(s.to),
                                          along(s.tangent(1)))
                                  : std::nullopt;
            if (pair) {
                moved.insert(moved.end(), pair->begin(), pair->end());
            } else {
                moved.push_back((*this)(s));
            }
        }
        return moved;
    }
    // A direction on the stretched plate.
    [[nodiscard]] Point along(Point tangent) const {
        const Point way{tangent.x * along_x, tangent.y * along_y};
        return way * (1 / norm(way));
    }
    [[nodiscard]] Contour operator()(const Contour& contour) const {
        std::vector<Segment> moved;
        for (const Segment& s : contour.segments()) {
            moved.push_back((*this)(s));
        }
        return Contour::from_segments(moved);
    }
    [[nodiscard]] Region operator()(const Region& region) const {
        Region moved{(*this)(region.outer), {}};
        for (const Contour& hole : region.holes) {
            moved.holes.push_back((*this)(hole));
        }
        return moved;
    }
};

PostLayout moved_post(const PostLayout& post, const Stretch& base, double growth) {
    const Point at = base(post.at);
    const Stretch about{growth, growth, at - post.at * growth};
    PostLayout moved = post;
    moved.at = at;
    moved.outline = about(post.outline);
    for (PostGroove& groove : moved.grooves) {
        groove.mouth = about(groove.mouth);
        groove.depth *= growth;
        groove.slot = about(groove.slot);
        groove.hold = about(groove.hold);
    }
    std::transform(post.section.begin(), post.section.end(), moved.section.begin(),
                   [&](const Region& region) { return about(region); });
    return moved;
}

PlateLayout moved_plate(const PlateLayout& plate, const Stretch& stretch) {
    PlateLayout moved;
    if (plate.outline) {
        moved.outline = stretch(*plate.outline);
    }
    for (const PlateGroove& groove : plate.grooves) {
        PlateGroove now{groove.side, stretch.line(groove.line), stretch.line(groove.opening),
                        stretch(groove.band), {}};
        if (groove.bead) {
            now.bead = stretch(*groove.bead);
        }
        moved.grooves.push_back(std::move(now));
    }
    return moved;
}

}  // namespace

Layout layout_in(const Layout& layout, const TimberFactors<double>& factors) {
    const Stretch base{factors.base.width, factors.base.depth, {}};
    Layout moved;
    moved.line.order = layout.line.order;
    moved.line.directions = layout.line.directions;
    for (std::size_t i = 0; i < layout.line.size(); ++i) {
        moved.line.corners.push_back(base(layout.line.corners[i]));
        moved.line.sides.push_back(base.line(layout.line.sides[i]));
        moved.posts.push_back(moved_post(layout.posts[i], base, factors.post));
    }
    moved.base = moved_plate(layout.base, base);
    moved.top = moved_plate(layout.top, {factors.top.width, factors.top.depth, {}});
    return moved;
}

}  // namespace bowfront::fit
