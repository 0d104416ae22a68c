#pragma once
/// \file
/// Seeded random areas of straights, arcs and holes, some of them drawn on a coarse grid, where
/// edges and arcs coincide and touch at every turn.

#include <algorithm>
#include <cmath>
#include <random>
#include <vector>

#include "bowfront/geom/region.hpp"

namespace bowfront {

class Shapes {
  public:
    Shapes(unsigned seed, double grid) : random_(seed), grid_(grid) {}

    Region any() {
        switch (pick(5)) {
            case 0:
                return rectangle();
            case 1:
                return {Contour::circle({place(), place()}, size()), {}};
            case 2:
                return groove();
            case 3:
                return ring();
            default:
                return bulged();
        }
    }

    std::vector<Region> some(int most) {
        std::vector<Region> all(static_cast<std::size_t>(1 + pick(most)));
        std::ranges::generate(all, [&] { return any(); });
        return all;
    }

    /// The same areas with every vertex of their outer outlines moved a little, by 1e-10 to 1e-5
    /// mm: what coincided is a hair off now, on both sides of the distance at which edges are one.
    std::vector<Region> shaken(std::vector<Region> regions) {
        for (Region& region : regions) {
            std::vector<Vertex> vertices = region.outer.vertices();
            for (Vertex& vertex : vertices) {
                vertex.at = vertex.at + direction(anywhere(0, 6)) * std::pow(10, anywhere(-10, -5));
            }
            region.outer = Contour(vertices);
        }
        return regions;
    }

    double anywhere(double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(random_);
    }

  private:
    int pick(int below) { return std::uniform_int_distribution<int>(0, below - 1)(random_); }

    double snapped(double x) const { return grid_ > 0 ? std::round(x / grid_) * grid_ : x; }
    double place() { return snapped(anywhere(-50, 50)); }
    double size() { return std::max(snapped(anywhere(5, 40)), 5.0); }

    Region rectangle() {
        const Point low{place(), place()};
        return {Contour::rectangle(low, low + Point{size(), size()}), {}};
    }

    Region groove() {
        const Point from{place(), place()};
        const double length = size() + 10;
        const Point to = grid_ > 0 ? from + (pick(2) == 0 ? Point{length, 0} : Point{0, length})
                                   : from + direction(anywhere(0, 6)) * length;
        const auto end = [&] { return pick(2) == 0 ? BandEnd::round : BandEnd::square; };
        return {band({{from, to}}, 10, end(), end()), {}};
    }

    Region ring() {
        const Point centre{place(), place()};
        const double inner = size();
        return {Contour::circle(centre, inner + 5), {Contour::circle(centre, inner).reversed()}};
    }

    /// A rectangle with sides bulging in or out by up to an eighth of the shorter side: the arcs of
    /// two sides then leave their corner at more than 30° from each other.
    Region bulged() {
        const Region base = rectangle();
        const double shorter = std::min(base.box().width(), base.box().height());
        std::vector<Vertex> vertices = base.outer.vertices();
        for (std::size_t i = 0; i < vertices.size(); ++i) {
            const Segment side = base.outer.segment(i);
            vertices[i].bulge = shorter / (4 * side.length()) * snapped_share();
        }
        return {Contour(vertices), {}};
    }

    double snapped_share() { return grid_ > 0 ? pick(3) - 1.0 : anywhere(-1, 1); }

    std::mt19937 random_;
    double grid_;
};

inline double area(const std::vector<Region>& regions) {
    double total = 0;
    for (const Region& region : regions) {
        total += region.area();
    }
    return total;
}

inline bool covers(const std::vector<Region>& regions, Point p) {
    return std::ranges::any_of(regions,
                               [&](const Region& r) { return where(r, p) == Side::inside; });
}

inline bool near_edge(const std::vector<Region>& regions, Point p) {
    const auto close = [&](const Segment& segment) { return segment.distance_to(p) < 1e-6; };
    return std::ranges::any_of(regions, [&](const Region& region) {
        return std::ranges::any_of(region.outer.segments(), close) ||
               std::ranges::any_of(region.holes, [&](const Contour& hole) {
                   return std::ranges::any_of(hole.segments(), close);
               });
    });
}

}  // namespace bowfront
