#pragma once
/// \file
/// The figures of how base and top are built.

#include <optional>
#include <string>
#include <vector>

#include "bowfront/figure/book.hpp"
#include "bowfront/fit/layout.hpp"
#include "bowfront/fit/rail_joint.hpp"

namespace bowfront {

/// A piece of a ring of rails.
template <class N>
struct RailSums {
    std::string name;  ///< `front-2`
    N length;          ///< extent along the grain, mm
    N width;           ///< extent across the grain, mm
    N area;            ///< in plan, mm²
    N run_out;         ///< most angle of the grain to a curved edge, rad
    N bending_left;    ///< share of the bending strength that this leaves
    N joint;           ///< length of the joint at its start, mm
};

/// Base or top of rails.
template <class N>
struct RingSums {
    std::string plate;  ///< `base` or `top`
    RailTongue<N> tongue;
    std::vector<RailSums<N>> pieces;
    N area;  ///< of the whole ring, mm²
};

/// The joint of one post.
template <class N>
struct PostJointSums {
    std::string corner;  ///< `front-left`
    N clear;             ///< from tenon or dowels to the grooves in base and top, mm
    N shoulder;          ///< to the edges and grooves of the post, mm
};

/// The joints of posts that are not butted.
template <class N>
struct JointSums {
    N size;              ///< a tenon's side or a dowel's diameter, mm
    fit::JointDepth<N> base;
    fit::JointDepth<N> top;
    N dowels;            ///< of all posts, at both ends; 0 for tenons
    N reach;             ///< of a dowel into the post's end, mm; 0 for tenons
    std::vector<PostJointSums<N>> posts;
};

/// How a frame is built.
template <class N>
struct BuildSums {
    std::optional<JointSums<N>> joint;
    std::vector<RingSums<N>> rings;  ///< base before top; empty for boards

    [[nodiscard]] const RingSums<N>* ring(std::string_view plate) const {
        for (const auto& each : rings) {
            if (each.plate == plate) {
                return &each;
            }
        }
        return nullptr;
    }
};

namespace fit {

/// The figures of a frame's build, under `frame/base` and `frame/top`.
/// @param c       free of objections
/// @param layout  of the case
template <class N>
[[nodiscard]] BuildSums<N> build_sums(const Case& c, const Layout& layout, Book<N>& book);

}  // namespace fit
}  // namespace bowfront
