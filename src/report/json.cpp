#include <cmath>
#include <nlohmann/json.hpp>
#include <numbers>

#include "bowfront/report/measuring_card.hpp"
#include "bowfront/report/report.hpp"
#include "build_json.hpp"
#include "access_report.hpp"
#include "finding_json.hpp"
#include "pane_json.hpp"
#include "whole_json.hpp"
#include "shelf_report.hpp"

namespace bowfront::report {
namespace {

using Json = nlohmann::ordered_json;

constexpr double kDegrees = 180 / std::numbers::pi;

Json number(double value) {
    return number_json(value);
}

Json edges_json(const PaneSums<double>& pane) {
    Json edges = Json::array();
    for (const PaneEdge which : {PaneEdge::top, PaneEdge::bottom, PaneEdge::start, PaneEdge::end}) {
        const EdgeSums<double>& edge = pane.edge(which);
        edges.push_back(
            {{"edge", edge_text(which)},
             {"engagement",
              {{"nominal", number(edge.engagement)},
               {"least", number(edge.engagement_least)},
               {"most", number(edge.engagement_most)},
               {"settled", number(edge.settled)},
               {"limit", number(pane.least_engagement)}}},
             {"edge_clearance",
              {{"nominal", number(edge.clearance)}, {"least", number(edge.clearance_least)}}},
             {"face_clearance",
              {{"nominal", number(edge.face_clearance)},
               {"least", number(edge.face_clearance_least)}}}});
    }
    return edges;
}

std::string_view blank_method(const Case& c, const PaneSums<double>& pane) {
    const BlankMethod method = c.pane(pane.side)->blank.method.value;
    return pane.heated || method == BlankMethod::as_cut ? method_text(method) : "unheated";
}

Json shop_size_json(const study::ShopSize& size) {
    return {{"size", number(size.size)}, {"over", number(size.over())}};
}

Json shop_json(const CaseSide& side, const study::ShopSizes& shop) {
    Json json;
    for (const study::PaneShopSizes& pane : shop.panes) {
        if (pane.side == side) {
            json["length"] = shop_size_json(pane.length);
            json["width"] = shop_size_json(pane.width);
            if (pane.trimmed_length) {
                json["trimmed_length"] = shop_size_json(*pane.trimmed_length);
                json["trimmed_height"] = shop_size_json(*pane.trimmed_height);
            }
        }
    }
    return json;
}

Json spread_json(const CaseSide& side, const std::vector<study::PaneSpreads>& spreads) {
    Json json;
    for (const study::PaneSpreads& pane : spreads) {
        if (pane.side == side) {
            study::visit_spreads(pane, [&](const std::string& path, const study::Spread& spread) {
                json[Json::json_pointer("/" + path)] = {{"mean", number(spread.mean)},
                                                        {"deviation", number(spread.deviation)},
                                                        {"least", number(spread.least)},
                                                        {"holds", number(spread.holds.value)},
                                                        {"error", number(spread.holds.error)}};
            });
        }
    }
    return json["spread"];
}

Json pane_json(const PaneSums<double>& pane, const Content& content) {
    const Case& c = content.c;
    Json formed;
    if (pane.curved) {
        formed["bow"] = pane.bow == Bow::out ? "out" : "in";
        formed["inside_radius"] = number(pane.inside_radius);
        formed["sweep"] = number(pane.sweep * kDegrees);
        formed["chord"] = number(pane.chord);
        formed["rise"] = number(pane.rise);
    }
    formed["developed_length"] = number(pane.length);
    formed["height"] = number(pane.height);
    formed["thickness"] = number(pane.formed_thickness);
    Json json = {{"side", side_text(pane.side)},
            {"kind", pane.curved ? "curved" : "flat"},
            {"sheet", c.pane(pane.side)->sheet},
            {"thickness", number(pane.thickness)},
            {"formed", formed},
            {"blank",
             {{"length", number(pane.blank_length)},
              {"width", number(pane.blank_width)},
              {"method", blank_method(c, pane)},
              {"shop", shop_json(pane.side, content.shop)}}},
            {"opening",
             {{"length", number(pane.opening_length)}, {"height", number(pane.opening_height)}}},
            {"edges", edges_json(pane)},
            {"room",
             {{"vertical",
               {{"nominal", number(pane.room_vertical.nominal)},
                {"worst", number(pane.room_vertical.worst)}}},
              {"sideways",
               {{"nominal", number(pane.room_sideways.nominal)},
                {"worst", number(pane.room_sideways.worst)}}}}}};
    if (pane.is_run()) {
        json["bends"] = bends_json(pane);
    }
    for (const study::PaneChance& entry : content.chance.panes) {
        if (entry.side == pane.side) {
            json["first_time_fit"] = number(entry.fit.value);
            json["first_time_fit_error"] = number(entry.fit.error);
        }
    }
    json["spread"] = spread_json(pane.side, content.spreads);
    json["states"] = states_json(pane);
    if (pane.curved) {
        json["radius_error"] = radius_error_json(pane);
    }
    json["push"] = load_json(pane.push);
    json["carried"] = load_json(pane.carried);
    for (const fit::LoadingPath& path : content.paths) {
        if (path.side == pane.side) {
            json["loading_path"] = loading_path_json(c, pane, path);
        }
    }
    return json;
}

Json form_json(const PaneForm<double>& form) {
    const FormSizes<double>& sizes = form.sizes;
    Json json = {{"pane", side_text(form.side)},
            {"face_radius", number(sizes.face_radius)},
            {"rib_radius", number(sizes.rib_radius)},
            {"rib_sweep", number(sizes.rib_sweep * kDegrees)},
            {"rib_count", std::lround(sizes.rib_count)},
            {"rib_pitch", number(sizes.rib_pitch)},
            {"skin", {{"length", number(sizes.skin_length)}, {"width", number(sizes.width)}}},
            {"fence_gap", number(sizes.fence_gap)}};
    if (sizes.pieces.empty()) {
        return json;
    }
    json["skin"]["radius"] = number(sizes.skin_radius);
    json["pane_sweep"] = number(sizes.pane_sweep * kDegrees);
    json["pieces"] = Json::array();
    for (const FormPiece<double>& piece : sizes.pieces) {
        Json each = {{"id", std::to_string(json["pieces"].size() + 1)},
                     {"length", number(piece.length)}};
        if (piece.radius > 0) {
            each["face_radius"] = number(piece.radius);
            each["sweep"] = number(piece.sweep * kDegrees);
            each["hollow"] = piece.hollow;
        }
        json["pieces"].push_back(std::move(each));
    }
    return json;
}

Json heating_json(const HeatingSums<double>& heating) {
    return {{"pane", side_text(heating.side)},
            {"oven_set", number(heating.oven_set)},
            {"shop_rule_min", number(heating.shop_rule)},
            {"core_min", number(heating.core_min)},
            {"face_limit", number(heating.face_limit)},
            {"margin_to_limit", number(heating.margin_to_limit)},
            {"margin_to_core", number(heating.margin_to_core)}};
}

Json part_json(const PartEntry& entry) {
    const Part& part = *entry.part;
    Json json = {{"id", part.id},
                 {"name", part.name},
                 {"assembly", part.assembly},
                 {"material", part.material},
                 {"thickness", number(part.pattern.thickness)},
                 {"count", part.count()},
                 {"area", number(part.pattern.outline.area())},
                 {"volume", number(volume(part.body))}};
    if (part.density > 0) {
        json["mass"] = number(part.mass());
    }
    json["file"] = entry.file;
    json["note"] = part.note;
    return json;
}

Json open_sides(const Case& c) {
    Json json = Json::array();
    for (const CaseSide& side : sides_of(c.plan)) {
        if (c.is_open(side)) {
            json.push_back(side_text(side));
        }
    }
    return json;
}

}  // namespace

std::string to_json(const Content& content) {
    const Case& c = content.c;
    Json json;
    json["bowfront_report"] = 1;
    json["case"] = c.name;
    json["verdict"] = status_text(verdict(content.findings));
    if (content.despite_failures) {
        json["despite_failures"] = true;
    }
    json["open_sides"] = open_sides(c);
    json["first_time_fit"] = {{"value", number(content.chance.fit.value)},
                              {"error", number(content.chance.fit.error)},
                              {"samples", content.chance.options.samples},
                              {"seed", content.chance.options.seed}};
    json["panes"] =
        list_json(content.sums.panes, [&](const auto& pane) { return pane_json(pane, content); });
    json["shop"] = {{"step", number(content.shop.step)},
                    {"post_length", shop_size_json(content.shop.post)}};
    json["frame"] = build_json(c, content.build);
    json["timber"] = timber_json(c, content.timber);
    if (!content.shelves.list.empty()) {
        json["shelves"] = shelves_json(c, content.shelves);
    }
    json["forms"] = list_json(content.sums.forms, form_json);
    json["heating"] = list_json(content.sums.heating, heating_json);
    json["whole"] = whole_json(content.whole);
    if (content.opened) {
        json["access"] = access_json(content);
    }
    if (content.cost) {
        json["cost"] = cost_json(*content.cost);
    }
    json["checks"] = list_json(content.findings, check_json);
    json["measured"] = list_json(content.measured, [](const MeasuredEntry& entry) {
        return Json{{"about", entry.about},
                    {"expected", number(entry.expected)},
                    {"measured", number(entry.measured)}};
    });
    json["parts"] = list_json(content.parts, part_json);
    json["assumed"] = list_json(content.assumed, [](const Assumption& assumption) {
        return Json{{"pointer", assumption.pointer},
                    {"value", assumption.value},
                    {"why", assumption.why}};
    });
    json["order_of_work"] = list_json(order_of_work(c, content.sums), [](const WorkStep& step) {
        return Json{{"step", step.step}, {"hold", step.hold}};
    });
    json["cautions"] = cautions(content);
    json["files"] = list_json(content.files, [](const FileEntry& file) {
        return Json{{"path", file.path}, {"sha256", file.sha256}, {"read_back", file.read_back}};
    });
    return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

std::set<std::string> listed_files(std::string_view report_json) {
    std::set<std::string> paths;
    const Json json = Json::parse(report_json, nullptr, false);
    if (!json.is_object() || !json.contains("files") || !json["files"].is_array()) {
        return paths;
    }
    for (const Json& file : json["files"]) {
        if (file.is_object() && file.contains("path") && file["path"].is_string()) {
            paths.insert(file["path"].get<std::string>());
        }
    }
    return paths;
}

}  // namespace bowfront::report
