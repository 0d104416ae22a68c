#pragma once
/// \file
/// How far a pane's edges stand in the frame, measured on the finished solids. The sums are not
/// asked, so that they can be held against it.

#include "bowfront/solid/solid.hpp"

namespace bowfront::solid {

/// How far a pane reaches into a plate, mm: from the plate's largest level face that looks towards
/// the pane to the pane's edge. Negative where the pane ends short of it.
/// @param pane   stands upright (Z)
/// @param plate  lies level, wholly above or below the pane's middle
/// @throws KernelError where the plate has no such face
[[nodiscard]] double engagement_in_plate(const Solid& pane, const Solid& plate);

/// How far a pane's end reaches into a post, mm, along the pane's mid-line in the middle of the
/// height that both share: from the middle of its end to where that line leaves the skin of the
/// post. The skin is the post as it was before its groove: all faces that have the whole post
/// behind them.
/// Negative where the pane ends short of the post.
/// @param pane  upright (Z), of one thickness, flat or bent to an arc at that end
/// @param post  upright (Z); convex but for its grooves and rabbets
/// @param near  in plan; of the pane's ends the one nearest to it is meant
/// @throws KernelError where the shapes are not such, or the line never leaves the post
[[nodiscard]] double engagement_in_post(const Solid& pane, const Solid& post, Point near);

}  // namespace bowfront::solid
