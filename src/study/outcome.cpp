#include "outcome.hpp"

#include <algorithm>
#include <string_view>
#include <utility>

#include "bowfront/study/shop_sizes.hpp"
namespace bowfront::study {
namespace {

// Enough to see which way a chance goes; what is told of it is drawn in full.
constexpr int kSamplesOfSearch = 2000;

// Whether a check holds one of the limits that the chance of a first-time fit is about.
bool is_limit_of_fit(const Finding& finding) {
    return finding.code == Code::fit_engagement || finding.code == Code::fit_room ||
           finding.code == Code::fit_face_clearance || finding.code == Code::fit_loading;
}

void add_shop_checks(const Case& changed, const CaseSums<double>& sums,
                     std::vector<Finding>& after) {
    for (Finding& finding : shop_checks(shop_sizes(changed, sums))) {
        after.push_back(std::move(finding));
    }
}

double missing(const Finding& finding) {
    return -std::min(finding.margin(), finding.worst_margin());
}

}  // namespace

Tryouts::Tryouts(const std::vector<Finding>& findings, const ChanceOptions& chance,
               const CaseFile& file)
    : chance_(chance), file_(file) {
    for (const Finding& finding : findings) {
        before_.emplace(std::pair(finding.id, finding.about), finding.status);
        with_chance_ = with_chance_ || finding.code == Code::fit_chance;
        with_shop_ = with_shop_ || finding.code == Code::fit_shop_size;
    }
}

bool Tryouts::shapes_frame(const std::string& pointer) {
    constexpr std::string_view kShapes[] = {"/plan/", "/frame/", "/cutter/", "/webs/",
                                            "/tolerance/"};
    return std::any_of(std::begin(kShapes), std::end(kShapes),
                       [&](std::string_view shape) { return pointer.starts_with(shape); });
}

Outcome Tryouts::weighed(const std::vector<Finding>& after, const Finding& watched) const {
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

std::optional<fit::Solution> Tryouts::solved(const Case& changed, Scope scope) const {
    if (file_.contradiction && !file_.contradiction(changed).empty()) {
        return std::nullopt;
    }
    fit::Solution solution =
        scope == Scope::whole ? fit::solution(changed) : fit::solution_of_sums(changed);
    return solution.objections.empty() ? std::optional(std::move(solution)) : std::nullopt;
}

Outcome Tryouts::tried(const Case& changed, const Finding& watched, Scope scope) const {
    const auto solution = solved(changed, scope);
    if (!solution) {
        return {};
    }
    std::vector<Finding> after = scope == Scope::whole
                                     ? fit::checks(changed, solution->sums, solution->layout)
                                     : fit::checks_of_sums(changed, solution->sums);
    if (watched.code == Code::fit_chance) {
        const ChanceOptions few{std::min(chance_.samples, kSamplesOfSearch), chance_.seed};
        for (Finding& finding : chance_checks(first_time_fit(changed, solution->sums, few))) {
            after.push_back(std::move(finding));
        }
    }
    if (watched.code == Code::fit_shop_size) {
        add_shop_checks(changed, solution->sums, after);
    }
    return weighed(after, watched);
}

// Where all limits of the panes hold at worst, they hold in every sample, and none is drawn.
std::optional<std::vector<Finding>> Tryouts::found(const Case& changed) const {
    const auto solution = solved(changed, Scope::whole);
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
    if (with_shop_) {
        add_shop_checks(changed, solution->sums, after);
    }
    return after;
}

}  // namespace bowfront::study
