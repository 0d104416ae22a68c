#include "bowfront/pattern/access_parts.hpp"

#include <algorithm>
#include <string>

#include "bowfront/base/contract.hpp"
#include "bowfront/base/number_text.hpp"
#include "frame_part.hpp"

namespace bowfront::pattern {
namespace {

Part& named(std::vector<Part>& parts, std::string_view id) {
    const auto found = std::find_if(parts.begin(), parts.end(),
                                    [id](const Part& part) { return part.id == id; });
    BOWFRONT_EXPECTS(found != parts.end());
    return *found;
}

std::string mm(double length) { return rounded_text(length, 2) + " mm"; }

// A bore through a pane, from its lower start corner.
struct Hole {
    double along;
    double up;
};

class AccessParts {
  public:
    AccessParts(const Case& c, const AccessSums<double>& sums, const fit::AccessLayout& access,
                std::vector<Part>& parts)
        : c_(c), sums_(sums), access_(access), parts_(parts) {}

    void add() {
        if (const auto* const top = c_.access->as<LiftOffTop>()) {
            add_pegs(*top);
        } else if (const auto* const pane = c_.access->as<LiftOutPane>()) {
            const double length = sums_.grooved->length;
            // Low, where the pane is lifted from, and a bore's width above the base.
            const double up = *pane->groove.base_depth + 1.5 * *pane->pull;
            cut_grooves(pane->groove);
            add_pane(0, "Pane, " + side() + ", lifted out", sums_.grooved->height,
                     -*pane->groove.base_depth, *pane->pull, {{length / 4, up}, {length * 3 / 4, up}});
        } else if (const auto* const pair = c_.access->as<SlidingPair>()) {
            add_pair(*pair);
        } else {
            add_door(*c_.access->as<PivotDoor>());
        }
    }

  private:
    [[nodiscard]] std::string side() const { return std::string(side_text(sums_.side)); }

    void add_pegs(const LiftOffTop& top) {
        const double deep = *top.peg_length / 2;
        Part peg = timber_part(c_, "peg", "Peg of the top");
        peg.body.section = {Contour::circle({0, 0}, *top.peg_diameter / 2), {}};
        peg.body.height = *top.peg_length;
        peg.pattern = pattern_of(peg.body);
        peg.note = "glued into the posts, loose in the top";
        std::size_t place = 0;
        for (Part& part : parts_) {
            if (part.id.starts_with("post-") && place < access_.pegs.size()) {
                const fit::PegPlace& at = access_.pegs[place++];
                if (at.timber > 0) {
                    bore(part, {at.at, *top.peg_diameter, deep});
                    bore(named(parts_, "top"), {at.at, *top.peg_diameter, deep});
                    peg.placements.push_back(
                        {.origin = {at.at.x, at.at.y, c_.frame.clear_height.value - deep}});
                }
            }
        }
        if (!peg.placements.empty()) {
            parts_.push_back(std::move(peg));
        }
    }

    static void bore(Part& part, const Bore& bore) {
        part.body.bores.push_back(bore);
        part.pattern = pattern_of(part.body);
    }

    void cut_grooves(const AccessGroove& groove) {
        for (const auto& [id, depth] : {std::pair{"base", *groove.base_depth},
                                        std::pair{"top", *groove.top_depth}}) {
            Part& plate = named(parts_, id);
            for (const Contour& band : access_.grooves) {
                plate.body.recesses.push_back({{band, {}}, depth});
            }
            plate.pattern = pattern_of(plate.body);
        }
    }

    // The two panes are alike but for the end that their bore stands at.
    void add_pair(const SlidingPair& pair) {
        cut_grooves(pair.groove);
        const double height = sums_.grooved->height;
        const double inset = 1.5 * *pair.pull;
        const double z = -*pair.groove.base_depth;
        add_pane(0, "Pane, " + side() + ", outer, slides", height, z, *pair.pull,
                 {{inset, height / 2}});
        add_pane(1, "Pane, " + side() + ", inner, slides", height, z, *pair.pull,
                 {{sums_.grooved->length - inset, height / 2}});
    }

