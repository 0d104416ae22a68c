#include "geom/overlay.hpp"

#include <algorithm>
#include <map>
#include <utility>

#include "bowfront/base/contract.hpp"
#include "geom/meetings.hpp"
#include "geom/winding.hpp"

namespace bowfront {
namespace {

void append_edges(std::vector<Edge>& edges, const Contour& outline, std::size_t area) {
    for (const Segment& segment : outline.segments()) {
        BOWFRONT_EXPECTS(std::abs(segment.bulge) <= 1);
        edges.push_back({segment, area});
    }
}

/// The edges of all areas, each with its own area on the left.
std::vector<Edge> edges_of(const std::vector<Region>& first, const std::vector<Region>& second) {
    std::vector<Edge> edges;
    std::size_t area = 0;
    for (const std::vector<Region>* group : {&first, &second}) {
        for (const Region& region : *group) {
            append_edges(edges, region.outer.counter_clockwise(), area);
            for (const Contour& hole : region.holes) {
                append_edges(edges, hole.counter_clockwise().reversed(), area);
            }
            ++area;
        }
    }
    return edges;
}

/// One place where edges run, and which areas' edges do.
struct Run {
    Piece piece;
    Point middle;
    /// Area to the number of its edges that run along the piece, less those that run against it.
    std::map<std::size_t, int> net;
};

/// An area by its cut edges.
struct Outline {
    std::vector<Segment> segments;
    std::vector<std::size_t> runs;  ///< the run that each segment belongs to
    Box box;
};

struct Layout {
    std::vector<Run> runs;
    std::vector<Outline> outlines;
};

/// Collects the pieces of all edges; pieces over one another become one run.
class LayoutBuilder {
  public:
    LayoutBuilder(std::size_t areas, double reach) : reach_(reach) {
        layout_.outlines.resize(areas);
    }

    void add(std::size_t area, const Piece& piece) {
        const std::size_t number = run_of(piece);
        Run& run = layout_.runs[number];
        run.net[area] += run.piece.from == piece.from ? 1 : -1;
        Outline& outline = layout_.outlines[area];
        outline.segments.push_back(piece.segment);
        outline.runs.push_back(number);
        outline.box.add(piece.segment.box());
    }

    [[nodiscard]] Layout take() { return std::move(layout_); }

  private:
    std::size_t run_of(const Piece& piece) {
        const Point middle = piece.segment.at(0.5);
        std::vector<std::size_t>& between = runs_between_[std::minmax(piece.from, piece.to)];
        for (const std::size_t run : between) {
            if (distance(layout_.runs[run].middle, middle) <= reach_) {
                return run;
            }
        }
        between.push_back(layout_.runs.size());
        layout_.runs.push_back({piece, middle, {}});
        return between.back();
    }

    double reach_;
    Layout layout_;
    std::map<std::pair<std::size_t, std::size_t>, std::vector<std::size_t>> runs_between_;
};

/// Which side of a run `winding_beside` looks at. The middle of a straight that is level but for
/// rounding may be as high as its upper end, and counts as above it then.
bool looks_left(const Run& run) {
    const Segment& segment = run.piece.segment;
    if (!segment.straight()) {
        return segment.bulge < 0;
    }
    const bool below_upper_end = run.middle.y < std::max(segment.from.y, segment.to.y);
    return below_upper_end ? segment.to.y < segment.from.y : segment.from.x < segment.to.x;
}

/// How often an area's outline runs round a point just beside the middle of one of its own runs:
/// outside an arc; right of and a little above a straight, where `winding` puts what lies on one.
/// From there neither the straight counts nor what the arc adds to its chord, so that no rounding
/// decides between the two sides.
int winding_beside(const Layout& layout, std::size_t number, const Outline& outline) {
    std::vector<Segment> seen;
    for (std::size_t i = 0; i < outline.segments.size(); ++i) {
        const Segment& segment = outline.segments[i];
        if (outline.runs[i] != number) {
            seen.push_back(segment);
        } else if (!segment.straight()) {
            seen.push_back({segment.from, segment.to, 0});
        }
    }
    return winding(seen, layout.runs[number].middle);
}

/// Whether the area lies left and right of a run.
std::pair<bool, bool> sides(const Layout& layout, std::size_t number, std::size_t area) {
    const Run& run = layout.runs[number];
    const Outline& outline = layout.outlines[area];
    const auto own = run.net.find(area);
    if (own == run.net.end()) {
        Box middle;
        middle.add(run.middle);
        const bool inside =
            within(outline.box, middle, 0) && winding(outline.segments, run.middle) > 0;
        return {inside, inside};
    }
    const int turns = winding_beside(layout, number, outline);
    return looks_left(run) ? std::pair(turns > 0, turns - own->second > 0)
                           : std::pair(turns + own->second > 0, turns > 0);
}

}  // namespace

std::vector<Border> overlay(const std::vector<Region>& first, const std::vector<Region>& second,
                            double reach) {
    const std::size_t areas = first.size() + second.size();
    LayoutBuilder builder(areas, reach);
    for (const auto& [piece, area] : cut_at_meetings(edges_of(first, second), reach)) {
        builder.add(area, piece);
    }
    const Layout layout = builder.take();
    std::vector<Border> borders;
    for (std::size_t run = 0; run < layout.runs.size(); ++run) {
        Border border{layout.runs[run].piece, {}, {}};
        for (std::size_t area = 0; area < areas; ++area) {
            const auto [left, right] = sides(layout, run, area);
            bool Cover::*const operand = area < first.size() ? &Cover::first : &Cover::second;
            border.left.*operand = border.left.*operand || left;
            border.right.*operand = border.right.*operand || right;
        }
        borders.push_back(border);
    }
    return borders;
}

}  // namespace bowfront
