#include "as_made.hpp"

namespace bowfront::study {
namespace {

// The pane of a check, or of the form that it is about; empty where it is about the frame.
std::optional<CaseSide> side_of(const CaseAsMade& made, const Finding& finding) {
    constexpr std::string_view kForm = "form-";
    std::string_view about = finding.about;
    if (about.starts_with(kForm)) {
        about.remove_prefix(kForm.size());
    }
    for (const PaneSpec& pane : made.c.panes) {
        if (belongs_to(about, side_text(pane.side))) {
            return pane.side;
        }
    }
    return std::nullopt;
}

// Up to which stage of its pane a check is open; none where it is no longer asked at all.
std::optional<PaneStage> open_until(Code code) {
    switch (code) {
        case Code::fit_stock: return PaneStage::not_cut;
        case Code::fit_shrink:
        case Code::fit_heat:
        case Code::fit_oven:
        case Code::form_skin:
        case Code::form_sweep: return PaneStage::blank_cut;
        case Code::fit_engagement:
        case Code::fit_room:
        case Code::fit_face_clearance:
        case Code::fit_loading:
        case Code::fit_bend:
        case Code::fit_radius:
        case Code::fit_load:
        case Code::frame_web:
        case Code::frame_cheek:
        case Code::frame_floor: return PaneStage::made;
        default: return std::nullopt;
    }
}

}  // namespace

bool still_asked(const CaseAsMade& made, const Finding& finding) {
    const std::optional<PaneStage> until = open_until(finding.code);
    const std::optional<CaseSide> side = side_of(made, finding);
    return until && (!side || made.stage(*side) <= *until);
}

}  // namespace bowfront::study
