#include "bowfront/study/advice.hpp"

#include <algorithm>
#include <map>
#include <tuple>
#include <utility>

#include "climb.hpp"
#include "setting.hpp"
#include "tryouts.hpp"

namespace bowfront::study {
namespace {

// A change that the search found, not proven yet.
struct Candidate {
    Change change;
    std::function<void(Case&)> put;
};

std::string words_of(const Setting& setting, const Rung& rung) {
    const std::string now =
        setting.given ? "now " + setting.shown : setting.shown + " is assumed";
    const bool word = setting.of == Setting::Of::word;
    return (word ? "set " : "make ") + setting.name + (word ? " to " : " ") + rung.shown + " (" +
           now + ")";
}

std::string summed_up(const std::vector<Change>& changes) {
    std::string text;
    for (const Change& change : changes) {
        text += (text.empty() ? "" : ", or ") + change.words;
        text += change.after == Status::pass ? "" : ", which leaves a warning";
        for (const std::string& brought : change.brings) {
            text += ", which brings the warning " + brought;
        }
    }
    return text;
}

// What is hidden and how it is worked, before what is seen, before what is asked.
Touches rank(const Candidate& candidate) {
    return std::max(candidate.change.touches, Touches::method);
}

// What needs the case's parts is not worked out again for a trial: its own hint stands as advice.
bool is_of_the_whole(const Finding& finding) {
    return finding.code == Code::case_tipping || finding.code == Code::case_mass;
}

}  // namespace

class Adviser::Search {
  public:
    Search(const Case& c, const std::vector<Finding>& findings, const ChanceOptions& chance,
           CaseFile file)
        : c_(c), chance_(chance), file_(std::move(file)), tryouts_(findings, chance_, file_) {}

    // All that may be told of a finding, in the order in which it is.
    std::vector<Change> changes(const Finding& finding) {
        std::vector<Change> found;
        for (const Status wanted : {Status::pass, Status::warn}) {
            if (!found.empty() || wanted >= finding.status) {
                break;
            }
            std::vector<Candidate> list = candidates(finding, wanted, Touches::demand);
            std::stable_sort(list.begin(), list.end(), [](const auto& one, const auto& other) {
                return std::tuple(rank(one), one.change.relative) <
                       std::tuple(rank(other), other.change.relative);
            });
            std::vector<Change> at_a_price;
            for (Candidate& candidate : list) {
                if (found.size() < kMostChanges && proven(candidate, finding, wanted)) {
                    (candidate.change.brings.empty() ? found : at_a_price)
                        .push_back(std::move(candidate.change));
                }
            }
            for (Change& change : at_a_price) {
                if (found.size() < kMostChanges) {
                    found.push_back(std::move(change));
                }
            }
        }
        return found;
    }

    std::optional<Change> correction(const Finding& finding) {
        if (finding.code == Code::fit_shrink) {
            return std::nullopt;
        }
        for (const Touches most : {Touches::method, Touches::look}) {
            for (const Status wanted : {Status::pass, Status::warn}) {
                // A case is not made smaller to suit an oven or a sheet.
                const bool for_shop =
                    finding.code == Code::fit_oven || finding.code == Code::fit_stock;
                const bool allowed = most < Touches::look ||
                                     (finding.status == Status::fail && !for_shop);
                if (!allowed || wanted >= finding.status) {
                    continue;
                }
                if (auto change = first_by_kind(finding, wanted, most)) {
                    return change;
                }
            }
        }
        return std::nullopt;
    }

  private:
    std::optional<Change> first_by_kind(const Finding& finding, Status wanted, Touches most) {
        std::vector<Candidate> list = candidates(finding, wanted, most);
        std::stable_sort(list.begin(), list.end(), [](const auto& one, const auto& other) {
            return std::tuple(one.change.touches, one.change.relative) <
                   std::tuple(other.change.touches, other.change.relative);
        });
        std::optional<Change> at_a_price;
        for (Candidate& candidate : list) {
            if (!proven(candidate, finding, wanted)) {
                continue;
            }
            if (candidate.change.brings.empty()) {
                return std::move(candidate.change);
            }
            if (!at_a_price) {
                at_a_price = std::move(candidate.change);
            }
        }
        return at_a_price;
    }

    // The smallest change of each setting that settles the finding by the sums.
    std::vector<Candidate> candidates(const Finding& finding, Status wanted, Touches most) {
        std::vector<Candidate> list;
        for (const Setting& setting : settings_for(c_, finding, file_)) {
            if (setting.touches > most) {
                continue;
            }
            std::optional<Candidate> smallest;
            for (const Ladder& ladder : setting.ladders) {
                auto candidate = climbed(setting, ladder, finding, wanted);
                if (candidate &&
                    (!smallest || candidate->change.relative < smallest->change.relative)) {
                    smallest = std::move(candidate);
                }
            }
            if (smallest) {
                list.push_back(std::move(*smallest));
            }
        }
        return list;
    }

