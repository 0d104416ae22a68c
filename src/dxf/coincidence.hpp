#pragma once
/// \file
/// Lines that cross, touch, or lie on each other.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "bowfront/geom/region.hpp"

namespace bowfront::dxf {

/// Where an outline of the region meets itself or another one of it, apart from the joints between
/// neighbouring segments; nothing where the region is simple.
/// Takes time in proportion to n·log n for outlines without long overlaps of their segments' boxes.
/// @param region  finite, no segment shorter than 0.01 mm
[[nodiscard]] std::optional<Point> crossing(const Region& region);

/// The lines that a cutter would follow, by layer.
class Tracks {
  public:
    /// A line that stands twice.
    struct Twin {
        std::string layer;
        Point place;
    };

    /// @param segments  at least one
    void add(std::string_view layer, std::vector<Segment> segments);

    /// The first of two tracks of one layer that run along the same line, whichever way round and
    /// from wherever each begins; nothing where every track is the only one of its kind.
    [[nodiscard]] std::optional<Twin> doubled() const;

  private:
    struct Track {
        std::string layer;
        std::vector<Segment> segments;
        Box box;
        double length = 0;
    };
    static bool same(const Track& a, const Track& b);

    std::vector<Track> tracks_;
};

}  // namespace bowfront::dxf
