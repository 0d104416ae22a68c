#include "bowfront/base/finding.hpp"

#include <algorithm>

namespace bowfront {

std::string_view status_text(Status status) noexcept {
    switch (status) {
        case Status::pass: return "pass";
        case Status::warn: return "warn";
        case Status::fail: break;
    }
    return "fail";
}

Status verdict(const std::vector<Finding>& findings) noexcept {
    Status worst = Status::pass;
    for (const Finding& finding : findings) {
        worst = std::max(worst, finding.status);
    }
    return worst;
}

}  // namespace bowfront
