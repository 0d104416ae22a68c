#pragma once
/// \file
/// What was measured of a case while it is made, as the file of measurements says it.
///
/// Lengths in mm, all > 0. What is not there was not measured.

#include <optional>
#include <vector>

#include "bowfront/model/case.hpp"

namespace bowfront {

/// One pane.
struct MeasuredPane {
    std::optional<double> blank_length;  ///< before heating
    std::optional<double> blank_width;   ///< before heating
    std::optional<double> length;        ///< as formed, along the mid-surface
    std::optional<double> height;        ///< as formed
    std::optional<double> chord;         ///< of the inside face, with `rise`; curved panes only
    std::optional<double> rise;          ///< of the inside face over that chord
    std::vector<double> bends;           ///< inside radius of each bend of a pane of several pieces
    /// In several places: as formed, or of the sheet while nothing of the formed pane is measured.
    std::vector<double> thickness;
};

/// The opening that a pane stands in.
struct MeasuredOpening {
    std::optional<double> length;  ///< between the posts, along the glazing line
    std::optional<double> height;  ///< between base and top
};

/// The grooves that a pane stands in, each in several places.
struct MeasuredGrooves {
    std::vector<double> base;   ///< depths
    std::vector<double> top;    ///< depths
    std::vector<double> start;  ///< depths along the glazing line, in the post at the pane's start
    std::vector<double> end;    ///< the same at its end
    std::vector<double> width;
};

/// All that was measured at one side of the case.
struct MeasuredSide {
    CaseSide side;
    MeasuredPane pane;
    MeasuredOpening opening;
    MeasuredGrooves grooves;
};

/// A whole file.
struct Measured {
    /// ± mm of every measured size but those below, ≥ 0.
    Sourced<double> length_uncertainty;
    /// ± mm of thicknesses and groove widths, which a calliper measures, ≥ 0.
    Sourced<double> thickness_uncertainty;
    std::vector<MeasuredSide> sides;  ///< in the order of the plan's sides, each at most once
};

}  // namespace bowfront
