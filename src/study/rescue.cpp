#include <algorithm>
#include <cmath>
#include <functional>

#include "as_made.hpp"
#include "bowfront/base/number_text.hpp"
#include "bowfront/fit/checks.hpp"

namespace bowfront::study {
namespace {

// What can be set in a shop: proposals are rounded up to it, mm.
constexpr double kStep = 0.1;
constexpr double kRounding = 1e-9;  // of a length that is a whole number of steps already

double stepped(double length) {
    return std::ceil(length / kStep - kRounding) * kStep;
}

std::string mm(double length) {
    return rounded_text(length, 2) + " mm";
}

// A change of what was made, in words and as it enters the sums; false where nothing would be left.
struct Change {
    std::string words;
    std::function<bool(CaseAsMade&)> apply;
};

// The sizes that can be changed at one side, each as it is now.
class Sizes {
  public:
    Sizes(CaseAsMade& made, const PaneSums<double>& now) : made_(made), now_(now) {}

    bool height(double by) { return add(spec().height, now_.height, now_.height_tolerance, by); }
    bool length(double by) { return add(spec().length, now_.length, now_.length_tolerance, by); }
    bool opening_height(double by) {
        return add(spec().opening_height, now_.opening_height, now_.tolerances.opening_height, by);
    }
    bool opening_length(double by) {
        return add(spec().opening_length, now_.opening_length, now_.tolerances.opening_length, by);
    }
    // Depths by a cut, which takes timber away, or by beads or strips, which don't.
    bool cut_base(double by) {
        made_.frame.frame.groove.base_depth.value += by;
        return base(by);
    }
    bool cut_top(double by) {
        made_.frame.frame.groove.top_depth.value += by;
        return top(by);
    }
    bool cut_posts(double by) {
        made_.frame.frame.groove.post_depth.value += by;
        return post(PaneEdge::start, by) && post(PaneEdge::end, by);
    }
    bool base(double by) {
        return add(spec().base_depth, groove().base_depth.value, now_.tolerances.base_depth, by);
    }
    bool top(double by) {
        return add(spec().top_depth, groove().top_depth.value, now_.tolerances.top_depth, by);
    }
    bool post(PaneEdge end, double by) {
        return add(post_depth(end), groove().post_depth.value, now_.tolerances.post_depth, by);
    }
    bool width(double by) {
        made_.frame.frame.groove.width.value += by;
        return add(spec().groove_width, groove().width.value, now_.tolerances.groove_width, by);
    }

  private:
    [[nodiscard]] AsMade& spec() { return made_.pane(now_.side).made; }
    [[nodiscard]] const Groove& groove() const { return made_.c.frame.groove; }

    [[nodiscard]] std::optional<MeasuredSize>& post_depth(PaneEdge end) {
        PostDepths& depths = made_.posts[now_.side];
        return end == PaneEdge::start ? depths.start : depths.end;
    }

    static bool add(std::optional<MeasuredSize>& size, double now, double uncertainty, double by) {
        if (!size) {
            size = MeasuredSize{now, uncertainty};
        }
        size->value += by;
        return size->value > 0;
    }

    CaseAsMade& made_;
    const PaneSums<double>& now_;
};

// Writes changes of one side.
class Changes {
  public:
    explicit Changes(const PaneSums<double>& pane)
        : pane_(pane), name_("the " + std::string(side_text(pane.side)) + " pane") {}

