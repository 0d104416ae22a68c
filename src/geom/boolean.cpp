#include <functional>

#include "bowfront/base/contract.hpp"
#include "bowfront/geom/region.hpp"
#include "geom/overlay.hpp"
#include "geom/stitch.hpp"

namespace bowfront {
namespace {

using Condition = std::function<bool(Cover)>;

/// The edges of the areas where a condition holds: the borders where it holds on one side only.
std::vector<Piece> edges_where(const std::vector<Region>& first, const std::vector<Region>& second,
                               const Condition& covered, double reach) {
    std::vector<Piece> edges;
    for (const Border& border : overlay(first, second, reach)) {
        const bool left = covered(border.left);
        if (left != covered(border.right)) {
            edges.push_back(left ? border.piece : border.piece.reversed());
        }
    }
    return edges;
}

std::vector<Region> areas_where(const std::vector<Region>& first, const std::vector<Region>& second,
                                const Condition& covered) {
    // Where several edges lie just about a sliver from each other, some pairs are taken as one and
    // some are not, and now and then the outlines do not close. Seen more coarsely they do.
    for (const double coarser : {1, 3, 9, 27}) {
        const std::vector<Piece> edges = edges_where(first, second, covered, coarser * kSliver);
        if (closed(edges)) {
            return stitch(edges);
        }
    }
    contract_failed("outlines close", __FILE__, __LINE__);
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
