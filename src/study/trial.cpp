#include "trial.hpp"

#include <algorithm>
#include <string_view>
#include <utility>
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
        before_.emplace(std::pair(finding.id, finding.about), finding.status);
        with_chance_ = with_chance_ || finding.code == Code::fit_chance;
    }
}

bool Trials::shapes_frame(const std::string& pointer) {
    constexpr std::string_view kShapes[] = {"/plan/", "/frame/", "/cutter/", "/webs/",
                                            "/tolerance/"};
    return std::any_of(std::begin(kShapes), std::end(kShapes),
                       [&](std::string_view shape) { return pointer.starts_with(shape); });
}

Outcome Trials::weighed(const std::vector<Finding>& after, const Finding& watched) const {
    Outcome outcome{true, Status::pass, 0, false, {}};
    for (const Finding& finding : after) {
        if (finding.id == watched.id && finding.about == watched.about) {
            outcome.status = finding.status;
            outcome.missing = missing(finding);
            continue;
        }
        const auto before = before_.find({finding.id, finding.about});
        const bool made = before != before_.end();
        if (made ? finding.status > before->second : finding.status == Status::fail) {
            outcome.harms = true;
        } else if (!made && finding.status == Status::warn) {
            outcome.brings.push_back(finding.id + " " + finding.about);
        }
    }
    return outcome;
}

std::optional<fit::Solution> Trials::solved(const Case& changed, Extent extent) const {
    if (file_.contradiction && !file_.contradiction(changed).empty()) {
        return std::nullopt;
    }
    fit::Solution solution =
        extent == Extent::whole ? fit::solution(changed) : fit::solution_of_sums(changed);
    return solution.objections.empty() ? std::optional(std::move(solution)) : std::nullopt;
}

Outcome Trials::tried(const Case& changed, const Finding& watched, Extent extent) const {
    const auto solution = solved(changed, extent);
    if (!solution) {
        return {};
    }
    std::vector<Finding> after = extent == Extent::whole
                                     ? fit::checks(changed, solution->sums, solution->layout)
                                     : fit::checks_of_sums(changed, solution->sums);
    if (watched.code == Code::fit_chance) {
        const ChanceOptions few{std::min(chance_.samples, kSamplesOfSearch), chance_.seed};
        for (Finding& finding : chance_checks(first_time_fit(changed, solution->sums, few))) {
            after.push_back(std::move(finding));
        }
    }
    return weighed(after, watched);
}

// Where all limits of the panes hold at worst, they hold in every sample, and none is drawn.
std::optional<std::vector<Finding>> Trials::found(const Case& changed) const {
    const auto solution = solved(changed, Extent::whole);
    if (!solution) {
        return std::nullopt;
    }
    std::vector<Finding> after = fit::checks(changed, solution->sums, solution->layout);
    const bool certain = std::all_of(after.begin(), after.end(), [](const Finding& finding) {
        return finding.status == Status::pass || !is_limit_of_fit(finding);
    });
    if (with_chance_ && !certain) {
        for (Finding& finding : chance_checks(first_time_fit(changed, solution->sums, chance_))) {
            after.push_back(std::move(finding));
        }
    }
    return after;
}

}  // namespace bowfront::study
