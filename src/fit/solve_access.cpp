#include <cmath>

#include "bowfront/base/contract.hpp"
#include "bowfront/fit/access.hpp"
#include "bowfront/fit/swing.hpp"
#include "solve.hpp"

namespace bowfront::fit {
namespace {

constexpr std::string_view kGeometry = "geometry";
constexpr std::string_view kLimits = "limits of all tolerances added";

CaseSums<double> solved(const Case& c, Book<double>&, Workings*) { return solve(c); }
CaseSums<Traced> solved(const Case& c, Book<Traced>&, Workings* workings) {
    return solve(c, *workings);
}

// The case as the pane of the side that opens meets it: in grooves of its own, lifted and dropped.
Case about_the_side(const Case& c) {
    Case out = c;
    out.access.reset();
    out.panes = {*c.access_pane};
    out.frame.loading.value = Loading::lift_and_drop;
    const auto in_groove = [&](const AccessGroove& groove, const Sourced<double>& lift) {
        out.frame.groove.width = groove.width;
        out.frame.groove.base_depth = groove.base_depth;
        out.frame.groove.top_depth = groove.top_depth;
        out.fit.loading_clearance = lift;
    };
    if (const auto* const pane = c.access->as<LiftOutPane>()) {
        in_groove(pane->groove, pane->lift_clearance);
    } else if (const auto* const pair = c.access->as<SlidingPair>()) {
        in_groove(pair->groove, pair->lift_clearance);
    }
    return out;
}

template <class N>
class AccessSolver {
  public:
    AccessSolver(const Case& c, Book<N>& book, Workings* workings)
        : c_(c), book_(book), workings_(workings) {}

    AccessSums<N> run() {
        AccessSums<N> sums;
        sums.side = c_.access->side;
        if (c_.access->as<LiftOffTop>() != nullptr) {
            sums.top = top_off(solved(c_, book_, workings_));
            return sums;
        }
        sums.pane = solved(about_the_side(c_), book_, workings_).panes.front();
        pane_ = &*sums.pane;
        if (const auto* const pane = c_.access->as<LiftOutPane>()) {
            lift_out(*pane, sums);
        } else if (const auto* const pair = c_.access->as<SlidingPair>()) {
            sliding(*pair, sums);
        } else {
            sums.door = door(*c_.access->as<PivotDoor>());
        }
        return sums;
    }

  private:
    N figure(std::string_view key, std::string_view symbol, N value, std::string_view source,
             Kind kind = Kind::length) {
        return book_.figure({"access", key}, symbol, kind, value, source);
    }
    NominalAndWorst<N> both(const std::string& key, const std::string& symbol, N nominal, N worst,
                            std::string_view source) {
        return {figure(key + "/nominal", symbol, nominal, source),
                figure(key + "/worst", symbol + "_worst", worst, kLimits)};
    }
    N input(std::string_view symbol, const Sourced<double>& value) {
        return book_.input(symbol, Kind::length, value);
    }

    TopOffSums<N> top_off(const CaseSums<N>& all) {
        N tallest = all.panes.front().height;
        for (const PaneSums<N>& pane : all.panes) {
            tallest = larger(tallest, pane.height);
        }
        TopOffSums<N> out;
        out.travel = figure("travel", "s",
                            input("h", c_.frame.clear_height) +
                                input("D_b", c_.frame.groove.base_depth),
                            "from the base groove's bottom to the posts' upper ends");
        out.headroom = figure("headroom", "z",
                              larger(N(0), tallest - input("t_t", c_.frame.top.thickness)),
                              "the tallest pane stands on the posts' ends, where the top was");
        return out;
    }

