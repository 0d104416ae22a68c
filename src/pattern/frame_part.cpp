#include "frame_part.hpp"

#include <cmath>

#include "bowfront/base/contract.hpp"
#include "bowfront/base/number_text.hpp"
#include "bowfront/materials/timber.hpp"
#include "bowfront/pattern/case_parts.hpp"

namespace bowfront::pattern {

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

Pattern pattern_of(const Body& body) {
    Pattern pattern{body.section, body.recesses, body.bores, {}, {}, body.height};
    // The cutter sees the low face from below: mirrored.
    return body.face == Face::low ? moved(std::move(pattern), {0, {}, true}) : pattern;
}

Pattern moved(Pattern pattern, const Motion& motion) {
    pattern.outline = pattern.outline.moved(motion);
    for (Recess& recess : pattern.recesses) {
        recess.area = recess.area.moved(motion);
    }
    for (Bore& bore : pattern.bores) {
        bore.centre = motion(bore.centre);
    }
    for (Path& scribe : pattern.scribes) {
        scribe = scribe.moved(motion);
    }
    for (Label& label : pattern.labels) {
        label.at = motion(label.at);
    }
    return pattern;
}

TimberSize size_along(const Region& section, Point grain, double thickness) {
    const Box box = section.moved({-std::atan2(grain.y, grain.x), {}, false}).box();
    return {box.width(), box.height(), thickness};
}

std::vector<Region> recesses_of(const fit::PlateLayout& layout) {
    std::vector<Region> recesses;
    for (const fit::PlateGroove& groove : layout.grooves) {
        recesses.push_back({groove.band, {}});
        if (groove.bead) {
            recesses.push_back({*groove.bead, {}});
        }
    }
    return recesses;
}

void cut_joints(const PlateTask& task, Part& part) {
    const double depth = fit::joint_depth(task.plate.thickness.value).recess;
    const Box box = part.body.section.box();
    std::string what;
    for (const fit::PostLayout& post : task.posts) {
        if (!post.joint) {
            continue;
        }
        const std::string kind = post.joint->kind == PostJoint::dowel ? "bores" : "mortises";
        if (post.joint->kind == PostJoint::dowel && !task.layout.ring) {
            what = kind;
            for (const Point centre : post.joint->centres) {
                part.body.bores.push_back({centre, post.joint->size, depth});
            }
            continue;
        }
        // A joint may lie over that of two rails: each gets its share of it.
        for (const Contour& outline : post.joint->outlines) {
            if (!within(outline.box(), box, 0)) {
                continue;
            }
            for (Region& area : intersect({{outline, {}}}, {part.body.section})) {
                part.body.recesses.push_back({std::move(area), depth});
                what = kind;
            }
        }
    }
    if (!what.empty()) {
        part.note += "; " + what + " for the posts " + rounded_text(depth, 2) + " mm deep" +
                     (task.layout.ring ? ", cut once the ring is glued" : "");
    }
}

std::string plate_piece(const std::string& plate, const fit::PlateLayout& layout,
                        const CaseSide& side) {
    if (!layout.ring) {
        return plate;
    }
    std::vector<const fit::RailPiece*> of_side;
    for (const fit::RailPiece& piece : layout.ring->pieces) {
        if (piece.side == side) {
            of_side.push_back(&piece);
        }
    }
    BOWFRONT_EXPECTS(!of_side.empty());
    return plate + "-" + of_side[of_side.size() / 2]->name;
}

}  // namespace bowfront::pattern
