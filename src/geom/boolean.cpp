#include <functional>

#include "bowfront/geom/region.hpp"
#include "geom/overlay.hpp"
#include "geom/stitch.hpp"

namespace bowfront {
namespace {

/// The areas where `covered` holds. Their edges are the borders where it holds on one side only.
std::vector<Region> areas_where(const std::vector<Region>& first, const std::vector<Region>& second,
                                const std::function<bool(Cover)>& covered) {
    std::vector<Piece> edges;
    for (const Border& border : overlay(first, second)) {
        const bool left = covered(border.left);
        if (left != covered(border.right)) {
            edges.push_back(left ? border.piece : border.piece.reversed());
        }
    }
    return stitch(edges);
}

}  // namespace

std::vector<Region> unite(const std::vector<Region>& regions) {
    return areas_where(regions, {}, [](Cover cover) { return cover.first; });
}

std::vector<Region> subtract(const std::vector<Region>& from, const std::vector<Region>& tools) {
    return areas_where(from, tools, [](Cover cover) { return cover.first && !cover.second; });
}

std::vector<Region> intersect(const std::vector<Region>& a, const std::vector<Region>& b) {
    return areas_where(a, b, [](Cover cover) { return cover.first && cover.second; });
}

}  // namespace bowfront