    // What both kinds of grooved panes have, from their length on.
    GroovedSums<N> grooved(N length) {
        const PaneSums<N>& pane = *pane_;
        GroovedSums<N> out;
        out.length = length;
        out.height = figure("height", "W", pane.height,
                            "lifted to the top groove's bottom, the foot clears the base");
        const auto engagement = [&](const std::string& edge, const EdgeSums<N>& of) {
            return both("engagement/" + edge, "e_" + edge, of.engagement, of.engagement_least,
                        "the pane stands on the base groove's bottom");
        };
        out.bottom = engagement("bottom", pane.edge(PaneEdge::bottom));
        out.top = engagement("top", pane.edge(PaneEdge::top));
        out.lift = both("lift", "p", pane.loading.play, pane.loading.play_worst,
                        "lifted to the top groove's bottom, the foot must clear the base");
        const auto tilt = [&](std::string_view key, std::string_view symbol, N height, N opening,
                              N thickness) {
            return book_.solved(
                {"access", "tilt", key}, symbol, Kind::length,
                swing_extremes({value_of(height), value_of(opening), value_of(thickness), 0, 0, 0})
                    .widest.width,
                "the widest place of the swing, every corner turned and measured at each tilt",
                {height, opening, thickness}, kGeometry);
        };
        out.tilt = {tilt("nominal", "b", pane.height, pane.opening_height, pane.formed_thickness),
                    tilt("worst", "b_worst", pane.height + pane.height_tolerance,
                         pane.opening_height - pane.tolerances.opening_height, pane.thickest)};
        out.push = figure("push", "F", book_.input("F", Kind::force, c_.service.push),
                          "a hand in the pane's middle", Kind::force);
        out.bow = bow("bow", out.push, length);
        const auto held = [&](N rest, N bowed) {
            return rest - 8 * bowed * bowed / (3 * pane.opening_height);
        };
        out.held = both("held", "e_w", held(out.top.nominal, out.bow.nominal),
                        held(out.top.worst, out.bow.worst),
                        "engagement less the chord shortening of a bowed pane: 8w²/(3H)");
        return out;
    }

    // A pane on two edges as a beam. A wide one counts no wider than its span: an endless plate
    // bends as a beam of 1.23 spans (Timoshenko and Woinowsky-Krieger: w = 0.01695·F·s²/D).
    NominalAndWorst<N> bow(const std::string& key, N force, N length) {
        const Sheet& sheet = *c_.sheets.at(c_.access_pane->sheet).like;
        const N modulus = book_.reference({"access", key, "modulus"}, "E", Kind::stress,
                                          sheet.modulus.value, {sheet.modulus.source});
        const N span = pane_->opening_height;
        const N width = figure(key + "/width", "b_w", smaller(length, span),
                               "the pane's length, or its span where that is less");
        const auto deflection = [&](N t) {
            return force * span * span * span / (4 * modulus * width * t * t * t);
        };
        return both(key, "w", deflection(pane_->bearing_thickness),
                    deflection(pane_->bearing_thickness_least),
                    "beam on base and top, load in its middle: w = F·H³/(48·E·I), I = b·t³/12");
    }

    // The least over the states.
    template <class Value>
    N least(std::string_view key, std::string_view symbol, Value value) {
        N chosen{};
        for (const AirState which : kAirStates) {
            const std::string path = std::string(key) + "/" + std::string(state_text(which));
            const N now = figure(path, symbol,
                                 value(pane_->states[static_cast<std::size_t>(which)]),
                                 "nominal sizes in this state of the air");
            chosen = which == AirState::built ? now : smaller(chosen, now);
        }
        return chosen;
    }

    void lift_out(const LiftOutPane& spec, AccessSums<N>& sums) {
        const N length = figure("length", "L",
                                pane_->opening_length - 2 * input("c", spec.clearance),
                                "between the posts, clear of both");
        sums.grooved = grooved(length);
        // The tolerance is that of a pane that reaches into both posts, which is never less.
        sums.grooved->play =
            both("play", "u", pane_->opening_length - length,
                 least("play", "u", [&](const PaneState<N>& state) {
                     return state.opening_least - length * state.sheet;
                 }) - pane_->length_tolerance - pane_->tolerances.opening_length,
                 "opening less the pane");
    }

