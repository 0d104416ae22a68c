#include "bowfront/model/case.hpp"

#include <utility>

namespace bowfront {

std::string_view joint_text(PostJoint joint) noexcept {
    switch (joint) {
        case PostJoint::butt: return "butt";
        case PostJoint::tenon: return "tenon";
        case PostJoint::dowel: break;
    }
    return "dowel";
}

std::string_view edge_text(PaneEdge edge) noexcept {
    switch (edge) {
        case PaneEdge::bottom: return "bottom";
        case PaneEdge::top: return "top";
        case PaneEdge::start: return "start";
        case PaneEdge::end: break;
    }
    return "end";
}

std::string_view method_text(BlankMethod method) noexcept {
    switch (method) {
        case BlankMethod::allow_shrink: return "allow-shrink";
        case BlankMethod::trim_after: return "trim-after";
        case BlankMethod::as_cut: break;
    }
    return "as-cut";
}

const PaneSpec* Case::pane(const CaseSide& side) const noexcept {
    for (const PaneSpec& spec : panes) {
        if (spec.side == side) {
            return &spec;
        }
    }
    return nullptr;
}

PaneSpec* Case::pane(const CaseSide& side) noexcept {
    return const_cast<PaneSpec*>(std::as_const(*this).pane(side));  // the panes are this case's own
}

bool Case::is_open(const CaseSide& side) const noexcept {
    return pane(side) == nullptr && !(access_pane && access_pane->side == side);
}

}  // namespace bowfront
