#include "finding_json.hpp"

#include <cmath>

#include "bowfront/base/contract.hpp"

namespace bowfront::report {

using Json = nlohmann::ordered_json;

Json number_json(double value) {
    BOWFRONT_EXPECTS(std::isfinite(value));
    return value == 0 ? 0.0 : value;
}

Json check_json(const Finding& finding) {
    return {{"id", finding.id},
            {"about", finding.about},
            {"code", code_text(finding.code)},
            {"state", finding.state},
            {"value", number_json(finding.value)},
            {"worst", number_json(finding.worst)},
            {"limit", number_json(finding.limit)},
            {"bound", finding.bound == Bound::at_least ? "at-least" : "at-most"},
            {"margin", number_json(finding.margin())},
            {"unit", finding.unit},
            {"status", status_text(finding.status)},
            {"advice", finding.advice}};
}

}  // namespace bowfront::report
