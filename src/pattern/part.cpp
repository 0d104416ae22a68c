#include "bowfront/pattern/part.hpp"

#include <numbers>

namespace bowfront {

double volume(const Body& body) {
    double total = body.section.area() * body.height;
    for (const Recess& recess : body.recesses) {
        total -= recess.area.area() * recess.depth;
    }
    for (const Bore& bore : body.bores) {
        total -= std::numbers::pi / 4 * bore.diameter * bore.diameter * bore.depth;
    }
    return total;
}

}  // namespace bowfront
