#include "line_in_post.hpp"

#include <algorithm>
#include <string>
#include <vector>

#include "post_exit.hpp"
#include "run.hpp"

namespace bowfront::fit {
namespace {

// The end of a pane, seen from its corner.
struct End {
    bool start;
    const CornerDirections& corner;
    std::string path;         // of its figures
    std::string_view symbol;  // of the length inside the post
};

// The pieces of a side from one of its ends on.
template <class N>
std::vector<SidePiece<N>> pieces_from(const SideSums<N>& line, bool start) {
    std::vector<SidePiece<N>> pieces = line.pieces;
    if (!start) {
        std::reverse(pieces.begin(), pieces.end());
    }
    return pieces;
}

std::vector<Segment> chain_from(const std::vector<SidePiece<double>>& pieces, bool start) {
    std::vector<Segment> chain = segments_of(pieces, {});
    if (!start) {
        std::reverse(chain.begin(), chain.end());
        for (Segment& segment : chain) {
            segment = segment.reversed();
        }
    }
    return chain;
}

// A curve that is made of several arcs. The post's groove is straight, and the tightest arc in
// there takes most of it.
template <class N>
LineInPost<N> curve_in_post(const PaneTask<N>& task, const std::vector<PostFace>& faces,
                            const End& end) {
    const Post& post = task.c.frame.post;
    const double inside =
        length_to_exit(post, faces, chain_from(plain_pieces(task.line.pieces), end.start));
    LineInPost<N> in_post{N(0), N(0)};
    double before = 0;
    for (const SidePiece<N>& piece : pieces_from(task.line, end.start)) {
        const bool tighter =
            value_of(in_post.radius) == 0 || value_of(piece.arc.radius) < value_of(in_post.radius);
        if (before < inside && piece.curved && tighter) {
            in_post.radius = piece.arc.radius;
        }
        before += value_of(piece.length);
    }
    const N width = task.book.input("w", Kind::length, post.width);
    in_post.length =
        task.book.solved({"panes", end.path, "in_post"}, end.symbol, Kind::length, inside,
                         "where the arcs that the curve is made of first leave the post",
                         {width, task.line.length}, "geometry of line, arcs and post");
    return in_post;
}

}  // namespace

template <class N>
LineInPost<N> line_in_post(const PaneTask<N>& task, PaneEdge edge) {
    const bool start = edge == PaneEdge::start;
    const SideSums<N>& line = task.line;
    const End end{start, start ? task.start : task.end,
                  std::string(task.side) + (start ? "/start" : "/end"), start ? "x_s" : "x_e"};
    const Post& post = task.c.frame.post;
    const auto faces = post_faces(post.section.value, end.corner);
    if (start ? starts_in_curve(line) : ends_in_curve(line)) {
        return curve_in_post(task, faces, end);
    }
    const SidePiece<N>& piece = start ? line.pieces.front() : line.pieces.back();
    const N radius = piece.curved ? piece.arc.radius : N(0);
    // Run the other way, a piece that bows out turns to the right.
    const bool left = (piece.bow == Bow::out) == start;
    const LeavingLine<N> leaving{start ? end.corner.next : end.corner.previous,
                                 piece.curved,
                                 left,
                                 radius,
                                 end.path,
                                 end.symbol};
    return {length_in_post(post, faces, leaving, task.book), radius};
}

template LineInPost<double> line_in_post(const PaneTask<double>&, PaneEdge);
template LineInPost<Traced> line_in_post(const PaneTask<Traced>&, PaneEdge);

}  // namespace bowfront::fit
