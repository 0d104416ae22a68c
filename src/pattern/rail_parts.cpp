#include <algorithm>
#include <cmath>
#include <iterator>

#include "bowfront/base/number_text.hpp"
#include "bowfront/fit/rail_joint.hpp"
#include "frame_part.hpp"

namespace bowfront::pattern {
namespace {

using fit::RailPiece;

constexpr std::string_view kGrainMark = "grain -->";

std::string title_of(const PlateTask& task, const RailPiece& piece) {
    const std::string piece_text =
        piece.number == 0 ? "" : ", piece " + std::to_string(piece.number);
    return (task.name == "base" ? "Base rail, " : "Top rail, ") +
           std::string(side_text(piece.side)) + piece_text;
}

// Turned so that the grain runs along X, with its box in the corner.
Pattern along_grain(const Body& body, Point grain) {
    const bool mirrored = body.face == Face::low;
    const double angle = std::atan2(grain.y, mirrored ? -grain.x : grain.x);
    Pattern pattern = moved(pattern_of(body), {-angle, {}, false});
    const Point low = pattern.outline.box().low;
    return moved(std::move(pattern), {0, low * -1, false});
}

// The middle of a piece's mid-line: half way between the middles of its two edges.
Point middle_of(const Pattern& pattern) {
    const Box box = pattern.outline.box();
    const Segment across{{(box.low.x + box.high.x) / 2, box.low.y - box.height()},
                         {(box.low.x + box.high.x) / 2, box.high.y + box.height()},
                         0};
    Box met;
    for (const Segment& edge : pattern.outline.outer.segments()) {
        for (const Point p : meetings(across, edge)) {
            met.add(p);
        }
    }
    return met.empty() ? box.low : (met.low + met.high) * 0.5;
}

std::string note_of(const PlateTask& task, const RailPiece& piece) {
    const auto tongue = rail_tongue(task.plate.thickness.value, task.depth);
    std::string note = task.face == Face::high ? "grooves in the upper face"
                                               : "grooves in the lower face";
    note += "; grain along the length";
    if (piece.curved) {
        note += ", up to " + rounded_text(piece.run_out * 180 / std::acos(-1.0), 1) +
                " deg to the edge";
    }
    return note + "; at both ends a slot " + rounded_text(tongue.thickness, 2) + " mm wide and " +
           rounded_text(tongue.reach, 1) + " mm deep for a loose tongue, " +
           rounded_text(tongue.from_face, 2) + " mm from the face without grooves, clear of them";
}

}  // namespace

void add_rail_parts(const PlateTask& task, std::vector<Part>& parts) {
    const std::vector<Region> recesses = recesses_of(task.layout);
    for (const RailPiece& piece : task.layout.ring->pieces) {
        Part part = timber_part(task.c, task.name + "-" + piece.name, title_of(task, piece));
        part.body.section = {piece.outline, {}};
        part.body.height = task.plate.thickness.value;
        part.body.face = task.face;
        std::vector<Region> near;
        std::copy_if(recesses.begin(), recesses.end(), std::back_inserter(near),
                     [box = part.body.section.box()](const Region& recess) {
                         return within(recess.box(), box, 0);
                     });
        for (Region& area : intersect(unite(near), {part.body.section})) {
            part.body.recesses.push_back({std::move(area), task.depth});
        }
        part.note = note_of(task, piece);
        cut_joints(task, part);
        part.pattern = along_grain(part.body, piece.grain);
        part.pattern.labels.push_back({std::string(kGrainMark), middle_of(part.pattern), 5});
        part.placements = {{.origin = {0, 0, task.z}}};
        part.timber = TimberSize{piece.length, piece.width, part.body.height};
        parts.push_back(std::move(part));
    }
}

}  // namespace bowfront::pattern
