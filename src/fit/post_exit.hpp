#pragma once
/// \file
/// Where a line of several small arcs leaves the post that it starts in.

#include <vector>

#include "bowfront/fit/post.hpp"

namespace bowfront::fit {

/// Length from the chain's start, which is the corner point, to where it first leaves the post, mm.
/// @param faces  of the post; none for a round one
/// @throws ContractError where it ends inside the post
[[nodiscard]] double length_to_exit(const Post& post, const std::vector<PostFace>& faces,
                                    const std::vector<Segment>& chain);

}  // namespace bowfront::fit
