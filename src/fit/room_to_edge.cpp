#include "room_to_edge.hpp"

#include <algorithm>

namespace bowfront::fit {

double room_to_edge(const Contour& outline, const Contour& edge, Side wrong) {
    double past = 0;
    for (const Segment& s : outline.segments()) {
        for (const Point p : {s.from, s.at(0.5)}) {
            if (where(edge, p) == wrong) {
                past = std::max(past, distance_to_edge(edge, p));
            }
        }
    }
    return past > 0 ? -past : gap(outline, edge);
}

}  // namespace bowfront::fit
