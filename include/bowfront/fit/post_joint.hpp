#pragma once
/// \file
/// How posts are joined to base and top: where a tenon or dowels find room beside the grooves.

#include <vector>

#include "bowfront/fit/post.hpp"
#include "bowfront/geom/region.hpp"
#include "bowfront/model/case.hpp"

namespace bowfront::fit {

/// A tenon takes this share of the post each way. Common practice, no source.
inline constexpr double kTenonShare = 1.0 / 3;
/// A mortise or a dowel's bore takes this share of base or top. Common practice, no source.
inline constexpr double kMortiseShare = 0.5;
/// A tenon or dowel ends this far above the bottom, mm, for glue. Common practice, no source.
inline constexpr double kGlueRoom = 1;
/// A dowel goes into the post's end by this many times its diameter. Common practice, no source.
inline constexpr double kDowelReach = 2.5;
/// Least timber between a joint and the post's own edge, mm. Common practice, no source.
inline constexpr double kLeastShoulder = 3;

/// The joints of one post, alike at its foot and its head. In plan.
struct PostJointLayout {
    PostJoint kind = PostJoint::tenon;
    double size = 0;                ///< a tenon's side, or a dowel's diameter, mm
    std::vector<Point> centres;     ///< of one tenon, or of two dowels
    std::vector<Contour> outlines;  ///< of each: also of its mortise, rounded as the cutter leaves it
    double clear = 0;               ///< least distance to a groove in base or top, mm; 0 where they
                                    ///< meet, and no more than the post's width and depth together
    double shoulder = 0;            ///< least distance to the edge of the post's section, its grooves
                                    ///< among it, mm; 0 where it stands out
    double fitting = 0;             ///< the size where it has room, else the largest smaller one that
                                    ///< has: a stock dowel, a tenon in steps of 0.5 mm; 0 for none
};

/// What a joint has to find its place among.
struct JointSite {
    const Case& c;
    Point corner;
    CornerDirections directions;
    const Region& section;                     ///< of the post
    const std::vector<Contour>& recesses;      ///< grooves in base and top, beads' recesses among them
};

/// The joints of a post that is not butted. They lie on the bisector of its two sides, in whole steps
/// of 0.5 mm from the corner point: a square tenon with its sides along the bisector or at 45° to it,
/// whichever has more room, or a dowel towards the outside and one towards the inside; each where it
/// is clearest of grooves and edges.
/// @param site  with a post joint other than butt
/// @param size  of a tenon's side or a dowel's diameter, mm, > 0
/// Source: geometry; the place is a choice of this tool
[[nodiscard]] PostJointLayout post_joint(const JointSite& site, double size);

/// How deep a joint of posts is.
template <class N>
struct JointDepth {
    N recess;  ///< mortise or bore in base or top, from the face that the post stands on, mm
    N tenon;   ///< what of a tenon or dowel goes into it, mm
};

/// @param thickness  of base or top, mm
/// Source:  common practice, no source
/// Example: a board of 20 mm -> 10 mm deep, a tenon of 9 mm
template <class N>
[[nodiscard]] JointDepth<N> joint_depth(const N& thickness) {
    const N recess = thickness * kMortiseShare;
    return {recess, recess - kGlueRoom};
}

/// A joint's size as the case gives it; else by rule, where all posts have room for it: a third of the
/// post for a tenon, the largest of 6, 8 and 10 mm that is no more than a quarter of it for a dowel, mm.
/// Common practice, no source.
[[nodiscard]] double joint_size(const Post& post) noexcept;

}  // namespace bowfront::fit
