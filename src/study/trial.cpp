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

Status Trials::before(const Finding& finding) const {
    const auto found = before_.find({finding.id, finding.about});
    return found == before_.end() ? Status::pass : found->second;
}

// Where all limits of a pane hold at worst, they hold in every sample, and none is drawn.
void Trials::add_chance(const Case& changed, const CaseSums<double>& sums, const Finding& watched,
                        Extent extent, std::vector<Finding>& after) const {
    const bool asked = watched.code == Code::fit_chance;
    const bool held = std::all_of(after.begin(), after.end(), [](const Finding& finding) {
        return finding.status == Status::pass || !is_limit_of_fit(finding);
    });
    if (!with_chance_ || held || (!asked && extent == Extent::sums)) {
        return;
    }
    ChanceOptions options = chance_;
    if (extent == Extent::sums) {
        options.samples = std::min(options.samples, kSamplesOfSearch);
    }
    for (Finding& finding : chance_checks(first_time_fit(changed, sums, options))) {
        after.push_back(std::move(finding));
    }
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
    std::vector<Finding> after = extent == Extent::whole
                                     ? fit::checks(changed, solution.sums, solution.layout)
                                     : fit::checks_of_sums(changed, solution.sums);
    add_chance(changed, solution.sums, watched, extent, after);
    outcome = {true, Status::pass, 0, false};
    for (const Finding& finding : after) {
        if (finding.id == watched.id && finding.about == watched.about) {
            outcome.status = finding.status;
            outcome.missing = missing(finding);
        } else if (finding.status > before(finding)) {
            outcome.harms = true;
        }
    }
    return outcome;
}

}  // namespace bowfront::study
