#include "bowfront/pattern/part.hpp"

#include <numbers>

#include "bowfront/base/contract.hpp"

namespace bowfront {
namespace {

double volume_of(const Bore& bore) {
    return std::numbers::pi / 4 * bore.diameter * bore.diameter * bore.depth;
}

}  // namespace

double volume(const Body& body) {
    double total = body.section.area() * body.height;
    for (const Recess& recess : body.recesses) {
        total -= recess.area.area() * recess.depth;
    }
    for (const Bore& bore : body.bores) {
        total -= volume_of(bore);
    }
    return total;
}

Point3 centroid(const Body& body) {
    const Point middle = body.section.centroid();
    // Moments are taken about the middle of the prism, so that they stay small.
    double left = body.section.area() * body.height;
    Point3 moment;
    const auto cut_away = [&](Point at, double depth, double volume) {
        const double above = (body.height - depth) / 2;
        const double z = body.face == Face::high ? above : -above;
        const Point off = at - middle;
        left -= volume;
        moment = {moment.x - off.x * volume, moment.y - off.y * volume, moment.z - z * volume};
    };
    for (const Recess& recess : body.recesses) {
        cut_away(recess.area.centroid(), recess.depth, recess.area.area() * recess.depth);
    }
    for (const Bore& bore : body.bores) {
        cut_away(bore.centre, bore.depth, volume_of(bore));
    }
    BOWFRONT_EXPECTS(left > 0);
    return {middle.x + moment.x / left, middle.y + moment.y / left,
            body.height / 2 + moment.z / left};
}

Point3 placed(const Placement& placement, Point3 local) {
    const auto& [origin, x, z] = placement;
    const Point3 y{z.y * x.z - z.z * x.y, z.z * x.x - z.x * x.z, z.x * x.y - z.y * x.x};
    return {origin.x + local.x * x.x + local.y * y.x + local.z * z.x,
            origin.y + local.x * x.y + local.y * y.y + local.z * z.y,
            origin.z + local.x * x.z + local.y * y.z + local.z * z.z};
}

}  // namespace bowfront
