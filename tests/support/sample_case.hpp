#pragma once
/// \file
/// Cases made in code, for tests that read no file.

#include "bowfront/model/case.hpp"

namespace bowfront::sample {

/// The case of examples/pilot-boat, value for value, with what the file leaves out assumed.
[[nodiscard]] Case pilot_boat();

/// The same with a straight front.
[[nodiscard]] Case straight_front();

/// The same with base and top of rails.
[[nodiscard]] Case on_rails();

/// The same with panes that are lifted into the top groove and dropped: posts with rabbets, and a
/// top groove deep and wide enough for a pane of 380 mm.
[[nodiscard]] Case lift_and_drop();

/// The same with all edges in rabbets closed by beads.
[[nodiscard]] Case beaded();

/// Takes panes like the first one for all sides of the plan, and no others.
void glaze_all_sides(Case& c);

/// Makes every length of a plan larger by a factor; angles stay.
void scale(Plan& plan, double factor);

/// A value as if given at a place of the case file.
template <class T>
[[nodiscard]] Sourced<T> given(T value, std::string pointer) {
    return {std::move(value), {Origin::Kind::given, std::move(pointer), 1, {}}};
}

}  // namespace bowfront::sample
