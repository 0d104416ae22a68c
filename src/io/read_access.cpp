#include <algorithm>
#include <initializer_list>
#include <numbers>
#include <string>
#include <string_view>
#include <tuple>
#include <utility>

#include "bowfront/base/quoted_text.hpp"
#include "bowfront/io/case_keys.hpp"
#include "case_parts.hpp"
#include "value_kinds.hpp"

namespace bowfront::io {
namespace {

enum class Kind { top, pane, pair, door };

const WordOf<Kind, 4> kKinds{"how the case is opened",
                             {{{"lift-off-top", Kind::top},
                               {"lift-out-pane", Kind::pane},
                               {"sliding-pair", Kind::pair},
                               {"hinged-door", Kind::door}}}};
const WordOf<TopHeld, 2> kHeld{"what keeps the top in its place",
                               {{{"pegs", TopHeld::pegs}, {"panes", TopHeld::panes}}}};
const WordOf<HingeEnd, 2> kHinge{"an end of the side",
                                 {{{"start", HingeEnd::start}, {"end", HingeEnd::end}}}};

// Less is no opening, more would go through the neighbouring side.
constexpr Range kOpening{std::numbers::pi / 6, std::numbers::pi};

class AccessReader {
  public:
    AccessReader(ObjectReader access, Case& whole) : access_(std::move(access)), whole_(whole) {}

    void read() {
        const auto kind = access_.needed("kind", kKinds);
        if (!kind.given()) {
            for (const std::string_view key : keys_of("/access")) {
                (void)access_.take(key);
            }
            access_.finish();
            return;
        }
        kind_ = *kind;
        Access out;
        // Every key is read whatever the kind, so that each is held to its own range.
        LiftOffTop top = read_top();
        const AccessGroove groove = read_groove();
        const auto clearance = length("clearance", kPositive, {Kind::pane, Kind::door});
        const auto lift = length("lift_clearance", kNotNegative, {Kind::pane, Kind::pair});
        const auto overlap = length("overlap", kPositive, {Kind::pair});
        const auto pull = length("pull", kPositive, {Kind::pane, Kind::pair});
        PivotDoor door{access_.or_default("hinge", kHinge, use_of("hinge", {Kind::door})),
                       clearance, length("pivot", kPositive, {Kind::door}),
                       length("pin", kPositive, {Kind::door}),
                       access_.or_default("angle", AngleIn{kOpening},
                                          use_of("angle", {Kind::door}))};
        const auto side = read_side();
        access_.finish();
        switch (kind_) {
            case Kind::top: out.way = std::move(top); break;
            case Kind::pane: out.way = LiftOutPane{groove, clearance, lift, pull}; break;
            case Kind::pair:
                out.way = SlidingPair{groove, web_, overlap, lift, pull};
                break;
            case Kind::door: out.way = std::move(door); break;
        }
        if (kind_ == Kind::top) {
            ask_loading();
        } else if (side && names_known(access_.reading().faults()) && take_pane(*side)) {
            out.side = side->second;
            settle_groove(out);
        } else {
            return;
        }
        whole_.access = std::move(out);
    }

  private:
    using GivenSide = std::pair<Value, CaseSide>;

    [[nodiscard]] bool is_one_of(std::initializer_list<Kind> kinds) const {
        return std::find(kinds.begin(), kinds.end(), kind_) != kinds.end();
    }

    // Whether this kind of opening has a key; a fault where the file gives one that it hasn't.
    Use use_of(std::string_view key, std::initializer_list<Kind> kinds) {
        if (is_one_of(kinds)) {
            return Use::used;
        }
        if (const auto value = access_.take(key)) {
            access_.reading().refuse(*value, Code::input_contradiction,
                                     quoted_text(key) + " means nothing for this kind of opening",
                                     "no " + quoted_text(key));
        }
        return Use::unused;
    }

    Sourced<double> length(std::string_view key, Range range, std::initializer_list<Kind> kinds) {
        const Use use = use_of(key, kinds);
        return access_.or_default(key, LengthIn{range}, use);
    }

    LiftOffTop read_top() {
        LiftOffTop top;
        const Use use = use_of("held", {Kind::top});
        if (const auto held = access_.take("held");
            held && held->node->text == "screws-from-below" && use == Use::used) {
            access_.reading().refuse(
                *held, Code::input_contradiction,
                "screws from below are reached only from inside the closed case",
                "\"pegs\" or \"panes\": nothing may hold the top down that is reached only from "
                "inside");
        } else {
            top.held = access_.or_default("held", kHeld, use);
        }
        const bool pegs = use == Use::used && *top.held == TopHeld::pegs;
        (void)use_of("peg", {Kind::top});
        ObjectReader peg = access_.object("peg");
        const Use used = pegs ? Use::used : Use::unused;
        top.peg_diameter = peg.or_default("diameter", LengthIn{kPositive}, used);
        top.peg_length = peg.or_default("length", LengthIn{kPositive}, used);
        peg.finish();
        (void)use_of("headroom", {Kind::top});
        top.headroom = access_.given("headroom", LengthIn{kNotNegative});
        return top;
    }