    void sliding(const SlidingPair& spec, AccessSums<N>& sums) {
        const N opening = pane_->opening_length;
        const N overlap = input("o", spec.overlap);
        const N length = figure("length", "L", (opening + overlap) / 2,
                                "two panes fill the opening and overlap");
        sums.grooved = grooved(length);
        SlidingSums<N> out;
        out.overlap =
            both("overlap", "o", 2 * length - opening,
                 least("overlap", "o", [&](const PaneState<N>& state) {
                     return 2 * length * state.sheet - state.opening_most;
                 }) - 2 * pane_->length_tolerance - pane_->tolerances.opening_length,
                 "both panes shut hard against their posts");
        out.open = figure("open", "a", opening - length, "one pane behind the other");
        out.share = figure("share", "a/O", out.open / opening, "of the opening's length",
                           Kind::ratio);
        const N force = book_.reference({"access", "sliding_hand"}, "F_s", Kind::force,
                                        kSlidingHand, {"common practice, no source"});
        const NominalAndWorst<N> bowed = bow("sliding_bow", force, length);
        const N web = input("d", spec.web);
        out.faces = both("faces", "q",
                         web + input("g", spec.groove.width) - pane_->formed_thickness -
                             bowed.nominal,
                         web - bowed.worst,
                         "both upright in the middle of their grooves, one bowed; at worst leant "
                         "on the timber between them");
        sums.sliding = out;
    }

    DoorSums<N> door(const PivotDoor& spec) {
        using std::sqrt;
        const PaneSums<N>& pane = *pane_;
        const N gap = input("c", spec.clearance);
        const N pin = input("p", spec.pivot);
        const N opening = pane.opening_length;
        DoorSums<N> out;
        out.length = figure("length", "L", opening - 2 * gap, "the opening less the gap all round");
        out.height = figure("height", "W", pane.opening_height - 2 * gap,
                            "the opening less the gap all round");
        const auto radius = [&](N reach, N thickness) {
            return sqrt(reach * reach + thickness * thickness / 4);
        };
        const N reach = opening - gap - pin;
        const N loss = figure(
            "closing", "x",
            opening - out.length -
                least("closing_room", "u", [&](const PaneState<N>& state) {
                    return state.opening_least - out.length * state.sheet;
                }) +
                pane.length_tolerance + pane.tolerances.opening_length,
            "what the posts and the pane may take of the gaps, all of it at the latch");
        out.latch = both("latch", "q_l", opening - pin - radius(reach, pane.formed_thickness),
                         opening - pin - radius(reach, pane.thickest) - loss,
                         "the far corner turns about the pin: √((L − p)² + t²/4) against the post");
        out.heel = both("heel", "q_h", pin - radius(pin - gap, pane.formed_thickness),
                        pin - radius(pin - gap + pane.length_tolerance, pane.thickest),
                        "the near corner turns about the pin: √((p − c)² + t²/4) against the post");
        out.above = both("above", "q_t", pane.opening_height - out.height - gap,
                         least("above", "q_t", [&](const PaneState<N>& state) {
                             return pane.opening_height - out.height * state.sheet - gap;
                         }) - pane.height_tolerance - pane.tolerances.opening_height,
                         "it stands on its lower pivot, one gap over the base");
        out.passage = figure("passage", "a", opening - pin - pane.formed_thickness / 2,
                             "open by 90°, the door stands beside its pin");
        return out;
    }

    const Case& c_;
    Book<N>& book_;
    Workings* workings_;
    const PaneSums<N>* pane_ = nullptr;
};

}  // namespace

AccessSums<double> solve_access(const Case& c) {
    BOWFRONT_EXPECTS(c.access.has_value());
    Book<double> book;
    return AccessSolver<double>(c, book, nullptr).run();
}

AccessSums<Traced> solve_access(const Case& c, Workings& workings) {
    BOWFRONT_EXPECTS(c.access.has_value());
    Book<Traced> book(workings);
    return AccessSolver<Traced>(c, book, &workings).run();
}

}  // namespace bowfront::fit
