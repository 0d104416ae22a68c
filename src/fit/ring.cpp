#include "bowfront/fit/ring.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "bowfront/base/contract.hpp"
#include "bowfront/fit/layout.hpp"

namespace bowfront::fit {
namespace {

constexpr double kPi = std::numbers::pi;

// A piece that is shorter than this on either edge is none, mm. A choice of this tool.
constexpr double kLeastEdge = 1;
// No rail is cut into more; the case file takes no more either.
constexpr int kMostPieces = 100;
// Corners that turn by less are mitred: a butt would end in a feather edge. Common practice.
constexpr double kLeastButt = kPi / 6;

// What bounds a rail: from its start to its end along either edge.
struct Edges {
    std::vector<Segment> outer;
    std::vector<Segment> inner;
};

double length_of(const std::vector<Segment>& chain) {
    double sum = 0;
    for (const Segment& s : chain) {
        sum += s.length();
    }
    return sum;
}

bool straight(const std::vector<Segment>& chain) { return chain.front().straight(); }

Point midway(Point a, Point b) { return (a + b) * 0.5; }

// Run counter-clockwise: out along the outer edge, back along the inner one.
Contour outline_of(const Edges& edges) {
    std::vector<Segment> around = edges.outer;
    around.push_back({edges.outer.back().to, edges.inner.back().to, 0});
    for (auto s = edges.inner.rbegin(); s != edges.inner.rend(); ++s) {
        around.push_back(s->reversed());
    }
    around.push_back({edges.inner.front().from, edges.outer.front().from, 0});
    return Contour::from_segments(around);
}

double angle_between(Point a, Point b) {
    return std::atan2(std::abs(cross(a, b)), std::abs(dot(a, b)));
}

RailPiece piece_of(CaseSide side, const Edges& edges) {
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

// What a butt joint adds to the outer edge of the rail that runs through.
struct Tails {
    std::vector<Segment> before;
    std::vector<Segment> after;
};

std::vector<RailPiece> pieces_of(CaseSide side, std::vector<Edges> parts, const Tails& tails) {
    std::vector<Segment>& first = parts.front().outer;
    first.insert(first.begin(), tails.before.begin(), tails.before.end());
    std::vector<Segment>& last = parts.back().outer;
    last.insert(last.end(), tails.after.begin(), tails.after.end());
    std::vector<RailPiece> pieces;
    for (const Edges& edges : parts) {
        pieces.push_back(piece_of(side, edges));
        pieces.back().name = std::string(side_text(side));
        if (parts.size() > 1) {
            pieces.back().name += "-" + std::to_string(pieces.size());
        }
    }
    return pieces;
}

template <class Within>
bool all_within(const std::vector<RailPiece>& pieces, Within within) {
    return std::all_of(pieces.begin(), pieces.end(), within);
}

std::vector<RailPiece> rail(CaseSide side, const Edges& edges, const Tails& tails,
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

// Whether the rail that starts at a corner runs through a butt there, not the one that ends.
bool next_runs_through(const std::vector<Segment>& previous, const std::vector<Segment>& next) {
    if (straight(previous) != straight(next)) {
        return straight(next);
    }
    return length_of(next) >= length_of(previous);
}

// Cuts the end of a rail's outer edge off where a line from its inner corner meets it; gives what is
// cut off. Nothing where they don't meet.
std::optional<std::vector<Segment>> cut_end(std::vector<Segment>& outer, Point corner, Point way) {
    const double far = length_of(outer);
    const Segment ray{corner, corner + way * far, 0};
    std::vector<Segment> tail;
    while (!outer.empty()) {
        Segment last = outer.back();
        outer.pop_back();
        const std::vector<Point> points = meetings(ray, last);
        if (points.empty()) {
            tail.insert(tail.begin(), last);
            continue;
        }
        const double share = last.nearest(points.front());
        if (share * last.length() < kLeastEdge && outer.empty()) {
            return std::nullopt;
        }
        if ((1 - share) * last.length() > kJoint) {
            tail.insert(tail.begin(), last.part(share, 1));
        }
        if (share * last.length() > kJoint) {
            Segment kept = last.part(0, share);
            if (!tail.empty()) {
                kept.to = tail.front().from;
            }
            outer.push_back(kept);
        }
        return outer.empty() ? std::nullopt : std::optional(tail);
    }
    return std::nullopt;
}

std::vector<Segment> turned_round(const std::vector<Segment>& chain) {
    std::vector<Segment> result;
    for (auto s = chain.rbegin(); s != chain.rend(); ++s) {
        result.push_back(s->reversed());
    }
    return result;
}

// Cuts a butt joint at the corner between two rails; false where it can't be cut there.
bool butt(Edges& previous, Tails& previous_tails, Edges& next, Tails& next_tails,
          bool next_through) {
    const Point corner = next.inner.front().from;
    if (next_through) {
        auto tail = cut_end(previous.outer, corner, next.inner.front().tangent(0) * -1);
        if (!tail) {
            return false;
        }
        next_tails.before = std::move(*tail);
        return true;
    }
    std::vector<Segment> backwards = turned_round(next.outer);
    auto tail = cut_end(backwards, corner, previous.inner.back().tangent(1));
    if (!tail) {
        return false;
    }
    next.outer = turned_round(backwards);
    previous_tails.after = turned_round(*tail);
    return true;
}

// Whether a line set in is still one: each side runs the way that it ran, inside the outer edge.
bool sound(const GlazingLine& line, const SideChains& inner, const Contour& inner_edge,
           const Contour& outer_edge) {
    for (std::size_t i = 0; i < inner.size(); ++i) {
        if (straight(inner[i])) {
            if (dot(inner[i].back().to - inner[i].front().from,
                    line.sides[i].front().tangent(0)) <= 0) {
                return false;
            }
            continue;
        }
        double was = 0;
        double now = 0;
        for (const Segment& s : line.sides[i]) {
            was += std::abs(s.sweep());
        }
        for (const Segment& s : inner[i]) {
            now += std::abs(s.sweep());
        }
        if (now >= was + kPi) {  // its ends have passed each other
            return false;
        }
    }
    if (inner_edge.area() <= 0 || touch(inner_edge, outer_edge) ||
        where(outer_edge, inner_edge.vertices().front().at) != Side::inside) {
        return false;
    }
    const std::vector<Region> whole = unite({{inner_edge, {}}});
    return whole.size() == 1 && whole.front().holes.empty() &&
           std::abs(whole.front().area() - inner_edge.area()) <=
               kJoint * inner_edge.perimeter();
}

Contour joined(const SideChains& sides) {
    std::vector<Segment> all;
    for (const auto& side : sides) {
        all.insert(all.end(), side.begin(), side.end());
    }
    return Contour::from_segments(all);
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
    const std::size_t count = outer.size();
    std::vector<Edges> edges(count);
    std::vector<Tails> tails(count);
    for (std::size_t i = 0; i < count; ++i) {
        edges[i] = {outer[i], (*inner)[i]};
    }
    for (std::size_t next = 0; next < count && build.corner.value == RailCorner::butt; ++next) {
        const std::size_t previous = (next + count - 1) % count;
        const Point before = (*inner)[previous].back().tangent(1);
        const Point after = (*inner)[next].front().tangent(0);
        const double turn = std::atan2(cross(before, after), dot(before, after));
        if (turn >= kLeastButt) {
            (void)butt(edges[previous], tails[previous], edges[next], tails[next],
                       next_runs_through(line.sides[previous], line.sides[next]));
        }
    }
    for (std::size_t i = 0; i < count; ++i) {
        const auto pieces =
            rail(static_cast<CaseSide>(i), edges[i], tails[i], line.sides[i], build);
        if (pieces.empty()) {
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
