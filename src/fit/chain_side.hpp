#pragma once
/// \file
/// A side of the general chain before it has its place: what it is made of, and where it ends.

#include <cmath>
#include <string>
#include <vector>

#include "bowfront/fit/plan.hpp"
#include "bowfront/geom/arc_fit.hpp"
#include "free_piece.hpp"
#include "run.hpp"

namespace bowfront::fit {

inline constexpr std::string_view kPlanSource = "geometry of the plan";

/// A measure of an arc as an input: an angle, or a length.
template <class N>
[[nodiscard]] N angle_or_length(const FrontArc& given, Book<N>& book) {
    const bool angle = given.measure == ArcMeasure::sweep;
    return book.input("a", angle ? Kind::angle : Kind::length, given.value);
}

template <class N>
[[nodiscard]] SidePiece<N> arc_piece(const ArcSizes<N>& sizes, Bow bow, double chord_heading) {
    SidePiece<N> piece;
    piece.length = sizes.length;
    piece.curved = true;
    piece.bow = bow;
    piece.arc = sizes;
    piece.chord_heading = chord_heading;
    return piece;
}

/// A side by the headings that its pieces have when it starts along X.
template <class N>
struct ChainSide {
    std::vector<SidePiece<N>> pieces;
    N chord{0};
    N lead{0};  ///< angle from the start's tangent to the chord
    N turned{0};
};

/// A straight or an arc.
template <class N>
[[nodiscard]] SidePiece<N> plain_piece(const PieceSpec& spec, const std::string& path,
                                       Book<N>& book) {
    if (!spec.arc.empty()) {
        const auto& given = spec.arc;
        const ArcSizes<N> sizes =
            forming::free_arc(given[0].measure, angle_or_length(given[0], book), given[1].measure,
                              angle_or_length(given[1], book), path, book);
        return arc_piece(sizes, spec.bow.value, 0);
    }
    SidePiece<N> piece;
    piece.length = book.input("l", Kind::length, *spec.straight);
    return piece;
}

/// The arcs that an ellipse or a curve is made of.
template <class N>
[[nodiscard]] std::vector<SidePiece<N>> free_pieces(const PieceSpec& spec, const std::string& path,
                                                    Book<N>& book) {
    using std::cos;
    using std::sin;
    const ArcFit fit = fit_arcs(smooth_curve(spec), spec.chord_error.value);
    const N error = book.input("e_c", Kind::length, spec.chord_error);
    constexpr std::string_view kBiarcs = "pairs of arcs that keep the curve's tangents";
    book.solved({path, "developed"}, "S_c", Kind::length, fit.developed,
                "length of the curve itself, integrated", {error}, kPlanSource);
    std::vector<SidePiece<N>> pieces;
    for (const Segment& segment : fit.chain) {
        const std::string name = path + "/arc-" + std::to_string(pieces.size() + 1);
        const auto solved = [&](std::string_view key, std::string_view symbol, Kind kind,
                                double value) {
            return book.solved({name, key}, symbol, kind, value,
                               "one of the arcs that lie within e_c of the curve", {error},
                               kBiarcs);
        };
        if (segment.straight()) {
            SidePiece<N> piece;
            piece.length = solved("length", "l", Kind::length, segment.length());
            pieces.push_back(std::move(piece));
            continue;
        }
        ArcSizes<N> sizes;
        sizes.radius = solved("radius", "R", Kind::length, segment.radius());
        sizes.sweep = solved("sweep", "θ", Kind::angle, std::abs(segment.sweep()));
        sizes.length = sizes.radius * sizes.sweep;
        sizes.chord = 2 * sizes.radius * sin(sizes.sweep / 2);
        sizes.rise = sizes.radius * (1 - cos(sizes.sweep / 2));
        pieces.push_back(arc_piece(sizes, segment.bulge > 0 ? Bow::out : Bow::in, 0));
    }
    return pieces;
}

/// A smooth run: its pieces, each with the heading that the ones before it leave it.
template <class N>
[[nodiscard]] ChainSide<N> run_side(const SideSpec& spec, const std::string& path, Book<N>& book) {
    using std::sqrt;
    ChainSide<N> side;
    double heading = 0;
    for (const PieceSpec& each : spec.pieces) {
        const auto number = static_cast<std::size_t>(&each - spec.pieces.data());
        const std::string name = path + "/piece-" + std::to_string(number + 1);
        std::vector<SidePiece<N>> made = each.is_free()
                                             ? free_pieces(each, name, book)
                                             : std::vector{plain_piece(each, name, book)};
        for (SidePiece<N>& piece : made) {
            piece.chord_heading = heading + piece.turned() / 2;
            piece.spec = number;
            heading += piece.turned();
            side.pieces.push_back(std::move(piece));
        }
    }
    const RunEnd<N> end = end_of_run(side.pieces);
    constexpr std::string_view kSource = "the run's chords, one after the other";
    side.turned = book.figure({path, "turned"}, "θ_r", Kind::angle, end.turned,
                              "by all bends of the run, to the left");
    const N x = book.figure({path, "along"}, "x_r", Kind::length, end.x, kSource);
    const N y = book.figure({path, "across"}, "y_r", Kind::length, end.y, kSource);
    side.chord = book.figure({path, "chord"}, "c", Kind::length, sqrt(x * x + y * y), kSource);
    side.lead = book.solved({path, "lead"}, "λ", Kind::angle, std::atan2(value_of(y), value_of(x)),
                            "angle from the run's first tangent to its chord, tan λ = y/x", {x, y},
                            kPlanSource);
    return side;
}

/// @param spec  not a side that closes the chain
/// @param path  first pieces of its figures' paths, as `plan/front`
template <class N>
[[nodiscard]] ChainSide<N> chain_side(const SideSpec& spec, const std::string& path,
                                      Book<N>& book) {
    if (spec.pieces.size() > 1 || spec.pieces.front().is_free()) {
        return run_side(spec, path, book);
    }
    ChainSide<N> side;
    side.pieces.push_back(plain_piece(spec.pieces.front(), path, book));
    side.chord = side.pieces.front().chord();
    side.turned = turned_by(side.pieces.front());
    side.lead = side.turned / 2;
    return side;
}

}  // namespace bowfront::fit
