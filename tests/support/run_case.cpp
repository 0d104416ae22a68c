#include "support/run_case.hpp"

#include <algorithm>
#include <numbers>
#include <string>
#include <utility>

#include "bowfront/fit/checks.hpp"
#include "support/sample_case.hpp"

namespace bowfront::sample {
namespace {

constexpr double kPi = std::numbers::pi;

// Each size is told apart by where it stands.
void place(PieceSpec& piece, const std::string& pointer) {
    piece.pointer = pointer;
    if (piece.straight) {
        piece.straight->origin.pointer = pointer + "/straight";
    }
    for (FrontArc& measure : piece.arc) {
        measure.value.origin.pointer =
            pointer + "/arc/" + std::string(measure_text(measure.measure));
    }
}

SideSpec front_of(std::vector<PieceSpec> pieces) {
    SideSpec front;
    front.name = "front";
    front.pointer = "/plan/sides/0";
    double turned = 0;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        place(pieces[i], front.pointer + "/run/" + std::to_string(i));
        for (const FrontArc& measure : pieces[i].arc) {
            if (measure.measure == ArcMeasure::sweep) {
                turned += (pieces[i].bow.value == Bow::out ? 1 : -1) * measure.value.value;
            }
        }
    }
    front.pieces = std::move(pieces);
    front.turn = given(std::clamp(kPi - turned / 2, 0.5, 2.6), front.pointer + "/turn");
    front.turn_follows = true;
    return front;
}

}  // namespace

PieceSpec straight_piece(double length) {
    PieceSpec piece;
    piece.straight = given(length, "/plan/sides/0/run/straight");
    return piece;
}

PieceSpec arc_piece(double radius, double sweep, Bow bow) {
    PieceSpec piece;
    piece.arc = {{ArcMeasure::radius, given(radius, "/plan/sides/0/run/arc/radius")},
                 {ArcMeasure::sweep, given(sweep, "/plan/sides/0/run/arc/sweep")}};
    piece.bow = given(bow, "/plan/sides/0/run/bow");
    return piece;
}

PieceSpec ellipse_piece(double semi_x, double semi_y, double from, double to, double chord_error) {
    const std::string pointer = "/plan/sides/0/ellipse";
    PieceSpec piece;
    piece.ellipse = EllipseSpec{
        {given(semi_x, pointer + "/semi_axes/0"), given(semi_y, pointer + "/semi_axes/1")},
        given(from, pointer + "/from"),
        given(to, pointer + "/to")};
    piece.chord_error = given(chord_error, "/plan/sides/0/chord_error");
    return piece;
}

PieceSpec curve_piece(const std::vector<std::array<double, 2>>& points, double chord_error) {
    PieceSpec piece;
    piece.curve.emplace();
    for (const auto& point : points) {
        const std::string pointer =
            "/plan/sides/0/curve/through/" + std::to_string(piece.curve->through.size());
        piece.curve->through.push_back(
            {given(point[0], pointer + "/0"), given(point[1], pointer + "/1")});
    }
    piece.chord_error = given(chord_error, "/plan/sides/0/chord_error");
    return piece;
}

Case case_with_front(std::vector<PieceSpec> pieces) {
    Case c = pilot_boat();
    c.plan = {};
    c.plan.shape = PlanShape::sides;
    SideSpec back;
    back.name = "back";
    back.pointer = back.pieces.front().pointer = "/plan/sides/1";
    back.closing = back.turn_follows = true;
    c.plan.chain = {front_of(std::move(pieces)), back};
    glaze_all_sides(c);
    return c;
}

Case mirrored(const Case& c) {
    std::vector<PieceSpec> pieces = c.plan.chain.front().pieces;
    std::reverse(pieces.begin(), pieces.end());
    Case other = c;
    other.plan.chain.front() = front_of(std::move(pieces));
    return other;
}

Case random_run(RandomCases& random) {
    while (true) {
        std::vector<PieceSpec> pieces{straight_piece(random.draw(60, 400))};
        const int bends = static_cast<int>(random.draw(1, 3));
        for (int i = 0; i < bends; ++i) {
            const bool in = random.draw(0, 1) < 0.25;
            pieces.push_back(
                arc_piece(random.draw(60, 300), random.draw(0.2, 1.5), in ? Bow::in : Bow::out));
            pieces.push_back(straight_piece(random.draw(60, 400)));
        }
        Case c = case_with_front(std::move(pieces));
        if (fit::objections(c).empty()) {
            return c;
        }
    }
}

}  // namespace bowfront::sample
