#include "tryouts.hpp"

#include <algorithm>
#include <string_view>
#include <utility>

#include "bowfront/fit/loading_path.hpp"
#include "bowfront/fit/shelf.hpp"
#include "bowfront/study/shop_sizes.hpp"

namespace bowfront::study {
namespace {

// Enough to see which way a chance goes; what is told of it is drawn in full.
constexpr int kSamplesOfSearch = 2000;

// The check that is followed position by position, and is no part of `fit::checks`.
constexpr std::string_view kPathCheck = "loading-path";

// Whether a check holds one of the limits that the chance of a first-time fit is about.
bool is_limit_of_fit(const Finding& finding) {
    return finding.code == Code::fit_engagement || finding.code == Code::fit_room ||
           finding.code == Code::fit_face_clearance || finding.code == Code::fit_loading;
}

bool is_of_shelf(Code code) {
    return code_text(code).starts_with("BF-SHELF");
}

// The checks of the shelves; nothing where they can't be built.
std::optional<std::vector<Finding>> shelf_findings(const Case& c, const CaseSums<double>& sums,
                                                   const fit::Layout& layout) {
    const fit::Shelves shelves = fit::shelves(c, sums, layout);
    return shelves.objections.empty() ? std::optional(fit::shelf_checks(c, sums, shelves))
                                      : std::nullopt;
}

}  // namespace

Tryouts::Tryouts(const std::vector<Finding>& findings, const ChanceOptions& chance,
                 const CaseFile& file)
    : chance_(chance), file_(file) {
    for (const Finding& finding : findings) {
        before_.emplace(std::pair(finding.id, finding.about),
                        Before{finding.status, finding.worst_margin() >= 0});
        with_chance_ = with_chance_ || finding.code == Code::fit_chance;
        with_path_ = with_path_ || finding.id == kPathCheck;
        with_shelves_ = with_shelves_ || is_of_shelf(finding.code);
        with_shop_ = with_shop_ || finding.code == Code::fit_shop_size;
    }
}

bool Tryouts::shapes_frame(const std::string& pointer) {
    constexpr std::string_view kShapes[] = {"/plan/", "/frame/", "/cutter/", "/webs/",
                                            "/tolerance/"};
    return std::any_of(std::begin(kShapes), std::end(kShapes),
                       [&](std::string_view shape) { return pointer.starts_with(shape); });
}

TriedCase Tryouts::weighed(const std::vector<Finding>& after, const Finding& watched) const {
    TriedCase outcome{true, Status::pass, 0, false, {}};
    for (const Finding& finding : after) {
        if (finding.id == watched.id && finding.about == watched.about) {
            outcome.status = finding.status;
            outcome.missing = finding.missing();
            continue;
        }
        const auto before = before_.find({finding.id, finding.about});
        const Before was = before == before_.end() ? Before{} : before->second;
        if (finding.status <= was.status) {
            // Some warn of what is near their limit; breaking it is another thing.
            outcome.harms =
                outcome.harms || (finding.status == Status::warn && was.status == Status::warn &&
                                  was.within && finding.worst_margin() < 0);
            continue;
        }
        if (finding.status == Status::fail) {
            outcome.harms = true;
        } else {
            outcome.brings.push_back(finding.id + " " + finding.about);
        }
    }
    return outcome;
}

bool Tryouts::contradicts(const Case& changed) const {
    return file_.contradiction && !file_.contradiction(changed).empty();
}

// The checks of a changed case that were asked for; nothing where it can't be built.
std::optional<Tryouts::Checked> Tryouts::checked(const Case& changed, Scope scope) const {
    if (contradicts(changed)) {
        return std::nullopt;
    }
    fit::SolvedCase solved = fit::solved_case(changed);
    if (!solved.objections.empty()) {
        return std::nullopt;
    }
    Checked out{std::move(solved.sums), {}, {}};
    append(fit::pane_checks(changed, out.sums), out.findings);
    append(fit::form_checks(changed, out.sums), out.findings);
    if (scope == Scope::whole) {
        fit::SolvedFrame frame = fit::solved_frame(changed, out.sums);
        if (!frame.objections.empty()) {
            return std::nullopt;
        }
        append(std::move(frame.findings), out.findings);
        out.layout = std::move(frame.layout);
    }
    return out;
}

TriedCase Tryouts::tried(const Case& changed, const Finding& watched, Scope scope) const {
    auto out = checked(changed, scope);
    if (!out) {
        return {};
    }
    if (watched.code == Code::fit_chance) {
        const ChanceOptions few{std::min(chance_.samples, kSamplesOfSearch), chance_.seed};
        append(chance_checks(first_time_fit(changed, out->sums, few)), out->findings);
    }
    if (watched.code == Code::fit_shop_size) {
        append(shop_checks(shop_sizes(changed, out->sums)), out->findings);
    }
    if (is_of_shelf(watched.code)) {
        auto of_shelves = shelf_findings(changed, out->sums, out->layout);
        if (!of_shelves) {
            return {};
        }
        append(std::move(*of_shelves), out->findings);
    }
    if (watched.id == kPathCheck) {
        for (const PaneSums<double>& pane : out->sums.panes) {
            if (side_text(pane.side) == watched.about) {
                append(fit::path_checks(changed, out->sums,
                                        {fit::loading_path(changed, pane, out->layout)},
                                        fit::Hint::none),
                       out->findings);
            }
        }
    }
    return weighed(out->findings, watched);
}

// Where all limits of the panes hold at worst, they hold in every sample, and none is drawn.
std::optional<std::vector<Finding>> Tryouts::found(const Case& changed) const {
    auto out = checked(changed, Scope::whole);
    if (!out) {
        return std::nullopt;
    }
    std::vector<Finding>& after = out->findings;
    const bool certain = std::all_of(after.begin(), after.end(), [](const Finding& finding) {
        return finding.status == Status::pass || !is_limit_of_fit(finding);
    });
    if (with_chance_ && !certain) {
        append(chance_checks(first_time_fit(changed, out->sums, chance_)), after);
    }
    if (with_shop_) {
        append(shop_checks(shop_sizes(changed, out->sums)), after);
    }
    if (with_path_) {
        append(
            fit::path_checks(changed, out->sums,
                             fit::loading_paths(changed, out->sums, out->layout), fit::Hint::none),
            after);
    }
    if (with_shelves_) {
        auto of_shelves = shelf_findings(changed, out->sums, out->layout);
        if (!of_shelves) {
            return std::nullopt;
        }
        append(std::move(*of_shelves), after);
    }
    return std::move(after);
}

}  // namespace bowfront::study
