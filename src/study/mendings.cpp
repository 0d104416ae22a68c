#include "mendings.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string_view>
#include <utility>

#include "bowfront/base/number_text.hpp"

namespace bowfront::study {
namespace {

constexpr double kStep = 0.1;        // mm
constexpr double kRounding = 1e-9;  // of a length that is a whole number of steps already

std::string mm(double length) {
    return rounded_text(length, 2) + " mm";
}

using Size = std::optional<MeasuredSize>;

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
    bool cut_start(double by) { return cut_post(PaneEdge::start, by); }
    bool cut_end(double by) { return cut_post(PaneEdge::end, by); }
    bool base(double by) {
        return add(spec().base_depth, groove().base_depth.value, now_.tolerances.base_depth, by);
    }
    bool top(double by) {
        return add(spec().top_depth, groove().top_depth.value, now_.tolerances.top_depth, by);
    }
    bool post(PaneEdge end, double by) {
        PostDepths& depths = made_.posts[now_.side];
        return add(end == PaneEdge::start ? depths.start : depths.end, groove().post_depth.value,
                   now_.tolerances.post_depth, by);
    }
    // The other groove stays; the posts are judged by the deeper of both.
    bool cut_post(PaneEdge end, double by) {
        const bool cut = post(end, by);
        const PostDepths& depths = made_.posts[now_.side];
        double& deepest = made_.frame.frame.groove.post_depth.value;
        deepest = std::max(deepest, (end == PaneEdge::start ? depths.start : depths.end)->value);
        return cut;
    }
    bool width(double by) {
        made_.frame.frame.groove.width.value += by;
        return add(spec().groove_width, groove().width.value, now_.tolerances.groove_width, by);
    }
    // As the form is made for, and measured as well as the first time.
    bool form_again() {
        std::optional<MeasuredRadius>& radius = spec().radius;
        if (!radius) {
            return false;
        }
        const double wanted = now_.inside_radius;
        radius = MeasuredRadius{wanted, wanted * radius->least / radius->value,
                                wanted * radius->most / radius->value};
        return true;
    }

  private:
    [[nodiscard]] AsMade& spec() { return made_.pane(now_.side).made; }
    [[nodiscard]] const Groove& groove() const { return made_.c.frame.groove; }

