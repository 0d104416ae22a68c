#include "bowfront/report/inspection.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "bowfront/base/number_text.hpp"
#include "finding_json.hpp"
#include "finding_text.hpp"

namespace bowfront::report {
namespace {

using Json = nlohmann::ordered_json;

constexpr int kDecimals = 2;
constexpr int kTables = 11;  // characters of a column

std::string shown(double value) {
    return fixed_text(value, kDecimals);
}

std::string column(double value) {
    const std::string number = shown(value);
    return std::string(kTables - std::min<std::size_t>(kTables, number.size()), ' ') + number;
}

Json margin_json(const study::Margin& margin) {
    return {{"about", margin.about},
            {"id", margin.id},
            {"code", code_text(margin.code)},
            {"margin", number_json(margin.margin)},
            {"worst", number_json(margin.worst)}};
}

Json edge_json(PaneEdge which, const EdgeSums<double>& edge, double limit) {
    return {{"edge", edge_text(which)},
            {"settled", number_json(edge.settled)},
            {"least", number_json(edge.engagement_least)},
            {"most", number_json(edge.engagement_most)},
            {"limit", number_json(limit)},
            {"face_clearance", number_json(edge.face_clearance)},
            {"face_clearance_least", number_json(edge.face_clearance_least)}};
}

Json pane_json(const study::InspectedPane& pane) {
    const PaneSums<double>& sums = pane.sums;
    Json json = {{"side", side_text(sums.side)},
                 {"stage", study::stage_text(pane.stage)},
                 {"length", number_json(sums.length)},
                 {"height", number_json(sums.height)},
                 {"thickness", number_json(sums.formed_thickness)},
                 {"opening",
                  {{"length", number_json(sums.opening_length)},
                   {"height", number_json(sums.opening_height)}}}};
    Json edges = Json::array();
    for (const PaneEdge which : kPaneEdges) {
        edges.push_back(edge_json(which, sums.edge(which), sums.least_engagement));
    }
    json["edges"] = edges;
    json["room"] = {{"vertical",
                     {{"nominal", number_json(sums.room_vertical.nominal)},
                      {"worst", number_json(sums.room_vertical.worst)}}},
                    {"sideways",
                     {{"nominal", number_json(sums.room_sideways.nominal)},
                      {"worst", number_json(sums.room_sideways.worst)}}}};
    if (pane.curve) {
        const MeasuredRadius& radius = pane.curve->radius;
        json["inside_radius"] = {{"measured", number_json(radius.value)},
                                 {"least", number_json(radius.least)},
                                 {"most", number_json(radius.most)},
                                 {"wanted", number_json(pane.curve->wanted)}};
    }
    if (pane.to_cut) {
        json["to_cut"] = {{"length", number_json(pane.to_cut->length)},
                          {"height", number_json(pane.to_cut->height)},
                          {"blank",
                           {{"length", number_json(pane.to_cut->blank_length)},
                            {"width", number_json(pane.to_cut->blank_width)}}}};
    }
    if (pane.shrink_length) {
        json["shrink_length"] = number_json(*pane.shrink_length);
    }
    if (pane.shrink_height) {
        json["shrink_height"] = number_json(*pane.shrink_height);
    }
    return json;
}

void headline(const Case& c, const study::Inspection& inspection, std::string& text) {
    text += c.name + ", as made: ";
    const auto& margins = inspection.margins;
    const bool tight = !margins.empty() && margins.front().worst < 0;
    switch (inspection.verdict()) {
        case Status::pass: text += "it fits, whatever the measuring is off\n"; break;
        case Status::warn:
            text += tight ? "it fits as measured, but not at worst\n"
                          : "it fits, whatever the measuring is off, but see what warns\n";
            break;
        case Status::fail: text += "IT DOES NOT FIT as it is\n"; break;
    }
}

std::string_view stage_words(study::PaneStage stage) {
    switch (stage) {
        case study::PaneStage::not_cut: return " (not cut yet)";
        case study::PaneStage::blank_cut: return " (not heated yet, as its blank will shrink)";
        case study::PaneStage::made: break;
    }
    return "";
}

void pane_text(const study::InspectedPane& pane, std::string& text) {
    const PaneSums<double>& sums = pane.sums;
    if (pane.as_drawn) {
        text += "\nPane, " + std::string(side_text(sums.side)) +
                ": not cut yet, nor is its place; as drawn\n";
        return;
    }
    text += "\nPane, " + std::string(side_text(sums.side)) + std::string(stage_words(pane.stage)) +
            ": " + shown(sums.length) + " x " +
            shown(sums.height) + " x " + shown(sums.formed_thickness) + " mm in an opening of " +
            shown(sums.opening_length) + " x " + shown(sums.opening_height) + " mm\n";
    text += "  edge       settled      least       most   face gap      least\n";
    for (const PaneEdge which : kPaneEdges) {
        const EdgeSums<double>& edge = sums.edge(which);
        std::string name(edge_text(which));
        name.resize(7, ' ');
        text += "  " + name + column(edge.settled).substr(2) + column(edge.engagement_least) +
                column(edge.engagement_most) + column(edge.face_clearance) +
                column(edge.face_clearance_least) + "\n";
    }
    text += "  room " + shown(sums.room_vertical.nominal) + " mm upright (worst " +
            shown(sums.room_vertical.worst) + "), " + shown(sums.room_sideways.nominal) +
            " mm sideways (worst " + shown(sums.room_sideways.worst) + ")\n";
    if (pane.curve) {
        const MeasuredRadius& radius = pane.curve->radius;
        text += "  inside radius " + shown(radius.value) + " mm (" + shown(radius.least) + " to " +
                shown(radius.most) + " by the measuring), wanted " + shown(pane.curve->wanted) +
                "\n";
    }
    if (pane.to_cut) {
        const study::CutSize& size = *pane.to_cut;
        text += "  for the place as measured, cut it " + shown(size.length) + " x " +
                shown(size.height) + " mm" +
                (sums.heated ? " as formed, from a blank of " + shown(size.blank_length) + " x " +
                                   shown(size.blank_width) + " mm"
                             : std::string()) +
                "\n";
    }
    const auto shrink = [&](std::string_view which, const std::optional<double>& value) {
        if (value) {
            text += "  it shrank " + shown(*value * 100) + " % in " + std::string(which) + "\n";
        }
    };
    shrink("length", pane.shrink_length);
    shrink("height", pane.shrink_height);
}

// Panes place by place; of the timber round the grooves the least alone.
void margins_text(const std::vector<study::Margin>& margins, std::string& text) {
    text += "\nWhat is left, the least first\n  place                margin   at worst   check\n";
    constexpr std::size_t kPlaces = 16;
    const study::Margin* timber = nullptr;
    for (const study::Margin& margin : margins) {
        if (!code_text(margin.code).starts_with("BF-FIT")) {
            timber = timber != nullptr ? timber : &margin;
            continue;
        }
        std::string place = margin.about;
        place.resize(std::max(kPlaces, place.size()), ' ');
        text += "  " + place + column(margin.margin) + column(margin.worst) + "   " + margin.id +
                "\n";
    }
    if (timber != nullptr) {
        text += "  timber round the grooves: " + shown(timber->worst) + " mm at worst, " +
                timber->id + " " + timber->about + "\n";
    }
}

void states_text(const study::Inspection& inspection, std::string& text) {
    text += "\nIn the air it is built in, and brought from there to\n";
    for (const study::StateFindings& state : inspection.states) {
        std::string name(state_text(state.state));
        name.resize(11, ' ');
        text += "  " + name + std::string(status_text(verdict(state.findings)));
        const std::vector<study::Margin> margins = study::margins(state.findings);
        if (!margins.empty()) {
            text += "; least margin " + shown(margins.front().worst) + " mm: " +
                    margins.front().id + " " + margins.front().about;
        }
        text += "\n";
    }
}

void findings_text(const study::Inspection& inspection, std::string& text) {
    const auto& all = inspection.findings;
    const auto passed = std::count_if(all.begin(), all.end(), [](const Finding& finding) {
        return finding.status == Status::pass;
    });
    text += "\nChecks: " + std::to_string(passed) + " of " + std::to_string(all.size()) + " pass\n";
    for (const Status status : {Status::fail, Status::warn}) {
        for (const Finding& finding : all) {
            if (finding.status == status) {
                text += finding_text(finding);
            }
        }
    }
    if (!inspection.beyond_rescue.empty()) {
        text += "\nWhat is made can't be mended for\n";
        for (const std::string& name : inspection.beyond_rescue) {
            text += "  " + name + "\n";
        }
    }
}

}  // namespace

std::string inspection_json(const Case& c, const std::vector<Assumption>& assumed,
                            const study::Inspection& inspection) {
    Json json;
    json["bowfront_inspection"] = 1;
    json["case"] = c.name;
    json["verdict"] = status_text(inspection.verdict());
    json["panes"] = list_json(inspection.panes, pane_json);
    json["margins"] = list_json(inspection.margins, margin_json);
    json["checks"] = list_json(inspection.findings, check_json);
    json["states"] = list_json(inspection.states, [](const study::StateFindings& state) {
        return Json{{"state", state_text(state.state)},
                    {"verdict", status_text(verdict(state.findings))},
                    {"checks", list_json(state.findings, check_json)}};
    });
    json["rescues"] = list_json(inspection.rescues, [](const study::Rescue& rescue) {
        return Json{{"id", rescue.id},
                    {"about", rescue.about},
                    {"action", rescue.action},
                    {"before", status_text(rescue.before)},
                    {"after", status_text(rescue.after)}};
    });
    json["beyond_rescue"] = inspection.beyond_rescue;
    json["assumed"] = list_json(assumed, [](const Assumption& assumption) {
        return Json{{"pointer", assumption.pointer},
                    {"value", assumption.value},
                    {"why", assumption.why}};
    });
    return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

std::string inspection_text(const Case& c, const std::vector<Assumption>& assumed,
                            const study::Inspection& inspection) {
    std::string text;
    headline(c, inspection, text);
    for (const study::InspectedPane& pane : inspection.panes) {
        pane_text(pane, text);
    }
    margins_text(inspection.margins, text);
    states_text(inspection, text);
    findings_text(inspection, text);
    if (!assumed.empty()) {
        text += "\nAssumed, because the file of measurements does not say\n";
        for (const Assumption& assumption : assumed) {
            text += "  " + assumption.pointer + ": ± " + assumption.value + " (" + assumption.why +
                    ")\n";
        }
    }
    return text;
}

}  // namespace bowfront::report
