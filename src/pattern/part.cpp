#include "bowfront/pattern/part.hpp"

#include <numbers>

#include "bowfront/base/contract.hpp"

namespace bowfront {
namespace {

double volume_of(const Bore& bore) {
    return std::numbers::pi / 4 * bore.diameter * bore.diameter * bore.depth;
}

double volume_of(const Step& step) { return step.area.area() * step.height; }

}  // namespace

double volume(const Body& body) {
    double total = body.section.area() * body.height;
    for (const Recess& recess : body.recesses) {
        total -= recess.area.area() * recess.depth;
    }
    for (const auto* const bores : {&body.bores, &body.back_bores}) {
        for (const Bore& bore : *bores) {
            total -= volume_of(bore);
        }
    }
    for (const Step& step : body.steps) {
        total += volume_of(step);
    }
    return total;
}

Point3 centroid(const Body& body) {
    const Point middle = body.section.centroid();
    // Moments are taken about the middle of the prism, so that they stay small.
    double left = body.section.area() * body.height;
    Point3 moment;
    const auto add = [&](Point at, double above, double volume) {
        const Point off = at - middle;
        left += volume;
        moment = {moment.x + off.x * volume, moment.y + off.y * volume, moment.z + above * volume};
    };
    // From the middle of the prism to the middle of what starts at one of its faces, and goes into
    // it by a depth.
    const auto above = [&](Face face, double depth) {
        const double off = (body.height - depth) / 2;
        return face == Face::high ? off : -off;
    };
    for (const Recess& recess : body.recesses) {
        add(recess.area.centroid(), above(body.face, recess.depth),
            -recess.area.area() * recess.depth);
    }
    for (const Bore& bore : body.bores) {
        add(bore.centre, above(body.face, bore.depth), -volume_of(bore));
    }
    for (const Bore& bore : body.back_bores) {
        add(bore.centre, -above(body.face, bore.depth), -volume_of(bore));
    }
    for (const Step& step : body.steps) {
        add(step.area.centroid(), above(step.face, -step.height), volume_of(step));
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
