#pragma once
/// \file
/// A pattern as it stands in the file: moved to the origin, each line on its layer, in the order
/// in which it is cut.

#include <string>
#include <string_view>
#include <vector>

#include "bowfront/base/stamp.hpp"
#include "bowfront/pattern/part.hpp"

namespace bowfront::dxf {

/// A closed outline. Its first vertex begins its longest straight, and no bulge is over 1.
struct Outline {
    std::string layer;
    Contour contour;
};

/// A round hole.
struct Circle {
    std::string layer;
    Point centre;
    double radius = 0;
};

/// An open chain; the last vertex ends it, and its bulge is 0.
struct Chain {
    std::vector<Vertex> vertices;
};

/// All that is written, in this order: what leaves the part where it is comes before what cuts it
/// free, so that nothing is cut in a piece that has come loose.
struct Layout {
    std::vector<Label> labels;
    std::vector<Chain> scribes;
    std::vector<Circle> bores;        ///< small before large
    std::vector<Outline> outlines;    ///< recesses by depth, inner, outer; small before large
    std::vector<std::string> layers;  ///< in the order of their first use
    Box part;                         ///< of the outer outline: from 0,0
    Box extent;                       ///< of everything
};

/// Lays out a pattern. Title, size and stamp stand as text to the right of the part.
/// @param pattern  sound (`expect_sound`)
/// @param title    UTF-8; no line of its own where empty
[[nodiscard]] Layout lay_out(const Pattern& pattern, std::string_view title, const Stamp& stamp);

}  // namespace bowfront::dxf
