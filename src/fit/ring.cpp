#include "bowfront/fit/ring.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "bowfront/base/contract.hpp"
#include "bowfront/fit/layout.hpp"
#include "bowfront/geom/region.hpp"
#include "rail_blank.hpp"

namespace bowfront::fit {
namespace {

constexpr double kPi = std::numbers::pi;

// No rail is cut into more; the case file takes no more either.
constexpr int kMostPieces = 100;

Point midway(Point a, Point b) { return (a + b) * 0.5; }

double angle_between(Point a, Point b) {
    return std::atan2(std::abs(cross(a, b)), std::abs(dot(a, b)));
}

RailPiece piece_of(const CaseSide& side, const Edges& edges) {
    RailPiece piece;
    piece.side = side;
    piece.outline = outline_of(edges);
    piece.curved = !straight(edges.inner);
    const Point way = piece.curved
                          ? midway(edges.outer.back().to, edges.inner.back().to) -
                                midway(edges.outer.front().from, edges.inner.front().from)
                          : edges.inner.back().to - edges.inner.front().from;
    piece.grain = way * (1 / norm(way));
    const Box box =
        piece.outline.moved({-std::atan2(piece.grain.y, piece.grain.x), {}, false}).box();
    piece.length = box.width();
    piece.width = box.height();
    for (const Segment& s : piece.outline.segments()) {
        if (!s.straight()) {
            piece.run_out = std::max({piece.run_out, angle_between(s.tangent(0), piece.grain),
                                      angle_between(s.tangent(1), piece.grain)});
        }
    }
    return piece;
}

// The angle that an arc turns through from its start to the ray at `angle`, in its own sense: 0 to
// under a whole turn.
double turn_to(const Segment& arc, Point centre, double angle) {
    const Point arm = arc.from - centre;
    double turn = angle - std::atan2(arm.y, arm.x);
    turn = arc.bulge > 0 ? turn : -turn;
    return turn - 2 * kPi * std::floor(turn / (2 * kPi));
}

// A chain of arcs of one circle, cut at rays from its centre; nothing where a piece would be none.
std::optional<std::vector<std::vector<Segment>>> cut_at(const std::vector<Segment>& chain,
                                                        Point centre,
                                                        const std::vector<double>& angles) {
    const double radius = chain.front().radius();
    std::vector<double> places{0};
    for (const double angle : angles) {
        places.push_back(radius * turn_to(chain.front(), centre, angle));
    }
    places.push_back(length_of(chain));
    std::vector<std::vector<Segment>> parts;
    for (std::size_t i = 0; i + 1 < places.size(); ++i) {
        if (places[i + 1] - places[i] < kLeastEdge) {
            return std::nullopt;
        }
        parts.push_back(stretch(chain, places[i], places[i + 1]));
        // Both sides of a cut have the same point for their end.
        parts[i].front().from = i == 0 ? chain.front().from : parts[i - 1].back().to;
    }
    parts.back().back().to = chain.back().to;
    return parts;
}

// A curved rail in so many pieces; nothing where that can't be.
std::optional<std::vector<Edges>> divided(const Edges& edges, const std::vector<Segment>& line,
                                          int count) {
    const Point centre = line.front().centre();
    double sweep = 0;
    for (const Segment& s : line) {
        sweep += s.sweep();
    }
    const Point arm = line.front().from - centre;
    std::vector<double> angles;
    for (int i = 1; i < count; ++i) {
        angles.push_back(std::atan2(arm.y, arm.x) + sweep * i / count);
    }
    const auto outer = cut_at(edges.outer, centre, angles);
    const auto inner = cut_at(edges.inner, centre, angles);
    if (!outer || !inner) {
        return std::nullopt;
    }
    std::vector<Edges> parts;
    for (std::size_t i = 0; i < outer->size(); ++i) {
        parts.push_back({(*outer)[i], (*inner)[i]});
    }
    return parts;
}

std::vector<RailPiece> pieces_of(const CaseSide& side, std::vector<Edges> parts,
                                 const Tails& tails) {
    add_tails(parts.front().outer, parts.back().outer, tails);
    std::vector<RailPiece> pieces;
    for (const Edges& edges : parts) {
        RailPiece piece = piece_of(side, edges);
        piece.name = std::string(side_text(side));
        if (parts.size() > 1) {
            piece.number = static_cast<int>(pieces.size()) + 1;
            piece.name += "-" + std::to_string(piece.number);
        }
        pieces.push_back(std::move(piece));
    }
    return pieces;
}

template <class Within>
bool all_within(const std::vector<RailPiece>& pieces, Within within) {
    return std::all_of(pieces.begin(), pieces.end(), within);
}

std::vector<RailPiece> rail(const CaseSide& side, const Edges& edges, const Tails& tails,
                            const std::vector<Segment>& line, const Build& build) {
    if (straight(line)) {
        return pieces_of(side, {edges}, tails);
    }
    if (build.segments) {
        const auto parts = divided(edges, line, build.segments->value);
        return parts ? pieces_of(side, *parts, tails) : std::vector<RailPiece>{};
    }
    std::vector<RailPiece> best;  // the fewest that keep to the run-out, or else the most there are
    bool along = false;
    for (int count = 1; count <= kMostPieces; ++count) {
        const auto parts = divided(edges, line, count);
        if (!parts) {
            break;
        }
        std::vector<RailPiece> pieces = pieces_of(side, *parts, tails);
        const bool keeps = all_within(pieces, [&](const RailPiece& piece) {
            return piece.run_out <= build.run_out.value;
        });
        if (keeps && all_within(pieces, [&](const RailPiece& piece) {
                return piece.width <= build.board_width.value;
            })) {
            return pieces;
        }
        if (!along) {
            best = std::move(pieces);
        }
        along = along || keeps;
    }
    return best;
}

double turned_through(const std::vector<Segment>& chain) {
    double sum = 0;
    for (const Segment& s : chain) {
        sum += std::abs(s.sweep());
    }
    return sum;
}

// Whether a line set in is still one inside the outer edge, its arcs' ends not past each other.
bool sound(const GlazingLine& line, const SideChains& inner, const Contour& inner_edge,
           const Contour& outer_edge) {
    for (std::size_t i = 0; i < inner.size(); ++i) {
        if (turned_through(inner[i]) >= turned_through(line.sides[i]) + kPi) {
            return false;
        }
    }
    return !touch(inner_edge, outer_edge) &&
           where(outer_edge, inner_edge.vertices().front().at) == Side::inside;
}

// The cut at a piece's start.
Segment start_cut(const RailPiece& piece) {
    const auto segments = piece.outline.segments();
    return segments.back().reversed();
}

}  // namespace

std::optional<Ring> ring(const GlazingLine& line, const SideChains& outer, const Build& build) {
    BOWFRONT_EXPECTS(build.rails());
    const auto inner = sides_set_out(line, -build.inset.value);
    if (!inner) {
        return std::nullopt;
    }
    Ring result;
    result.inner = joined(*inner);
    if (!sound(line, *inner, result.inner, joined(outer))) {
        return std::nullopt;
    }
    const std::vector<RailBlank> rails = rail_blanks(line, outer, *inner, build.corner.value);
    for (std::size_t i = 0; i < rails.size(); ++i) {
        const auto pieces =
            rail(line.order[i], rails[i].edges, rails[i].tails, line.sides[i], build);
        if (pieces.empty() || !all_within(pieces, [](const RailPiece& piece) {
                return goes_round(piece.outline);
            })) {
            return std::nullopt;
        }
        result.pieces.insert(result.pieces.end(), pieces.begin(), pieces.end());
    }
    for (const RailPiece& piece : result.pieces) {
        result.joints.push_back(start_cut(piece));
    }
    return result;
}

}  // namespace bowfront::fit
