#include "bowfront/fit/loading_path.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "bowfront/fit/section_clearance.hpp"
#include "bowfront/fit/swing.hpp"
#include "loading_steps.hpp"

namespace bowfront::fit {
namespace {

constexpr double kPi = std::numbers::pi;

// A pane and its room in one state of the air. Tolerances of the frame are laid on the pane: a
// groove that is narrower by δ is met as a pane that is thicker by δ is, an opening that is shorter
// as a longer pane. Round groove ends it meets a little sooner so, never later.
struct Met {
    const PaneSums<double>& pane;
    const PaneState<double>& state;
    const Layout& frame;   // in that state
    double groove_width;   // for the swing, mm
    double top_depth;
    double opening_height;
    double filled_length;  // in plan, the frame's tolerances laid on it
    double length;
    double height;
    double thickness;      // in the grooves of the swing
    double filled;         // thickness in plan, the frame's tolerances laid on it
    double sideways;       // room between the posts' rabbets
    double upright;        // room between the grooves' bottoms

    [[nodiscard]] double play() const { return std::max(0.0, groove_width - thickness) / 2; }
};

enum class Sizes { nominal, worst };

Met met(const PaneSums<double>& pane, const PaneState<double>& state, const Layout& frame,
        Sizes sizes) {
    const bool worst = sizes == Sizes::worst;
    const double share = worst ? 1 : 0;
    const FrameTolerances<double>& t = pane.tolerances;
    const double width = pane.edge(PaneEdge::bottom).face_clearance + pane.formed_thickness;
    const double thickness = worst ? pane.thickest : pane.formed_thickness;
    const double longer = share * pane.length_tolerance;
    const double taller = share * pane.height_tolerance;
    const double shorter = share * (t.opening_length + 2 * t.post_depth);
    return {.pane = pane,
            .state = state,
            .frame = frame,
            .groove_width = width - share * t.groove_width,
            .top_depth = state.top_depth - share * t.top_depth,
            .opening_height = state.opening_height - share * t.opening_height,
            .filled_length = state.length + longer + shorter,
            .length = state.length + longer,
            .height = state.height + taller,
            .thickness = thickness,
            .filled = thickness + share * t.groove_width,
            .sideways = state.opening_least + 2 * pane.reach * state.post - state.length - longer -
                        shorter,
            .upright = state.opening_height + state.base_depth + state.top_depth - state.height -
                       taller - share * (t.opening_height + t.base_depth + t.top_depth)};
}

// The tightest place so far.
struct Tightest {
    double clearance = 0;
    Narrow at = Narrow::posts;
    double tilt = 0;  // rad
    bool taken = false;