    void trim_height(double by) {
        add("trim " + name_ + "'s height by " + mm(by),
            [by](Sizes& sizes) { return sizes.height(-by); });
    }
    void trim_length(double by) {
        add("trim " + name_ + "'s length by " + mm(by),
            [by](Sizes& sizes) { return sizes.length(-by); });
    }
    void deepen_base(double by) {
        add("deepen the base groove under " + name_ + " by " + mm(by),
            [by](Sizes& sizes) { return sizes.cut_base(by); });
    }
    void deepen_top(double by) {
        add("deepen the top groove over " + name_ + " by " + mm(by),
            [by](Sizes& sizes) { return sizes.cut_top(by); });
    }
    void deepen_posts(double by) {
        add("deepen both post grooves of " + name_ + " by " + mm(by),
            [by](Sizes& sizes) { return sizes.cut_posts(by); });
    }
    void widen(double by) {
        add("widen the grooves of " + name_ + " by " + mm(by),
            [by](Sizes& sizes) { return sizes.width(by); });
    }
    void shim_base(double by) {
        add("lay a strip " + mm(by) + " thick into the base groove under " + name_,
            [by](Sizes& sizes) { return sizes.base(-by); });
    }
    void shim_post(PaneEdge end, double by) {
        add("lay a strip " + mm(by) + " thick into the post groove at the " +
                std::string(edge_text(end)) + " of " + name_,
            [by, end](Sizes& sizes) { return sizes.post(end, -by); });
    }
    // A bead lengthens a groove's cheeks and takes as much from the opening.
    void bead_base(double by) {
        add("plant beads " + mm(by) + " high along the base groove under " + name_,
            [by](Sizes& sizes) { return sizes.opening_height(-by) && sizes.base(by); });
    }
    void bead_top(double by) {
        add("plant beads " + mm(by) + " high along the top groove over " + name_,
            [by](Sizes& sizes) { return sizes.opening_height(-by) && sizes.top(by); });
    }
    void bead_post(PaneEdge end, double by) {
        add("plant beads " + mm(by) + " thick along the post groove at the " +
                std::string(edge_text(end)) + " of " + name_,
            [by, end](Sizes& sizes) {
                return sizes.opening_length(-by) && sizes.post(end, by);
            });
    }
    void form_again() {
        const CaseSide side = pane_.side;
        list_.push_back({"heat " + name_ + " again over its form, and measure chord and rise again",
                         [side](CaseAsMade& made) { return made.bows.erase(side) == 1; }});
    }

    [[nodiscard]] std::vector<Change> take() { return std::move(list_); }

  private:
    void add(std::string words, std::function<bool(Sizes&)> change) {
        const PaneSums<double>& pane = pane_;
        list_.push_back({std::move(words), [change = std::move(change), &pane](CaseAsMade& made) {
                             Sizes sizes(made, pane);
                             return change(sizes);
                         }});
    }

    const PaneSums<double>& pane_;
    std::string name_;
    std::vector<Change> list_;
};

void mend_engagement(std::string_view edge, double missing, Changes& changes) {
    if (edge == edge_text(PaneEdge::bottom)) {
        changes.deepen_base(missing);
        changes.bead_base(missing);
    } else if (edge == edge_text(PaneEdge::top)) {
        changes.shim_base(missing);
        changes.bead_top(missing);
    } else {
        const bool start = edge == edge_text(PaneEdge::start);
        changes.shim_post(start ? PaneEdge::end : PaneEdge::start, missing);
        changes.bead_post(start ? PaneEdge::start : PaneEdge::end, missing);
    }
}

// What may help a finding that misses its limit by some length.
std::vector<Change> changes_for(const Finding& finding, const PaneSums<double>& pane,
                                double missing) {
    Changes changes(pane);
    const std::string_view about = finding.about;
    const std::string_view part = about.substr(std::min(about.size(), about.find('/') + 1));
    if (finding.id == "engagement") {
        mend_engagement(part, missing, changes);
    } else if (finding.id == "room" && part == "vertical") {
        changes.trim_height(missing);
        changes.deepen_top(missing);
    } else if (finding.id == "room") {
        changes.trim_length(missing);
        changes.deepen_posts(stepped(missing / 2));
    } else if (finding.id == "face-clearance" || finding.id == "loading-tilt") {
        changes.widen(missing);
    } else if (finding.id == "curve") {
        changes.form_again();
        changes.widen(missing);
    } else if (finding.id == "curve-stress") {
        changes.form_again();
    } else if (finding.code == Code::fit_loading) {
        changes.trim_height(missing);
        changes.trim_length(missing);
        changes.deepen_top(missing);
    }
    return changes.take();
}

// Words that mark one finding among those of other assessments.
std::string name_of(const Finding& finding) {
    return finding.id + " " + finding.about;
}

Status status_of(const std::vector<Finding>& findings, const Finding& wanted) {
    for (const Finding& finding : findings) {
        if (finding.id == wanted.id && finding.about == wanted.about) {
            return finding.status;
        }
    }
    return Status::pass;  // a finding that is no longer made asks for nothing
}

bool none_is_worse(const std::vector<Finding>& before, const std::vector<Finding>& after) {
    return std::all_of(after.begin(), after.end(), [&](const Finding& finding) {
        return finding.status <= status_of(before, finding);
    });
}

// What becomes of a finding by a change; none where the change can't be made, does not help, or
// does harm elsewhere.
std::optional<Rescue> tried(const Finding& finding, const Change& change, CaseAsMade made,
                            const std::vector<Finding>& before) {
    if (!change.apply(made) || !fit::objections(made.frame).empty()) {
        return std::nullopt;
    }
    const std::vector<Finding> after = assess(made).findings;
    const Status now = status_of(after, finding);
    if (now >= finding.status || !none_is_worse(before, after)) {
        return std::nullopt;
    }
    return Rescue{finding.id, finding.about, change.words, finding.status, now};
}

// A new pane for the frame as it is, by the clearances of the design.
Change new_pane(const Case& designed, const CaseAsMade& made, CaseSide side) {
    CaseAsMade renewed = made;
    PaneSpec& pane = renewed.pane(side);
    const PaneSpec& first = *designed.pane(side);
    AsMade sizes = pane.made;
    sizes.length = sizes.height = sizes.thickness = std::nullopt;
    sizes.blank_length = sizes.blank_width = std::nullopt;
    pane = first;
    pane.made = sizes;
    renewed.bows.erase(side);
    Groove& groove = renewed.c.frame.groove;
    const auto now = [](Sourced<double>& depth, const std::optional<MeasuredSize>& measured) {
        depth.value = measured ? measured->value : depth.value;
    };
    now(groove.base_depth, sizes.base_depth);
    now(groove.top_depth, sizes.top_depth);
    const PostDepths posts = renewed.posts[side];
    const double designed_depth = groove.post_depth.value;
    groove.post_depth.value = ((posts.start ? posts.start->value : designed_depth) +
                               (posts.end ? posts.end->value : designed_depth)) / 2;
    Case alone = renewed.c;
    alone.panes = {pane};
    const CaseSums<double> sums = fit::solve(alone);
    const double length = sums.panes[0].length;
    const double height = sums.panes[0].height;
    return {"cut a new " + std::string(side_text(side)) + " pane, " + mm(length) + " x " +
                mm(height) + (sums.panes[0].heated ? " as formed" : ""),
            [=](CaseAsMade& to) {
                PaneSpec& spec = to.pane(side);
                spec = pane;
                if (pane.blank.method.value != BlankMethod::as_cut) {
                    spec.length = Sourced<double>{length, {}};
                    spec.height = Sourced<double>{height, {}};
                }
                to.bows.erase(side);
                return length > 0 && height > 0;
            }};
}

class Rescuer {
  public:
    Rescuer(const Case& designed, const CaseAsMade& made, Inspection& inspection)
        : designed_(designed), made_(made), inspection_(inspection) {}

