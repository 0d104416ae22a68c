#include "bowfront/study/sweep.hpp"

#include <algorithm>
#include <array>
#include <limits>
#include <memory>
#include <string_view>
#include <utility>

#include "bowfront/base/contract.hpp"
#include "bowfront/base/number_text.hpp"
#include "bowfront/fit/checks.hpp"
#include "bowfront/model/values.hpp"
#include "study/ordered_parts.hpp"

namespace bowfront::study {
namespace {

constexpr std::string_view kLineEnd = "\r\n";  // RFC 4180
// Enough work that handing it over costs nothing, little enough to be held.
constexpr std::size_t kVariantsPerPart = 64;

// The figures of a pane: paths in the report below the pane's own, and how they are read.
struct PaneColumn {
    std::string_view path;
    double (*figure)(const PaneSums<double>&);
};

double least_face_clearance(const PaneSums<double>& pane) {
    double least = std::numeric_limits<double>::infinity();
    for (const auto& edge : pane.edges) {
        least = std::min(least, edge.face_clearance_least);
    }
    return least;
}

// Both ends of a pane have the same sums sideways, so its start stands for both.
constexpr std::array kPaneColumns = {
    PaneColumn{"blank/length", [](const PaneSums<double>& pane) { return pane.blank_length; }},
    PaneColumn{"blank/width", [](const PaneSums<double>& pane) { return pane.blank_width; }},
    PaneColumn{"edges/top/engagement/settled",
               [](const PaneSums<double>& pane) { return pane.edge(PaneEdge::top).settled; }},
    PaneColumn{"edges/top/engagement/least",
               [](const PaneSums<double>& pane) { return pane.edge(PaneEdge::top).engagement_least; }},
    PaneColumn{"edges/start/engagement/settled",
               [](const PaneSums<double>& pane) { return pane.edge(PaneEdge::start).settled; }},
    PaneColumn{"edges/start/engagement/least",
               [](const PaneSums<double>& pane) {
                   return pane.edge(PaneEdge::start).engagement_least;
               }},
    PaneColumn{"room/vertical/worst",
               [](const PaneSums<double>& pane) { return pane.room_vertical.worst; }},
    PaneColumn{"room/sideways/worst",
               [](const PaneSums<double>& pane) { return pane.room_sideways.worst; }},
    PaneColumn{"face_clearance/least", least_face_clearance}};

// One line of the table, field by field.
class Line {
  public:
    void text(std::string_view field) {
        separate();
        if (field.find_first_of(",\"\r\n") == std::string_view::npos) {
            line_ += field;
            return;
        }
        line_ += '"';
        for (const char c : field) {
            line_ += c;
            if (c == '"') {
                line_ += c;
            }
        }
        line_ += '"';
    }
    void number(double value) { text(number_text(value)); }
    void empty() { separate(); }
    [[nodiscard]] std::string ended() {
        line_ += kLineEnd;
        first_ = true;
        return std::exchange(line_, {});
    }

