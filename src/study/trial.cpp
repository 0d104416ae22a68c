#include "trial.hpp"

#include <algorithm>
#include <string_view>

#include "bowfront/fit/checks.hpp"

namespace bowfront::study {
namespace {

// Enough to see which way a chance goes; what is told of it is drawn in full.
constexpr int kSamplesOfSearch = 2000;

// Whether a check holds one of the limits that the chance of a first-time fit is about.
bool is_limit_of_fit(const Finding& finding) {
    return finding.code == Code::fit_engagement || finding.code == Code::fit_room ||
           finding.code == Code::fit_face_clearance || finding.code == Code::fit_loading;
}

double missing(const Finding& finding) {
    return -std::min(finding.margin(), finding.worst_margin());
}

}  // namespace

Trials::Trials(const std::vector<Finding>& findings, const ChanceOptions& chance,
               const CaseFile& file)
    : chance_(chance), file_(file) {
    for (const Finding& finding : findings) {
        before_.emplace(Name{finding.id, finding.about}, finding.status);
        with_chance_ = with_chance_ || finding.code == Code::fit_chance;
    }
}

bool Trials::shapes_frame(const std::string& pointer) {
    constexpr std::string_view kShapes[] = {"/plan/", "/frame/", "/cutter/", "/webs/",
                                            "/tolerance/"};
    return std::any_of(std::begin(kShapes), std::end(kShapes),
                       [&](std::string_view shape) { return pointer.starts_with(shape); });
}

void Trials::weigh(const std::vector<Finding>& after, const Finding& watched,
                   Outcome& outcome) const {
    for (const Finding& finding : after) {
        if (finding.id == watched.id && finding.about == watched.about) {
            outcome.status = finding.status;
            outcome.missing = missing(finding);
            continue;
        }
        const auto before = before_.find({finding.id, finding.about});
        const bool asked = before != before_.end();
        if (asked ? finding.status > before->second : finding.status == Status::fail) {
            outcome.harms = true;
        } else if (!asked && finding.status == Status::warn) {
            outcome.brings.push_back(finding.id + " " + finding.about);
        }
    }
}

// Where all limits of the panes hold at worst, they hold in every sample, and none is drawn.
bool Trials::chance_counts(const std::vector<Finding>& after, const Finding& watched,
                           Extent extent) const {
    const bool held = std::all_of(after.begin(), after.end(), [](const Finding& finding) {
        return finding.status == Status::pass || !is_limit_of_fit(finding);
    });
    return with_chance_ && !held &&
           (watched.code == Code::fit_chance || extent == Extent::whole);
}

Outcome Trials::run(const Case& changed, const Finding& watched, Extent extent) const {
    Outcome outcome;
    if (file_.contradiction && !file_.contradiction(changed).empty()) {
        return outcome;
    }
    const fit::Solution solution =
        extent == Extent::whole ? fit::solution(changed) : fit::solution_of_sums(changed);
    if (!solution.objections.empty()) {
        return outcome;
    }
    const std::vector<Finding> after = extent == Extent::whole
                                           ? fit::checks(changed, solution.sums, solution.layout)
                                           : fit::checks_of_sums(changed, solution.sums);
    outcome = {true, Status::pass, 0, false, {}};
    weigh(after, watched, outcome);
    if (!outcome.harms && chance_counts(after, watched, extent)) {
        ChanceOptions options = chance_;
        if (extent == Extent::sums) {
            options.samples = std::min(options.samples, kSamplesOfSearch);
        }
        weigh(chance_checks(first_time_fit(changed, solution.sums, options)), watched, outcome);
    }
    return outcome;
}

}  // namespace bowfront::study
