#include "geom/stitch.hpp"

#include <algorithm>
#include <map>
#include <numbers>
#include <tuple>

#include "bowfront/base/contract.hpp"
#include "geom/outline_joining.hpp"

namespace bowfront {
namespace {

using Loop = std::vector<std::size_t>;  ///< numbers of pieces that follow each other

/// The direction in which a segment leaves its start, as seen where it crosses a small circle
/// round it. Unlike tangents this tells apart edges that touch; on the way out a segment of up to
/// half a turn crosses the circle just once. @param radius > 0, under the segment's chord
double bearing(const Segment& segment, double radius) {
    const double half = segment.sweep() / 2;
    const double chord = distance(segment.from, segment.to);
    const double share =
        segment.straight() ? radius / chord : std::asin(radius / chord * std::sin(half)) / half;
    const Point way = segment.at(std::min(share, 1.0)) - segment.from;
    return std::atan2(way.y, way.x);
}

/// Finds for each piece the one that follows it round the same area.
class Successors {
  public:
    explicit Successors(const std::vector<Piece>& pieces) : pieces_(pieces) {
        for (std::size_t i = 0; i < pieces.size(); ++i) {
            vertices_[pieces[i].from].leaving.push_back(i);
            vertices_[pieces[i].to].arriving.push_back(i);
        }
        following_.resize(pieces.size());
        for (const auto& [number, vertex] : vertices_) {
            pair_up(vertex);
        }
    }

    [[nodiscard]] std::size_t operator[](std::size_t piece) const { return following_[piece]; }

  private:
    struct Ends {
        std::vector<std::size_t> leaving;
        std::vector<std::size_t> arriving;
    };

    /// Around a vertex the area lies left of each arriving piece, up to the leaving piece that
    /// comes first when one turns clockwise from where the arriving one came from.
    void pair_up(const Ends& vertex) {
        if (vertex.leaving.size() == 1) {
            following_[vertex.arriving.front()] = vertex.leaving.front();
            return;
        }
        const double radius = free_radius(vertex);
        std::vector<std::size_t> open = vertex.leaving;
        for (const std::size_t arriving : vertex.arriving) {
            const double back = bearing(pieces_[arriving].segment.reversed(), radius);
            const auto turn = [&](std::size_t leaving) {
                const double angle = back - bearing(pieces_[leaving].segment, radius);
                return angle > 0 ? angle : angle + 2 * std::numbers::pi;
            };
            const auto next = std::ranges::min_element(open, {}, turn);
            following_[arriving] = *next;
            open.erase(next);
        }
    }

    /// The radius of a circle that all pieces at the vertex cross.
    [[nodiscard]] double free_radius(const Ends& vertex) const {
        double shortest = HUGE_VAL;
        for (const auto& group : {vertex.leaving, vertex.arriving}) {
            for (const std::size_t i : group) {
                shortest =
                    std::min(shortest, distance(pieces_[i].segment.from, pieces_[i].segment.to));
            }
        }
        return shortest / 2;
    }

    const std::vector<Piece>& pieces_;
    std::map<std::size_t, Ends> vertices_;
    std::vector<std::size_t> following_;
};

/// Parts a loop wherever it comes by the same vertex again.
void append_parted(std::vector<Loop>& loops, const Loop& loop, const std::vector<Piece>& pieces) {
    Loop open;
    for (const std::size_t piece : loop) {
        open.push_back(piece);
        const std::size_t here = pieces[piece].to;
        const auto start =
            std::ranges::find_if(open, [&](std::size_t i) { return pieces[i].from == here; });
        if (start != open.end()) {
            loops.emplace_back(start, open.end());
            open.erase(start, open.end());
        }
    }
}

std::vector<Loop> loops_of(const std::vector<Piece>& pieces) {
    const Successors next(pieces);
    std::vector<Loop> loops;
    std::vector<bool> used(pieces.size(), false);
    for (std::size_t first = 0; first < pieces.size(); ++first) {
        Loop loop;
        for (std::size_t i = first; !used[i]; i = next[i]) {
            used[i] = true;
            loop.push_back(i);
        }
        append_parted(loops, loop, pieces);
    }
    return loops;
}

/// An outline with what it is sorted by.
struct Outlined {
    Contour contour;
    double area;  ///< mm², negative for a hole
    Box box;
};

/// Largest first; equal but for rounding, to a millionth of a mm², by place.
auto rank(const Outlined& outline) {
    constexpr double kPerSquareMillimetre = 1e6;
    return std::tuple(-std::round(std::abs(outline.area) * kPerSquareMillimetre), outline.box.low.x,
                      outline.box.low.y);
}

std::vector<Outlined> outlines_of(const std::vector<Piece>& pieces) {
    std::vector<Outlined> outlines;
    for (const Loop& loop : loops_of(pieces)) {
        std::vector<Segment> segments;
        for (const std::size_t piece : loop) {
            segments.push_back(pieces[piece].segment);
        }
        Contour contour = join_neighbours(std::move(segments));
        const double area = contour.area();
        // A strip as thin as a sliver has an area of its width times half its outline.
        if (std::abs(area) > kSliver * contour.perimeter() / 2) {
            const Box box = contour.box();
            outlines.push_back({std::move(contour), area, box});
        }
    }
    std::ranges::stable_sort(outlines, {}, rank);
    return outlines;
}

/// Whether a hole lies in an outline, which it may touch but not cross.
bool lies_in(const Outlined& hole, const Outlined& outline) {
    for (const Segment& segment : hole.contour.segments()) {
        const Side side = where(outline.contour, segment.at(0.5));
        if (side != Side::on_edge) {
            return side == Side::inside;
        }
    }
    return false;
}

}  // namespace

bool closed(const std::vector<Piece>& pieces) {
    std::map<std::size_t, int> surplus;
    for (const Piece& piece : pieces) {
        ++surplus[piece.from];
        --surplus[piece.to];
    }
    return std::ranges::all_of(surplus, [](const auto& vertex) { return vertex.second == 0; });
}

std::vector<Region> stitch(const std::vector<Piece>& pieces) {
    BOWFRONT_EXPECTS(closed(pieces));
    const std::vector<Outlined> outlines = outlines_of(pieces);
    std::vector<Region> regions;
    std::vector<const Outlined*> outers;
    for (const Outlined& outline : outlines) {
        if (outline.area > 0) {
            outers.push_back(&outline);
            regions.push_back({outline.contour, {}});
        }
    }
    for (const Outlined& outline : outlines) {
        if (outline.area > 0) {
            continue;
        }
        // From the smallest: a hole belongs to the innermost area around it.
        for (std::size_t i = outers.size(); i-- > 0;) {
            if (lies_in(outline, *outers[i])) {
                regions[i].holes.push_back(outline.contour);
                break;
            }
        }
    }
    return regions;
}

}  // namespace bowfront
