#pragma once
/// \file
/// Flat patterns to and from DXF: closed polylines with bulges, one layer for each operation.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "bowfront/base/stamp.hpp"
#include "bowfront/pattern/part.hpp"

namespace bowfront::dxf {

/// Which release of the format. AC1015 is read by old and new importers alike; R12 for the oldest.
enum class Version { r12, ac1015 };

/// How to write.
struct Options {
    Version version = Version::ac1015;
};

/// Layer names by operation (ASCII, no full stop, as R12 wants): `profile-outer`, `profile-inner`,
/// `recess-6_00`, `bore-3_50`, `scribe`, `label`, `sheet-edge`.
[[nodiscard]] std::string recess_layer(double depth);
[[nodiscard]] std::string bore_layer(double depth);

/// The file's text for one pattern, its lower left corner at 0,0, in millimetres, 1:1.
/// Outer outlines counter-clockwise, inner ones clockwise, inner before outer; nothing on layer 0.
/// Title, size and stamp go on `label`, to the right of the part; any character that is not ASCII
/// is transliterated.
/// @param title  UTF-8; left out where empty
/// @throws ContractError for a non-finite number, an open or crossing outline, one that touches
///         itself or its holes, a doubled line on one layer, a segment shorter than 0.01 mm, a
///         chain with a gap, an empty label, or a size that is not positive
[[nodiscard]] std::string write(const Pattern& pattern, std::string_view title, const Stamp& stamp,
                                const Options& options = {});

/// What makes a pattern unfit to cut, in words; nothing for a sound one. Only a sound one is written.
[[nodiscard]] std::optional<std::string> fault_of(const Pattern& pattern);

/// One closed polyline, circle, or open path as read.
struct Entity {
    std::string layer;
    enum class Kind { closed, circle, open, text } kind = Kind::closed;
    Contour contour;   ///< closed, circle
    Path path;         ///< open
    std::string text;  ///< text
    Point at;          ///< text: its place
};

/// What a file holds.
struct Drawing {
    std::string version;  ///< `AC1015`
    int units = 0;        ///< $INSUNITS; 4 is mm
    std::vector<std::string> layers;
    std::vector<Entity> entities;
};

/// Reads a DXF text: LWPOLYLINE, POLYLINE, LINE, ARC, CIRCLE, TEXT. Other entities are refused, and
/// so are files over 64 MiB or a million entities, and numbers over 1e9.
/// @param name  the file's name, for the error
/// @throws InputError with the line of the fault; never crashes, whatever the text
[[nodiscard]] Drawing read(std::string_view text, const std::string& name);

/// Compares what was read with the pattern it was written from: units, outlines by layer and sense,
/// areas and lengths to 1e-9 relative, boxes to 1e-9 mm, centres of gravity and the ends of paths to
/// 1e-6 mm, labels. Empty when they agree, else the first difference.
[[nodiscard]] std::string difference(const Drawing& drawing, const Pattern& pattern);

}  // namespace bowfront::dxf
