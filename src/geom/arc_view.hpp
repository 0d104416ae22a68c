#pragma once
/// \file
/// Questions to an arc that are answered from chord and bulge, without passing by the centre.

#include <optional>

#include "bowfront/geom/contour.hpp"

namespace bowfront {

/// A point seen from an arc whose chord c lies along X with its middle at the origin. The vector
/// from the arc's centre to the point is kept multiplied by 4·bulge: in that scale the middle of
/// the arc lies straight down, whichever way the arc turns, and nothing grows as it flattens.
class ArcView {
  public:
    /// @param arc neither straight nor of no length
    ArcView(const Segment& arc, Point p) : chord_(distance(arc.from, arc.to)), bulge_(arc.bulge) {
        const Point along = (arc.to - arc.from) * (1 / chord_);
        const Point offset = p - (arc.from + arc.to) * 0.5;
        seen_ = {dot(along, offset), cross(along, offset)};
        from_centre_ = {4 * bulge_ * seen_.x,
                        4 * bulge_ * seen_.y - chord_ * (1 - bulge_ * bulge_)};
    }

    /// Angle at the centre between the middle of the arc and the point, rad, positive towards the
    /// arc's end.
    [[nodiscard]] double angle_from_middle() const {
        return std::copysign(1.0, bulge_) * std::atan2(from_centre_.x, -from_centre_.y);
    }

    /// Distance of the point to the whole circle, mm, negative inside it: (ρ² − R²)/(ρ + R), with
    /// ρ² − R² written so that the size of the radius drops out.
    [[nodiscard]] double height_over_circle() const {
        const double power = 4 * bulge_ * (dot(seen_, seen_) - chord_ * chord_ / 4) -
                             2 * seen_.y * chord_ * (1 - bulge_ * bulge_);
        return std::copysign(1.0, bulge_) * power /
               (norm(from_centre_) + chord_ * (1 + bulge_ * bulge_));
    }

  private:
    double chord_;
    double bulge_;
    Point seen_;  ///< from the middle of the chord, along and left of it
    Point from_centre_;
};

/// The share of the length at which the arc's outward normal points in a unit direction; nothing
/// where it never does.
[[nodiscard]] std::optional<double> share_facing(const Segment& arc, Point outward);

}  // namespace bowfront
