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

// Whether the maker gives a pane's height or length, or the blank that it comes of; otherwise it
// follows from grooves and clearances, and only these can change it.
bool own_height(const PaneSpec& spec) {
    return spec.blank.method.value == BlankMethod::as_cut || spec.height;
}
bool own_length(const PaneSpec& spec) {
    return spec.blank.method.value == BlankMethod::as_cut || spec.length;
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
    if (top ? own_height(spec) : own_length(spec)) {
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

// What the heat takes of a blank that is cut already; empty for any other.
std::string shrink_note(const Case& c, const PaneSums<double>& pane, PaneEdge edge) {
    const bool cut = c.pane(pane.side)->blank.method.value == BlankMethod::as_cut;
    if (!cut || !pane.heated || edge == PaneEdge::bottom) {
        return {};
    }
    const bool top = edge == PaneEdge::top;
    const double blank = top ? pane.blank_width : pane.blank_length;
    const double formed = top ? pane.height : pane.length;
    const std::string_view what = formed <= blank ? "shrink takes " : "the heat adds ";
    return std::string(what) + mm(std::abs(blank - formed)) + ": the blank is cut " + mm(blank) +
           (top ? " wide, and the pane comes out " : " long, and the pane comes out ") + mm(formed) +
           (top ? " high" : " long");
}

void check_engagement(const Case& c, const PaneSums<double>& pane, CheckList& list) {
    for (const PaneEdge edge : kPaneEdges) {
        const auto& sums = pane.edge(edge);
        list.at_least({Code::fit_engagement, "engagement", about(pane, edge_text(edge)),
                       std::string(settled_state(edge)), "mm",
                       edge_figure(pane, edge, "engagement/settled")},
                      sums.settled, sums.engagement_least, pane.least_engagement,
                      [&](double missing) { return grow_advice(c, pane, edge, missing); });
        if (list.last().status != Status::pass) {
            list.last().note = shrink_note(c, pane, edge);
        }
    }
}

// A groove that is cut deeper helps only a pane that does not grow with it.
std::string shrink_advice(const Case& c, const PaneSums<double>& pane, bool upright,
                          double missing) {
    const PaneSpec& spec = *c.pane(pane.side);
    if (!upright) {
        return own_length(spec) ? "make the pane shorter by " + at_least_text(missing) +
                                      ", or each post groove deeper by half of that"
                                : "make end_clearance larger by " + at_least_text(missing / 2);
    }
    if (own_height(spec)) {
        return "make the pane lower by " + at_least_text(missing) +
               ", or the top groove as much deeper";
    }
    const bool drop = c.frame.loading.value == Loading::lift_and_drop;
    return std::string("make ") + (drop ? "loading_clearance" : "top_clearance") + " larger by " +
           at_least_text(missing);
}

void check_room(const Case& c, const PaneSums<double>& pane, CheckList& list) {
    list.at_least({Code::fit_room, "room", about(pane, "vertical"), "as built", "mm",
                   figure(pane, "room/vertical/nominal")},
                  pane.room_vertical.nominal, pane.room_vertical.worst, kLeastRoom,
                  [&](double missing) { return shrink_advice(c, pane, true, missing); });
    if (list.last().status != Status::pass) {
        list.last().note = shrink_note(c, pane, PaneEdge::top);
    }
    list.at_least({Code::fit_room, "room", about(pane, "sideways"), "as built", "mm",
                   figure(pane, "room/sideways/nominal")},
                  pane.room_sideways.nominal, pane.room_sideways.worst, kLeastRoom,
                  [&](double missing) { return shrink_advice(c, pane, false, missing); });
    if (list.last().status != Status::pass) {
        list.last().note = shrink_note(c, pane, PaneEdge::start);
    }
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

std::string swing_advice(const Case& c, const PaneSums<double>& pane, double missing) {
    constexpr std::string_view kSlide = "a strongly curved pane is better slid in";
    if (own_height(*c.pane(pane.side))) {
        return "deepen the top groove by " + at_least_text(missing) + "; " + std::string(kSlide);
    }
    // The tilted pane stands up by the diagonal of its height and of its rise and thickness, which
    // is to be shorter.
    const double deep = pane.rise + pane.formed_thickness;
    const double diagonal = std::hypot(pane.height, deep) - missing;
    if (diagonal <= deep) {
        return std::string(kSlide);
    }
    const double lower = pane.height - std::sqrt(diagonal * diagonal - deep * deep);
    return "make loading_clearance larger by " + at_least_text(lower) + "; " + std::string(kSlide);
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
    list.at_least({Code::fit_loading, "loading", side, "lifted into the top groove", "mm",
                   figure(pane, "loading/play")},
                  loading.play, c.fit.loading_clearance.value, [](double missing) {
                      return "make the pane lower by " + at_least_text(missing);
                  });
    // Nominal against the clearance, worst case against nothing left.
    list.at_least({Code::fit_loading, "loading-reserve", side,
                   "lifted into the top groove, nothing asked but that it passes", "mm",
                   figure(pane, "loading/play")},
                  loading.play, loading.play_worst, 0, [](double missing) {
                      return "make loading_clearance larger by " + at_least_text(missing);
                  });
    const AsMade& made = c.pane(pane.side)->made;
    const auto as_made = [](const std::optional<MeasuredSize>& measured, double designed) {
        return measured ? measured->value : designed;
    };
    const double width = as_made(made.groove_width, c.frame.groove.width.value);
    list.enter({Code::fit_loading, "loading-tilt", side, "top edge tilted in the top groove", "mm",
                figure(pane, "loading/tilt_width")},
               loading.tilt_width, loading.tilt_width_worst, width, Bound::at_most,
               [](double missing) { return "widen the top groove by " + at_least_text(missing); });
    list.enter({Code::fit_loading, "loading-swing", side, "tilted pane under the top groove's bottom",
                "mm", figure(pane, "loading/tilt_rise")},
               loading.tilt_rise, loading.tilt_rise_worst,
               as_made(made.top_depth, c.frame.groove.top_depth.value), Bound::at_most,
               [&](double missing) { return swing_advice(c, pane, missing); });
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
                      const double thin = pane.thickness * pane.inside_radius / pane.cold_radius;
                      return "bend it heated (\"bend\": \"heat\"), or take a sheet of " +
                             mm(std::floor(thin * 100) / 100) + " or thinner";
                  });
    if (sheet.long_term_stress) {
        list.enter({Code::fit_bend, "bend-stress", side, "held cold", "MPa",
                    figure(pane, "flexing_stress")}, pane.radius_error.stress,
                   pane.radius_error.stress_worst, sheet.long_term_stress->value, Bound::at_most,
                   [](double) { return std::string("bend it heated (\"bend\": \"heat\")"); });
    }
}

}  // namespace

void check_pane(const Case& c, const PaneSums<double>& pane, CheckList& list) {
    check_engagement(c, pane, list);
    check_room(c, pane, list);
    check_faces(pane, list);
    check_loading(c, pane, list);
    check_bend(c, pane, list);
    check_radius(c, pane, list);
    check_loads(c, pane, list);
    check_blank(c, pane, list);
}

}  // namespace bowfront::fit
