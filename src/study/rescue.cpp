#include <algorithm>

#include "bowfront/fit/checks.hpp"
#include "mendings.hpp"

namespace bowfront::study {
namespace {

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

// Whether nothing that is measured can mend a finding but what the design's own advice says.
bool advice_stands(const CaseAsMade& made, const Finding& finding, const PaneSums<double>* pane) {
    switch (finding.code) {
        case Code::fit_engagement:
        case Code::fit_room:
        case Code::fit_face_clearance: return false;
        case Code::fit_loading:
        case Code::fit_load: return finding.unit != "mm";
        // A curve that was not measured is not known to be wrong.
        case Code::fit_radius:
            return !made.pane(pane->side).made.radius && made.pane(pane->side).made.bends.empty();
        case Code::frame_web:
        case Code::frame_cheek:
        case Code::frame_floor: {
            const Groove& cut = made.frame.frame.groove;
            const Groove& drawn = made.c.frame.groove;
            return cut.base_depth.value == drawn.base_depth.value &&
                   cut.top_depth.value == drawn.top_depth.value &&
                   cut.post_depth.value == drawn.post_depth.value &&
                   cut.width.value == drawn.width.value;
        }
        default: return true;
    }
}

class Rescuer {
  public:
    Rescuer(const Case& designed, const CaseAsMade& made, Inspection& inspection)
        : designed_(designed), made_(made), inspection_(inspection),
          as_drawn_(assess({designed, {}, designed}).findings) {}

    void run() {
        for (Finding& finding : inspection_.findings) {
            const PaneSums<double>* const pane = pane_of(finding);
            if (finding.status != Status::pass && !advice_stands(made_, finding, pane)) {
                mend(finding, pane);
            }
        }
    }

  private:
    // The pane that a finding is about; null where it is about timber.
    [[nodiscard]] const PaneSums<double>* pane_of(const Finding& finding) const {
        if (code_text(finding.code).starts_with("BF-FIT")) {
            for (const InspectedPane& pane : inspection_.panes) {
                if (belongs_to(finding.about, side_text(pane.sums.side))) {
                    return &pane.sums;
                }
            }
        }
        return nullptr;
    }

    void mend(Finding& finding, const PaneSums<double>* pane) {
        std::vector<Rescue> found;
        if (pane != nullptr) {
            // A pane that is not cut yet is simply cut to what is there.
            if (made_.stage(pane->side) == PaneStage::not_cut) {
                try_all(finding, {cut_anew(designed_, made_, *pane)}, found);
            }
            try_changes(finding, *pane, std::min(finding.margin(), finding.worst_margin()), found);
            if (finding.status == Status::fail) {
                try_changes(finding, *pane, finding.margin(), found);
            }
        }
        if (found.empty()) {
            give_up(finding, pane, found);
        }
        tell(finding, found);
        inspection_.rescues.insert(inspection_.rescues.end(), found.begin(), found.end());
    }

    // Mendings are tried only while none has helped.
    void try_changes(const Finding& finding, const PaneSums<double>& pane, double margin,
                     std::vector<Rescue>& found) const {
        if (found.empty()) {
            try_all(finding, mendings_for(finding, made_, pane, stepped(-margin)), found);
        }
    }

    // Nothing else may become worse by a change than it is now, or than it was drawn.
    [[nodiscard]] bool none_is_worse(const std::vector<Finding>& after) const {
        return std::all_of(after.begin(), after.end(), [&](const Finding& finding) {
            return finding.status <= std::max(status_of(inspection_.findings, finding),
                                              status_of(as_drawn_, finding));
        });
    }

    // What becomes of a finding by a change; none where the change can't be made, does not help, or
    // does harm elsewhere.
    [[nodiscard]] std::optional<Rescue> tried(const Finding& finding, const Mending& change) const {
        CaseAsMade changed = made_;
        if (!change.apply(changed) || !fit::objections(changed.frame).empty()) {
            return std::nullopt;
        }
        const std::vector<Finding> after = assess(changed).findings;
        const Status now = status_of(after, finding);
        if (now >= finding.status || !none_is_worse(after)) {
            return std::nullopt;
        }
        return Rescue{finding.id, finding.about, change.words, finding.status, now};
    }

    void try_all(const Finding& finding, const std::vector<Mending>& changes,
                 std::vector<Rescue>& found) const {
        for (const Mending& change : changes) {
            if (auto rescue = tried(finding, change)) {
                found.push_back(std::move(*rescue));
            }
        }
    }

    void give_up(const Finding& finding, const PaneSums<double>* pane,
                 std::vector<Rescue>& found) {
        inspection_.beyond_rescue.push_back(name_of(finding));
        if (pane != nullptr && made_.stage(pane->side) != PaneStage::not_cut) {
            try_all(finding, {cut_anew(designed_, made_, *pane)}, found);
        }
    }

    static void tell(Finding& finding, const std::vector<Rescue>& found) {
        if (found.empty()) {
            finding.advice = finding.status == Status::fail
                                 ? "nothing that is made can be kept: cut the frame parts anew"
                                 : "nothing that is made can be made better: it holds as it is, "
                                   "but not at worst";
            return;
        }
        finding.advice.clear();
        for (const Rescue& rescue : found) {
            finding.advice += (finding.advice.empty() ? "" : ", or ") + rescue.action;
        }
    }

    const Case& designed_;
    const CaseAsMade& made_;
    Inspection& inspection_;
    std::vector<Finding> as_drawn_;
};

}  // namespace

void find_rescues(const Case& designed, const CaseAsMade& made, Inspection& inspection) {
    Rescuer(designed, made, inspection).run();
}

}  // namespace bowfront::study
