#pragma once
/// \file
/// Measurements of sample cases, and what an inspection says of them.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <string_view>
#include <vector>

#include "bowfront/study/inspect.hpp"

namespace bowfront::study {

// Sums of a dozen lengths under a metre, each exact to 1e-13 of itself.
inline constexpr double kExact = 1e-9;

inline Measured measuring(double uncertainty) {
    Measured measured;
    measured.length_uncertainty.value = uncertainty;
    measured.thickness_uncertainty.value = uncertainty;
    return measured;
}

// Every size of every pane and its place, exactly as designed.
inline Measured nominal(const Case& c, const CaseSums<double>& sums) {
    Measured measured = measuring(0);
    const Groove& groove = c.frame.groove;
    for (const PaneSums<double>& pane : sums.panes) {
        MeasuredSide side;
        side.side = pane.side;
        side.pane.blank_length = pane.blank_length;
        side.pane.blank_width = pane.blank_width;
        side.pane.length = pane.length;
        side.pane.height = pane.height;
        side.pane.thickness = {pane.formed_thickness};
        side.opening = {pane.opening_length, pane.opening_height};
        side.grooves = {{groove.base_depth.value},
                        {groove.top_depth.value},
                        {groove.post_depth.value},
                        {groove.post_depth.value},
                        {groove.width.value}};
        if (pane.curved) {
            // The rise by the half angle: 1 − cos would lose the digits of a flat curve.
            const double quarter = std::sin(pane.sweep / 4);
            side.pane.chord = 2 * pane.inside_radius * std::sin(pane.sweep / 2);
            side.pane.rise = 2 * pane.inside_radius * quarter * quarter;
        }
        measured.sides.push_back(side);
    }
    return measured;
}

inline MeasuredSide& side(Measured& measured, CaseSide which) {
    const auto found = std::find_if(measured.sides.begin(), measured.sides.end(),
                                    [which](const MeasuredSide& each) { return each.side == which; });
    return *found;
}

inline const Finding& finding(const std::vector<Finding>& all, std::string_view id,
                       std::string_view about) {
    const auto found = std::find_if(all.begin(), all.end(), [&](const Finding& each) {
        return each.id == id && each.about == about;
    });
    EXPECT_NE(found, all.end()) << id << ' ' << about;
    return *found;
}

inline std::vector<std::string> actions(const Inspection& inspection, std::string_view id,
                                 std::string_view about) {
    std::vector<std::string> words;
    for (const Rescue& rescue : inspection.rescues) {
        if (rescue.id == id && rescue.about == about) {
            words.push_back(rescue.action);
        }
    }
    return words;
}

}  // namespace bowfront::study
