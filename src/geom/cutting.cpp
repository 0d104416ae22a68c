#include "geom/cutting.hpp"

#include <algorithm>
#include <utility>

#include "geom/meetings.hpp"
#include "geom/vertex_pool.hpp"

namespace bowfront {
namespace {

/// A piece in the making: part of an edge between two vertices, and where it is to be cut next.
struct Strand {
    OwnPiece own;
    Box box;
    bool unsettled = true;  ///< whether its meetings have to be sought (again)
    std::vector<std::pair<double, std::size_t>> cuts;  ///< share of the length, vertex
};

Strand strand(const OwnPiece& own, bool unsettled) {
    return {own, own.piece.segment.box(), unsettled, {}};
}

void note_cut(Strand& strand, Point p, std::size_t vertex) {
    const Piece& piece = strand.own.piece;
    if (vertex != piece.from && vertex != piece.to) {
        strand.cuts.emplace_back(piece.segment.nearest(p), vertex);
    }
}

void seek_meetings(std::vector<Strand>& strands, VertexPool& pool, double reach) {
    for (auto one = strands.begin(); one != strands.end(); ++one) {
        for (auto other = one + 1; other != strands.end(); ++other) {
            if (!(one->unsettled || other->unsettled) || !within(one->box, other->box, reach)) {
                continue;
            }
            const Segment& a = one->own.piece.segment;
            const Segment& b = other->own.piece.segment;
            for (const Point p : meetings_within(a, b, reach)) {
                const std::size_t vertex = pool.number_of(p);
                note_cut(*one, p, vertex);
                note_cut(*other, p, vertex);
            }
        }
    }
}

/// The part of a segment between two shares of its length, led to the vertices there. What is
/// left of an arc so short that it rises no more than `kJoint` over its chord is a straight:
/// which side of it a point lies on has to be certain.
Segment part_between(const Segment& whole, double begun, double ended, Point from, Point to) {
    const double bulge =
        ended - begun == 1 ? whole.bulge : std::tan((ended - begun) * std::atan(whole.bulge));
    const double rise = std::abs(bulge) * distance(from, to) / 2;
    return {from, to, rise > kJoint ? bulge : 0};
}

void append_parts(std::vector<Strand>& parts, const Strand& whole, const VertexPool& pool,
                  double reach) {
    const auto& [piece, area] = whole.own;
    auto cuts = whole.cuts;
    std::ranges::sort(cuts);
    cuts.emplace_back(1, piece.to);
    double begun = 0;
    std::size_t from = piece.from;
    for (const auto& [ended, to] : cuts) {
        if (to == from) {
            continue;
        }
        const Point start = pool[from];
        const Point end = pool[to];
        // Led elsewhere it may lie over others now, and with an end hardly off another vertex it
        // may pass one by that its whole met as the other.
        const bool shifted = distance(start, piece.segment.at(begun)) > kJoint ||
                             distance(end, piece.segment.at(ended)) > kJoint;
        const bool tiny = !whole.cuts.empty() && distance(start, end) < 10 * reach;
        const Segment part = part_between(piece.segment, begun, ended, start, end);
        parts.push_back(strand({{from, to, part}, area}, shifted || tiny));
        begun = ended;
        from = to;
    }
}

}  // namespace

std::vector<OwnPiece> cut_at_meetings(const std::vector<Edge>& edges, double reach) {
    // Few pieces ever need a second round, and those settle in it; the bound is for what is all
    // tangle at the scale of the reach.
    constexpr int kRounds = 8;
    VertexPool pool(reach);
    std::vector<Strand> strands;
    for (const auto& [segment, area] : edges) {
        const Piece piece{pool.number_of(segment.from), pool.number_of(segment.to), segment};
        strands.push_back(strand({piece, area}, true));
    }
    const auto unsettled = [](const Strand& strand) { return strand.unsettled; };
    for (int round = 0; round < kRounds && std::ranges::any_of(strands, unsettled); ++round) {
        seek_meetings(strands, pool, reach);
        std::vector<Strand> parts;
        for (const Strand& whole : strands) {
            append_parts(parts, whole, pool, reach);
        }
        strands = std::move(parts);
    }
    std::vector<OwnPiece> pieces;
    for (const Strand& strand : strands) {
        pieces.push_back(strand.own);
    }
    return pieces;
}

}  // namespace bowfront
