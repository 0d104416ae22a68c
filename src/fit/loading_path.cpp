#include "bowfront/fit/loading_path.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "bowfront/base/number_text.hpp"
#include "check_list.hpp"

namespace bowfront::fit {
namespace {

constexpr double kPi = std::numbers::pi;
// Outlines that only touch share no more than this, mm².
constexpr double kTouching = 1e-6;

// The mid-line of a pane that nothing holds, laid in its groove so that crown and ends stand off
// alike, on different sides; a curved one then shifted towards the inside.
std::vector<Segment> mid_line(const PaneSums<double>& pane, const GlazingLine& line,
                              double own_radius, double shift) {
    const std::vector<Segment>& side = line.sides[index(pane.side)];
    if (!pane.curved) {
        const double middle = pane.start_in_post + pane.opening_length / 2;
        return stretch(side, middle - pane.length / 2, middle + pane.length / 2);
    }
    const Point centre = side.front().centre();
    const double half = std::cos(pane.sweep / 2);
    const double crown = pane.radius - (own_radius - pane.radius) * (1 - half) / (1 + half);
    const double sweep = pane.length / own_radius;
    const Point own_centre{centre.x, centre.y - crown + own_radius + shift};
    std::vector<Segment> pieces;
    const int count = sweep > kPi ? 2 : 1;
    for (int i = 0; i < count; ++i) {
        pieces.push_back(arc_segment(own_centre, own_radius, -kPi / 2 - sweep / 2 + i * sweep / count,
                                     sweep / count));
    }
    return pieces;
}

double area(const std::vector<Region>& regions) {
    double sum = 0;
    for (const Region& region : regions) {
        sum += region.area();
    }
    return sum;
}

// Half of what a section would have to be thinner to be clear.
template <class Clear>
double missing(double thickness, Clear clear) {
    double low = 0;
    double high = thickness;
    constexpr int kHalvings = 24;
    for (int i = 0; i < kHalvings; ++i) {
        const double middle = (low + high) / 2;
        (clear(middle) ? low : high) = middle;
    }
    return (low - thickness) / 2;
}

double post_clearance(const std::vector<Segment>& line, double thickness, const Layout& layout) {
    const auto body = [&](double t) { return band(line, t, BandEnd::square, BandEnd::square); };
    const auto clear = [&](double t) {
        return std::all_of(layout.posts.begin(), layout.posts.end(), [&](const PostLayout& post) {
            return area(intersect({{body(t), {}}}, post.section)) < kTouching;
        });
    };
    if (!clear(thickness)) {
        return missing(thickness, clear);
    }
    double least = HUGE_VAL;
    for (const PostLayout& post : layout.posts) {
        for (const Region& section : post.section) {
            least = std::min(least, gap(body(thickness), section.outer));
        }
    }
    return least;
}

double base_clearance(const std::vector<Segment>& line, double thickness,
                      const PlateGroove& groove) {
    const Region room{groove.bead ? *groove.bead : groove.band, {}};
    const auto body = [&](double t) { return band(line, t, BandEnd::square, BandEnd::square); };
    const auto clear = [&](double t) {
        return area(subtract({{body(t), {}}}, {room, {groove.band, {}}})) < kTouching;
    };
    if (!clear(thickness)) {
        return missing(thickness, clear);
    }
    return gap(body(thickness), groove.band);
}

double least(const SectionClearance& clearance) {
    return std::min(clearance.posts, clearance.base);
}

std::string degrees(double angle) { return rounded_text(angle * 180 / kPi, 1) + " degrees"; }

void tighten(LoadingPath& path, double clearance, std::string where) {
    if (path.tightest.empty() || clearance < path.clearance) {
        path.clearance = clearance;
        path.tightest = std::move(where);
    }
}

void take_sections(const PaneSums<double>& pane, const Layout& layout, LoadingPath& path) {
    const SectionClearance clearance = section_clearance(pane, layout, pane.radius);
    tighten(path, clearance.posts, "between pane and posts, the same at every height");
    tighten(path, clearance.base, "in the base's groove, its round ends included");
}

std::string depth_of(double length, std::string_view what) {
    return mm(length) + " into " + std::string(what);
}

LoadingPath slide_in(const Case& c, const PaneSums<double>& pane, const Layout& layout) {
    LoadingPath path;
    path.still_off = "the top";
    take_sections(pane, layout, path);
    path.possible = path.clearance >= 0 && pane.loading.play >= 0 && pane.room_vertical.nominal >= 0;
    const double base = c.frame.groove.base_depth.value;
    path.steps = {
        "Leave the top off.",
        std::string("Stand the pane's ends in the upper ends of the post grooves") +
            (pane.curved ? ", the bow outwards." : "."),
        "Slide it down " + mm(pane.opening_height) + " between the posts, and " +
            depth_of(base, "the base's groove") + " until it stands on the bottom.",
        "When all panes stand, lay the top on: its groove goes down over " +
            mm(pane.edge(PaneEdge::top).engagement) + " of this pane."};
    return path;
}

LoadingPath lay_in(const Case& c, const PaneSums<double>& pane, const Layout& layout) {
    LoadingPath path;
    path.still_off = "the top and all beads";
    take_sections(pane, layout, path);
    tighten(path, pane.room_vertical.nominal, "between the rabbets' bottoms in base and top");
    path.possible = path.clearance >= 0 && c.frame.post.hold.value == Hold::rabbet;
    path.steps = {
        "Leave the top off and all beads out: the rabbets are open to the inside.",
        "From inside, stand the pane " + depth_of(c.frame.groove.base_depth.value,
                                                  "the base's rabbet") +
            " and lay it against the outer cheeks, both ends alike in their posts.",
        "Fix the beads of the posts and of the base.",
        "Fix the top's beads to the top, so that its rabbets are grooves, and lay it on: it goes "
        "down over " + mm(pane.edge(PaneEdge::top).engagement) + " of this pane."};
    return path;
}

LoadingPath lift_and_drop(const Case& c, const PaneSums<double>& pane) {
    LoadingPath path;
    path.still_off = "the posts' beads";
    const bool swings = c.frame.post.hold.value == Hold::rabbet && pane.sweep < kPi;
    if (!swings) {
        path.tightest = "the pane's ends, which can't swing";
        return path;
    }
    const SwingExtremes way = swing_extremes({pane.height, pane.opening_height,
                                              pane.formed_thickness, pane.radius, pane.sweep});
    tighten(path, c.frame.groove.width.value - way.widest.width,
            "between the top groove's cheeks, the pane tilted by " + degrees(way.widest.tilt));
    tighten(path, c.frame.groove.top_depth.value - way.deepest.depth,
            "under the top groove's bottom, the pane tilted by " + degrees(way.deepest.tilt));
    tighten(path, pane.room_sideways.nominal, "between the posts' rabbets, both ends together");
    path.possible = path.clearance >= 0;
    const double base = c.frame.groove.base_depth.value;
    path.steps = {
        "Base, posts and top are on; leave the posts' beads out.",
        "From the open side of the rabbets, lean the pane with its top edge under the top's groove.",
        "Lift the top edge into the groove while the foot swings in, just clear of the base: at " +
            degrees(way.widest.tilt) + " it takes " + mm(way.widest.width) +
            " of the groove's width, at " + degrees(way.deepest.tilt) + " " +
            mm(way.deepest.depth) + " of its depth.",
        "Upright, it stands " + depth_of(pane.height - pane.opening_height, "the top's groove") +
            "; let it down " + depth_of(base, "the base's groove") + ".",
        "Fix the posts' beads."};
    return path;
}

}  // namespace

SectionClearance section_clearance(const PaneSums<double>& pane, const Layout& layout,
                                   double own_radius) {
    const auto groove =
        std::find_if(layout.base.grooves.begin(), layout.base.grooves.end(),
                     [&](const PlateGroove& each) { return each.side == pane.side; });
    const auto shifted = [&](double shift) {
        const std::vector<Segment> line = mid_line(pane, layout.line, own_radius, shift);
        return SectionClearance{post_clearance(line, pane.formed_thickness, layout),
                                base_clearance(line, pane.formed_thickness, *groove)};
    };
    SectionClearance best = shifted(0);
    if (!pane.curved || least(best) >= 0) {
        return best;
    }
    // The post grooves are straight: what the pane's curve takes of them it takes from one cheek,
    // and a shift within the base's groove gives some of it back.
    const double play = std::max(0.0, pane.edge(PaneEdge::bottom).face_clearance) / 2;
    constexpr int kShifts = 8;  // to each side
    for (int i = -kShifts; i <= kShifts; ++i) {
        const SectionClearance now = shifted(play * i / kShifts);
        if (least(now) > least(best)) {
            best = now;
        }
    }
    return best;
}

LoadingPath loading_path(const Case& c, const PaneSums<double>& pane, const Layout& layout) {
    switch (c.frame.loading.value) {
        case Loading::slide_in: return slide_in(c, pane, layout);
        case Loading::beaded: return lay_in(c, pane, layout);
        case Loading::lift_and_drop: break;
    }
    return lift_and_drop(c, pane);
}

}  // namespace bowfront::fit