    void add_door(const PivotDoor& door) {
        const double depth = std::min(*c_.frame.base.thickness, *c_.frame.top.thickness) / 2;
        for (const char* const id : {"base", "top"}) {
            bore(named(parts_, id), {*access_.pin, *door.pin, depth});
        }
        add_pane(0, "Door, " + side(), sums_.door->height, *door.clearance, 0, {});
        parts_.back().note = "hung on two pivots, clamped to its corners " + mm(*door.pivot) +
                             " from the post; edges rounded";
        Part stop = timber_part(c_, "stop-" + side(), "Stop of the door");
        stop.body.section = {*access_.stop, {}};
        stop.body.height = c_.frame.clear_height.value;
        stop.pattern = pattern_of(stop.body);
        stop.placements = {{}};
        stop.note = "on the post that the door shuts against, felt on its face, a catch in it";
        parts_.push_back(std::move(stop));
    }

    // Drawn in its own plane and stood up: local X along the side, local Y up, local Z outwards.
    void add_pane(std::size_t which, std::string name, double height, double z, double bore,
                  const std::vector<Hole>& holes) {
        const fit::AccessPane& place = access_.panes[which];
        const Segment outer = place.outline.segment(0);  // from the start, on the outer face
        const Segment inner = place.outline.segment(2);  // back again, on the inner face
        const Point along = outer.tangent(0);
        const Sheet& sheet = *c_.sheets.at(c_.access_pane->sheet).like;
        Part part;
        part.id = place.id;
        part.name = std::move(name);
        part.assembly = "case";
        part.group = "glazing";
        part.material = c_.access_pane->sheet;
        part.density = sheet.density.value;
        part.finish =
            sheet.kind == SheetKind::float_glass ? Finish::glass : Finish::clear_sheet;
        part.body.section = {Contour::rectangle({0, 0}, {outer.length(), height}), {}};
        for (const Hole& hole : holes) {
            part.body.section.holes.push_back(
                Contour::circle({hole.along, hole.up}, bore / 2).reversed());
        }
        part.body.height = sums_.pane->thickness;
        part.pattern = pattern_of(part.body);
        part.placements = {{.origin = {inner.to.x, inner.to.y, z},
                            .x_axis = {along.x, along.y, 0},
                            .z_axis = {along.y, -along.x, 0}}};
        part.note = "seen from outside; finger bores right through";
        parts_.push_back(std::move(part));
    }

    const Case& c_;
    const AccessSums<double>& sums_;
    const fit::AccessLayout& access_;
    std::vector<Part>& parts_;
};

}  // namespace

void add_access_parts(const Case& c, const AccessSums<double>& sums,
                      const fit::AccessLayout& access, std::vector<Part>& parts) {
    AccessParts(c, sums, access, parts).add();
}

std::string moved_part(const Access& access) {
    if (access.as<LiftOffTop>() != nullptr) {
        return "top";
    }
    const std::string pane = "pane-" + std::string(side_text(access.side));
    return access.as<SlidingPair>() != nullptr ? pane + "-start" : pane;
}

std::vector<Part> with_open_door(const Access& way, const fit::AccessLayout& access,
                                 std::vector<Part> parts) {
    BOWFRONT_EXPECTS(access.pin.has_value());
    const Motion turn{access.turn, {}, false};
    for (Placement& door : named(parts, moved_part(way)).placements) {
        const Point at =
            turn(Point{door.origin.x, door.origin.y} - *access.pin) + *access.pin;
        const Point x = turn({door.x_axis.x, door.x_axis.y});
        const Point z = turn({door.z_axis.x, door.z_axis.y});
        door = {{at.x, at.y, door.origin.z}, {x.x, x.y, 0}, {z.x, z.y, 0}};
    }
    return parts;
}

}  // namespace bowfront::pattern
