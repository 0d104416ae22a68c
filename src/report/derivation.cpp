#include "bowfront/report/derivation.hpp"

#include <nlohmann/json.hpp>
#include <numbers>

#include "bowfront/base/contract.hpp"
#include "bowfront/base/number_text.hpp"
#include "finding_json.hpp"
#include "finding_text.hpp"

namespace bowfront::report {
namespace {

using Json = nlohmann::ordered_json;

std::string_view origin_text(Origin::Kind kind) {
    switch (kind) {
        case Origin::Kind::given: return "given";
        case Origin::Kind::assumed: return "assumed";
        case Origin::Kind::library: return "library";
        case Origin::Kind::computed: break;
    }
    return "computed";
}

// As printed: degrees, per cent; everything else in the units of the sums.
double shown(const Figure& figure) {
    switch (figure.kind) {
        case Kind::angle: return figure.value * 180 / std::numbers::pi;
        case Kind::ratio: return figure.value * 100;
        default: return figure.value;
    }
}

Json figure_json(const Workings& workings, const Figure& figure) {
    Json json = {{"path", figure.path},
                 {"symbol", figure.symbol},
                 {"value", shown(figure)},
                 {"unit", kind_unit(figure.kind)},
                 {"origin", origin_text(figure.origin.kind)}};
    if (figure.origin.kind == Origin::Kind::given) {
        json["line"] = figure.origin.line;
        json["pointer"] = figure.origin.pointer;
    } else {
        json["source"] = figure.origin.source;
    }
    if (!figure.formula.empty()) {
        json["formula"] = figure.formula;
    }
    if (!figure.numbers.empty()) {
        json["numbers"] = figure.numbers;
    }
    Json inputs = Json::array();
    for (const std::string& input : figure.inputs) {
        inputs.push_back(figure_json(workings, *workings.find(input)));
    }
    if (!inputs.empty()) {
        json["inputs"] = inputs;
    }
    return json;
}

std::string check_text(const Finding& finding) {
    const std::string unit = finding.unit.empty() ? "" : " " + finding.unit;
    std::string text = std::string(code_text(finding.code)) + " " + finding.id + " " +
                       finding.about + " (" + finding.state + "): " +
                       std::string(status_text(finding.status)) + "\n";
    text += "  value " + rounded_text(finding.value, 6) + unit + ", worst case " +
            rounded_text(finding.worst, 6) + unit + ", " +
            (finding.bound == Bound::at_least ? "wanted at least " : "wanted at most ") +
            rounded_text(finding.limit, 6) + unit + "\n";
    if (!finding.note.empty()) {
        text += "  " + finding.note + "\n";
    }
    for (const Change& change : finding.changes) {
        text += "  " + change_text(change) + ": " + change.pointer + " from " + change.from +
                " to " + change.to + ", by doing all sums again\n";
    }
    if (finding.changes.empty() && !finding.advice.empty()) {
        text += "  " + finding.advice + "\n";
    }
    return text;
}

}  // namespace

std::string derivation_json(const Workings& workings, const std::string& path) {
    const Figure* figure = workings.find(path);
    BOWFRONT_EXPECTS(figure != nullptr);
    return figure_json(workings, *figure).dump(2) + "\n";
}

std::string check_derivation(const Finding& finding, const Workings& workings, bool as_json) {
    const Figure* figure = workings.find(finding.figure);
    if (as_json) {
        Json json = {{"id", finding.id},
                     {"about", finding.about},
                     {"code", code_text(finding.code)},
                     {"state", finding.state},
                     {"value", finding.value},
                     {"worst", finding.worst},
                     {"limit", finding.limit},
                     {"unit", finding.unit},
                     {"status", status_text(finding.status)},
                     {"advice", finding.advice}};
        for (const Change& change : finding.changes) {
            json["changes"].push_back(change_json(change));
        }
        if (figure != nullptr) {
            json["derivation"] = figure_json(workings, *figure);
        }
        return json.dump(2) + "\n";
    }
    std::string text = check_text(finding);
    if (figure != nullptr) {
        text += "The value:\n" + explain(workings, finding.figure);
    } else {
        text += "The value is a distance on the drawn outlines of post, plate and groove.\n";
    }
    return text;
}

}  // namespace bowfront::report
