#include <cmath>
#include <string_view>

#include "run.hpp"
#include "solve.hpp"

namespace bowfront::fit {
namespace {

// A way in plan, rad from X; along X or Y where `square` says so, which most sides of most cases are.
struct Way {
    double angle = 0;
    enum class Square { x, y, no } square = Square::no;

    explicit Way(double heading) : angle(heading) {
        constexpr double kSquare = 1e-12;  // rad: far above rounding, far below any angle meant
        if (std::abs(std::sin(heading)) < kSquare) {
            square = Square::x;
        } else if (std::abs(std::cos(heading)) < kSquare) {
            square = Square::y;
        }
    }
};

// What a plate's movement makes of a length that runs a way.
template <class N>
N factor_along(const PlateFactors<N>& plate, Way way) {
    using std::sqrt;
    switch (way.square) {
        case Way::Square::x: return plate.width;
        case Way::Square::y: return plate.depth;
        case Way::Square::no: break;
    }
    const double x = std::cos(way.angle);
    const double y = std::sin(way.angle);
    return sqrt(plate.width * plate.width * (x * x) + plate.depth * plate.depth * (y * y));
}

// The length of a piece of the glazing line on a plate that has moved.
// @param built  its length as built
template <class N>
N moved_piece(Book<N>& book, const SidePiece<N>& piece, N built, const PlateFactors<N>& plate,
              const FigurePath& path) {
    const Way way(piece.chord_heading);
    if (!piece.curved) {
        return built * factor_along(plate, way);
    }
    const N width = plate.width;
    const N depth = plate.depth;
    const ArcSizes<N>& arc = piece.arc;
    // A measured opening says how long the side has become, of the same shape.
    const double longer = value_of(built) / value_of(arc.length);
    const double radius = value_of(arc.radius) * longer;
    const double sweep = value_of(arc.sweep);
    const auto solved = [&](double length, std::string_view condition) {
        return book.solved(path, "S_k", Kind::length, length, condition,
                                {arc.radius, arc.sweep, width, depth},
                                "geometry: the arc becomes a piece of an ellipse");
    };
    switch (way.square) {
        case Way::Square::x:
            return solved(stretched_arc(radius, sweep, value_of(width), value_of(depth)),
                          "length of the arc stretched along chord and rise: integral of "
                          "R·sqrt((k_x·cos φ)² + (k_y·sin φ)²) over the sweep");
        case Way::Square::y:
            return solved(stretched_arc(radius, sweep, value_of(depth), value_of(width)),
                          "length of the arc stretched along rise and chord: integral of "
                          "R·sqrt((k_y·cos φ)² + (k_x·sin φ)²) over the sweep");
        case Way::Square::no: break;
    }
    return solved(stretched_arc(radius, sweep, value_of(width), value_of(depth), way.angle),
                  "length of the arc stretched along X and Y: integral of R·sqrt((k_x·cos ψ)² + "
                  "(k_y·sin ψ)²) over its headings ψ");
}

// The length of a side of the glazing line on a plate that has moved: each piece by its own way.
template <class N>
N moved_side(const PaneTask<N>& task, const PlateFactors<N>& plate, const FigurePath& path,
             const PaneSums<N>& pane) {
    const auto& pieces = task.line.pieces;
    if (pieces.size() == 1) {
        return moved_piece(task.book, pieces.front(), pane.side_length, plate, path);
    }
    // A measured opening says how long the side has become, of the same shape.
    const N longer = pane.side_length / task.line.length;
    N sum(0);
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        const std::string key = std::string(path.fourth) + "/piece-" + std::to_string(i + 1);
        sum = sum + moved_piece(task.book, pieces[i], pieces[i].length * longer, plate,
                                {path.first, path.second, path.third, key});
    }
    return task.book.figure(path, "S_k", Kind::length, sum,
                            "its pieces, each by its own way on the moved plate");
}

// Of the groove that a curved pane stands in, or of the part of it that the tightest bend of a pane
// of several does.
template <class N>
N groove_radius(const PaneTask<N>& task, const PlateFactors<N>& plate, const FigurePath& path,
                const PaneSums<N>& pane) {
    if (!pane.is_run()) {
        return moved_radius(task.book, plate, path, pane.chord, pane.rise,
                            task.line.chord_heading);
    }
    const SidePiece<N>& bend = tightest_bend(pane.path);
    return moved_radius(task.book, plate, path, bend.arc.chord, bend.arc.rise,
                        bend.chord_heading);
}

}  // namespace

