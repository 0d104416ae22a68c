#pragma once
/// \file
/// Cases that open, made in code.

#include <numbers>
#include <utility>

#include "sample_case.hpp"

namespace bowfront::sample {

/// The straight-fronted case with a back that opens: a pane of 5 mm.
inline Case opening_at_the_back(Access::Way way) {
    Case c = straight_front();
    c.access_pane = *c.pane(CaseSide::back);
    c.access_pane->thickness.value = 5;
    std::erase_if(c.panes, [](const PaneSpec& spec) { return spec.side == CaseSide::back; });
    c.access = Access{std::move(way), CaseSide::back};
    c.tolerance.sheet_thickness = given(ToleranceSpec{{}, 0.2}, "/tolerance/sheet_thickness");
    c.tolerance.cut = given(ToleranceSpec{{}, 0.5}, "/tolerance/cut");
    return c;
}

inline AccessGroove access_groove(double width, double base, double top) {
    return {given(width, "/access/groove/width"), given(base, "/access/groove/depth/base"),
            given(top, "/access/groove/depth/top")};
}

inline LiftOutPane lift_out_pane() {
    return {access_groove(7.5, 5, 14), given(2.0, "/access/clearance"),
            given(1.5, "/access/lift_clearance"), given(25.0, "/access/pull")};
}

inline SlidingPair sliding_pair() {
    return {access_groove(7, 5, 14), given(6.0, "/access/groove/web"),
            given(30.0, "/access/overlap"), given(1.5, "/access/lift_clearance"),
            given(25.0, "/access/pull")};
}

inline PivotDoor pivot_door() {
    return {given(HingeEnd::start, "/access/hinge"), given(3.0, "/access/clearance"),
            given(20.0, "/access/pivot"), given(6.0, "/access/pin"),
            given(std::numbers::pi / 2, "/access/angle")};
}

inline LiftOffTop lift_off_top() {
    return {given(TopHeld::pegs, "/access/held"), given(6.0, "/access/peg/diameter"),
            given(24.0, "/access/peg/length"), given(600.0, "/access/headroom")};
}

/// The same case, opened by its top.
inline Case opening_at_the_top() {
    Case c = straight_front();
    c.access = Access{lift_off_top(), {}};
    return c;
}

}  // namespace bowfront::sample
