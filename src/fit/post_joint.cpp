#include "bowfront/fit/post_joint.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "bowfront/base/contract.hpp"

namespace bowfront::fit {
namespace {

constexpr double kStep = 0.5;  // mm; what a rule shows
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

// A rectangle with its corners rounded as a cutter leaves them in a mortise.
Contour rounded(Point centre, Point along, double length, double width, double radius) {
    const double r = std::min({radius, length / 2, width / 2});
    const Point across = left_of(along);
    const auto at = [&](double u, double v) { return centre + along * u + across * v; };
    const double a = length / 2;
    const double b = width / 2;
    const double quarter = std::tan(std::numbers::pi / 8);
    const Segment all[] = {
        {at(-a + r, -b), at(a - r, -b), 0}, {at(a - r, -b), at(a, -b + r), quarter},
        {at(a, -b + r), at(a, b - r), 0},   {at(a, b - r), at(a - r, b), quarter},
        {at(a - r, b), at(-a + r, b), 0},   {at(-a + r, b), at(-a, b - r), quarter},
        {at(-a, b - r), at(-a, -b + r), 0}, {at(-a, -b + r), at(-a + r, -b), quarter}};
    return Contour::from_segments(all);
}

Contour shape(const JointSite& site, Point centre, double size) {
    const Post& post = site.c.frame.post;
    if (post.joint.value == PostJoint::dowel) {
        return Contour::circle(centre, size / 2);
    }
    const double other = size * post.depth.value / post.width.value;
    return rounded(centre, direction(site.directions.next), size, other,
                   site.c.cutter.diameter.value / 2);
}

Spot spot(const JointSite& site, Point centre, double size) {
    const Post& post = site.c.frame.post;
    Spot found{centre, shape(site, centre, size), post.width.value + post.depth.value, 0};
    for (const Contour& recess : site.recesses) {
        const bool within = where(recess, centre) != Side::outside;
        found.clear = std::min(found.clear, within ? 0 : gap(found.outline, recess));
    }
    if (where(site.section, centre) == Side::inside) {
        found.shoulder = gap(found.outline, site.section.outer);
        for (const Contour& hole : site.section.holes) {
            found.shoulder = std::min(found.shoulder, gap(found.outline, hole));
        }
    }
    return found;
}

// The clearest place on the bisector between two distances from the corner, in whole steps.
Spot best(const JointSite& site, Point inside, int from, int to, double size) {
    Spot best = spot(site, site.corner + inside * (from * kStep), size);
    for (int i = from + 1; i <= to; ++i) {
        Spot next = spot(site, site.corner + inside * (i * kStep), size);
        if (next.spare(site.c) > best.spare(site.c)) {
            best = std::move(next);
        }
    }
    return best;
}

// Towards the inside of the case: between the two sides, or square to them where they run on.
Point towards_inside(const CornerDirections& directions) {
    const double open = std::remainder(directions.previous - directions.next, 2 * std::numbers::pi);
    // Counter-clockwise from above: the inside is to the left of the side that starts here.
    return direction(directions.next + (open > 0 ? open : open + 2 * std::numbers::pi) / 2);
}

std::vector<Spot> spots(const JointSite& site, double size) {
    const Post& post = site.c.frame.post;
    const int reach = static_cast<int>(std::ceil((post.width.value + post.depth.value) / kStep));
    const Point inside = towards_inside(site.directions);
    if (post.joint.value == PostJoint::tenon) {
        return {best(site, inside, -reach, reach, size)};
    }
    return {best(site, inside, -reach, -1, size), best(site, inside, 1, reach, size)};
}

bool has_room(const JointSite& site, const std::vector<Spot>& all) {
    return std::all_of(all.begin(), all.end(),
                       [&](const Spot& each) { return each.spare(site.c) >= 0; });
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

PostJointLayout post_joint(const JointSite& site) {
    const Post& post = site.c.frame.post;
    BOWFRONT_EXPECTS(post.joint.value != PostJoint::butt);
    PostJointLayout joint;
    joint.kind = post.joint.value;
    joint.size = joint_size(post);
    joint.clear = joint.shoulder = std::numeric_limits<double>::infinity();
    const std::vector<Spot> found = spots(site, joint.size);
    for (const Spot& each : found) {
        joint.centres.push_back(each.centre);
        joint.outlines.push_back(each.outline);
        joint.clear = std::min(joint.clear, each.clear);
        joint.shoulder = std::min(joint.shoulder, each.shoulder);
    }
    joint.fitting = joint.size;
    if (!has_room(site, found)) {
        joint.fitting = std::floor(joint.size / kStep) * kStep;
        while (joint.fitting > 0 && !has_room(site, spots(site, joint.fitting))) {
            joint.fitting -= kStep;
        }
    }
    return joint;
}

}  // namespace bowfront::fit
