#pragma once
/// \file
/// Everything that needs the solid kernel, behind one function. The command-line tool opens it as
/// a module at run time, so that commands which make no solids never load the kernel.

#include <functional>
#include <string>
#include <vector>

#include "bowfront/base/stamp.hpp"
#include "bowfront/pattern/part.hpp"

namespace bowfront {

/// One engagement to be measured on the solids: how far a pane's edge stands in a frame part.
struct EngagementProbe {
    std::string about;       ///< `front/top`
    std::string pane_part;   ///< part id of the pane
    std::string frame_part;  ///< part id of the base, top or post
    enum class Edge { bottom, top, start, end } edge = Edge::bottom;
    /// For start and end: the middle of the pane's end on its mid-surface, in plan; tells which of
    /// the two ends is meant.
    Point near;
    double expected = 0;  ///< by the sums, mm
};

/// What to make: parts of one or more assemblies (`Part::assembly`), and what to measure.
struct SolidRequest {
    std::string title;  ///< of the case
    std::vector<Part> parts;
    std::vector<EngagementProbe> probes;
    Stamp stamp;
};

/// One assembly as a STEP file that was read back and agrees with its parts.
struct StepFile {
    std::string assembly;  ///< `case`, `form-front`
    std::string text;
    std::string difference;  ///< empty: names, volumes and boxes read back equal
};

/// Two parts in one place.
struct Interference {
    std::string first;   ///< part id
    std::string second;  ///< part id
    double depth = 0;    ///< mm
    double volume = 0;   ///< mm³
};

/// A probe with what was measured.
struct MeasuredEngagement {
    std::string about;
    double expected = 0;
    double measured = 0;  ///< mm
};

/// What came of it.
struct SolidResult {
    std::vector<StepFile> files;
    std::vector<Interference> interferences;
    std::vector<MeasuredEngagement> engagements;
};

/// Makes and proves all solids of a request; `progress` is told each step in a few words.
/// @throws KernelError
using SolidShop =
    std::function<SolidResult(const SolidRequest&, const std::function<void(const std::string&)>&)>;

/// Depth from which two solids count as overlapping, mm. Measured: below it the
/// kernel's boolean volumes are not reliable.
inline constexpr double kOverlapDepth = 1e-4;

}  // namespace bowfront