  private:
    void separate() {
        if (!std::exchange(first_, false)) {
            line_ += ',';
        }
    }
    std::string line_;
    bool first_ = true;
};

std::string heading(const Sweep& sweep) {
    Line line;
    for (const Axis& axis : sweep.axes) {
        line.text(axis.name);
    }
    for (const std::string_view column : {"verdict", "margin", "check", "about"}) {
        line.text(column);
    }
    if (sweep.chance) {
        line.text("first_time_fit");
    }
    for (const PaneSpec& pane : sweep.base.panes) {
        for (const PaneColumn& column : kPaneColumns) {
            line.text("panes/" + std::string(side_text(pane.side)) + "/" + std::string(column.path));
        }
    }
    line.text("reason");
    return line.ended();
}

// Whether a check holds a length of pane or frame against its limit; radii and sheets to buy are
// lengths as well, but what is to spare of them says nothing of the fit.
bool measures_fit(const Finding& finding) {
    switch (finding.code) {
        case Code::fit_engagement:
        case Code::fit_room:
        case Code::fit_face_clearance:
        case Code::fit_loading:
        case Code::frame_post_on_plate:
        case Code::frame_web:
        case Code::frame_cheek:
        case Code::frame_floor: return finding.unit == "mm";
        default: return false;
    }
}

// Whether a value of the case may change its frame as laid out and judged. Only values that are known
// not to are taken out.
bool touches_frame(std::string_view pointer) {
    constexpr std::array<std::string_view, 10> kElsewhere = {
        "/panes/",         "/sheets/",  "/fit/",
        "/form/",          "/oven/",    "/service/",
        "/tolerance/cut",  "/tolerance/groove_width", "/tolerance/opening",
        "/tolerance/sheet_thickness"};
    return std::none_of(kElsewhere.begin(), kElsewhere.end(), [pointer](std::string_view start) {
        return pointer.starts_with(start);
    });
}

// All checks of a variant, group by group in their fixed order; nothing is copied.
using Findings = std::array<const std::vector<Finding>*, 4>;

Status verdict_of(const Findings& groups) {
    Status worst = Status::pass;
    for (const auto* group : groups) {
        worst = std::max(worst, verdict(*group));
    }
    return worst;
}

const Finding& tightest_of(const Findings& groups) {
    const Finding* least = nullptr;
    for (const auto* group : groups) {
        for (const Finding& finding : *group) {
            if (measures_fit(finding) &&
                (least == nullptr || finding.worst_margin() < least->worst_margin())) {
                least = &finding;
            }
        }
    }
    BOWFRONT_EXPECTS(least != nullptr);
    return *least;
}

// The first check that fails, in words; empty where none does.
std::string failing_of(const Findings& groups) {
    for (const auto* group : groups) {
        for (const Finding& finding : *group) {
            if (finding.status == Status::fail) {
                return finding.id + " " + finding.about;
            }
        }
    }
    return {};
}

Outcome outcome_of(Status status) {
    switch (status) {
        case Status::pass: return Outcome::pass;
        case Status::warn: return Outcome::warn;
        case Status::fail: break;
    }
    return Outcome::fail;
}

// Makes the lines of variants, one after the other, in a case of its own.
class Bench {
  public:
    explicit Bench(const Sweep& sweep)
        : sweep_(sweep), case_(sweep.base), faults_(sweep.axes.size()),
          set_(sweep.axes.size(), std::numeric_limits<std::size_t>::max()) {
        std::vector<bool> in_frame;
        visit_values(case_, [&](double& value, const Origin& origin) {
            values_.push_back(&value);
            in_frame.push_back(touches_frame(origin.pointer));
        });
        for (const Axis& axis : sweep.axes) {
            frame_axes_.push_back(std::any_of(axis.places.begin(), axis.places.end(),
                                              [&](std::size_t place) { return in_frame[place]; }));
        }
    }
    Bench(const Bench&) = delete;
    Bench& operator=(const Bench&) = delete;

    void add(std::size_t variant, TablePart& part) {
        set(variant);
        Line line;
        for (std::size_t i = 0; i < set_.size(); ++i) {
            line.text(sweep_.axes[i].steps.text(set_[i]));
        }
        std::string reason = fault();
        CaseSums<double> sums;
        if (reason.empty()) {
            fit::SolvedCase solved = fit::solved_case(case_);
            sums = std::move(solved.sums);
            reason = words_of(solved.objections);
            if (reason.empty()) {
                reason = words_of(frame(sums).objections);
            }
        }
        part.judgements.push_back(reason.empty() ? possible(sums, line)
                                                 : impossible(reason, line));
        part.text += line.ended();
    }

  private:
    // Puts the numbers of a variant in their places; those of slow axes mostly stand there already.
    void set(std::size_t variant) {
        for (std::size_t i = sweep_.axes.size(); i-- > 0;) {
            const Axis& axis = sweep_.axes[i];
            const std::size_t place = variant % axis.steps.count();
            variant /= axis.steps.count();
            if (place == set_[i]) {
                continue;
            }
            set_[i] = place;
            AxisValue taken = axis.value(place);
            faults_[i] = std::move(taken.fault);
            if (faults_[i].empty()) {
                if (frame_axes_[i]) {
                    frame_.reset();
                }
                for (const std::size_t value : axis.places) {
                    *values_[value] = taken.value;
                }
            }
        }
    }