template <class N>
N moved_radius(Book<N>& book, const PlateFactors<N>& plate, const FigurePath& path, N chord,
               N rise, double heading) {
    using std::sqrt;
    const Way way(heading);
    if (way.square != Way::Square::no) {
        const bool along_x = way.square == Way::Square::x;
        const N wide = chord * (along_x ? plate.width : plate.depth);
        const N high = rise * (along_x ? plate.depth : plate.width);
        return book.figure(path, "R_k", Kind::length, (wide * wide / 4 + high * high) / (2 * high),
                           "geometry: chord and rise of the groove along the pane, each as "
                           "its way of the plate has moved");
    }
    // Radius by sides and area of the triangle of crown and ends, R = a·b·c/(4·A). Stretching makes
    // each side longer by its own way, and the area by both ways together.
    const double half = std::atan2(2 * value_of(rise), value_of(chord));
    const N leg = sqrt(chord * chord / 4 + rise * rise);
    const N sides = chord * factor_along(plate, way) *
                    (leg * factor_along(plate, Way(way.angle + half))) *
                    (leg * factor_along(plate, Way(way.angle - half)));
    return book.figure(path, "R_k", Kind::length,
                       sides / (2 * chord * rise * plate.width * plate.depth),
                       "geometry: circle through crown and ends, each as the plate has moved");
}

std::string_view state_path(AirState state) noexcept {
    switch (state) {
        case AirState::built: return "states/built";
        case AirState::cold_dry: return "states/cold-dry";
        case AirState::cold_damp: return "states/cold-damp";
        case AirState::warm_dry: return "states/warm-dry";
        case AirState::warm_damp: break;
    }
    return "states/warm-damp";
}

template <class N>
void solve_states(const PaneTask<N>& task, const TimberStates<N>& timber,
                  const std::array<N, kAirStates.size()>& sheet, PaneSums<N>& pane) {
    for (const AirState which : kAirStates) {
        const auto index = static_cast<std::size_t>(which);
        const TimberFactors<N>& factors = timber[index];
        PaneState<N>& state = pane.states[index];
        state.sheet = sheet[index];
        state.base = factors.base.thickness;
        state.top = factors.top.thickness;
        state.post = factors.post;
        const auto figure = [&](std::string_view key, std::string_view symbol, N value,
                                std::string_view source) {
            return task.book.figure({"panes", task.side, state_path(which), key}, symbol,
                                    Kind::length, value, source);
        };
        const auto air = [&](std::string_view key, std::string_view symbol, Kind kind, N value,
                             std::string_view source) {
            return task.book.figure({"panes", task.side, state_path(which), key}, symbol, kind,
                                    value, source);
        };
        const Air given = air_of(task.c.service, which);
        constexpr std::string_view kAir = "the case file's range of service";
        state.temperature =
            air("temperature", "T", Kind::temperature,
                task.book.input("T", Kind::temperature, given.temperature), kAir);
        state.humidity = air("humidity", "RH", Kind::ratio,
                             task.book.input("RH", Kind::ratio, given.humidity), kAir);
        state.moisture = air("moisture_content", "M", Kind::plain, factors.moisture,
                             "equilibrium moisture content of the timber, %");
        state.opening_height =
            figure("opening_height", "H_k", pane.opening_height,
                   "the posts' length stands still: timber does not move along its grain");
        constexpr std::string_view kSized = "size as built times the sheet's factor";
        state.length = figure("length", "L_k", pane.length * state.sheet, kSized);
        state.height = figure("height", "W_k", pane.height * state.sheet, kSized);
        if (which == AirState::built) {
            constexpr std::string_view kBuilt = "as built";
            state.opening_least =
                figure("opening_least", "O_least", pane.opening_length, kBuilt);
            state.opening_most = figure("opening_most", "O_most", pane.opening_length, kBuilt);
            state.base_radius = state.top_radius = pane.radius;
            continue;
        }
        const auto path = [&](std::string_view key) {
            return FigurePath{"panes", task.side, state_path(which), key};
        };
        const N in_posts = pane.start_in_post + pane.end_in_post;
        const N below = moved_side(task, factors.base, path("side_at_base"), pane);
        const N above = moved_side(task, factors.top, path("side_at_top"), pane);
        constexpr std::string_view kSource = "glazing line outside both posts, on the moved plates; posts by how their rings may lie";
        state.opening_least =
            figure("opening_least", "O_least", smaller(below, above) - in_posts * factors.post_most, kSource);
        state.opening_most =
            figure("opening_most", "O_most", larger(below, above) - in_posts * factors.post_least, kSource);
        state.base_radius = state.top_radius = N(0);
        if (pane.curved) {
            state.base_radius = groove_radius(task, factors.base, path("radius_at_base"), pane);
            state.top_radius = groove_radius(task, factors.top, path("radius_at_top"), pane);
        }
    }
}

template double moved_radius(Book<double>&, const PlateFactors<double>&, const FigurePath&, double,
                             double, double);
template Traced moved_radius(Book<Traced>&, const PlateFactors<Traced>&, const FigurePath&, Traced,
                             Traced, double);
template void solve_states(const PaneTask<double>&, const TimberStates<double>&,
                           const std::array<double, kAirStates.size()>&, PaneSums<double>&);
template void solve_states(const PaneTask<Traced>&, const TimberStates<Traced>&,
                           const std::array<Traced, kAirStates.size()>&, PaneSums<Traced>&);

}  // namespace bowfront::fit