    std::optional<Candidate> climbed(const Setting& setting, const Ladder& ladder,
                                     const Finding& finding, Status wanted) {
        const bool of_frame = code_text(finding.code).starts_with("BF-FRAME");
        if (of_frame && !Tryouts::shapes_frame(setting.pointer)) {
            return std::nullopt;
        }
        // The way in is followed between the outlines, and shelves are laid out within them.
        const bool on_outlines = of_frame || finding.code == Code::fit_path ||
                                 code_text(finding.code).starts_with("BF-SHELF");
        const Scope scope = on_outlines ? Scope::whole : Scope::sums;
        Case changed = c_;
        Climb climb(ladder, finding.missing(), [&](std::size_t rung) {
            ladder.put(changed, rung);
            return tryouts_.tried(changed, finding, scope);
        });
        const auto rung = climb.first(wanted);
        if (!rung || climb.outcome(*rung).harms) {
            return std::nullopt;
        }
        Candidate candidate = candidate_at(setting, ladder, *rung, finding, wanted);
        // A chance was searched for with few samples; drawn in full it may want a little more.
        constexpr std::size_t kMore = 3;
        for (std::size_t at = *rung + 1; finding.code == Code::fit_chance && at <= *rung + kMore &&
                                         at < ladder.count && !proven(candidate, finding, wanted);
             ++at) {
            candidate = candidate_at(setting, ladder, at, finding, wanted);
        }
        return candidate;
    }

    static Candidate candidate_at(const Setting& setting, const Ladder& ladder, std::size_t rung,
                                  const Finding& finding, Status wanted) {
        const Rung value = ladder.rung(rung);
        return {{setting.pointer, setting.from, value.to, words_of(setting, value), setting.touches,
                 value.relative, finding.status, wanted, {}},
                [put = ladder.put, rung](Case& c) { put(c, rung); }};
    }

    // Everything worked out once more from the case as it stands, with this one value changed. The
    // same change is often tried for several findings.
    bool proven(Candidate& candidate, const Finding& finding, Status wanted) {
        const std::string key = candidate.change.pointer + "=" + candidate.change.to;
        auto known = known_.find(key);
        if (known == known_.end()) {
            Case changed = c_;
            candidate.put(changed);
            known = known_.emplace(key, tryouts_.found(changed)).first;
        }
        if (!known->second) {
            return false;
        }
        const TriedCase outcome = tryouts_.weighed(*known->second, finding);
        candidate.change.after = outcome.status;
        candidate.change.brings = outcome.brings;
        // A warning is not worth a warning.
        return !outcome.harms && outcome.status <= wanted &&
               (outcome.brings.empty() || finding.status == Status::fail);
    }

    const Case& c_;
    ChanceOptions chance_;
    CaseFile file_;
    Tryouts tryouts_;
    std::map<std::string, std::optional<std::vector<Finding>>> known_;  // by the change
};

Adviser::Adviser(const Case& c, const std::vector<Finding>& findings, const ChanceOptions& chance,
                 CaseFile file)
    : search_(std::make_unique<Search>(c, findings, chance, std::move(file))) {}

Adviser::~Adviser() = default;

std::vector<Change> Adviser::changes(const Finding& finding) {
    return search_->changes(finding);
}

std::optional<Change> Adviser::correction(const Finding& finding) {
    return search_->correction(finding);
}

void advise(const Case& c, std::vector<Finding>& findings, const ChanceOptions& chance,
            const CaseFile& file) {
    Adviser adviser(c, findings, chance, file);
    for (Finding& finding : findings) {
        if (finding.status == Status::pass || is_of_the_whole(finding)) {
            continue;
        }
        finding.changes = adviser.changes(finding);
        const bool as_asked =
            std::any_of(finding.changes.begin(), finding.changes.end(),
                        [](const Change& change) { return change.touches != Touches::demand; });
        finding.hint = as_asked ? std::string() : std::exchange(finding.advice, {});
        finding.advice = finding.changes.empty()
                             ? "no single change of the case file was found that settles this and "
                               "lets no other check fail"
                             : summed_up(finding.changes);
        if (!finding.hint.empty()) {
            finding.advice += "; a hint, not tried out: " + finding.hint;
        }
    }
}

}  // namespace bowfront::study
