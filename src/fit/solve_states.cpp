#include <string>

#include "solve.hpp"

namespace bowfront::fit {
namespace {

// The length of a side of the glazing line on a plate that has moved.
template <class N>
N moved_side(const PaneTask<N>& task, const std::optional<ArcSizes<N>>& front,
             const PlateFactors<N>& plate, const std::string& key, const PaneSums<N>& pane) {
    if (!pane.curved) {
        const bool across = task.spec.side == CaseSide::front || task.spec.side == CaseSide::back;
        return pane.side_length * (across ? plate.width : plate.depth);
    }
    const N width = plate.width;
    const N depth = plate.depth;
    // A measured opening says how long the side has become, of the same shape.
    const double longer = value_of(pane.side_length) / value_of(front->length);
    return task.book.solved({"panes", task.side, key}, "S_k", Kind::length,
                            stretched_arc(value_of(front->radius) * longer,
                                          value_of(front->sweep), value_of(width),
                                          value_of(depth)),
                            "length of the arc stretched along chord and rise: integral of "
                            "R·sqrt((k_x·cos φ)² + (k_y·sin φ)²) over the sweep",
                            {front->radius, front->sweep, width, depth},
                            "geometry: the arc becomes a piece of an ellipse");
}

}  // namespace

template <class N>
void solve_states(const PaneTask<N>& task, const std::optional<ArcSizes<N>>& front,
                  const TimberStates<N>& timber,
                  const std::array<N, kAirStates.size()>& sheet, PaneSums<N>& pane) {
    for (const AirState which : kAirStates) {
        const auto index = static_cast<std::size_t>(which);
        const TimberFactors<N>& factors = timber[index];
        PaneState<N>& state = pane.states[index];
        state.sheet = sheet[index];
        state.base = factors.base.thickness;
        state.top = factors.top.thickness;
        state.post = factors.post;
        if (which == AirState::built) {
            state.opening_least = state.opening_most = pane.opening_length;
            continue;
        }
        const std::string key = "states/" + std::string(state_text(which));
        const N in_posts = (pane.start_in_post + pane.end_in_post) * factors.post;
        const N below = moved_side(task, front, factors.base, key + "/side_at_base", pane);
        const N above = moved_side(task, front, factors.top, key + "/side_at_top", pane);
        constexpr std::string_view kSource = "glazing line outside both posts, on the moved plates";
        state.opening_least =
            task.figure(key + "/opening_least", "O_least", smaller(below, above) - in_posts, kSource);
        state.opening_most =
            task.figure(key + "/opening_most", "O_most", larger(below, above) - in_posts, kSource);
    }
}

template void solve_states(const PaneTask<double>&, const std::optional<ArcSizes<double>>&,
                           const TimberStates<double>&,
                           const std::array<double, kAirStates.size()>&, PaneSums<double>&);
template void solve_states(const PaneTask<Traced>&, const std::optional<ArcSizes<Traced>>&,
                           const TimberStates<Traced>&,
                           const std::array<Traced, kAirStates.size()>&, PaneSums<Traced>&);

}  // namespace bowfront::fit
