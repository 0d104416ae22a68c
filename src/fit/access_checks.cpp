#include <algorithm>
#include <array>
#include <cmath>

#include "bowfront/fit/access.hpp"
#include "check_list.hpp"
#include "solve.hpp"

namespace bowfront::fit {
namespace {

// A pane, felt or brush about it: less is a door that rubs. Common practice, no source.
constexpr double kLeastGap = 0.5;  // mm

std::string figure(std::string_view key) { return "access/" + std::string(key) + "/nominal"; }

const AccessGroove* groove_of(const Access& access) {
    if (const auto* const pane = access.as<LiftOutPane>()) {
        return &pane->groove;
    }
    const auto* const pair = access.as<SlidingPair>();
    return pair != nullptr ? &pair->groove : nullptr;
}

class AccessChecks {
  public:
    AccessChecks(const Case& c, const AccessSums<double>& sums, const AccessLayout& access,
                 const Layout& layout)
        : c_(c), sums_(sums), access_(access), layout_(layout), side_(side_text(sums.side)) {}

    std::vector<Finding> run() {
        if (sums_.top) {
            top_off();
            return list_.take();
        }
        if (sums_.grooved) {
            grooved(*sums_.grooved);
        }
        if (sums_.sliding) {
            sliding(*sums_.sliding);
        }
        if (sums_.door) {
            door(*sums_.door);
        }
        posts();
        return list_.take();
    }

  private:
    void at_least(Subject subject, const NominalAndWorst<double>& value, double limit,
                  std::string advice) {
        list_.at_least(std::move(subject), value.nominal, value.worst, limit,
                       [&](double missing) { return advice + at_least_text(missing); });
    }

    void top_off() {
        const LiftOffTop& top = *c_.access->as<LiftOffTop>();
        if (top.headroom) {
            list_.at_least({Code::access_top, "access-headroom", "top",
                            "the tallest pane drawn up out of the posts", "mm"},
                           **top.headroom, sums_.top->headroom, [](double missing) {
                               return "move the case out by " + at_least_text(missing) +
                                      " of height to open it, or open another side";
                           });
        }
        for (std::size_t i = 0; i < access_.pegs.size(); ++i) {
            list_.at_least({Code::access_timber, "access-peg", "post-" + layout_.posts[i].name,
                            "about the peg's bore, in post and top", "mm"},
                           access_.pegs[i].timber, c_.webs.web.value, [](double) {
                               return std::string("take thinner pegs or larger posts, or set "
                                                  "\"held\" to \"panes\"");
                           });
        }
        if (!access_.pegs.empty()) {
            const double thickness = c_.frame.top.thickness.value;
            list_.at_least({Code::access_timber, "access-peg", "top", "over the pegs' bores", "mm"},
                           thickness - *top.peg_length / 2, c_.webs.floor.value * thickness,
                           [](double missing) {
                               return "make the pegs shorter by " + at_least_text(2 * missing);
                           });
        }
    }

    void grooved(const GroovedSums<double>& sums) {
        const AccessGroove& groove = *groove_of(*c_.access);
        const double least = sums_.pane->least_engagement;
        at_least({Code::access_engagement, "access-engagement", side_ + "/bottom",
                  "standing in the base's groove", "mm", figure("engagement/bottom")},
                 sums.bottom, least, "deepen the base's groove and the top's by ");
        at_least({Code::access_engagement, "access-engagement", side_ + "/top",
                  "let down into the base's groove", "mm", figure("engagement/top")},
                 sums.top, least, "deepen the top's groove by ");
        at_least({Code::access_way, "access-lift", side_, "lifted into the top's groove", "mm",
                  figure("lift")},
                 sums.lift, 0, "make lift_clearance larger by ");
        list_.enter({Code::access_way, "access-tilt", side_,
                     "followed position by position while the foot swings out", "mm",
                     figure("tilt")},
                    sums.tilt.nominal, sums.tilt.worst, *groove.width, Bound::at_most,
                    [](double missing) {
                        return "widen the grooves by " + at_least_text(missing) +
                               ", or measure the sheet";
                    });
        list_.at_least({Code::access_push, "access-push", side_,
                        "pushed in the middle by a hand, the top still in its groove", "mm",
                        figure("held")},
                       sums.held.nominal, sums.held.worst, 0, [](double missing) {
                           return "deepen the top's groove by " + at_least_text(missing) +
                                  ", or take thicker sheet";
                       });
        if (sums.play) {
            at_least({Code::access_room, "access-play", side_, "between the posts", "mm",
                      figure("play")},
                     *sums.play, kLeastGap, "make the clearance larger by half of ");
        }
        timber(groove);
        pull(sums);
    }

