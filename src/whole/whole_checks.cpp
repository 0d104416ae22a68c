#include <array>
#include <cmath>
#include <numbers>

#include "bowfront/base/number_text.hpp"
#include "bowfront/whole/whole_sums.hpp"

namespace bowfront::whole {
namespace {

constexpr double kDegrees = 180 / std::numbers::pi;
// Far above the rounding of some dozens of operations, far below what a floor can be measured to.
constexpr double kOnTheLimit = 1e-9;

std::string_view fixing_text(Fixing fixed) {
    return fixed == Fixing::wall ? "wall" : "floor";
}

// How much farther out the edge that it tips about would have to be, rounded up to 0.1 mm so that
// it is enough.
std::string margin_wanted(const Case& c, const Standing<double>& standing) {
    const double height = standing.weight.z + c.frame.base.thickness.value;
    const double missing = std::tan(kLeastTippingAngle) * height - standing.tipping.distance;
    return rounded_text(std::ceil(missing * 10 - kOnTheLimit) / 10, 1) + " mm";
}

Finding tipping_check(const Case& c, std::string_view state, const Standing<double>& standing) {
    const double angle = standing.tipping.angle * kDegrees;
    Finding finding;
    finding.code = Code::case_tipping;
    finding.id = "tipping";
    finding.about = state;
    finding.state = "on a sloping floor, to the " + direction_text(standing.tipping.direction);
    finding.value = finding.worst = angle;
    finding.limit = kLeastTippingAngle * kDegrees;
    finding.unit = "deg";
    finding.figure = "whole/" + std::string(state) + "/tipping/angle";
    if (finding.margin() >= -kOnTheLimit) {
        return finding;
    }
    const Fixing fixed = c.stand.fixed.value;
    if (fixed == Fixing::none) {
        finding.status = Status::fail;
        finding.advice = "make the base's margin larger by " + margin_wanted(c, standing) +
                         ", or fix the case to the wall or the floor and say so under /stand/fixed";
    } else {
        finding.status = Status::warn;
        finding.note =
            "it is held by what fixes it to the " + std::string(fixing_text(fixed)) + " alone";
        finding.advice =
            "see that the fixing bears a push at the upper edge before anything is "
            "put into the case";
    }
    return finding;
}

Finding mass_check(const WholeSums<double>& sums) {
    Finding finding;
    finding.code = Code::case_mass;
    finding.id = "mass-known";
    finding.about = "case";
    finding.state = "parts of a material whose density is not known";
    finding.value = finding.worst = sums.unknown_parts;
    finding.bound = Bound::at_most;
    finding.figure = "whole/unknown_parts";
    if (!sums.unknown.empty()) {
        finding.status = Status::warn;
        finding.note = "no mass is told of the whole, nor when it tips";
        finding.advice = "weigh these parts: ";
        for (const std::string& id : sums.unknown) {
            finding.advice += (&id == &sums.unknown.front() ? "" : ", ") + id;
        }
    }
    return finding;
}

}  // namespace

std::vector<Finding> whole_checks(const Case& c, const WholeSums<double>& sums) {
    std::vector<Finding> findings{mass_check(sums)};
    if (sums.empty) {
        findings.push_back(tipping_check(c, "empty", *sums.empty));
    }
    if (sums.loaded) {
        findings.push_back(tipping_check(c, "loaded", *sums.loaded));
    }
    return findings;
}

std::string direction_text(double angle) {
    constexpr std::array kWords{"right", "back right", "back",  "back left",
                                "left",  "front left", "front", "front right"};
    const long eighth = std::lround(angle / (std::numbers::pi / 4));
    const long count = static_cast<long>(kWords.size());
    return kWords[static_cast<std::size_t>(((eighth % count) + count) % count)];
}

}  // namespace bowfront::whole
