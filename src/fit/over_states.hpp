#pragma once
/// \file
/// The worst of a figure over the states of the air.

#include <string>
#include <type_traits>

#include "solve.hpp"

namespace bowfront::fit {

/// The least or most of a figure over the states of the air, each named.
/// @param choose  `least_of` or `most_of`
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

}  // namespace bowfront::fit
