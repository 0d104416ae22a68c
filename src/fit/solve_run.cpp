#include <algorithm>
#include <cmath>
#include <string>

#include "bowfront/forming/pane.hpp"
#include "run.hpp"
#include "solve.hpp"

namespace bowfront::fit {
namespace {

constexpr std::string_view kSource = "geometry of the mid-surface";

// A part of a piece of the glazing line, from and to so far along the piece.
template <class N>
SidePiece<N> part_of(const SidePiece<N>& piece, N from, N to) {
    using std::cos;
    using std::sin;
    SidePiece<N> part = piece;
    // A pane that is far too short ends before this piece, which is objected to once that is known.
    part.length = larger(N(0), to - from);
    if (piece.curved) {
        const double start = piece.start_heading();
        const double per_mm = piece.turned() / value_of(piece.length);
        part.arc.sweep = part.length / piece.arc.radius;
        part.arc.length = part.length;
        part.arc.chord = 2 * part.arc.radius * sin(part.arc.sweep / 2);
        part.arc.rise = part.arc.radius * (1 - cos(part.arc.sweep / 2));
        part.chord_heading = start + per_mm * (value_of(from) + value_of(part.length) / 2);
    }
    return part;
}

// The pane's pieces: those of its side, of which its ends leave a part inside the posts.
template <class N>
void solve_path(const PaneTask<N>& task, PaneSums<N>& pane) {
    const SideSums<N>& line = task.line;
    const N start = task.figure(
        "start_on_line", "x₀",
        (line.length + pane.start_in_post - pane.end_in_post - pane.length) / 2,
        "from the corner point to the pane's start, the pane in the middle of its opening");
    const N end = start + pane.length;
    N before(0);
    for (std::size_t i = 0; i < line.pieces.size(); ++i) {
        const SidePiece<N>& piece = line.pieces[i];
        const N after = before + piece.length;
        // A pane that is longer than its side runs on along the first and the last piece.
        const bool starts = i == 0 || value_of(before) < value_of(start);
        const bool ends = i + 1 == line.pieces.size() || value_of(after) > value_of(end);
        const bool missed =
            (starts && i + 1 < line.pieces.size() && value_of(after) <= value_of(start)) ||
            (ends && i > 0 && value_of(before) >= value_of(end));
        if (!missed) {
            pane.path.push_back(starts || ends ? part_of(piece, starts ? start - before : N(0),
                                                         ends ? end - before : piece.length)
                                               : piece);
        }
        before = after;
    }
}

// A stretch of a pane that bends to one side: from a length along it to another.
template <class N>
struct Bent {
    N from;
    N to;
    N sweep;
    std::size_t tightest;
};

template <class N>
std::vector<Bent<N>> bent_stretches(const std::vector<SidePiece<N>>& path) {
    std::vector<Bent<N>> bends;
    N along(0);
    for (std::size_t i = 0; i < path.size(); ++i) {
        const SidePiece<N>& piece = path[i];
        const N from = along;
        along = along + piece.length;
        if (!piece.curved) {
            continue;
        }
        if (i == 0 || !goes_on(path[i - 1], piece)) {
            bends.push_back({from, along, piece.arc.sweep, i});
            continue;
        }
        Bent<N>& bend = bends.back();
        bend.to = along;
        bend.sweep = bend.sweep + piece.arc.sweep;
        if (value_of(piece.arc.radius) < value_of(path[bend.tightest].arc.radius)) {
            bend.tightest = i;
        }
    }
    return bends;
}

template <class N>
void solve_bends(const PaneTask<N>& task, N shrink, PaneSums<N>& pane) {
    for (const Bent<N>& bent : bent_stretches(pane.path)) {
        const std::size_t number = pane.bends.size();
        const SidePiece<N>& tightest = pane.path[bent.tightest];
        const auto figure = [&](std::string_view key, std::string_view symbol, N value,
                                std::string_view source, Kind kind = Kind::length) {
            return task.figure(bend_path(number, key), symbol, value, source, kind);
        };
        BendSums<N> bend;
        bend.bow = tightest.bow;
        bend.tightest = bent.tightest;
        bend.radius =
            figure("radius", "R", tightest.arc.radius, "the glazing line's, where it bends most");
        bend.inside_radius =
            figure("inside_radius", "Ri", bend.radius - pane.thickness / 2, kSource);
        bend.sweep = figure("sweep", "θ", bent.sweep, kSource, Kind::angle);
        constexpr std::string_view kAlong = "from the start edge along the mid-surface, as formed";
        bend.start = figure("start", "a", bent.from, kAlong);
        bend.end = figure("end", "b", bent.to, kAlong);
        // Shrink takes its share to both sides of the middle, trimming the same from both ends.
        constexpr std::string_view kBlank =
            "from the blank's start edge before heating: the bend's place about the middle, longer "
            "by the shrink";
        const auto on_blank = [&](N at) {
            return pane.blank_length / 2 + forming::blank_for(at - pane.length / 2, shrink);
        };
        bend.blank_start = figure("blank_start", "a₀", on_blank(bend.start), kBlank);
        bend.blank_end = figure("blank_end", "b₀", on_blank(bend.end), kBlank);
        pane.bends.push_back(std::move(bend));
    }
}

}  // namespace

template <class N>
void solve_run(const PaneTask<N>& task, N shrink, PaneSums<N>& pane) {
    using std::sqrt;
    solve_path(task, pane);
    solve_bends(task, shrink, pane);
    pane.radius = tightest_bend(task.line.pieces).arc.radius;
    pane.sweep = N(0);
    if (!pane.bends.empty()) {
        pane.radius = pane.bends.front().radius;
    }
    for (const BendSums<N>& bend : pane.bends) {
        pane.radius = smaller(pane.radius, bend.radius);
        pane.sweep = pane.sweep + bend.sweep;
    }
    pane.inside_radius = task.figure("formed/inside_radius", "Ri", pane.radius - pane.thickness / 2,
                                     "of the tightest bend");
    pane.sweep = task.figure("formed/sweep", "θ", pane.sweep, "of all bends together", Kind::angle);
    const RunEnd<N> end = end_of_run(pane.path);
    pane.chord = task.figure("formed/chord", "c", sqrt(end.x * end.x + end.y * end.y),
                             "from end to end: its pieces' chords, one after the other");
    pane.rise = task.book.solved({"panes", task.side, "formed/rise"}, "f", Kind::length,
                                 depth_over_chord(plain_pieces(pane.path)),
                                 "how far the pieces reach to both sides of the chord together",
                                 {pane.chord, pane.sweep, pane.length}, kSource);
}

template void solve_run(const PaneTask<double>&, double, PaneSums<double>&);
template void solve_run(const PaneTask<Traced>&, Traced, PaneSums<Traced>&);

}  // namespace bowfront::fit
