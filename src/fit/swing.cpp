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

// The furthest offset at a shift, as the straight that it lies on.
struct Furthest {
    double off;    // at the shift
    double slope;  // over the shift
};

Furthest furthest(const std::vector<Offset>& points, double shift) {
    Furthest most{0, 0};
    for (const Offset& point : points) {
        const double off = point.off + shift * point.share;
        if (std::abs(off) > most.off) {
            most = {std::abs(off), off < 0 ? -point.share : point.share};
        }
    }
    return most;
}

// The groove that takes all points, the pane shifted to best advantage: the least, over all
// shifts, of twice the furthest offset. That is made of straights that fall and then rise: where
// those of the two ends meet lies no higher than the least, and the straight found there takes the
// place of one of them until it is the least.
double narrowest(const std::vector<Offset>& points, double reach) {
    double low = -reach;
    double high = reach;
    Furthest falling = furthest(points, low);
    Furthest rising = furthest(points, high);
    // As many steps as there are straights would do; a dozen mostly is.
    for (std::size_t i = 0; i < 2 * points.size() && falling.slope < rising.slope; ++i) {
        const double shift =
            (falling.off - falling.slope * low - rising.off + rising.slope * high) /
            (rising.slope - falling.slope);
        const double least = falling.off + falling.slope * (shift - low);
        const Furthest now = furthest(points, shift);
        constexpr double kRounding = 1e-12;  // of lengths up to some metres, mm
        if (now.off <= least + kRounding * reach) {
            return 2 * now.off;
        }
        if (now.slope < 0) {
            falling = now;
            low = shift;
        } else {
            rising = now;
            high = shift;
        }
    }
    return 2 * std::min(falling.off, rising.off);
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

// The pane at a tilt: its sections, and what of them stands in the groove.
class Tilted {
  public:
    Tilted(const Swing& swing, double tilt) : swing_(swing), tilt_(tilt), all_(sections(swing, tilt)) {
        double lowest = HUGE_VAL;
        double highest = -HUGE_VAL;
        for (const Section& section : all_) {
            lowest = std::min(lowest, section.lowest());
            highest = std::max(highest, section.highest());
        }
        mouth_ = lowest + swing.opening;
        depth_ = highest - mouth_;
    }
    [[nodiscard]] double depth() const { return depth_; }
    // Out of the groove nothing is taken of it.
    [[nodiscard]] double width() const {
        if (depth_ <= 0) {
            return 0;
        }
        std::vector<Offset> points;
        for (const Section& section : all_) {
            section.take(mouth_, points);
        }
        return narrowest(points, 2 * (swing_.height + swing_.radius));
    }
    [[nodiscard]] SwingPosition position() const { return {tilt_, width(), depth_}; }

  private:
    const Swing& swing_;
    double tilt_;
    std::vector<Section> all_;
    double mouth_ = 0;
    double depth_ = 0;
};

// The position that takes most, tried at many tilts and then closed in on between the neighbours of
// the best: flat at its top, so thirds of 0.03 rad to 1e-8 rad leave nothing that counts.
template <class Measure>
SwingPosition most_over_tilts(const Swing& swing, Measure measure) {
    double best = measure(Tilted(swing, 0));
    double best_tilt = 0;
    int at = 0;
    const auto better = [&](double now, double tilt) {
        if (now > best) {
            best = now;
            best_tilt = tilt;
            return true;
        }
        return false;
    };
    for (int i = 1; i <= kTilts; ++i) {
        const double tilt = kSteepest * i / kTilts;
        const Tilted now(swing, tilt);
        if (better(measure(now), tilt)) {
            at = i;
        }
        if (now.depth() <= 0) {
            break;  // out of the groove from here on
        }
    }
    double low = kSteepest * std::max(0, at - 1) / kTilts;
    double high = kSteepest * std::min(kTilts, at + 1) / kTilts;
    constexpr int kThirds = 36;
    for (int i = 0; i < kThirds; ++i) {
        const double a = low + (high - low) / 3;
        const double b = high - (high - low) / 3;
        const double at_a = measure(Tilted(swing, a));
        const double at_b = measure(Tilted(swing, b));
        (at_a < at_b ? low : high) = at_a < at_b ? a : b;
        better(at_a, a);
        better(at_b, b);
    }
    return Tilted(swing, best_tilt).position();
}

}  // namespace

SwingPosition swing_position(const Swing& swing, double tilt) {
    BOWFRONT_EXPECTS(tilt >= 0 && tilt < std::numbers::pi / 2);
    // A pane of half a turn or more has sections that run along its own face.
    BOWFRONT_EXPECTS(swing.sweep >= 0 && swing.sweep < std::numbers::pi);
    return Tilted(swing, tilt).position();
}

SwingExtremes swing_extremes(const Swing& swing) {
    return {most_over_tilts(swing, [](const Tilted& at) { return at.width(); }),
            most_over_tilts(swing, [](const Tilted& at) { return at.depth(); })};
}

}  // namespace bowfront::fit
