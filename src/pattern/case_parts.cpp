#include "bowfront/pattern/case_parts.hpp"

#include <string>

#include "bowfront/base/contract.hpp"
#include "bowfront/base/number_text.hpp"
#include "bowfront/materials/timber.hpp"
#include "body_pattern.hpp"

namespace bowfront::pattern {
namespace {


std::string title(std::string_view words) {
    std::string text(words);
    for (char& c : text) {
        c = c == '-' ? ' ' : c;
    }
    return text;
}

// A timber part of the frame; its pattern is its section seen from above.
Part timber_part(const Case& c, std::string id, std::string name) {
    Part part;
    part.id = std::move(id);
    part.name = std::move(name);
    part.assembly = "case";
    part.group = "frame";
    part.material = c.frame.timber.value;
    if (const auto density = find_timber(c.frame.timber.value)->density()) {
        part.density = density->value;
    }
    part.finish = Finish::timber;
    return part;
}

Part plate_part(const Case& c, std::string_view name, const Plate& plate,
                const fit::PlateLayout& layout, double depth, Face face, double z) {
    Part part = timber_part(c, std::string(name), face == Face::high ? "Base" : "Top");
    part.body.section = {*layout.outline, {}};
    part.body.height = plate.thickness.value;
    part.body.face = face;
    std::vector<Region> recesses;
    for (const fit::PlateGroove& groove : layout.grooves) {
        recesses.push_back({groove.band, {}});
        if (groove.bead) {
            recesses.push_back({*groove.bead, {}});
        }
    }
    for (Region& area : unite(recesses)) {
        part.body.recesses.push_back({std::move(area), depth});
    }
    part.pattern = pattern_of(part.body);
    part.placements = {{.origin = {0, 0, z}}};
    part.note = face == Face::high ? "grooves in the upper face" : "grooves in the lower face";
    return part;
}

Part post_part(const Case& c, const fit::PostLayout& post) {
    const std::string& corner = post.name;
    Part part = timber_part(c, "post-" + corner, "Post, " + title(corner));
    BOWFRONT_EXPECTS(post.section.size() == 1);
    part.body.section = post.section.front();
    part.body.height = c.frame.clear_height.value;
    part.pattern = pattern_of(part.body);
    part.placements = {{}};
    part.note = "pattern is the section; grain runs along the length of " +
                rounded_text(part.body.height, 2) + " mm";
    return part;
}

Part pane_part(const Case& c, const PaneSums<double>& pane, const fit::Layout& layout) {
    const PaneSpec& spec = *c.pane(pane.side);
    const Sheet& sheet = *c.sheets.at(spec.sheet).like;
    const std::string side(side_text(pane.side));
    const PaneSpan span = pane_span(pane);
    Part part;
    part.id = "pane-" + side;
    part.name = "Pane, " + side;
    part.assembly = "case";
    part.group = "glazing";
    part.material = spec.sheet;
    part.density = sheet.density.value;
    part.finish = sheet.kind == SheetKind::float_glass ? Finish::glass : Finish::clear_sheet;
    const auto line = fit::stretch(layout.line.sides[index(pane.side)], span.start, span.end);
    part.body.section = {band(line, pane.thickness, BandEnd::square, BandEnd::square), {}};
    part.body.height = pane.height;
    part.placements = {{.origin = {0, 0, -c.frame.groove.base_depth.value}}};
    part.pattern.outline = {
        Contour::rectangle({0, 0}, {pane.blank_length, pane.blank_width}), {}};
    part.pattern.thickness = pane.thickness;
    if (pane.heated) {
        part.note = "pattern is the blank, cut before heating; its length bends";
    } else if (pane.curved) {
        part.note = "held to its curve cold";
    }
    return part;
}

void add_plate_beads(const Case& c, std::string_view plate, const fit::PlateLayout& layout,
                     double depth, double z, std::vector<Part>& parts) {
    const double off = (c.frame.groove.width.value + c.frame.bead_width.value) / 2;
    for (const fit::PlateGroove& groove : layout.grooves) {
        if (!groove.bead) {
            continue;
        }
        const std::string side(side_text(groove.side));
        Part part = timber_part(c, "bead-" + std::string(plate) + "-" + side,
                                "Bead, " + std::string(plate) + ", " + side);
        std::vector<Segment> middle;
        for (const Segment& s : groove.opening) {
            middle.push_back({s.from + left_of(s.tangent(0)) * off,
                              s.to + left_of(s.tangent(1)) * off, s.bulge});
        }
        part.body.section = {
            band(middle, c.frame.bead_width.value, BandEnd::square, BandEnd::square), {}};
        part.body.height = depth;
        part.pattern = pattern_of(part.body);
        part.placements = {{.origin = {0, 0, z}}};
        part.note = "put in after the pane, pinned to the frame, not to the pane";
        parts.push_back(std::move(part));
    }
}

// What closes a post's rabbets once the panes stand in them: the rabbet less the groove's width.
// Where the rabbets of one post run into each other, the first bead takes the shared piece.
void add_post_beads(const Case& c, const fit::PostLayout& post, std::vector<Part>& parts) {
    if (c.frame.post.hold.value != Hold::rabbet) {
        return;
    }
    std::vector<Region> taken;
    for (const fit::PostGroove& groove : post.grooves) {
        taken.push_back({groove.hold, {}});
    }
    for (const fit::PostGroove& groove : post.grooves) {
        const auto rabbet = intersect({{post.outline, {}}}, {{groove.slot, {}}});
        int number = 0;
        for (const Region& area : subtract(rabbet, taken)) {
            const std::string& corner = post.name;
            std::string id = "bead-post-" + corner + "-" + std::string(side_text(groove.side));
            if (++number > 1) {
                id += "-" + std::to_string(number);
            }
            Part part = timber_part(c, id, "Bead, post " + title(corner) + ", " +
                                               std::string(side_text(groove.side)));
            part.body.section = area;
            part.body.height = c.frame.clear_height.value;
            part.pattern = pattern_of(part.body);
            part.placements = {{}};
            part.note = "pattern is the section; put in after the pane, pinned to the post";
            parts.push_back(std::move(part));
            taken.push_back(area);
        }
    }
}

}  // namespace

PaneSpan pane_span(const PaneSums<double>& pane) {
    const double middle = pane.start_in_post + pane.opening_length / 2;
    return {middle - pane.length / 2, middle + pane.length / 2};
}

std::vector<Part> case_parts(const Case& c, const CaseSums<double>& sums,
                             const fit::Layout& layout) {
    const Groove& groove = c.frame.groove;
    const double height = c.frame.clear_height.value;
    std::vector<Part> parts;
    parts.push_back(plate_part(c, "base", c.frame.base, layout.base, groove.base_depth.value,
                               Face::high, -c.frame.base.thickness.value));
    parts.push_back(plate_part(c, "top", c.frame.top, layout.top, groove.top_depth.value,
                               Face::low, height));
    for (const fit::PostLayout& post : layout.posts) {
        parts.push_back(post_part(c, post));
    }
    for (const fit::PostLayout& post : layout.posts) {
        add_post_beads(c, post, parts);
    }
    add_plate_beads(c, "base", layout.base, groove.base_depth.value, -groove.base_depth.value,
                    parts);
    add_plate_beads(c, "top", layout.top, groove.top_depth.value, height, parts);
    for (const auto& pane : sums.panes) {
        parts.push_back(pane_part(c, pane, layout));
    }
    return parts;
}

}  // namespace bowfront::pattern
