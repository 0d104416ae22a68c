#pragma once
/// \file
/// A part: one piece to cut, as a flat pattern for the cutter and as a body for the solids, both
/// made from the same outlines.

#include <array>
#include <string>
#include <vector>

#include "bowfront/geom/region.hpp"

namespace bowfront {

/// A recess cut into a face to a depth.
struct Recess {
    Region area;
    double depth = 0;  ///< mm, > 0 and under the thickness
};

/// A round hole.
struct Bore {
    Point centre;
    double diameter = 0;  ///< mm, > 0
    double depth = 0;     ///< mm; the whole thickness means through
};

/// Text beside a part or on it; ASCII only.
struct Label {
    std::string text;
    Point at;           ///< lower left
    double height = 5;  ///< mm, > 0
};

/// A flat pattern: what the cutter does to one piece of board or sheet, seen from the side that it
/// is cut from.
struct Pattern {
    Region outline;
    std::vector<Recess> recesses;
    std::vector<Bore> bores;
    std::vector<Path> scribes;
    std::vector<Label> labels;
    double thickness = 0;  ///< mm, > 0
};

/// Which end face of a body its recesses are cut into.
enum class Face { low, high };

/// A solid as a prism: a section in its local XY plane, run from z = 0 to z = `height`, with
/// recesses and bores in one of its end faces.
struct Body {
    Region section;
    double height = 0;  ///< mm, > 0
    std::vector<Recess> recesses;
    std::vector<Bore> bores;
    Face face = Face::high;  ///< recesses and bores start here
};

/// Volume in closed form, mm³: section area times height, less recesses and bores (which must not
/// overlap). Source: geometry.
[[nodiscard]] double volume(const Body& body);

/// Centre of gravity in the body's own axes, mm. Source: geometry, as the volume.
/// @throws ContractError where nothing is left of the body
[[nodiscard]] Point3 centroid(const Body& body);

/// Where an instance of a body stands in its assembly: local origin, local X and local Z (both
/// unit vectors, square to each other).
struct Placement {
    Point3 origin;
    Point3 x_axis{1, 0, 0};
    Point3 z_axis{0, 0, 1};
};

/// A point of a body's own axes as it stands in the assembly.
[[nodiscard]] Point3 placed(const Placement& placement, Point3 local);

/// What a part is made of, as far as looks go.
enum class Finish { timber, plywood, clear_sheet, glass };

/// One kind of piece with all its instances.
struct Part {
    std::string id;        ///< `post-front-left`: letters, digits, hyphens
    std::string name;      ///< `Post, front left`
    std::string assembly;  ///< `case` or `form-<pane>`
    std::string group;     ///< `frame`, `glazing`, `form`
    std::string material;  ///< a library name, or a sheet key of the case file
    double density = 0;    ///< kg/m³; 0 where the library has none
    Finish finish = Finish::timber;
    Pattern pattern;
    Body body;
    std::vector<Placement> placements;  ///< one for each instance; at least one
    std::string note;                   ///< for the cut list; may be empty

    [[nodiscard]] int count() const { return static_cast<int>(placements.size()); }
    /// Mass of one instance, kg; 0 where the density is not known.
    [[nodiscard]] double mass() const { return volume(body) * 1e-9 * density; }
};

}  // namespace bowfront
