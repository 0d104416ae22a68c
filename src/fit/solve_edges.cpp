#include <cmath>
#include <string>
#include <type_traits>

#include "solve.hpp"

namespace bowfront::fit {
namespace {

constexpr std::string_view kGeometry = "geometry";
constexpr std::string_view kLimits = "limits of all tolerances added";

template <class N>
struct Frame {
    N base, top, post, groove;  // nominal depths and width
    FrameTolerances<N> tolerances;
};

template <class N>
Frame<N> frame_of(const PaneTask<N>& task, const PaneSums<N>& pane) {
    const auto& groove = task.c.frame.groove;
    const auto& tolerances = task.c.tolerance;
    const AsMade& made = task.spec.made;
    const auto size = [&](std::string_view key, std::string_view symbol,
                          const std::optional<MeasuredSize>& measured,
                          const Sourced<double>& designed) {
        return measured ? measured_size(task, key, symbol, *measured)
                        : task.input(symbol, designed);
    };
    Frame<N> frame;
    frame.base = size("base_depth", "D_b", made.base_depth, groove.base_depth);
    frame.top = size("top_depth", "D_t", made.top_depth, groove.top_depth);
    frame.post = size("post_depth", "D_p", made.post_depth, groove.post_depth);
    frame.groove = size("groove_width", "g", made.groove_width, groove.width);
    const auto limit = [&](std::string_view key, std::string_view symbol,
                           const std::optional<MeasuredSize>& measured,
                           const Sourced<ToleranceSpec>& spec, N of) {
        return measured ? measured_limit(task, key, symbol, *measured)
                        : tolerance(task, "tolerance/" + std::string(key), symbol, spec,
                                    value_of(of));
    };
    frame.tolerances = {
        limit("opening_height", "δ_H", made.opening_height, tolerances.opening,
              pane.opening_height),
        limit("opening_length", "δ_O", made.opening_length, tolerances.opening,
              pane.opening_length),
        limit("base_depth", "δ_b", made.base_depth, tolerances.groove_depth, frame.base),
        limit("top_depth", "δ_top", made.top_depth, tolerances.groove_depth, frame.top),
        limit("post_depth", "δ_p", made.post_depth, tolerances.groove_depth, frame.post),
        limit("groove_width", "δ_g", made.groove_width, tolerances.groove_width, frame.groove)};
    return frame;
}

// How far along the glazing line a pane's end goes into its post groove before it touches: its
// outer corner meets the straight groove's square bottom, or the round end of the groove in base
// or top, which runs past that bottom by one cutter radius.
template <class N>
N reach_of(const PaneTask<N>& task, const Frame<N>& frame, const PaneSums<N>& pane) {
    using std::asin;
    using std::sin;
    using std::sqrt;
    const N cutter = task.input("k_d", task.c.cutter.diameter) / 2;
    const N half_groove = frame.groove / 2;
    const N half_pane = pane.thickness / 2;
    const N crown_centre = frame.post + cutter - half_groove;
    N bottom = frame.post;
    N round_end;
    if (pane.curved) {
        const N outer = pane.radius + half_pane;
        bottom = pane.radius * asin(pane.radius * sin(frame.post / pane.radius) / outer);
        // By the half angle: its sine keeps the digits that a cosine near 1 would lose.
        const N square = (half_groove * half_groove - half_pane * half_pane) /
                         (4 * outer * pane.radius);
        round_end = crown_centre + pane.radius * 2 * asin(sqrt(larger(N(0), square)));
    } else {
        round_end = crown_centre +
                    sqrt(larger(N(0), half_groove * half_groove - half_pane * half_pane));
    }
    return task.figure("reach", "r", smaller(bottom, round_end),
                       "geometry: the end's corner against square bottom and round groove end");
}

// What a pane takes of a straight groove's width when its end stands `depth` along the line in it.
template <class N>
N width_taken(const PaneSums<N>& pane, N thickness, N depth) {
    using std::cos;
    if (!pane.curved) {
        return thickness;
    }
    const N turned = depth / pane.radius;
    return pane.radius * (1 - cos(turned)) + thickness / 2 * (1 + cos(turned));
}

template <class N>
class EdgeWriter {
  public:
    EdgeWriter(const PaneTask<N>& task, PaneEdge edge)
        : task_(task), edge_("edges/" + std::string(edge_text(edge))) {}
    N operator()(std::string_view key, std::string_view symbol, N value,
                 std::string_view source) const {
        return task_.book.figure({"panes", task_.side, edge_, key}, symbol, Kind::length, value,
                                 source);
    }