    void run() {
        for (Finding& finding : inspection_.findings) {
            // A curve that was not measured is not known to be wrong: its advice stands.
            if (finding.status != Status::pass && finding.code != Code::fit_radius) {
                mend(finding);
            }
        }
    }

  private:
    // The pane that a finding is about; null where it is about timber.
    [[nodiscard]] const PaneSums<double>* pane_of(const Finding& finding) const {
        if (code_text(finding.code).starts_with("BF-FIT")) {
            for (const InspectedPane& pane : inspection_.panes) {
                if (finding.about.starts_with(side_text(pane.sums.side))) {
                    return &pane.sums;
                }
            }
        }
        return nullptr;
    }

    void mend(Finding& finding) {
        const PaneSums<double>* const pane = pane_of(finding);
        std::vector<Rescue> found;
        if (pane != nullptr) {
            const double worst = stepped(-std::min(finding.margin(), finding.worst_margin()));
            try_all(finding, changes_for(finding, *pane, worst), found);
            if (found.empty() && finding.status == Status::fail) {
                try_all(finding, changes_for(finding, *pane, stepped(-finding.margin())), found);
            }
        }
        if (found.empty()) {
            give_up(finding, pane, found);
        }
        finding.advice.clear();
        for (const Rescue& rescue : found) {
            finding.advice += (finding.advice.empty() ? "" : ", or ") + rescue.action;
        }
        if (found.empty()) {
            finding.advice = "nothing that is made can be kept: cut the frame parts anew";
        }
        inspection_.rescues.insert(inspection_.rescues.end(), found.begin(), found.end());
    }

    void try_all(const Finding& finding, const std::vector<Change>& changes,
                 std::vector<Rescue>& found) const {
        for (const Change& change : changes) {
            if (auto rescue = tried(finding, change, made_, inspection_.findings)) {
                found.push_back(std::move(*rescue));
            }
        }
    }

    void give_up(const Finding& finding, const PaneSums<double>* pane,
                 std::vector<Rescue>& found) {
        inspection_.beyond_rescue.push_back(name_of(finding));
        if (pane != nullptr) {
            try_all(finding, {new_pane(designed_, made_, pane->side)}, found);
        }
    }

    const Case& designed_;
    const CaseAsMade& made_;
    Inspection& inspection_;
};

}  // namespace

void find_rescues(const Case& designed, const CaseAsMade& made, Inspection& inspection) {
    Rescuer(designed, made, inspection).run();
}

}  // namespace bowfront::study
