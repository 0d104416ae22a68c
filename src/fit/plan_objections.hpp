#pragma once
/// \file
/// What can't be made of a plan, and what finds no room on it.

#include "bowfront/fit/layout.hpp"
#include "objection_list.hpp"

namespace bowfront::fit {

/// Values of a plan that leave its glazing line without sizes.
void object_to_plan(const Plan& plan, ObjectionList& list);

/// A glazing line that crosses itself, runs the wrong way round, or has sides that are too short for
/// the posts or bent too tightly. After the plan is free of objections.
void object_to_line(const Case& c, ObjectionList& list);

/// Posts that stand in each other or in another side's pane, and a case without room inside.
void object_to_room(const Case& c, const Layout& frame, ObjectionList& list);

}  // namespace bowfront::fit
