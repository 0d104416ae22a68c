#pragma once
/// \file
/// Straights and arcs one after the other, each tangent to the next.

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include "bowfront/fit/plan.hpp"

namespace bowfront::fit {

/// Where a figure of one of a pane's bends stands, below the pane's own path: `bends/1/start`.
[[nodiscard]] std::string bend_path(std::size_t bend, std::string_view key);

/// The angle that a piece turns through, positive to the left.
template <class N>
[[nodiscard]] N turned_by(const SidePiece<N>& piece) {
    return !piece.curved ? N(0) : piece.bow == Bow::out ? piece.arc.sweep : -piece.arc.sweep;
}

/// Where a run ends, seen from its start along its first tangent, and what it turns through.
template <class N>
struct RunEnd {
    N x{0};
    N y{0};  ///< positive to the left
    N turned{0};
};

/// Source:  geometry: its chords, one after the other
template <class N>
[[nodiscard]] RunEnd<N> end_of_run(const std::vector<SidePiece<N>>& pieces) {
    using std::cos;
    using std::sin;
    RunEnd<N> end;
    for (const SidePiece<N>& piece : pieces) {
        const N turned = turned_by(piece);
        const N along = end.turned + turned / 2;
        end.x = end.x + piece.chord() * cos(along);
        end.y = end.y + piece.chord() * sin(along);
        end.turned = end.turned + turned;
    }
    return end;
}

/// The arc of the smallest radius; the first of several.
/// @param pieces  at least one of them an arc
template <class N>
[[nodiscard]] const SidePiece<N>& tightest_bend(const std::vector<SidePiece<N>>& pieces) {
    return *std::min_element(
        pieces.begin(), pieces.end(), [](const SidePiece<N>& a, const SidePiece<N>& b) {
            return a.curved && (!b.curved || value_of(a.arc.radius) < value_of(b.arc.radius));
        });
}

/// The same pieces in plain numbers.
template <class N>
[[nodiscard]] std::vector<SidePiece<double>> plain_pieces(const std::vector<SidePiece<N>>& pieces) {
    std::vector<SidePiece<double>> plain;
    plain.reserve(pieces.size());
    for (const SidePiece<N>& piece : pieces) {
        SidePiece<double> out;
        out.length = value_of(piece.length);
        out.curved = piece.curved;
        out.bow = piece.bow;
        out.chord_heading = piece.chord_heading;
        out.spec = piece.spec;
        if (piece.curved) {
            out.arc = {value_of(piece.arc.radius), value_of(piece.arc.sweep),
                       value_of(piece.arc.chord), value_of(piece.arc.rise),
                       value_of(piece.arc.length)};
        }
        plain.push_back(out);
    }
    return plain;
}

/// The pieces from a point on, each by its own heading; arcs over half a turn in two segments.
[[nodiscard]] std::vector<Segment> segments_of(const std::vector<SidePiece<double>>& pieces,
                                               Point from);

/// Whether a piece goes on with the bend that the one before it is of: both are arcs of one curve,
/// and bow to one side.
template <class N>
[[nodiscard]] bool goes_on(const SidePiece<N>& before, const SidePiece<N>& piece) {
    return before.curved && piece.curved && before.spec == piece.spec && before.bow == piece.bow;
}

/// Whether a side starts in a curve that is made of several arcs, or ends in one: its post may hold
/// more than the first of them.
template <class N>
[[nodiscard]] bool starts_in_curve(const SideSums<N>& side) {
    return side.pieces.size() > 1 && side.pieces[0].spec == side.pieces[1].spec;
}
template <class N>
[[nodiscard]] bool ends_in_curve(const SideSums<N>& side) {
    const std::size_t count = side.pieces.size();
    return count > 1 && side.pieces[count - 1].spec == side.pieces[count - 2].spec;
}

/// How far they reach to both sides of the chord from start to end together, mm.
[[nodiscard]] double depth_over_chord(const std::vector<SidePiece<double>>& pieces);

}  // namespace bowfront::fit
