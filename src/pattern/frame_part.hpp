#pragma once
/// \file
/// What the timber parts of a frame have in common.

#include <string>

#include "bowfront/fit/layout.hpp"
#include "bowfront/pattern/part.hpp"

namespace bowfront::pattern {

/// A timber part of the frame, without its shape.
[[nodiscard]] Part timber_part(const Case& c, std::string id, std::string name);

/// The pattern of a body, seen from the face that it is cut from, in the plan's place.
[[nodiscard]] Pattern pattern_of(const Body& body);

/// A pattern moved in its plane.
[[nodiscard]] Pattern moved(Pattern pattern, const Motion& motion);

/// The box of a piece whose section lies in plan and whose grain runs along `grain` there.
[[nodiscard]] TimberSize size_along(const Region& section, Point grain, double thickness);

/// Base or top as it is asked for.
struct PlateTask {
    const Case& c;
    std::string name;                ///< `base` or `top`
    const Plate& plate;
    const fit::PlateLayout& layout;
    double depth = 0;                ///< of its grooves, mm
    Face face = Face::high;          ///< that they are cut into
    double z = 0;                    ///< of its lower face, mm
    const std::vector<fit::PostLayout>& posts;  ///< that stand on it
};

/// All that is cut into the face of a plate: its grooves and the recesses of their beads.
[[nodiscard]] std::vector<Region> recesses_of(const fit::PlateLayout& layout);

/// Cuts the mortises or bores of the posts' joints into a piece of a plate.
void cut_joints(const PlateTask& task, Part& part);

/// The pieces of a plate of rails. Their patterns lie with the grain along X.
void add_rail_parts(const PlateTask& task, std::vector<Part>& parts);

}  // namespace bowfront::pattern
