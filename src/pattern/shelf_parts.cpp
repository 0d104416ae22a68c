#include "bowfront/pattern/shelf_parts.hpp"

#include <algorithm>
#include <string>

#include "bowfront/base/number_text.hpp"
#include "frame_part.hpp"

namespace bowfront::pattern {
namespace {

constexpr int kDecimals = 2;

std::string mm(double length) {
    return rounded_text(length, kDecimals) + " mm";
}

std::string note_of(const ShelfSpec& spec, const fit::ShelfPlan& plan) {
    if (spec.timber != nullptr) {
        return "grain runs from rail to rail, over " + mm(plan.span);
    }
    if (spec.sheet != nullptr && spec.sheet->kind == SheetKind::float_glass) {
        return "flat glass: edges ground and arrised, notches with the radius drawn; ask the "
               "supplier "
               "for toughened glass, cut and notched before it is toughened";
    }
    return spec.sheet != nullptr ? "cut flat, not heated; edges scraped and broken" : "";
}

Part shelf_part(const ShelfSpec& spec, const fit::ShelfPlan& plan) {
    Part part;
    part.id = plan.id;
    part.name = "Shelf " + plan.id.substr(plan.id.find('-') + 1);
    part.assembly = "case";
    part.group = "shelves";
    part.material = spec.material.value;
    if (spec.sheet != nullptr) {
        part.density = spec.sheet->density.value;
        part.finish =
            spec.sheet->kind == SheetKind::float_glass ? Finish::glass : Finish::clear_sheet;
    } else if (spec.board != nullptr) {
        part.density = spec.board->density.value;
        part.finish = Finish::plywood;
    } else {
        part.density = spec.timber->density()->value;
        part.finish = Finish::timber;
    }
    part.body.section = {plan.outline, {}};
    part.body.height = spec.thickness.value;
    part.pattern = pattern_of(part.body);
    part.placements = {{.origin = {0, 0, spec.height.value - spec.thickness.value}}};
    part.note = note_of(spec, plan);
    return part;
}

Part rail_part(const Case& c, const ShelfSpec& spec, const fit::ShelfPlan& plan,
               const fit::ShelfRail& rail) {
    const std::string side(side_text(rail.side));
    Part part = timber_part(c, plan.id + "-rail-" + side, "Rail of " + plan.id + ", " + side);
    part.group = "shelves";
    part.body.section = rail.outline;
    part.body.height = fit::kRailHeight;
    part.pattern = pattern_of(part.body);
    part.placements = {
        {.origin = {0, 0, spec.height.value - spec.thickness.value - fit::kRailHeight}}};
    part.note = "from post to post, its upper face " +
                mm(spec.height.value - spec.thickness.value) +
                " over the base; grain runs along it; fixed to the posts, not to the pane";
    return part;
}

}  // namespace

std::vector<Part> shelf_parts(const Case& c, const fit::Shelves& shelves) {
    std::vector<Part> parts;
    for (std::size_t i = 0; i < shelves.list.size(); ++i) {
        const fit::ShelfPlan& plan = shelves.list[i].plan;
        parts.push_back(shelf_part(c.shelves[i], plan));
        for (const fit::ShelfRail& rail : plan.rails) {
            parts.push_back(rail_part(c, c.shelves[i], plan, rail));
        }
    }
    return parts;
}

void mark_pins(const Case& c, const fit::Shelves& shelves, std::vector<Part>& parts) {
    for (std::size_t i = 0; i < shelves.list.size(); ++i) {
        const ShelfSpec& spec = c.shelves[i];
        for (const fit::ShelfPin& pin : shelves.list[i].plan.pins) {
            const std::string id = "post-" + pin.name;
            const auto post = std::ranges::find(parts, id, &Part::id);
            if (post == parts.end()) {
                continue;
            }
            const Segment bore{pin.mouth, pin.mouth + pin.inward * fit::kPinDepth, 0};
            const bool marked = std::ranges::any_of(post->pattern.scribes, [&](const Path& path) {
                return distance(path.segments.front().from, bore.from) <= kJoint;
            });
            if (!marked) {
                post->pattern.scribes.push_back({{bore}});
            }
            const double height = spec.height.value - spec.thickness.value - fit::kPinDiameter / 2;
            post->note += "; bore of " + mm(fit::kPinDiameter) + ", " + mm(fit::kPinDepth) +
                          " deep, for " + shelves.list[i].plan.id + " as scribed, its middle " +
                          mm(height) + " over the post's foot";
        }
    }
}

}  // namespace bowfront::pattern
