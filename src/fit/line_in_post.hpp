#pragma once
/// \file
/// The glazing line of a pane as its posts hold it.

#include "solve.hpp"

namespace bowfront::fit {

/// What of a side lies in the post at one of its ends.
template <class N>
struct LineInPost {
    N length;  ///< along the line, mm
    N radius;  ///< smallest that the line has in there, mm; 0 for a straight
};

/// @param end  start or end
template <class N>
[[nodiscard]] LineInPost<N> line_in_post(const PaneTask<N>& task, PaneEdge end);

extern template LineInPost<double> line_in_post(const PaneTask<double>&, PaneEdge);
extern template LineInPost<Traced> line_in_post(const PaneTask<Traced>&, PaneEdge);

}  // namespace bowfront::fit
