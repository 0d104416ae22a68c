#pragma once
/// \file
/// The frame in plan: outlines of posts and plates, and every groove cut into them. Checks, patterns
/// and solids all take their outlines from here.

#include <optional>
#include <string>
#include <vector>

#include "bowfront/fit/plan.hpp"
#include "bowfront/fit/post_joint.hpp"
#include "bowfront/fit/ring.hpp"
#include "bowfront/fit/sums.hpp"
#include "bowfront/geom/region.hpp"

namespace bowfront::fit {

/// One end of a pane in its post. All points in plan, mm.
struct PostGroove {
    CaseSide side;             ///< of the pane
    PaneEdge end = PaneEdge::start;
    Point mouth;       ///< where the glazing line enters the post
    Point inward;      ///< unit tangent there, into the post
    Point interior;    ///< unit vector square to it, towards the inside of the case
    double depth = 0;  ///< from the mouth to the bottom, along `inward`
    Contour slot;      ///< what the cutter removes, run out past the post's face
    Contour hold;      ///< the groove's own width of it: in a rabbet the rest is filled by a bead
};

/// A post.
struct PostLayout {
    CaseSide corner;                  ///< the side that starts at it
    std::string name;                 ///< of its corner point: `front-left`
    Point at;
    Contour outline;                  ///< before grooves are cut
    std::vector<PostGroove> grooves;  ///< of the panes that end here; at most two
    std::vector<Region> section;      ///< outline less grooves; one region in a sound case
    std::optional<PostJointLayout> joint;  ///< as built; empty for a butt, or an unsound section
};

/// A groove in base or top, below or above one pane.
struct PlateGroove {
    CaseSide side;
    std::vector<Segment> line;     ///< its stretch of glazing line, crown to crown
    std::vector<Segment> opening;  ///< the stretch between the posts
    Contour band;                  ///< groove with round ends
    std::optional<Contour> bead;   ///< where the pane is beaded: the recess for bead and pane
};

/// Base or top.
struct PlateLayout {
    std::optional<Contour> outline;  ///< empty where lines and arcs set out don't meet, or cross
    std::vector<PlateGroove> grooves;
    std::optional<Ring> ring;        ///< where it is built of rails, as built; empty where they can't be
};

/// The frame.
struct Layout {
    GlazingLine line;
    std::vector<PostLayout> posts;  ///< by the place of the side that starts there
    PlateLayout base;
    PlateLayout top;

    /// The post that an end of a side's pane stands in.
    /// @param end  start or end
    [[nodiscard]] const PostLayout& post(const CaseSide& side, PaneEdge end) const {
        return posts[end == PaneEdge::start ? index(side) : line.next(index(side))];
    }
};

/// The glazing line set out by a margin, its lines and arcs extended to meet; empty where they
/// don't, or where the outline would cross itself.
/// @param margin  negative to set it in
[[nodiscard]] std::optional<Contour> set_out(const GlazingLine& line, double margin);

/// The same by sides.
[[nodiscard]] std::optional<SideChains> sides_set_out(const GlazingLine& line, double margin);

/// The frame of a case.
/// @throws ContractError where a glazing line leaves no opening between posts
[[nodiscard]] Layout layout(const Case& c, const CaseSums<double>& sums);

/// A frame as it stands in a state of the air: each plate stretched along X and Y, and each post,
/// which stands on the base, grown about its corner point. Its grooves move with it.
/// An arc becomes the arc through its moved ends and its moved middle; for up to a quarter turn that
/// is off the true piece of an ellipse by less than a twentieth of the movement. Of a side of several
/// pieces it becomes two arcs that keep the tangents, so that the side stays smooth.
/// @param layout   as built
/// @param factors  of that state
[[nodiscard]] Layout layout_in(const Layout& layout, const TimberFactors<double>& factors);

}  // namespace bowfront::fit
