#include "bowfront/base/finding.hpp"

#include <algorithm>
#include <cmath>

namespace bowfront {

double Finding::shortfall() const noexcept {
    const double missing = status == Status::fail ? -margin() : -std::min(margin(), worst_margin());
    return limit == 0 ? missing : missing / std::abs(limit);
}

std::vector<const Finding*> worst_first(const std::vector<Finding>& findings) {
    std::vector<const Finding*> order;
    for (const Finding& finding : findings) {
        if (finding.status != Status::pass) {
            order.push_back(&finding);
        }
    }
    std::stable_sort(order.begin(), order.end(), [](const Finding* one, const Finding* other) {
        return one->status != other->status ? one->status > other->status
                                            : one->shortfall() > other->shortfall();
    });
    return order;
}

Status verdict(const std::vector<Finding>& findings) noexcept {
    Status worst = Status::pass;
    for (const Finding& finding : findings) {
        worst = std::max(worst, finding.status);
    }
    return worst;
}

}  // namespace bowfront