    static bool add(Size& size, double now, double uncertainty, double by) {
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
class Mendings {
  public:
    Mendings(const CaseAsMade& made, const PaneSums<double>& pane)
        : made_(made), pane_(pane), sizes_(made.pane(pane.side).made),
          posts_(made.posts_of(pane.side)), stage_(made.stage(pane.side)),
          name_("the " + std::string(side_text(pane.side)) + " pane") {}

    void trim_height(double by) {
        trim({"height", "width", pane_.height, pane_.blank_width}, by, &Sizes::height);
    }
    void trim_length(double by) {
        trim({"length", "length", pane_.length, pane_.blank_length}, by, &Sizes::length);
    }
    void deepen_base(double by) {
        cut({"base groove under " + name_, "deep", "deepen"}, sizes_.base_depth,
            groove().base_depth.value, by, &Sizes::cut_base);
    }
    void deepen_top(double by) {
        cut({"top groove over " + name_, "deep", "deepen"}, sizes_.top_depth,
            groove().top_depth.value, by, &Sizes::cut_top);
    }
    void deepen_posts(double by) {
        cut({"post grooves of " + name_, "deep", "deepen"},
            posts_.start ? posts_.start : posts_.end, groove().post_depth.value, by,
            &Sizes::cut_posts);
    }
    void deepen_post(PaneEdge end, double by) {
        const bool start = end == PaneEdge::start;
        cut({"post groove at the " + std::string(edge_text(end)) + " of " + name_, "deep", "deepen"},
            start ? posts_.start : posts_.end, groove().post_depth.value, by,
            start ? &Sizes::cut_start : &Sizes::cut_end);
    }
    void widen(double by) {
        cut({"grooves of " + name_, "wide", "widen"}, sizes_.groove_width, groove().width.value,
            by, &Sizes::width);
    }
    // A groove that is too deep is filled by a strip, or not cut so deep.
    void raise_base(double by) {
        fill("base groove under " + name_, sizes_.base_depth, groove().base_depth.value, by,
             [by](Sizes& sizes) { return sizes.base(-by); });
    }
    void raise_post(PaneEdge end, double by) {
        fill("post groove at the " + std::string(edge_text(end)) + " of " + name_,
             end == PaneEdge::start ? posts_.start : posts_.end, groove().post_depth.value, by,
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
        add("heat " + name_ + " again until it lies on its form everywhere, and measure chord and "
                              "rise again",
            [](Sizes& sizes) { return sizes.form_again(); });
    }

    [[nodiscard]] std::vector<Mending> take() { return std::move(list_); }

  private:
    // A size of the pane, and the same of its blank.
    struct Way {
        std::string_view name, of_blank;
        double size, blank;
    };
    // A groove, what its size is called, and what making it larger is called.
    struct Cut {
        std::string groove;
        std::string_view size, enlarge;
    };

    [[nodiscard]] const Groove& groove() const { return made_.c.frame.groove; }

    void trim(const Way& way, double by, bool (Sizes::*change)(double)) {
        double taken = by;
        std::string words = "trim " + name_ + "'s " + std::string(way.name) + " by " + mm(by);
        if (stage_ == PaneStage::blank_cut) {
            const double of_blank = stepped(by * way.blank / way.size);
            taken = of_blank * way.size / way.blank;
            words = "trim the blank of " + name_ + " in " + std::string(way.of_blank) + " by " +
                    mm(of_blank) + " before it is heated";
        } else if (stage_ == PaneStage::not_cut) {
            words = "cut " + name_ + "'s " + std::string(way.name) + " " + mm(way.size - by) +
                    " instead of " + mm(way.size);
        }
        add(words, [=](Sizes& sizes) { return (sizes.*change)(-taken); });
    }
    void cut(const Cut& what, const Size& made, double drawn, double by,
             bool (Sizes::*change)(double)) {
        const std::string words =
            made ? std::string(what.enlarge) + " the " + what.groove + " by " + mm(by)
                 : otherwise(what.groove, drawn + by, what.size, drawn);
        add(words, [=](Sizes& sizes) { return (sizes.*change)(by); });
    }
    void fill(const std::string& where, const Size& made, double drawn, double by,
              std::function<bool(Sizes&)> change) {
        add(made ? "lay a strip " + mm(by) + " thick into the " + where
                 : otherwise(where, drawn - by, "deep", drawn),
            std::move(change));
    }
    static std::string otherwise(const std::string& where, double size, std::string_view what,
                                 double drawn) {
        return "cut the " + where + " " + mm(size) + " " + std::string(what) + " instead of " +
               mm(drawn);
    }
    void add(std::string words, std::function<bool(Sizes&)> change) {
        const PaneSums<double>& pane = pane_;
        list_.push_back({std::move(words), [change = std::move(change), &pane](CaseAsMade& made) {
                             Sizes sizes(made, pane);
                             return change(sizes);
                         }});
    }

    const CaseAsMade& made_;
    const PaneSums<double>& pane_;
    const AsMade& sizes_;
    PostDepths posts_;
    PaneStage stage_;
    std::string name_;
    std::vector<Mending> list_;
};

void mend_engagement(std::string_view edge, double missing, Mendings& changes) {
    if (edge == edge_text(PaneEdge::bottom)) {
        changes.deepen_base(missing);
        changes.bead_base(missing);
    } else if (edge == edge_text(PaneEdge::top)) {
        changes.raise_base(missing);
        changes.bead_top(missing);
    } else {
        const bool start = edge == edge_text(PaneEdge::start);
        changes.raise_post(start ? PaneEdge::end : PaneEdge::start, missing);
        changes.bead_post(start ? PaneEdge::start : PaneEdge::end, missing);
    }
}

}  // namespace

double stepped(double length) {
    return std::ceil(length / kStep - kRounding) * kStep;
}

std::vector<Mending> mendings_for(const Finding& finding, const CaseAsMade& made,
                                const PaneSums<double>& pane, double missing) {
    Mendings changes(made, pane);
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
        changes.deepen_post(PaneEdge::start, missing);
        changes.deepen_post(PaneEdge::end, missing);
    } else if (finding.id == "face-clearance" || finding.id == "loading-tilt") {
        changes.widen(missing);
    } else if (finding.code == Code::fit_radius) {
        if (finding.margin() < 0) {
            changes.form_again();
        }
        if (finding.unit == "mm") {
            changes.widen(missing);
        }
    } else if (finding.code == Code::fit_loading) {
        changes.trim_height(missing);
        changes.trim_length(missing);
        changes.deepen_top(missing);
    } else if (finding.code == Code::fit_load) {
        for (const PaneEdge edge : {PaneEdge::top, PaneEdge::start, PaneEdge::end}) {
            mend_engagement(edge_text(edge), missing, changes);
        }
    }
    return changes.take();
}

Mending cut_anew(const Case& designed, const CaseAsMade& made, const PaneSums<double>& pane) {
    const CaseSide side = pane.side;
    const NewPane renewed = new_pane(designed, made, side);
    const CutSize& size = renewed.size;
    const bool first = made.stage(side) == PaneStage::not_cut;
    std::string words = std::string(first ? "cut the " : "cut a new ") +
                        std::string(side_text(side)) + " pane, " + mm(size.length) + " x " +
                        mm(size.height) + (pane.heated ? " as formed" : "");
    if (pane.heated) {
        words += ", from a blank of " + mm(size.blank_length) + " x " + mm(size.blank_width);
    }
    if (first) {
        words += ", instead of " + mm(pane.length) + " x " + mm(pane.height);
    }
    // As drawn it was to be cut anyway.
    constexpr double kShown = 0.005;  // mm
    const bool as_drawn = first && std::abs(size.length - pane.length) < kShown &&
                          std::abs(size.height - pane.height) < kShown;
    return {words, [side, renewed, as_drawn](CaseAsMade& to) {
                to.pane(side) = renewed.spec;
                return !as_drawn && renewed.size.length > 0 && renewed.size.height > 0;
            }};
}

}  // namespace bowfront::study