  private:
    const PaneTask<N>& task_;
    std::string edge_;
};

// The least or most of a figure over the states of the air, each named.
template <class N, class Value>
N over_states(const PaneTask<N>& task, const PaneSums<N>& pane, std::string_view key,
              std::string_view symbol, N (*choose)(const N&, const N&), Value value) {
    N chosen{};
    for (const AirState which : kAirStates) {
        N now = value(pane.states[static_cast<std::size_t>(which)]);
        if constexpr (!std::is_same_v<N, double>) {  // plain numbers have no names to put together
            const std::string state(state_text(which));
            now = task.figure("states/" + state + "/" + std::string(key),
                              std::string(symbol) + "(" + state + ")", now,
                              "nominal sizes in this state of the air");
        }
        chosen = which == AirState::built ? now : choose(chosen, now);
    }
    return chosen;
}

template <class N>
N least_of(const N& a, const N& b) {
    return smaller(a, b);
}
template <class N>
N most_of(const N& a, const N& b) {
    return larger(a, b);
}

template <class N>
void solve_bottom(const PaneTask<N>& task, const Frame<N>& frame, PaneSums<N>& pane) {
    const EdgeWriter<N> figure(task, PaneEdge::bottom);
    EdgeSums<N>& edge = pane.edges[0];
    const N limit = frame.tolerances.base_depth;
    constexpr std::string_view kStands = "the pane stands on the groove's bottom";
    edge.engagement = figure("engagement/nominal", "e_b", frame.base, kStands);
    edge.settled = figure("engagement/settled", "e_bs", edge.engagement, kStands);
    const auto depth = [&](const PaneState<N>& state) { return frame.base * state.base; };
    const auto over = [&](std::string_view key, auto choose) {
        return over_states(task, pane, key, "e_b", choose, depth);
    };
    edge.engagement_least = figure("engagement/least", "e_b,least",
                                   over("bottom_least", least_of<N>) - limit, kLimits);
    edge.engagement_most = figure("engagement/most", "e_b,most",
                                  over("bottom_most", most_of<N>) + limit, kLimits);
    edge.clearance = figure("edge_clearance/nominal", "c_b", N(0), kStands);
    edge.clearance_least = figure("edge_clearance/least", "c_b,least", N(0), kStands);
}

template <class N>
void solve_top(const PaneTask<N>& task, const Frame<N>& frame, PaneSums<N>& pane) {
    const EdgeWriter<N> figure(task, PaneEdge::top);
    EdgeSums<N>& edge = pane.edges[1];
    const auto& t = frame.tolerances;
    const N limits = pane.height_tolerance + t.opening_height + t.base_depth;
    edge.engagement = figure("engagement/nominal", "e_t",
                             pane.height - pane.opening_height - frame.base,
                             "what stands out of base groove and opening");
    edge.settled = figure("engagement/settled", "e_ts", edge.engagement,
                          "gravity takes up all play at the bottom");
    const auto standing = [&](const PaneState<N>& state) {
        return pane.height * state.sheet - pane.opening_height - frame.base * state.base;
    };
    edge.engagement_least =
        figure("engagement/least", "e_t,least",
               over_states(task, pane, "top_least", "e_t", least_of<N>, standing) - limits,
               kLimits);
    edge.engagement_most = figure(
        "engagement/most", "e_t,most",
        smaller(over_states(task, pane, "top_most", "e_t", most_of<N>, standing) + limits,
                frame.top + t.top_depth),
        "limits of all tolerances added; no deeper than the groove");
    edge.clearance =
        figure("edge_clearance/nominal", "c_t", frame.top - edge.engagement, kGeometry);
    edge.clearance_least = figure(
        "edge_clearance/least", "c_t,least",
        over_states(task, pane, "top_clearance", "c_t", least_of<N>,
                    [&](const PaneState<N>& state) {
                        return frame.top * state.top - standing(state);
                    }) -
            limits - t.top_depth,
        kLimits);
}

template <class N>
void solve_end(const PaneTask<N>& task, const Frame<N>& frame, PaneEdge which,
               PaneSums<N>& pane) {
    const EdgeWriter<N> figure(task, which);
    EdgeSums<N>& edge = pane.edges[static_cast<std::size_t>(which)];
    const auto& t = frame.tolerances;
    edge.engagement = figure("engagement/nominal", "e", (pane.length - pane.opening_length) / 2,
                             "centred between the posts");
    edge.settled =
        figure("engagement/settled", "e_s", pane.length - pane.opening_length - frame.post,
               "shoved hard against the other post");
    const std::string name(edge_text(which));
    edge.engagement_least = figure(
        "engagement/least", "e_least",
        over_states(task, pane, name + "_least", "e_s", least_of<N>,
                    [&](const PaneState<N>& state) {
                        return pane.length * state.sheet - state.opening_most -
                               frame.post * state.post;
                    }) -
            pane.length_tolerance - t.opening_length - t.post_depth,
        kLimits);
    edge.engagement_most = figure("engagement/most", "e_most",
                                  over_states(task, pane, name + "_most", "r", most_of<N>,
                                              [&](const PaneState<N>& state) {
                                                  return pane.reach * state.post;
                                              }) +
                                      t.post_depth,
                                  "shoved hard against this post, its groove at its deepest");
    edge.clearance =
        figure("edge_clearance/nominal", "c", frame.post - edge.engagement, kGeometry);
    edge.clearance_least =
        figure("edge_clearance/least", "c_least", N(0), "the pane may lie against this post");
}

template <class N>
void solve_faces(const PaneTask<N>& task, const Frame<N>& frame, PaneSums<N>& pane) {
    const N narrow = frame.groove - frame.tolerances.groove_width;
    for (const PaneEdge which : kPaneEdges) {
        const EdgeWriter<N> figure(task, which);
        EdgeSums<N>& edge = pane.edges[static_cast<std::size_t>(which)];
        const bool in_post = which == PaneEdge::start || which == PaneEdge::end;
        const N taken = in_post ? width_taken(pane, pane.formed_thickness, edge.engagement)
                                : pane.formed_thickness;
        const N most = in_post ? width_taken(pane, pane.thickest, edge.engagement_most)
                               : pane.thickest;
        edge.face_clearance = figure("face_clearance/nominal", "q", frame.groove - taken,
                                     "groove width less thickness as formed, and in a straight "
                                     "groove less the pane's curve");
        edge.face_clearance_least = figure("face_clearance/least", "q_least", narrow - most,
                                           "narrowest groove, thickest pane, deepest engagement");
    }
}

template <class N>
void solve_room(const PaneTask<N>& task, const Frame<N>& frame, PaneSums<N>& pane) {
    const auto& t = frame.tolerances;
    pane.room_vertical.nominal =
        task.figure("room/vertical/nominal", "v",
                    pane.opening_height + frame.base + frame.top - pane.height,
                    "opening and both depths less the pane");
    pane.room_vertical.worst =
        task.figure("room/vertical/worst", "v_worst",
                    over_states(task, pane, "room_vertical", "v", least_of<N>,
                                [&](const PaneState<N>& state) {
                                    return pane.opening_height + frame.base * state.base +
                                           frame.top * state.top - pane.height * state.sheet;
                                }) -
                        pane.height_tolerance - t.opening_height - t.base_depth - t.top_depth,
                    kLimits);
    pane.room_sideways.nominal =
        task.figure("room/sideways/nominal", "u",
                    pane.opening_length + 2 * pane.reach - pane.length,
                    "opening and what each end can reach less the pane");
    pane.room_sideways.worst =
        task.figure("room/sideways/worst", "u_worst",
                    over_states(task, pane, "room_sideways", "u", least_of<N>,
                                [&](const PaneState<N>& state) {
                                    return state.opening_least + 2 * pane.reach * state.post -
                                           pane.length * state.sheet;
                                }) -
                        pane.length_tolerance - t.opening_length - 2 * t.post_depth,
                    kLimits);
}

// The largest groove width that a pane's top edge takes while its foot swings in, just clear of the
// base: over tilt angles φ, e·sin φ + t·cos φ + f·(1 − cos φ), where e stands in the groove, measured
// along the pane: e·cos φ = W·cos φ + (f + t)·sin φ − H.
double widest_tilt(double height, double opening, double rise, double thickness) {
    constexpr int kSteps = 4096;
    constexpr double kSteepest = 1.5;
    double widest = thickness;
    for (int i = 1; i <= kSteps; ++i) {
        const double angle = kSteepest * i / kSteps;
        const double depth =
            height * std::cos(angle) + (rise + thickness) * std::sin(angle) - opening;
        if (depth <= 0) {
            break;  // out of the groove from here on
        }
        widest = std::max(widest, depth * std::tan(angle) + thickness * std::cos(angle) +
                                      rise * (1 - std::cos(angle)));
    }
    return widest;
}

template <class N>
void solve_loading(const PaneTask<N>& task, const Frame<N>& frame, PaneSums<N>& pane) {
    using std::sqrt;
    const auto& t = frame.tolerances;
    LoadingSums<N>& loading = pane.loading;
    loading.tilt_width = loading.tilt_width_worst = N(0);
    loading.tilt_rise = loading.tilt_rise_worst = N(0);
    const auto play = [&](N nominal, N worst, std::string_view source) {
        loading.play = task.figure("loading/play", "p", nominal, source);
        loading.play_worst = task.figure("loading/play_worst", "p_worst", worst, kLimits);
    };
    if (task.c.frame.loading.value == Loading::slide_in) {
        play(pane.room_sideways.nominal, pane.room_sideways.worst,
             "the pane slides down between the post grooves' bottoms");
        return;
    }
    if (task.c.frame.loading.value == Loading::beaded) {
        play(smaller(pane.room_vertical.nominal, pane.room_sideways.nominal),
             smaller(pane.room_vertical.worst, pane.room_sideways.worst),
             "the pane is laid into open rabbets");
        return;
    }
    play(pane.opening_height + frame.top - pane.height,
         over_states(task, pane, "lifted_play", "p", least_of<N>,
                     [&](const PaneState<N>& state) {
                         return pane.opening_height + frame.top * state.top -
                                pane.height * state.sheet;
                     }) -
             pane.height_tolerance - t.opening_height - t.top_depth,
         "lifted to the top groove's bottom, the foot must clear the base");
    const auto tilt = [&](std::string_view key, std::string_view symbol, N height, N opening,
                          N thickness) {
        return task.book.solved(
            {"panes", task.side, key}, symbol, Kind::length,
            widest_tilt(value_of(height), value_of(opening), value_of(pane.rise),
                        value_of(thickness)),
            "largest e·sin φ + t·cos φ + f·(1 − cos φ) over the swing, e = W + (f + t)·tan φ − "
            "H/cos φ",
            {pane.height, pane.opening_height, pane.rise, thickness}, kGeometry);
    };
    const N tall = pane.height + pane.height_tolerance;
    const N low = pane.opening_height - t.opening_height;
    loading.tilt_width = tilt("loading/tilt_width", "b", pane.height, pane.opening_height,
                              pane.formed_thickness);
    loading.tilt_width_worst =
        tilt("loading/tilt_width_worst", "b_worst", tall, low, pane.thickest);
    const N deep = pane.rise + pane.formed_thickness;
    const N deep_worst = pane.rise + pane.thickest;
    loading.tilt_rise =
        task.figure("loading/tilt_rise", "z",
                    sqrt(pane.height * pane.height + deep * deep) - pane.opening_height,
                    "most that a tilted pane and the spread of its curved edge stand up");
    loading.tilt_rise_worst = task.figure("loading/tilt_rise_worst", "z_worst",
                                          sqrt(tall * tall + deep_worst * deep_worst) - low, kLimits);
}

}  // namespace

template <class N>
void solve_edges(const PaneTask<N>& task, PaneSums<N>& pane) {
    const Frame<N> frame = frame_of(task, pane);
    pane.tolerances = frame.tolerances;
    pane.reach = reach_of(task, frame, pane);
    solve_bottom(task, frame, pane);
    solve_top(task, frame, pane);
    solve_end(task, frame, PaneEdge::start, pane);
    solve_end(task, frame, PaneEdge::end, pane);
    solve_faces(task, frame, pane);
    pane.least_engagement = task.figure(
        "least_engagement", "e_min",
        task.c.fit.least_engagement ? task.input("e_fit", *task.c.fit.least_engagement)
                                    : larger(N(3), pane.thickness),
        "the case file, or the larger of 3 mm and the thickness (common practice, no source)");
    for (const PaneEdge which : kPaneEdges) {
        EdgeWriter<N>(task, which)("engagement/limit", "e_min", pane.least_engagement,
                                   "one limit for all edges of a pane");
    }
    solve_room(task, frame, pane);
    solve_loading(task, frame, pane);
}

template void solve_edges(const PaneTask<double>&, PaneSums<double>&);
template void solve_edges(const PaneTask<Traced>&, PaneSums<Traced>&);

}  // namespace bowfront::fit