    static std::string words_of(const std::vector<Objection>& objections) {
        return objections.empty() ? std::string()
                                  : objections.front().found + "; " + objections.front().wanted;
    }

    // The frame of the numbers that are set, laid out anew only where one of them may change it: it
    // costs many times what the sums do.
    const fit::SolvedFrame& frame(const CaseSums<double>& sums) {
        if (!frame_) {
            frame_ = fit::solved_frame(case_, sums);
        }
        return *frame_;
    }

    [[nodiscard]] std::string fault() const {
        for (std::size_t i = 0; i < faults_.size(); ++i) {
            if (!faults_[i].empty()) {
                return sweep_.axes[i].name + ": " + faults_[i];
            }
        }
        return sweep_.contradiction ? sweep_.contradiction(case_) : std::string();
    }

    Judgement impossible(const std::string& reason, Line& line) const {
        line.text("impossible");
        // margin, check and about, then the figures
        const std::size_t empty =
            3 + (sweep_.chance ? 1 : 0) + case_.panes.size() * kPaneColumns.size();
        for (std::size_t i = 0; i < empty; ++i) {
            line.empty();
        }
        line.text(reason);
        return {Outcome::impossible, 0};
    }

    Judgement possible(const CaseSums<double>& sums, Line& line) {
        const std::vector<Finding> panes = fit::pane_checks(case_, sums);
        const std::vector<Finding> forms = fit::form_checks(case_, sums);
        std::optional<Chance> chance;
        std::vector<Finding> of_chance;
        if (sweep_.chance) {
            chance = first_time_fit(case_, sums, *sweep_.chance);
            of_chance = chance_checks(*chance);
        }
        const Findings findings{&panes, &frame(sums).findings, &forms, &of_chance};
        const Status status = verdict_of(findings);
        const Finding& least = tightest_of(findings);
        line.text(status_text(status));
        line.number(least.worst_margin());
        line.text(least.id);
        line.text(least.about);
        if (chance) {
            line.number(chance->fit.value);
        }
        for (const auto& pane : sums.panes) {
            for (const PaneColumn& column : kPaneColumns) {
                line.number(column.figure(pane));
            }
        }
        line.text(failing_of(findings));
        return {outcome_of(status), least.worst_margin()};
    }

    const Sweep& sweep_;
    Case case_;
    std::vector<double*> values_;
    std::vector<std::string> faults_;  // of the numbers that are set, by axis
    std::vector<std::size_t> set_;     // which number of each axis is set
    std::vector<bool> frame_axes_;     // whether an axis may change the frame
    std::optional<fit::SolvedFrame> frame_;
};

}  // namespace

std::size_t Sweep::count() const noexcept {
    std::size_t all = 1;
    for (const Axis& axis : axes) {
        all *= axis.steps.count();
    }
    return all;
}

void run(const Sweep& sweep, const std::function<void(const TablePart&)>& take) {
    BOWFRONT_EXPECTS(!sweep.axes.empty() && sweep.count() <= kMostVariants && sweep.jobs >= 1);
    const Shard& shard = sweep.shard;
    BOWFRONT_EXPECTS(shard.number >= 1 && shard.number <= shard.of && shard.of <= kMostVariants);
    const std::size_t first = sweep.count() * (shard.number - 1) / shard.of;
    const std::size_t end = sweep.count() * shard.number / shard.of;
    if (shard.number == 1) {
        take({heading(sweep), {}});
    }
    const std::size_t parts = (end - first + kVariantsPerPart - 1) / kVariantsPerPart;
    OrderedParts<TablePart> work(parts, std::max<std::size_t>(1, std::min(sweep.jobs, parts)));
    work.run(
        [&] {
            return [&sweep, first, end,
                    bench = std::make_shared<Bench>(sweep)](std::size_t number) {
                TablePart part;
                const std::size_t from = first + number * kVariantsPerPart;
                const std::size_t to = std::min(end, from + kVariantsPerPart);
                for (std::size_t variant = from; variant < to; ++variant) {
                    bench->add(variant, part);
                }
                return part;
            };
        },
        take);
}

}  // namespace bowfront::study