    // Floors, cheeks, webs and cutter of the grooves that the opening has of its own.
    void timber(const AccessGroove& groove) {
        const auto plate = [&](const std::string& name, const Plate& board, double depth,
                               const PlateLayout& layout) {
            const ToleranceSpec& spec = c_.tolerance.groove_depth.value;
            const double limit = spec.by_class ? class_tolerance(*spec.by_class, depth) : spec.value;
            const double floor = *board.thickness - depth;
            list_.at_least({Code::access_timber, "access-floor", name, "under the grooves", "mm"},
                           floor, floor - limit, c_.webs.floor.value * *board.thickness,
                           [&](double missing) {
                               return "make the groove in the " + name + " shallower by " +
                                      at_least_text(missing) + ", or the " + name + " thicker";
                           });
            double cheek = HUGE_VAL;
            double web = HUGE_VAL;
            for (const Contour& band : access_.grooves) {
                const bool within = where(*layout.outline, band.vertices().front().at) == Side::inside;
                cheek = std::min(cheek, within ? gap(band, *layout.outline) : 0);
                for (const PlateGroove& other : layout.grooves) {
                    web = std::min(web, gap(band, other.band));
                }
            }
            list_.at_least({Code::access_timber, "access-cheek", name,
                            "from the grooves to the edge", "mm"},
                           cheek, c_.webs.cheek.value, [&](double missing) {
                               return "make the " + name + "'s margin larger by " +
                                      at_least_text(missing);
                           });
            list_.at_least({Code::access_timber, "access-web", name,
                            "to the other panes' grooves", "mm"},
                           web, c_.webs.web.value, [](double missing) {
                               return "make the post grooves shallower by " + at_least_text(missing);
                           });
        };
        plate("base", c_.frame.base, *groove.base_depth, layout_.base);
        plate("top", c_.frame.top, *groove.top_depth, layout_.top);
        list_.enter({Code::access_timber, "access-cutter", side_, "as drawn", "mm"},
                    *c_.cutter.diameter, *c_.cutter.diameter, *groove.width, Bound::at_most,
                    [](double) { return std::string("take a thinner cutter"); });
    }

    // The bores for fingers, with sheet about them.
    void pull(const GroovedSums<double>& sums) {
        const LiftOutPane* const pane = c_.access->as<LiftOutPane>();
        const double bore = pane != nullptr ? *pane->pull : *c_.access->as<SlidingPair>()->pull;
        list_.at_least({Code::access_pull, "access-finger", side_, "a finger in the bore", "mm"},
                       bore, kFinger, [](double missing) {
                           return "make \"pull\" larger by " + at_least_text(missing);
                       });
        // Two bores of a lifted pane, each with as much sheet beside it as it is wide.
        const double taken = pane != nullptr ? 5 * bore : 3 * bore;
        list_.at_least({Code::access_pull, "access-finger", side_ + "/length",
                        "pane against its bores and as much sheet beside each", "mm"},
                       sums.length, taken, [](double) {
                           return std::string("make \"pull\" smaller, or take another kind of "
                                              "opening for so small a pane");
                       });
    }

    void sliding(const SlidingSums<double>& sums) {
        at_least({Code::access_overlap, "access-overlap", side_, "both panes shut", "mm",
                  figure("overlap")},
                 sums.overlap, kLeastOverlap, "make the overlap larger by ");
        at_least({Code::access_faces, "access-faces", side_,
                  "one pane bowed by the hand that slides it", "mm", figure("faces")},
                 sums.faces, 0, "take thicker sheet, or a wider web by ");
        shut(access_.panes[0], PaneEdge::start);
        shut(access_.panes[1], PaneEdge::end);
    }

