#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <vector>

#include "bowfront/base/contract.hpp"
#include "bowfront/fit/swing.hpp"

namespace bowfront::fit {
namespace {

constexpr int kPlaces = 16;    // along half of the arc
constexpr int kTilts = 128;
constexpr double kSteepest = 1.5;  // rad

// A corner of a section: where it stands when tilted, and how far its face stands off the
// mid-surface and its place stands back when upright.
struct Corner {
    double y;
    double z;
    double off;
    double back;
};

Corner turned(double off, double back, double z, double tilt) {
    return {back * std::cos(tilt) + z * std::sin(tilt), z * std::cos(tilt) - back * std::sin(tilt),
            off, back};
}

// A point in the groove: how far it stands off the groove's middle, and how much of a shift of the
// whole pane along Y comes square to the groove there.
struct Offset {
    double off;
    double share;
};

// The groove that takes all points, the pane shifted to best advantage: the least, over all
// shifts, of twice the furthest offset, which falls and then rises.
double narrowest(const std::vector<Offset>& points, double reach) {
    const auto needed = [&](double shift) {
        double most = 0;
        for (const Offset& point : points) {
            most = std::max(most, std::abs(point.off + shift * point.share));
        }
        return 2 * most;
    };
    double low = -reach;
    double high = reach;
    constexpr int kThirds = 64;
    for (int i = 0; i < kThirds; ++i) {
        const double a = low + (high - low) / 3;
        const double b = high - (high - low) / 3;
        const bool falls = needed(a) > needed(b);
        (falls ? low : high) = falls ? a : b;
    }
    return needed((low + high) / 2);
}

// A section square to the arc, along the pane's height, at an angle from the crown.
class Section {
  public:
    Section(const Swing& swing, double angle, double tilt) : square_(std::cos(angle)) {
        const double middle = swing.radius * (1 - square_);
        const double half = swing.thickness / 2;
        // How far the mid-surface stands off the middle of a groove of another radius, the crowns
        // in one place.
        const double apart =
            swing.groove_radius > 0
                ? swing.groove_radius - std::hypot(swing.radius * std::sin(angle),
                                                   swing.groove_radius - middle)
                : 0;
        const auto corner = [&](double off, double z) {
            Corner at = turned(off, middle + off * square_, z, tilt);
            at.off += apart;
            return at;
        };
        corners_ = {corner(-half, 0), corner(half, 0), corner(half, swing.height),
                    corner(-half, swing.height)};
    }
    [[nodiscard]] double lowest() const { return std::min(corners_[0].z, corners_[1].z); }
    [[nodiscard]] double highest() const { return std::max(corners_[2].z, corners_[3].z); }
    // What stands above a level: a point stands off the groove's middle as its face does and by
    // its share of how far it has moved.
    void take(double level, std::vector<Offset>& points) const {
        for (std::size_t i = 0; i < corners_.size(); ++i) {
            const Corner& a = corners_[i];
            const Corner& b = corners_[(i + 1) % corners_.size()];
            const double from = a.off + (a.y - a.back) * square_;
            const double to = b.off + (b.y - b.back) * square_;
            if (a.z >= level) {
                points.push_back({from, square_});
            }
            if ((a.z < level) != (b.z < level)) {
                points.push_back({from + (level - a.z) / (b.z - a.z) * (to - from), square_});
            }
        }
    }

  private:
    double square_;
    std::array<Corner, 4> corners_{};
};

std::vector<Section> sections(const Swing& swing, double tilt) {
    std::vector<Section> all;
    const int places = swing.radius > 0 ? kPlaces : 0;
    for (int i = 0; i <= places; ++i) {
        const double angle = places > 0 ? swing.sweep / 2 * i / places : 0;
        all.emplace_back(swing, angle, tilt);
    }
    return all;
}

// The position that takes most, tried at many tilts and then closed in on between the neighbours of
// the best: flat at its top, so thirds of 0.03 rad to 1e-8 rad leave nothing that counts.
template <class Measure>
SwingPosition most_over_tilts(const Swing& swing, Measure measure) {
    SwingPosition best = swing_position(swing, 0);
    int at = 0;
    for (int i = 1; i <= kTilts; ++i) {
        const SwingPosition now = swing_position(swing, kSteepest * i / kTilts);
        if (measure(now) > measure(best)) {
            best = now;
            at = i;
        }
        if (now.depth <= 0) {
            break;  // out of the groove from here on
        }
    }
    double low = kSteepest * std::max(0, at - 1) / kTilts;
    double high = kSteepest * std::min(kTilts, at + 1) / kTilts;
    constexpr int kThirds = 36;
    for (int i = 0; i < kThirds; ++i) {
        const SwingPosition a = swing_position(swing, low + (high - low) / 3);
        const SwingPosition b = swing_position(swing, high - (high - low) / 3);
        const bool rises = measure(a) < measure(b);
        (rises ? low : high) = rises ? a.tilt : b.tilt;
        for (const SwingPosition& now : {a, b}) {
            if (measure(now) > measure(best)) {
                best = now;
            }
        }
    }
    return best;
}

}  // namespace

SwingPosition swing_position(const Swing& swing, double tilt) {
    BOWFRONT_EXPECTS(tilt >= 0 && tilt < std::numbers::pi / 2);
    // A pane of half a turn or more has sections that run along its own face.
    BOWFRONT_EXPECTS(swing.sweep >= 0 && swing.sweep < std::numbers::pi);
    const std::vector<Section> all = sections(swing, tilt);
    double lowest = HUGE_VAL;
    double highest = -HUGE_VAL;
    for (const Section& section : all) {
        lowest = std::min(lowest, section.lowest());
        highest = std::max(highest, section.highest());
    }
    const double mouth = lowest + swing.opening;
    SwingPosition position{tilt, 0, highest - mouth};
    if (position.depth > 0) {
        std::vector<Offset> points;
        for (const Section& section : all) {
            section.take(mouth, points);
        }
        position.width = narrowest(points, 2 * (swing.height + swing.radius));
    }
    return position;
}

SwingExtremes swing_extremes(const Swing& swing) {
    // Out of the groove nothing is taken of it.
    const auto width = [](const SwingPosition& at) { return at.depth > 0 ? at.width : 0; };
    const auto depth = [](const SwingPosition& at) { return at.depth; };
    return {most_over_tilts(swing, width), most_over_tilts(swing, depth)};
}

}  // namespace bowfront::fit