    void take(double now, Narrow where, double tilted = 0) {
        if (!taken || now < clearance) {
            *this = {now, where, tilted, true};
        }
    }
};

Tightest past_the_timber(const Met& met, double own_radius) {
    constexpr double kRounding = 1e-9;  // mm; a pane that just fills its room is not too long
    if (met.sideways < -kRounding) {  // no thinner pane would do
        Tightest too_long;
        too_long.take(met.sideways, Narrow::between_posts);
        too_long.take(met.upright, Narrow::upright);
        return too_long;
    }
    const PaneSection section{met.filled_length, met.filled, own_radius, met.state.base_radius,
                              met.play()};
    const SectionClearance clearance =
        section_clearance(met.pane, section, met.frame, met.state);
    Tightest tightest;
    tightest.take(clearance.posts, Narrow::posts);
    tightest.take(clearance.base, Narrow::base);
    tightest.take(met.upright, Narrow::upright);
    return tightest;
}

std::string in_words(const Tightest& tightest) {
    switch (tightest.at) {
        case Narrow::posts: return "between pane and posts, the same at every height";
        case Narrow::base: return "in the base's groove, its round ends included";
        case Narrow::upright: return "between the grooves' bottoms in base and top";
        case Narrow::top_cheeks:
            return "between the top groove's cheeks, the pane tilted by " +
                   degrees(tightest.tilt);
        case Narrow::top_bottom:
            return "under the top groove's bottom, the pane tilted by " + degrees(tightest.tilt);
        case Narrow::between_posts: break;
    }
    return "between the posts' grooves or rabbets, round ends included, both ends together";
}

SwingExtremes swing_of(const Met& met, double own_radius) {
    if (!met.pane.curved) {
        return swing_extremes({met.height, met.opening_height, met.thickness, 0, 0, 0});
    }
    // A nominal under half a turn may be a little over it at worst; the swing ends there.
    const double sweep = std::min(met.length / own_radius, std::nextafter(kPi, 0.0));
    return swing_extremes({met.height, met.opening_height, met.thickness, own_radius, sweep,
                           met.state.top_radius});
}

Tightest under_the_top(const Met& met, double own_radius) {
    const SwingExtremes way = swing_of(met, own_radius);
    Tightest tightest;
    tightest.take(met.groove_width - way.widest.width, Narrow::top_cheeks, way.widest.tilt);
    tightest.take(met.top_depth - way.deepest.depth, Narrow::top_bottom, way.deepest.tilt);
    tightest.take(met.sideways, Narrow::between_posts);
    return tightest;
}

// The radii that a pane may have when nothing holds it, in a state. One that is held cold goes in
// as it is held; a flat one has none.
std::vector<double> own_radii(const PaneSums<double>& pane, const PaneState<double>& state,
                              Sizes sizes) {
    if (!pane.heated) {
        return {state.base_radius};
    }
    const RadiusSums<double>& error = pane.radius_error;
    if (sizes == Sizes::nominal) {
        return {error.free_radius * state.sheet};
    }
    return {error.free_radius_least * state.sheet, error.free_radius_most * state.sheet};
}

// A pane of several bends stands off its groove's middle line on its own; what that leaves at the
// cheeks counts, too, until it is flexed to the groove.
Tightest bent_in_the_base(const Met& met, Tightest tightest, Sizes sizes) {
    const RadiusSums<double>& error = met.pane.radius_error;
    const double taken = sizes == Sizes::worst ? error.rise_off_worst : error.rise_off;
    if (tightest.at != Narrow::between_posts) {
        tightest.take(met.play() - taken / 2, Narrow::base);
    }
    return tightest;
}

Passage passage(const Met& met, Loading loading, Sizes sizes) {
    const bool lifted = loading == Loading::lift_and_drop;
    const auto follow = [&](double own_radius) {
        return lifted ? under_the_top(met, own_radius) : past_the_timber(met, own_radius);
    };
    Tightest tightest;
    for (const double radius : own_radii(met.pane, met.state, sizes)) {
        const Tightest now = follow(radius);
        tightest.take(now.clearance, now.at, now.tilt);
    }
    if (met.pane.is_run()) {
        tightest = bent_in_the_base(met, tightest, sizes);
    }
    Passage result{tightest.at, in_words(tightest), tightest.clearance, tightest.clearance};
    if (met.pane.heated && tightest.clearance < 0) {
        result.flexed = follow(lifted ? met.state.top_radius : met.state.base_radius).clearance;
    }
    return result;
}

// What a pane can't do, whatever its size; empty where it can move as its loading asks.
std::string refusal(const Case& c, const PaneSums<double>& pane) {
    const bool grooves = c.frame.post.hold.value == Hold::groove;
    switch (c.frame.loading.value) {
        case Loading::slide_in: return {};
        case Loading::beaded:
            return grooves ? "the pane's ends, which can't be laid into the posts' grooves" : "";
        case Loading::lift_and_drop: break;
    }
    if (grooves) {
        return "the pane's ends, which stand in grooves and can only slide along them";
    }
    if (pane.is_run()) {
        return "the pane's several bends, which can't be swung in";
    }
    return pane.sweep < kPi ? "" : "the pane's ends, which are turned past the way of the swing";
}

std::string_view still_off(Loading loading) {
    switch (loading) {
        case Loading::slide_in: return "the top";
        case Loading::beaded: return "the top and all beads";
        case Loading::lift_and_drop: break;
    }
    return "the posts' beads";
}

// The frame in every state of the air.
std::array<Layout, kAirStates.size()> moved_frames(const Case& c, const Layout& layout) {
    Book<double> book;
    const TimberStates<double> timber = timber_states(c, book);
    std::array<Layout, kAirStates.size()> frames;
    for (std::size_t i = 0; i < frames.size(); ++i) {
        frames[i] = i == 0 ? layout : layout_in(layout, timber[i]);
    }
    return frames;
}

LoadingPath path_of(const Case& c, const PaneSums<double>& pane,
                    const std::array<Layout, kAirStates.size()>& frames) {
    LoadingPath path;
    path.side = pane.side;
    const Loading loading = c.frame.loading.value;
    path.still_off = still_off(loading);
    path.tightest = refusal(c, pane);
    if (!path.tightest.empty()) {
        return path;
    }
    for (const AirState which : kAirStates) {
        const auto i = static_cast<std::size_t>(which);
        const auto follow = [&](Sizes sizes) {
            return passage(met(pane, pane.states[i], frames[i], sizes), loading, sizes);
        };
        path.states.push_back({which, follow(Sizes::nominal), follow(Sizes::worst)});
    }
    const Passage& built = path.states.front().nominal;
    path.possible = built.clearance >= 0;
    path.clearance = built.clearance;
    path.tightest = built.tightest;
    path.steps = loading_steps(c, pane, path.states);
    return path;
}

}  // namespace

const PassageInState* LoadingPath::tightest_state() const noexcept {
    const auto tighter = [](const PassageInState& a, const PassageInState& b) {
        return a.worst.clearance < b.worst.clearance;
    };
    const auto found = std::min_element(states.begin(), states.end(), tighter);
    return found == states.end() ? nullptr : &*found;
}

LoadingPath loading_path(const Case& c, const PaneSums<double>& pane, const Layout& layout) {
    return path_of(c, pane, moved_frames(c, layout));
}

std::vector<LoadingPath> loading_paths(const Case& c, const CaseSums<double>& sums,
                                       const Layout& layout) {
    const auto frames = moved_frames(c, layout);
    std::vector<LoadingPath> paths;
    for (const auto& pane : sums.panes) {
        paths.push_back(path_of(c, pane, frames));
    }
    return paths;
}

}  // namespace bowfront::fit
