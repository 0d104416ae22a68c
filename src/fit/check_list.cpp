#include "check_list.hpp"

#include <cmath>

namespace bowfront::fit {
namespace {

// A nominal that lies exactly on its limit passes, whatever the rounding of the sums: far above
// the error of a dozen operations on sizes up to 20 m, far below anything a shop can measure.
constexpr double kOnTheLimit = 1e-9;

}  // namespace

std::string at_least_text(double length) {
    return rounded_text(std::ceil(length * 10 - kOnTheLimit) / 10, 1) + " mm";
}

Finding& CheckList::add(Subject subject, double value, double worst, double limit, Bound bound) {
    Finding finding;
    finding.code = subject.code;
    finding.id = subject.id;
    finding.about = std::move(subject.about);
    finding.state = std::move(subject.state);
    finding.value = value;
    finding.worst = worst;
    finding.limit = limit;
    finding.bound = bound;
    finding.unit = subject.unit;
    finding.figure = std::move(subject.figure);
    if (finding.margin() < -kOnTheLimit) {
        finding.status = Status::fail;
    } else if (finding.worst_margin() < -kOnTheLimit) {
        finding.status = Status::warn;
    }
    return findings_.emplace_back(std::move(finding));
}

}  // namespace bowfront::fit
