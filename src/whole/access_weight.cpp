#include "bowfront/whole/access_weight.hpp"

#include <algorithm>
#include <string>

#include "bowfront/base/number_text.hpp"
#include "bowfront/pattern/access_parts.hpp"

namespace bowfront::whole {
namespace {

constexpr double kGravity = 9.80665;  // m/s², standard

// What two people lift: two thirds of the sum of both, as in `lifters`.
constexpr double kTwoLift = 2 * kOnePersonLifts * 2 / 3;

Finding lift_check(const Case& c, double mass) {
    Finding finding;
    finding.code = Code::access_lift;
    finding.id = "access-weight";
    finding.about = pattern::moved_part(*c.access);
    finding.state = "lifted by two people";
    finding.value = finding.worst = mass;
    finding.limit = kTwoLift;
    finding.bound = Bound::at_most;
    finding.unit = "kg";
    finding.figure = "parts/" + finding.about + "/mass";
    if (finding.margin() < 0) {
        finding.status = Status::warn;
        finding.advice = "use lifting gear, or make it of thinner or lighter material";
    }
    return finding;
}

}  // namespace

AccessWeight access_weight(const Case& c, const AccessSums<double>& sums,
                           const fit::AccessLayout& access, const fit::Layout& layout,
                           const std::vector<Part>& parts) {
    AccessWeight out;
    const std::string id = pattern::moved_part(*c.access);
    const auto part = std::find_if(parts.begin(), parts.end(),
                                   [&](const Part& one) { return one.id == id; });
    if (part != parts.end() && part->density > 0) {
        out.mass = part->mass();
        out.people = lifters(*out.mass);
    }
    if (sums.door && access.pin) {
        out.open = whole_sums(c, layout, pattern::with_open_door(*c.access, access, parts));
        if (out.mass) {
            // Statics: the weight's moment about the pin's axis is borne by a couple of both pivots.
            const PivotDoor& door = *c.access->as<PivotDoor>();
            const double arm = sums.door->length / 2 - (*door.pivot - *door.clearance);
            out.pull = *out.mass * kGravity * arm / sums.door->height;
        }
    }
    return out;
}

std::vector<Finding> access_weight_checks(const Case& c, const AccessWeight& weight) {
    std::vector<Finding> findings;
    if (weight.mass && c.access->as<PivotDoor>() == nullptr) {
        findings.push_back(lift_check(c, *weight.mass));
    }
    if (!weight.open) {
        return findings;
    }
    for (Finding& finding : whole_checks(c, *weight.open)) {
        if (finding.code == Code::case_tipping) {
            finding.code = Code::access_tipping;
            finding.id = "access-tipping";
            finding.state += ", the door open";
            finding.figure.clear();  // that of the shut case
            findings.push_back(std::move(finding));
        }
    }
    return findings;
}

}  // namespace bowfront::whole
