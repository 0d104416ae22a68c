#include "finding_json.hpp"

#include <cmath>

#include "bowfront/base/contract.hpp"

namespace bowfront::report {

using Json = nlohmann::ordered_json;

Json number_json(double value) {
    BOWFRONT_EXPECTS(std::isfinite(value));
    return value == 0 ? 0.0 : value;
}

Json change_json(const Change& change) {
    Json json = {{"pointer", change.pointer},
                 {"from", change.from},
                 {"to", change.to},
                 {"words", change.words},
                 {"before", status_text(change.before)},
                 {"after", status_text(change.after)}};
    if (!change.brings.empty()) {
        json["brings"] = change.brings;
    }
    return json;
}

Json check_json(const Finding& finding) {
    Json json = {{"id", finding.id},
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
    if (!finding.note.empty()) {
        json["note"] = finding.note;
    }
    for (const Change& change : finding.changes) {
        json["changes"].push_back(change_json(change));
    }
    return json;
}

}  // namespace bowfront::report
