#include "bowfront/fit/post_joint.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>
#include <numbers>

#include "bowfront/base/contract.hpp"

namespace bowfront::fit {
namespace {

constexpr double kStep = 0.5;  // mm; what a rule shows
constexpr int kStride = 4;     // steps of the first search
constexpr double kDowelShare = 0.25;
constexpr double kDowels[] = {10, 8, 6};  // mm

// Where one tenon or dowel could stand.
struct Spot {
    Point centre;
    Contour outline;
    double clear = 0;
    double shoulder = 0;

    // How far it is inside its limits, the tighter one; negative where it breaks one.
    [[nodiscard]] double spare(const Case& c) const {
        return std::min(clear - c.webs.web.value, shoulder - kLeastShoulder);
    }
};

// A square with its corners rounded as a cutter leaves them in a mortise.
Contour rounded(Point centre, Point along, double side, double radius) {
    const double a = side / 2;
    const double r = std::min(radius, a / 2);
    const Point across = left_of(along);
    const auto at = [&](double u, double v) { return centre + along * u + across * v; };
    const double quarter = std::tan(std::numbers::pi / 8);
    const Segment all[] = {
        {at(-a + r, -a), at(a - r, -a), 0}, {at(a - r, -a), at(a, -a + r), quarter},
        {at(a, -a + r), at(a, a - r), 0},   {at(a, a - r), at(a - r, a), quarter},
        {at(a - r, a), at(-a + r, a), 0},   {at(-a + r, a), at(-a, a - r), quarter},
        {at(-a, a - r), at(-a, -a + r), 0}, {at(-a, -a + r), at(-a + r, -a), quarter}};
    return Contour::from_segments(all);
}

Contour shape(const JointSite& site, Point centre, Point along, double size) {
    if (site.c.frame.post.joint.value == PostJoint::dowel) {
        return Contour::circle(centre, size / 2);
    }
    return rounded(centre, along, size, site.c.cutter.diameter.value / 2);
}

Spot spot(const JointSite& site, Point centre, Point along, double size) {
    const Post& post = site.c.frame.post;
    Spot found{centre, shape(site, centre, along, size), post.width.value + post.depth.value, 0};
    if (where(site.section, centre) != Side::inside) {
        found.clear = 0;
        return found;
    }
    found.shoulder = gap(found.outline, site.section.outer);
    for (const Contour& hole : site.section.holes) {
        found.shoulder = std::min(found.shoulder, gap(found.outline, hole));
    }
    for (const Contour& recess : site.recesses) {
        const bool within = where(recess, centre) != Side::outside;
        found.clear = std::min(found.clear, within ? 0 : gap(found.outline, recess));
    }
    return found;
}

// The bisector of a corner's two sides: towards the inside of the case, and square to that.
struct Bisector {
    double angle = 0;  // of the way inside

    explicit Bisector(const CornerDirections& directions) {
        const double open =
            std::remainder(directions.previous - directions.next, 2 * std::numbers::pi);
        // Counter-clockwise from above: the inside is to the left of the side that starts here.
        angle = directions.next + (open > 0 ? open : open + 2 * std::numbers::pi) / 2;
    }
};

// The clearest place on the bisector between two distances from the corner, in whole steps.
Spot best(const JointSite& site, int from, int to, double turn, double size) {
    const Bisector bisector(site.directions);
    const Point inside = direction(bisector.angle);
    const Point along = direction(bisector.angle + turn);
    const auto at = [&](int step) {
        return spot(site, site.corner + inside * (step * kStep), along, size);
    };
    int where_best = from;
    Spot best = at(from);
    const auto look = [&](int first, int last, int stride) {
        for (int i = first; i <= last; i += stride) {
            Spot next = at(i);
            if (next.spare(site.c) > best.spare(site.c)) {
                best = std::move(next);
                where_best = i;
            }
        }
    };
    // In strides first, then every step about the best of them.
    look(from + kStride, to, kStride);
    const int middle = where_best;
    look(std::max(from, middle - kStride + 1), std::min(to, middle + kStride - 1), 1);
    return best;
}

std::vector<Spot> spots(const JointSite& site, double size) {
    const Post& post = site.c.frame.post;
    const int reach = static_cast<int>(std::ceil((post.width.value + post.depth.value) / kStep));
    if (post.joint.value == PostJoint::dowel) {
        return {best(site, -reach, -1, 0, size), best(site, 1, reach, 0, size)};
    }
    Spot square = best(site, -reach, reach, std::numbers::pi / 4, size);
    Spot along = best(site, -reach, reach, 0, size);
    return {along.spare(site.c) > square.spare(site.c) ? along : square};
}

bool has_room(const JointSite& site, const std::vector<Spot>& all) {
    return std::all_of(all.begin(), all.end(),
                       [&](const Spot& each) { return each.spare(site.c) >= 0; });
}

// The largest size under one that has no room: a dowel of stock, a tenon in whole steps; 0 for none.
double fitting_size(const JointSite& site, double size) {
    if (site.c.frame.post.joint.value == PostJoint::dowel) {
        const auto* const fits =
            std::find_if(std::begin(kDowels), std::end(kDowels), [&](double each) {
                return each < size && has_room(site, spots(site, each));
            });
        return fits == std::end(kDowels) ? 0 : *fits;
    }
    // The larger a tenon is, the less room it has: halving finds where that ends.
    int fits = 0;
    int too_large = static_cast<int>(std::ceil(size / kStep));
    while (too_large - fits > 1) {
        const int middle = (fits + too_large) / 2;
        (has_room(site, spots(site, middle * kStep)) ? fits : too_large) = middle;
    }
    return fits * kStep;
}

}  // namespace

double joint_size(const Post& post) noexcept {
    if (post.joint_size) {
        return post.joint_size->value;
    }
    if (post.joint.value != PostJoint::dowel) {
        return post.width.value * kTenonShare;
    }
    for (const double diameter : kDowels) {
        if (diameter <= post.width.value * kDowelShare) {
            return diameter;
        }
    }
    return kDowels[2];
}

PostJointLayout post_joint(const JointSite& site, double size) {
    BOWFRONT_EXPECTS(site.c.frame.post.joint.value != PostJoint::butt && size > 0);
    PostJointLayout joint;
    joint.kind = site.c.frame.post.joint.value;
    joint.size = size;
    joint.clear = joint.shoulder = std::numeric_limits<double>::infinity();
    const std::vector<Spot> found = spots(site, joint.size);
    for (const Spot& each : found) {
        joint.centres.push_back(each.centre);
        joint.outlines.push_back(each.outline);
        joint.clear = std::min(joint.clear, each.clear);
        joint.shoulder = std::min(joint.shoulder, each.shoulder);
    }
    joint.fitting = has_room(site, found) ? size : fitting_size(site, size);
    return joint;
}

}  // namespace bowfront::fit