    AccessGroove read_groove() {
        const Use use = use_of("groove", {Kind::pane, Kind::pair});
        AccessGroove out;
        ObjectReader groove = access_.object("groove");
        if (const auto width = groove.take("width")) {
            if (auto given = groove.read(*width, LengthIn{kPositive})) {
                out.width = *given;
            }
        } else {
            out.width.origin = groove.assume_rule("width", use);
            width_ruled_ = true;
        }
        const Use paired = kind_ == Kind::pair ? Use::used : Use::unused;
        if (const auto web = groove.take("web"); web && kind_ == Kind::pane) {
            access_.reading().refuse(*web, Code::input_contradiction, "one pane has one groove",
                                     "no \"web\": it stands between two grooves");
        }
        web_ = groove.or_default("web", LengthIn{kPositive}, paired);
        ObjectReader depth = groove.object("depth");
        out.base_depth = depth.or_default("base", LengthIn{kPositive}, use);
        out.top_depth = depth.or_default("top", LengthIn{kPositive}, use);
        depth.finish();
        groove.finish();
        return out;
    }

    std::optional<GivenSide> read_side() {
        if (use_of("side", {Kind::pane, Kind::pair, Kind::door}) == Use::unused) {
            return std::nullopt;
        }
        const auto value = access_.take_needed("side");
        if (!value) {
            return std::nullopt;
        }
        const auto side = access_.read(*value, SideIn{whole_.plan});
        return side ? std::optional(GivenSide{*value, **side}) : std::nullopt;
    }

    void ask_loading() {
        if (*whole_.frame.loading != Loading::slide_in && whole_.frame.loading.given()) {
            access_.reading().refuse(
                *access_.take("kind"), Code::input_contradiction,
                "with this loading the panes don't come out by the top",
                R"("loading": "slide-in" in the frame, or another kind of opening)");
        }
    }

    bool refuse(const Value& value, std::string found, std::string wanted) {
        access_.reading().refuse(value, Code::input_contradiction, std::move(found),
                                 std::move(wanted));
        return false;
    }

    // Takes the pane of the side that opens out of the others: it stands in no groove of theirs.
    bool take_pane(const GivenSide& side) {
        const std::string name(side_text(side.second));
        const auto pane = std::find_if(
            whole_.panes.begin(), whole_.panes.end(),
            [&](const PaneSpec& spec) { return spec.side == side.second; });
        if (access_.reading().faults().touch("/panes")) {
            return false;
        }
        if (pane == whole_.panes.end()) {
            return refuse(side.first, "the " + name + " has no pane",
                          "an entry for the " + name +
                              " in \"panes\", for its sheet and its thickness");
        }
        if (whole_.panes.size() == 1) {
            return refuse(side.first, "the case has no pane but the one that opens",
                          "panes on other sides");
        }
        if (is_curved(whole_.plan, index(side.second))) {
            return refuse(side.first, "the " + name + " is curved", "a flat side");
        }
        if (pane->length || pane->height || *pane->blank.method == BlankMethod::as_cut) {
            return refuse(side.first, "the pane of the " + name + " has a size of its own",
                          "no \"size\" and no blank as cut: its size follows from how it opens");
        }
        whole_.access_pane = std::move(*pane);
        whole_.panes.erase(pane);
        return true;
    }

    void settle_groove(Access& access) {
        AccessGroove* groove = nullptr;
        double lift = 0;
        if (auto* const pane = std::get_if<LiftOutPane>(&access.way)) {
            groove = &pane->groove;
            lift = *pane->lift_clearance;
        } else if (auto* const pair = std::get_if<SlidingPair>(&access.way)) {
            groove = &pair->groove;
            lift = *pair->lift_clearance;
        }
        if (groove == nullptr) {
            return;
        }
        constexpr double kWider = 2;  // mm, as the default says
        if (width_ruled_) {
            groove->width.value = *whole_.access_pane->thickness + kWider;
        }
        ask_groove(*groove, lift);
    }

    void ask_groove(const AccessGroove& groove, double lift) {
        const std::string pointer = access_.pointer() + "/groove";
        const auto at = [&](const std::string& key) { return Value{value_node(), pointer + key}; };
        const double thickness = *whole_.access_pane->thickness;
        const auto text = [&](double value) { return access_.reading().length_text(value); };
        if (*groove.width <= thickness) {
            (void)refuse(at("/width"),
                         "a pane of " + text(thickness) + " in a groove of " + text(*groove.width),
                         "more than " + text(thickness));
        }
        for (const auto& [key, depth, plate] :
             {std::tuple{"base", *groove.base_depth, *whole_.frame.base.thickness},
              std::tuple{"top", *groove.top_depth, *whole_.frame.top.thickness}}) {
            const std::string name(key);
            if (depth >= plate && !access_.reading().faults().touch("/frame/" + name)) {
                (void)refuse(at("/depth/" + name),
                             "a groove " + text(depth) + " deep goes through a " + name + " of " +
                                 text(plate),
                             "less than " + text(plate) + ", or a thicker " + name);
            }
        }
        if (*groove.top_depth <= *groove.base_depth + lift) {
            (void)refuse(at("/depth/top"),
                         "a pane that is lifted over a base groove of " + text(*groove.base_depth) +
                             " and let down again would not reach into the top",
                         "more than " + text(*groove.base_depth + lift));
        }
    }

    [[nodiscard]] const JsonNode* value_node() const { return access_.value().node; }

    ObjectReader access_;
    Case& whole_;
    Kind kind_ = Kind::top;
    Sourced<double> web_;
    bool width_ruled_ = false;
};

}  // namespace

void read_access(ObjectReader access, Case& whole) {
    AccessReader(std::move(access), whole).read();
}

}  // namespace bowfront::io
