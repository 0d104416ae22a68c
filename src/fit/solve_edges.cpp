#include <cmath>
#include <string>
#include <type_traits>

#include "over_states.hpp"

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
// @param radius  of the mid-surface there; 0 for a straight
template <class N>
N reach_of(const PaneTask<N>& task, const Frame<N>& frame, const PaneSums<N>& pane, N radius) {
    using std::asin;
    using std::sin;
    using std::sqrt;
    const N cutter = task.input("k_d", task.c.cutter.diameter) / 2;
    const N half_groove = frame.groove / 2;
    const N half_pane = pane.thickness / 2;
    const N crown_centre = frame.post + cutter - half_groove;
    N bottom = frame.post;
    N round_end;
    if (value_of(radius) > 0) {
        const N outer = radius + half_pane;
        bottom = radius * asin(radius * sin(frame.post / radius) / outer);
        // By the half angle: its sine keeps the digits that a cosine near 1 would lose.
        const N square = (half_groove * half_groove - half_pane * half_pane) /
                         (4 * outer * radius);
        round_end = crown_centre + radius * 2 * asin(sqrt(larger(N(0), square)));
    } else {
        round_end = crown_centre +
                    sqrt(larger(N(0), half_groove * half_groove - half_pane * half_pane));
    }
    return smaller(bottom, round_end);
}

// Of both ends; where they are of one kind there is nothing to tell them apart by.
template <class N>
void solve_reach(const PaneTask<N>& task, const Frame<N>& frame, PaneSums<N>& pane) {
    constexpr std::string_view kSource =
        "geometry: the end's corner against square bottom and round groove end";
    const N start = reach_of(task, frame, pane, pane.start_radius);
    if (value_of(pane.start_radius) == value_of(pane.end_radius)) {
        pane.start_reach = pane.end_reach = pane.reach = task.figure("reach", "r", start, kSource);
        return;
    }
    pane.start_reach = task.figure("reach/start", "r_s", start, kSource);
    pane.end_reach = task.figure("reach/end", "r_e",
                                 reach_of(task, frame, pane, pane.end_radius), kSource);
    pane.reach = task.figure("reach", "r", smaller(pane.start_reach, pane.end_reach),
                             "the smaller of both ends'");
}

// What a pane takes of a straight groove's width when its end stands `depth` along the line in it.
// @param radius  of the mid-surface there; 0 for a straight
template <class N>
N width_taken(N radius, N thickness, N depth) {
    using std::cos;
    if (value_of(radius) == 0) {
        return thickness;
    }
    const N turned = depth / radius;
    return radius * (1 - cos(turned)) + thickness / 2 * (1 + cos(turned));
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

// The depths of the grooves in each state.
template <class N>
void solve_depths(const PaneTask<N>& task, const Frame<N>& frame, PaneSums<N>& pane) {
    for (const AirState which : kAirStates) {
        PaneState<N>& state = pane.states[static_cast<std::size_t>(which)];
        const auto depth = [&](std::string_view key, std::string_view symbol, N value) {
            return task.book.figure({"panes", task.side, state_path(which), key}, symbol,
                                    Kind::length, value,
                                    "depth as built times the timber's movement across its grain");
        };
        state.base_depth = depth("groove_depth/base", "D_b,k", frame.base * state.base);
        state.top_depth = depth("groove_depth/top", "D_t,k", frame.top * state.top);
        state.post_depth = depth("groove_depth/post", "D_p,k", frame.post * state.post);
    }
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
    const N reach = which == PaneEdge::start ? pane.start_reach : pane.end_reach;
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
                                                  return reach * state.post;
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
        const N radius = which == PaneEdge::start ? pane.start_radius : pane.end_radius;
        const N taken = in_post ? width_taken(radius, pane.formed_thickness, edge.engagement)
                                : pane.formed_thickness;
        const N most = in_post ? width_taken(radius, pane.thickest, edge.engagement_most)
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

}  // namespace

template <class N>
void solve_edges(const PaneTask<N>& task, PaneSums<N>& pane) {
    const Frame<N> frame = frame_of(task, pane);
    pane.tolerances = frame.tolerances;
    solve_reach(task, frame, pane);
    solve_depths(task, frame, pane);
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
    solve_loading(task, frame.top, pane);
}

template void solve_edges(const PaneTask<double>&, PaneSums<double>&);
template void solve_edges(const PaneTask<Traced>&, PaneSums<Traced>&);

}  // namespace bowfront::fit
