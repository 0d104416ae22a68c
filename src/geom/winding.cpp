#include "geom/winding.hpp"

#include "geom/arc_view.hpp"

namespace bowfront {
namespace {

/// Whether `p` lies left of the chord. A point on it counts as moved a little to the right, and
/// less than that upwards, as the half-open comparison of heights in `winding` has it: so chords
/// and what bulges over them agree about every point.
bool left_of_chord(Point chord, Point p) {
    const double side = cross(chord, p);
    if (side != 0) {
        return side > 0;
    }
    return chord.y < 0 || (chord.y == 0 && chord.x > 0);
}

}  // namespace

int winding(std::span<const Segment> closed, Point p) {
    int turns = 0;
    for (const Segment& segment : closed) {
        const bool left = left_of_chord(segment.to - segment.from, p - segment.from);
        if (segment.from.y <= p.y && p.y < segment.to.y && left) {
            ++turns;
        } else if (segment.to.y <= p.y && p.y < segment.from.y && !left) {
            --turns;
        }
        // An arc of up to half a turn adds the part of its disc that lies beyond the chord.
        const bool beyond = segment.bulge > 0 ? !left : segment.bulge < 0 && left;
        if (beyond && ArcView(segment, p).height_over_circle() < 0) {
            turns += segment.bulge > 0 ? 1 : -1;
        }
    }
    return turns;
}

}  // namespace bowfront
