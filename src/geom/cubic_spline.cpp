#include "bowfront/geom/cubic_spline.hpp"

#include <algorithm>

#include "bowfront/base/contract.hpp"
#include "geom/polynomial.hpp"
#include "geom/spline_crossing.hpp"

namespace bowfront {
namespace {

/// A tridiagonal system of equations, one row a point, for the derivatives at the points.
struct Row {
    double before = 0;
    double here = 0;
    double after = 0;
    Point right;
};

/// Source: Gaussian elimination without pivots; the rows are diagonally dominant.
std::vector<Point> solved(std::vector<Row> rows) {
    for (std::size_t i = 1; i < rows.size(); ++i) {
        const double factor = rows[i].before / rows[i - 1].here;
        rows[i].here -= factor * rows[i - 1].after;
        rows[i].right = rows[i].right - rows[i - 1].right * factor;
    }
    std::vector<Point> unknowns(rows.size());
    for (std::size_t i = rows.size(); i-- > 0;) {
        const Point known =
            i + 1 < rows.size() ? rows[i].right - unknowns[i + 1] * rows[i].after : rows[i].right;
        unknowns[i] = known * (1 / rows[i].here);
    }
    return unknowns;
}

/// What the parameter runs from point to point, before it is brought to 0 to 1.
std::vector<double> steps(const FreeLine& line) {
    std::vector<double> all;
    for (std::size_t i = 1; i < line.points.size(); ++i) {
        const double chord = distance(line.points[i - 1], line.points[i]);
        BOWFRONT_EXPECTS(chord > kCrossing);
        all.push_back(line.spacing == PointSpacing::chord_length ? chord : std::sqrt(chord));
    }
    return all;
}

/// The row of a first or last point: `step` and `chord` lead to its neighbour, or from it.
Row end_row(const std::optional<Point>& given, double step, Point chord) {
    const Point mean = chord * (1 / step);
    if (!given) {
        return {.here = 2, .right = mean * 3};
    }
    BOWFRONT_EXPECTS(norm(*given) > 0);
    // As fast as the mean over the neighbouring piece: with chord lengths, at the speed of 1 that
    // a line has when it is run by its length.
    return {.here = 1, .right = *given * (norm(mean) / norm(*given))};
}

/// Derivatives at the points, by the parameter that `step` belongs to, for C2.
std::vector<Point> slopes(const FreeLine& line, const std::vector<double>& step) {
    const auto& p = line.points;
    const std::size_t last = p.size() - 1;
    std::vector<Row> rows(p.size());
    rows[0] = end_row(line.start_direction, step[0], p[1] - p[0]);
    rows[0].after = line.start_direction ? 0 : 1;
    rows[last] = end_row(line.end_direction, step[last - 1], p[last] - p[last - 1]);
    rows[last].before = line.end_direction ? 0 : 1;
    for (std::size_t i = 1; i < last; ++i) {
        const double a = 1 / step[i - 1];
        const double b = 1 / step[i];
        rows[i] = {a, 2 * (a + b), b,
                   (p[i] - p[i - 1]) * (3 * a * a) + (p[i + 1] - p[i]) * (3 * b * b)};
    }
    return solved(std::move(rows));
}

/// The coordinates of a polynomial of points.
struct Coordinates {
    Polynomial x;
    Polynomial y;
};

Coordinates first_derivative(const std::array<Point, 4>& c) {
    return {{c[1].x, 2 * c[2].x, 3 * c[3].x}, {c[1].y, 2 * c[2].y, 3 * c[3].y}};
}

/// The numerator of the curvature, x′·y″ − y′·x″. Its terms of third degree cancel: left out.
Polynomial bending(const std::array<Point, 4>& c) {
    return {2 * cross(c[1], c[2]), 6 * cross(c[1], c[3]), 6 * cross(c[2], c[3])};
}

/// The numerator of the curvature's derivative: b′·v² − 3·b·(v·v′) for curvature b/v³.
Polynomial bending_change(const std::array<Point, 4>& c) {
    const Coordinates v = first_derivative(c);
    const Polynomial b = bending(c);
    const Polynomial square = v.x * v.x + v.y * v.y;
    const Polynomial product = v.x * derivative(v.x) + v.y * derivative(v.y);
    return derivative(b) * square + (-3.0) * (b * product);
}

}  // namespace

CubicSpline::CubicSpline(const FreeLine& line) {
    BOWFRONT_EXPECTS(line.points.size() >= 2);
    const std::vector<double> step = steps(line);
    const std::vector<Point> slope = slopes(line, step);
    double whole = 0;
    for (const double one : step) {
        whole += one;
    }
    double run = 0;
    for (std::size_t i = 0; i < step.size(); ++i) {
        const Point from = line.points[i];
        const Point to = line.points[i + 1];
        const Point leaving = slope[i] * step[i];
        const Point arriving = slope[i + 1] * step[i];
        const double start = run / whole;
        run += step[i];
        pieces_.push_back({start,
                           i + 1 < step.size() ? run / whole : 1,
                           {from, leaving, (to - from) * 3 - leaving * 2 - arriving,
                            (from - to) * 2 + leaving + arriving},
                           to});
    }
}

CubicSpline CubicSpline::moved(const Motion& motion) const {
    CubicSpline there = *this;
    const Motion turn{.angle = motion.angle, .shift = {}, .mirrored = motion.mirrored};
    for (Piece& piece : there.pieces_) {
        piece.c[0] = motion(piece.c[0]);
        piece.end = motion(piece.end);
        for (std::size_t power = 1; power < piece.c.size(); ++power) {
            piece.c[power] = turn(piece.c[power]);
        }
    }
    return there;
}

CubicSpline CubicSpline::reversed() const {
    CubicSpline back;
    for (auto piece = pieces_.rbegin(); piece != pieces_.rend(); ++piece) {
        const auto& c = piece->c;
        back.pieces_.push_back(
            {1 - piece->to,
             1 - piece->from,
             {piece->end, (c[1] + c[2] * 2 + c[3] * 3) * -1, c[2] + c[3] * 3, c[3] * -1},
             c[0]});
    }
    return back;
}

CurveDerivatives CubicSpline::derivatives(double t) const {
    const auto next = std::upper_bound(pieces_.begin(), pieces_.end(), t,
                                       [](double at, const Piece& p) { return at < p.to; });
    const Piece& piece = next == pieces_.end() ? pieces_.back() : *next;
    const double width = piece.to - piece.from;
    const double w = (t - piece.from) / width;
    const auto& c = piece.c;
    return {t < piece.to ? c[0] + (c[1] + (c[2] + c[3] * w) * w) * w : piece.end,
            (c[1] + (c[2] * 2 + c[3] * (3 * w)) * w) * (1 / width),
            (c[2] * 2 + c[3] * (6 * w)) * (1 / (width * width))};
}

template <class PolynomialOf>
std::vector<double> CubicSpline::knots_and_roots(const PolynomialOf& polynomial_of) const {
    std::vector<double> all{0};
    for (const Piece& piece : pieces_) {
        for (const double w : bowfront::sign_changes(polynomial_of(piece.c))) {
            const double t = piece.from + w * (piece.to - piece.from);
            if (t > all.back() && t < piece.to) {
                all.push_back(t);
            }
        }
        all.push_back(piece.to);
    }
    return all;
}

std::vector<double> CubicSpline::knots() const {
    return knots_and_roots([](const auto&) { return Polynomial{0}; });
}

std::vector<double> CubicSpline::vertices() const {
    return knots_and_roots(bending_change);
}

std::vector<double> CubicSpline::sign_changes() const {
    return knots_and_roots(bending);
}

std::optional<CurveCrossing> CubicSpline::self_crossing() const {
    std::vector<CubicHull> hulls;
    for (const Piece& piece : pieces_) {
        const auto& c = piece.c;
        append_advancing(hulls, {{c[0], c[0] + c[1] * (1.0 / 3),
                                  c[0] + c[1] * (2.0 / 3) + c[2] * (1.0 / 3), piece.end},
                                 piece.from,
                                 piece.to});
    }
    return crossing(hulls);
}

}  // namespace bowfront
