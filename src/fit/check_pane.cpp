#include <algorithm>
#include <cmath>
#include <string>

#include "check_groups.hpp"

namespace bowfront::fit {
namespace {

std::string about(const PaneSums<double>& pane, std::string_view what) {
    return std::string(side_text(pane.side)) + "/" + std::string(what);
}

std::string figure(const PaneSums<double>& pane, std::string_view key) {
    return "panes/" + std::string(side_text(pane.side)) + "/" + std::string(key);
}

std::string edge_figure(const PaneSums<double>& pane, PaneEdge edge, std::string_view key) {
    return figure(pane, "edges/" + std::string(edge_text(edge)) + "/" + std::string(key));
}

std::string_view settled_state(PaneEdge edge) {
    switch (edge) {
        case PaneEdge::bottom: return "standing in the groove";
        case PaneEdge::top: return "settled by gravity";
        case PaneEdge::start: return "shoved hard against the end post";
        case PaneEdge::end: break;
    }
    return "shoved hard against the start post";
}

// What lengthens a pane: its blank where that is cut already, else the clearance that set its size.
std::string grow_advice(const Case& c, const PaneSums<double>& pane, PaneEdge edge,
                        double missing) {
    const PaneSpec& spec = *c.pane(pane.side);
    const std::string more = at_least_text(missing);
    if (edge == PaneEdge::bottom) {
        return "deepen the base groove by " + more;
    }
    const bool top = edge == PaneEdge::top;
    if (spec.blank.method.value == BlankMethod::as_cut || (top ? spec.height : spec.length)) {
        return std::string("make the pane ") + (top ? "taller" : "longer") + " by " + more +
               " as formed";
    }
    const double clearance = top ? c.fit.top_clearance.value : c.fit.end_clearance.value;
    const bool by_clearance = !top || c.frame.loading.value != Loading::lift_and_drop;
    // Sideways a smaller clearance counts at both ends.
    const double step = top ? missing : missing / 2;
    if (by_clearance && step <= clearance) {
        return "make " + std::string(top ? "top_clearance" : "end_clearance") + " " +
               mm(std::max(0.0, std::floor((clearance - step) * 10) / 10)) + " or less";
    }
    return top ? "deepen the top groove and the pane with it by " + more
               : "deepen the post grooves by " + more + ", keeping the clearance";
}

void check_engagement(const Case& c, const PaneSums<double>& pane, CheckList& list) {
    for (const PaneEdge edge : kPaneEdges) {
        const auto& sums = pane.edge(edge);
        list.at_least({Code::fit_engagement, "engagement", about(pane, edge_text(edge)),
                       std::string(settled_state(edge)), "mm",
                       edge_figure(pane, edge, "engagement/settled")},
                      sums.settled, sums.engagement_least, pane.least_engagement,
                      [&](double missing) { return grow_advice(c, pane, edge, missing); });
    }
}

void check_room(const PaneSums<double>& pane, CheckList& list) {
    list.at_least({Code::fit_room, "room", about(pane, "vertical"), "as built", "mm",
                   figure(pane, "room/vertical/nominal")},
                  pane.room_vertical.nominal, pane.room_vertical.worst, kLeastRoom,
                  [](double missing) {
                      return "make the pane lower by " + at_least_text(missing) +
                             ", or the top groove as much deeper";
                  });
    list.at_least({Code::fit_room, "room", about(pane, "sideways"), "as built", "mm",
                   figure(pane, "room/sideways/nominal")},
                  pane.room_sideways.nominal, pane.room_sideways.worst, kLeastRoom,
                  [](double missing) {
                      return "make end_clearance larger by " + at_least_text(missing / 2) +
                             ", or the post grooves as much deeper";
                  });
}

void check_faces(const PaneSums<double>& pane, CheckList& list) {
    for (const PaneEdge edge : kPaneEdges) {
        const auto& sums = pane.edge(edge);
        list.at_least({Code::fit_face_clearance, "face-clearance", about(pane, edge_text(edge)),
                       pane.heated ? "as formed" : "as cut", "mm",
                       edge_figure(pane, edge, "face_clearance/nominal")},
                      sums.face_clearance, sums.face_clearance_least, 0, [](double missing) {
                          return "widen the groove by " + at_least_text(missing) +
                                 ", or measure the sheet and state its thickness tolerance";
                      });
    }
}

void check_lift_and_drop(const Case& c, const PaneSums<double>& pane, CheckList& list) {
    const std::string side(side_text(pane.side));
    const LoadingSums<double>& loading = pane.loading;
    if (c.frame.post.hold.value == Hold::groove) {
        list.at_least({Code::fit_loading, "loading", side, "ends stand in grooves and can't swing",
                       ""},
                      0, 1, [](double) {
                          return std::string("set the posts' hold to \"rabbet\", or loading to "
                                             "\"slide-in\"");
                      });
        return;
    }
    const double wanted = c.fit.loading_clearance.value;
    list.at_least({Code::fit_loading, "loading", side, "lifted into the top groove", "mm",
                   figure(pane, "loading/play")},
                  loading.play, wanted, [](double missing) {
                      return "make the pane lower by " + at_least_text(missing);
                  });
    // Nominal against the clearance, worst case against nothing left (design, section 5).
    list.last().worst = loading.play_worst;
    if (list.last().status == Status::pass && loading.play_worst < 0) {
        list.last().status = Status::warn;
        list.last().advice = "make loading_clearance larger by " + at_least_text(-loading.play_worst);
    }
    const double width = c.frame.groove.width.value;
    list.enter({Code::fit_loading, "loading-tilt", side, "top edge tilted in the top groove", "mm",
                figure(pane, "loading/tilt_width")},
               loading.tilt_width, loading.tilt_width_worst, width, Bound::at_most,
               [](double missing) { return "widen the top groove by " + at_least_text(missing); });
    list.enter({Code::fit_loading, "loading-swing", side, "tilted pane under the top groove's bottom",
                "mm", figure(pane, "loading/tilt_rise")},
               loading.tilt_rise, loading.tilt_rise_worst, c.frame.groove.top_depth.value,
               Bound::at_most, [](double missing) {
                   return "deepen the top groove by " + at_least_text(missing) +
                          "; a strongly curved pane is better slid in";
               });
}

void check_loading(const Case& c, const PaneSums<double>& pane, CheckList& list) {
    const Loading loading = c.frame.loading.value;
    if (loading == Loading::lift_and_drop) {
        check_lift_and_drop(c, pane, list);
        return;
    }
    const bool beaded = loading == Loading::beaded;
    if (beaded && c.frame.post.hold.value == Hold::groove) {
        list.at_least({Code::fit_loading, "loading", std::string(side_text(pane.side)),
                       "beads close rabbets, but the posts have grooves", ""},
                      0, 1,
                      [](double) { return std::string("set the posts' hold to \"rabbet\""); });
        return;
    }
    list.at_least({Code::fit_loading, "loading", std::string(side_text(pane.side)),
                   beaded ? "laid into the open rabbets, beads off" : "slid down, top off", "mm",
                   figure(pane, "loading/play")},
                  pane.loading.play, pane.loading.play_worst, 0, [](double missing) {
                      return "make the pane smaller by " + at_least_text(missing);
                  });
}

void check_bend(const Case& c, const PaneSums<double>& pane, CheckList& list) {
    if (!pane.curved) {
        return;
    }
    const std::string side(side_text(pane.side));
    const Sheet& sheet = *c.sheets.at(c.pane(pane.side)->sheet).like;
    if (pane.heated) {
        const bool cold = pane.cold_radius > 0 && pane.inside_radius >= pane.cold_radius;
        list.at_least({Code::fit_bend, "bend", side,
                       cold ? "heated, though the sheet could be held to this radius cold"
                            : "heated",
                       "mm", figure(pane, "formed/inside_radius")},
                      pane.inside_radius, 0, [](double) { return std::string(); });
        return;
    }
    if (pane.cold_radius == 0) {
        list.at_least({Code::fit_bend, "bend", side, "cold; no cold radius is known for this sheet"},
                      pane.inside_radius, pane.inside_radius + 1, [](double) {
                          return std::string("bend it heated (\"bend\": \"heat\")");
                      });
        return;
    }
    list.at_least({Code::fit_bend, "bend", side, "cold", "mm",
                   figure(pane, "formed/inside_radius")}, pane.inside_radius, pane.cold_radius,
                  [&](double) {
                      return "bend it heated (\"bend\": \"heat\"), or take a sheet of " +
                             mm(pane.thickness * pane.inside_radius / pane.cold_radius) +
                             " or thinner";
                  });
    if (sheet.long_term_stress) {
        list.enter({Code::fit_bend, "bend-stress", side, "held cold", "MPa",
                    figure(pane, "flexing_stress")}, pane.flexing_stress,
                   pane.flexing_stress, sheet.long_term_stress->value, Bound::at_most,
                   [](double) { return std::string("bend it heated (\"bend\": \"heat\")"); });
    }
}

}  // namespace

void check_pane(const Case& c, const PaneSums<double>& pane, CheckList& list) {
    check_engagement(c, pane, list);
    check_room(pane, list);
    check_faces(pane, list);
    check_loading(c, pane, list);
    check_bend(c, pane, list);
    check_blank(c, pane, list);
}

}  // namespace bowfront::fit
