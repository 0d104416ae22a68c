#include "body_pattern.hpp"

namespace bowfront::pattern {

Pattern pattern_of(const Body& body) {
    Pattern pattern{body.section, body.recesses, body.bores, {}, {}, body.height};
    if (body.face == Face::low) {
        // The cutter sees the low face from below: mirrored.
        const Motion mirror{0, {}, true};
        pattern.outline = pattern.outline.moved(mirror);
        for (Recess& recess : pattern.recesses) {
            recess.area = recess.area.moved(mirror);
        }
        for (Bore& bore : pattern.bores) {
            bore.centre = mirror(bore.centre);
        }
    }
    return pattern;
}

}  // namespace bowfront::pattern