    void door(const DoorSums<double>& sums) {
        at_least({Code::access_room, "access-gap", side_ + "/latch", "the door's far corner", "mm",
                  figure("latch")},
                 sums.latch, kLeastGap, "make the clearance larger by ");
        at_least({Code::access_room, "access-gap", side_ + "/hinge", "the door's near corner", "mm",
                  figure("heel")},
                 sums.heel, kLeastGap, "make the clearance larger by ");
        at_least({Code::access_room, "access-gap", side_ + "/top", "standing on its lower pivot",
                  "mm", figure("above")},
                 sums.above, kLeastGap, "make the clearance larger by ");
        list_.at_least({Code::access_way, "access-swing", side_,
                        "turned about its pin from shut to open, every corner against the posts",
                        "mm"},
                       swing_gap(access_, layout_), kLeastGap, [](double missing) {
                           return "make the pivot larger by " + at_least_text(missing) +
                                  ", or the angle smaller";
                       });
        const PivotDoor& door = *c_.access->as<PivotDoor>();
        const Contour pin = Contour::circle(*access_.pin, *door.pin / 2);
        const auto timber = [&](const std::string& name, const PlateLayout& plate) {
            double least = where(*plate.outline, *access_.pin) == Side::inside
                               ? gap(pin, *plate.outline)
                               : 0;
            for (const PlateGroove& groove : plate.grooves) {
                least = std::min(least, gap(pin, groove.band));
            }
            list_.at_least({Code::access_timber, "access-pin", name, "about the pivot's bore", "mm"},
                           least, c_.webs.web.value, [&](double missing) {
                               return "make the pivot, or the " + name + "'s margin, larger by " +
                                      at_least_text(missing);
                           });
        };
        timber("base", layout_.base);
        timber("top", layout_.top);
    }

    // A pane that slides against a post has to meet timber over its whole thickness there.
    void shut(const AccessPane& pane, PaneEdge end) {
        constexpr double kInto = 1;  // mm
        const Segment edge = pane.outline.segment(end == PaneEdge::start ? 3 : 1);
        const Point into = left_of(edge.tangent(0)) * -kInto;
        const std::array corners{edge.from, edge.from + into, edge.to + into, edge.to};
        double covered = 0;
        for (const Region& area : intersect({{Contour::polygon(corners), {}}},
                                            {{layout_.post(sums_.side, end).outline, {}}})) {
            covered += area.area() / kInto;
        }
        list_.at_least({Code::access_room, "access-shut", side_ + "/" + std::string(edge_text(end)),
                        "post behind the shut pane's edge", "mm"},
                       covered, edge.length(), [](double) {
                           return std::string("set the posts' section to \"fitted\", or take "
                                              "deeper posts or a narrower web");
                       });
    }

    // Posts that stand farther out than at the glazing line would meet what goes between them.
    void posts() {
        double back = HUGE_VAL;
        for (const PaneEdge end : {PaneEdge::start, PaneEdge::end}) {
            const Contour& post = layout_.post(sums_.side, end).outline;
            std::vector<Region> common = intersect({{access_.clear, {}}}, {{post, {}}});
            double depth = 0;
            for (const Region& area : common) {
                const Box box = area.box();
                depth = std::max(depth, std::hypot(box.high.x - box.low.x, box.high.y - box.low.y));
            }
            back = std::min(back, -depth);
        }
        list_.at_least({Code::access_room, "access-posts", side_,
                        "nothing of the posts stands in the opening", "mm"},
                       back, 0, [](double) {
                           return std::string("set the posts' section to \"fitted\", which stands "
                                              "square to this side");
                       });
    }

    const Case& c_;
    const AccessSums<double>& sums_;
    const AccessLayout& access_;
    const Layout& layout_;
    std::string side_;
    CheckList list_;
};

}  // namespace

std::vector<Finding> access_checks(const Case& c, const AccessSums<double>& sums,
                                   const AccessLayout& access, const Layout& layout) {
    return AccessChecks(c, sums, access, layout).run();
}

}  // namespace bowfront::fit
