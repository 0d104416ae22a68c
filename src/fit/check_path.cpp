#include <algorithm>
#include <cmath>
#include <optional>
#include <string>

#include "bowfront/fit/loading_path.hpp"
#include "check_groups.hpp"

namespace bowfront::fit {
namespace {

std::string shorter(double missing) {
    return "make the pane shorter by " + at_least_text(missing) +
           ", by a larger end_clearance or a size of its own";
}

double tightest_of(const LoadingPath& path, Status status) {
    return status == Status::fail ? path.clearance : path.tightest_state()->worst.clearance;
}

// By how much wider grooves let a pane in, mm, in steps of 0.1 mm. Where a pane's ends lie near a
// cheek the grooves' round ends take a share of what is won, so each width is followed again until
// one is enough.
std::optional<double> enough_width(const Case& c, const CaseSide& side, double missing, Status status) {
    constexpr double kStep = 0.1;
    constexpr int kTries = 6;
    Case wider = c;
    double by = 0;
    for (int i = 0; i < kTries; ++i) {
        // A clearance in plan is told for one face; a groove is widened at both.
        by += kStep * std::ceil(2 * missing / kStep);
        wider.frame.groove.width.value = c.frame.groove.width.value + by;
        if (!objections(wider).empty()) {
            break;
        }
        const CaseSums<double> sums = solve(wider);
        missing = -tightest_of(loading_path(wider, *sums.pane(side), layout(wider, sums)), status);
        if (missing <= 0) {
            return by;
        }
    }
    return std::nullopt;
}

// What opens a passage that is too tight.
std::string mend(const Case& c, const PaneSums<double>& pane, const Passage& passage,
                 Status status) {
    const double missing = -passage.clearance;
    const double sideways =
        status == Status::fail ? pane.room_sideways.nominal : pane.room_sideways.worst;
    switch (passage.at) {
        case Narrow::posts:
        case Narrow::base: {
            if (sideways < 0) {
                return shorter(-sideways);
            }
            const auto by = enough_width(c, pane.side, missing, status);
            return by ? "widen the grooves by " + mm(*by)
                      : std::string("widen the grooves, or take a thinner sheet");
        }
        case Narrow::upright:
            return "make the pane lower by " + at_least_text(missing) +
                   ", or the top groove as much deeper with the pane as it is";
        case Narrow::top_cheeks: return "widen the top groove by " + at_least_text(missing);
        case Narrow::top_bottom:
            return "deepen the top groove by " + at_least_text(missing) +
                   " with the pane as it is, or slide the pane in";
        case Narrow::between_posts: break;
    }
    return shorter(missing);
}

std::string refusal_advice(const Case& c, const PaneSums<double>& pane) {
    if (c.frame.post.hold.value == Hold::groove) {
        return c.frame.loading.value == Loading::beaded
                   ? "set the posts' hold to \"rabbet\", or loading to \"slide-in\""
                   : "slide it down its grooves with the top off: set loading to \"slide-in\"; or "
                     "set the posts' hold to \"rabbet\"";
    }
    if (pane.is_run()) {
        return "a pane of several bends can't be swung in: set loading to \"slide-in\"";
    }
    return "a pane of half a turn or more can't be swung in: set loading to \"slide-in\"";
}

std::string way_text(Loading loading) {
    switch (loading) {
        case Loading::slide_in: return "slid down with the top off, ";
        case Loading::beaded: return "laid in with the top and all beads off, ";
        case Loading::lift_and_drop: break;
    }
    return "lifted and dropped with the posts' beads off, ";
}

std::string state_of(const Case& c, const PaneSums<double>& pane, const LoadingPath& path) {
    std::string text = "followed in every state, " + way_text(c.frame.loading.value);
    if (pane.curved && !pane.heated) {
        text += "held bent: " + flexing_text(c, pane) + ", ";
    }
    return text + "tightest " + path.tightest;
}

// What becomes of a pane whose passage is too tight only in some state or at worst.
std::string told(const Case& c, const PaneSums<double>& pane, const PassageInState& tightest) {
    const Passage& worst = tightest.worst;
    std::string text = "at worst, in the state " + std::string(state_text(tightest.state)) + ", ";
    if (worst.must_flex()) {
        return text + "it is too tight " + worst.tightest + ", and goes in only flexed, to " +
               flexing_text(c, pane);
    }
    return text + "there is no way in, " + worst.tightest;
}

}  // namespace

std::string flexing_text(const Case& c, const PaneSums<double>& pane) {
    const RadiusSums<double>& error = pane.radius_error;
    const auto& limit = c.sheets.at(c.pane(pane.side)->sheet).like->long_term_stress;
    return "a strain of " + rounded_text(error.flexing_strain * 100, 3) + " % and a stress of " +
           rounded_text(error.flexing_stress, 2) + " MPa in its faces" +
           (limit ? ", lasting limit " + rounded_text(limit->value, 1) + " MPa"
                  : std::string(", no lasting limit is known for this sheet"));
}

void check_access(const Case& c, CheckList& list) {
    if (c.frame.post.hold.value != Hold::rabbet) {
        return;  // a pane slides down its grooves; nobody has to be inside
    }
    const auto open_sides = static_cast<double>(sides_of(c.plan).size() - c.panes.size());
    const bool top_on = c.frame.loading.value == Loading::lift_and_drop;
    list.at_least({Code::fit_path, "loading-access", "frame",
                   top_on ? "top on: open sides, by which the last pane and the hand that beads it "
                            "come inside"
                          : "top off: the last pane is beaded from above",
                   ""},
                  top_on ? open_sides : open_sides + 1, 1, [](double) {
                      return std::string(
                          "the posts' rabbets open to the inside, and with all four sides glazed and "
                          "the top on nobody comes there: set loading to \"slide-in\" or "
                          "\"beaded\", whose top goes on last, or leave one side without a pane");
                  });
}

std::vector<Finding> path_checks(const Case& c, const CaseSums<double>& sums,
                                 const std::vector<LoadingPath>& paths, Hint hint) {
    CheckList list;
    for (const LoadingPath& path : paths) {
        const PaneSums<double>& pane = *sums.pane(path.side);
        const std::string side(side_text(path.side));
        const PassageInState* tightest = path.tightest_state();
        if (tightest == nullptr) {
            list.at_least({Code::fit_path, "loading-path", side, path.tightest, ""}, 0, 1,
                          [&](double) { return refusal_advice(c, pane); });
            continue;
        }
        const double worst = std::min(path.clearance, tightest->worst.clearance);
        list.at_least({Code::fit_path, "loading-path", side, state_of(c, pane, path), "mm",
                       "panes/" + side + "/loading_path/clearance"},
                      path.clearance, worst, 0, [&](double) {
                          if (hint == Hint::none) {
                              return std::string();
                          }
                          return path.possible
                                     ? mend(c, pane, tightest->worst, Status::warn)
                                     : mend(c, pane, path.states.front().nominal, Status::fail);
                      });
        if (path.possible && list.last().status != Status::pass) {
            list.last().note = told(c, pane, *tightest);
        }
    }
    return list.take();
}

}  // namespace bowfront::fit
