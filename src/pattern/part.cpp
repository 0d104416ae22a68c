#include "bowfront/pattern/part.hpp"

#include <numbers>

namespace bowfront {

double volume(const Body& body) {
    double total = body.section.area() * body.height;
    for (const Recess& recess : body.recesses) {
        total -= recess.area.area() * recess.depth;
    }
    for (const auto* const bores : {&body.bores, &body.back_bores}) {
        for (const Bore& bore : *bores) {
            total -= std::numbers::pi / 4 * bore.diameter * bore.diameter * bore.depth;
        }
    }
    for (const Step& step : body.steps) {
        total += step.area.area() * step.height;
    }
    return total;
}

}  // namespace bowfront
