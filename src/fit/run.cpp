#include "run.hpp"

#include <cmath>
#include <numbers>

namespace bowfront::fit {
namespace {

constexpr double kPi = std::numbers::pi;

void append_segments(const SidePiece<double>& piece, Point from, Point to,
                     std::vector<Segment>& segments) {
    const double turned = piece.turned();
    if (!piece.curved || std::abs(turned) <= kPi) {
        segments.push_back({from, to, piece.curved ? std::tan(turned / 4) : 0});
        return;
    }
    // Two equal halves; they meet at the crown, the rise away from the chord's middle.
    const Point outwards = direction(piece.chord_heading - std::copysign(kPi / 2, turned));
    const Point crown = (from + to) * 0.5 + outwards * piece.arc.rise;
    const double bulge = std::tan(turned / 8);
    segments.push_back({from, crown, bulge});
    segments.push_back({crown, to, bulge});
}

}  // namespace

std::string bend_path(std::size_t bend, std::string_view key) {
    return "bends/" + std::to_string(bend + 1) + "/" + std::string(key);
}

std::vector<Segment> segments_of(const std::vector<SidePiece<double>>& pieces, Point from) {
    std::vector<Segment> segments;
    Point at = from;
    for (const SidePiece<double>& piece : pieces) {
        if (piece.length <= kJoint) {
            continue;
        }
        const Point next = at + direction(piece.chord_heading) * piece.chord();
        append_segments(piece, at, next, segments);
        at = next;
    }
    return segments;
}

double depth_over_chord(const std::vector<SidePiece<double>>& pieces) {
    const RunEnd<double> end = end_of_run(pieces);
    const double lead = std::atan2(end.y, end.x);
    std::vector<SidePiece<double>> level = pieces;
    const double turn = pieces.front().start_heading() + lead;
    for (SidePiece<double>& piece : level) {
        piece.chord_heading -= turn;  // the chord along X
    }
    Box box;
    for (const Segment& segment : segments_of(level, {})) {
        box.add(segment.box());
    }
    return box.empty() ? 0 : box.height();
}

}  // namespace bowfront::fit
