#include "bowfront/base/finding.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <tuple>

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
    const auto rank = [](const Finding& finding) {
        return std::tuple(finding.status == Status::fail ? 0 : 1,
                          finding.code == Code::fit_chance ? 1 : 0, -finding.shortfall());
    };
    std::stable_sort(order.begin(), order.end(), [&](const Finding* one, const Finding* other) {
        return rank(*one) < rank(*other);
    });
    return order;
}

void append(std::vector<Finding> some, std::vector<Finding>& to) {
    to.insert(to.end(), std::make_move_iterator(some.begin()), std::make_move_iterator(some.end()));
}

Status verdict(const std::vector<Finding>& findings) noexcept {
    Status worst = Status::pass;
    for (const Finding& finding : findings) {
        worst = std::max(worst, finding.status);
    }
    return worst;
}

}  // namespace bowfront
