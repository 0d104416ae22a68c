#include <algorithm>
#include <map>

#include "bowfront/study/inspect.hpp"

namespace bowfront::study {
namespace {

bool measures_fit(const Finding& finding) {
    switch (finding.code) {
        case Code::fit_engagement:
        case Code::fit_room:
        case Code::fit_face_clearance:
        case Code::fit_loading:
        case Code::fit_radius:
        case Code::fit_load:
        case Code::frame_web:
        case Code::frame_cheek:
        case Code::frame_floor: return finding.unit == "mm";
        default: return false;
    }
}

}  // namespace

std::vector<Margin> margins(const std::vector<Finding>& findings) {
    std::map<std::string, Margin> places;
    for (const Finding& finding : findings) {
        if (!measures_fit(finding)) {
            continue;
        }
        const Margin found{finding.code, finding.about, finding.id, finding.margin(),
                           finding.worst_margin()};
        const auto [place, first] = places.emplace(finding.about, found);
        if (!first && found.worst < place->second.worst) {
            place->second = found;
        }
    }
    std::vector<Margin> list;
    for (auto& [about, margin] : places) {
        list.push_back(std::move(margin));
    }
    std::stable_sort(list.begin(), list.end(),
                     [](const Margin& a, const Margin& b) { return a.worst < b.worst; });
    return list;
}

}  // namespace bowfront::study
