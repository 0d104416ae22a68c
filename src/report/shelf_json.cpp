#include <cmath>
#include <numbers>

#include "finding_json.hpp"
#include "shelf_report.hpp"

namespace bowfront::report {
namespace {

using Json = nlohmann::ordered_json;

constexpr double kDegrees = 180 / std::numbers::pi;

Json number(double value) {
    return number_json(value);
}

// The bore and the pin of a rest on a pin.
void add_bore(const ShelfSpec& spec, const fit::ShelfPin& pin, Json& json) {
    const double under = spec.height.value - spec.thickness.value;
    json["bore"] = {{"x", number(pin.mouth.x)},
                    {"y", number(pin.mouth.y)},
                    {"z", number(under - fit::kPinDiameter / 2)},
                    {"direction", number(std::atan2(pin.inward.y, pin.inward.x) * kDegrees)},
                    {"diameter", number(fit::kPinDiameter)},
                    {"depth", number(fit::kPinDepth)},
                    {"wall", number(pin.wall)}};
    json["pin"] = {{"length", number(distance(pin.mouth, pin.tip) + fit::kPinDepth)}};
}

Json supports_json(const ShelfSpec& spec, const fit::Shelf& shelf) {
    Json list = Json::array();
    const fit::ShelfPlan& plan = shelf.plan;
    for (std::size_t i = 0; i < plan.rests.size(); ++i) {
        const fit::ShelfRest& rest = plan.rests[i];
        Json json = {{"id", rest.id},
                     {"x", number(rest.at.x)},
                     {"y", number(rest.at.y)},
                     {"z", number(spec.height.value - spec.thickness.value)},
                     {"share", number(rest.share)},
                     {"reaction", number(shelf.sums.reactions[i])}};
        if (i < plan.pins.size()) {
            add_bore(spec, plan.pins[i], json);
        }
        list.push_back(std::move(json));
    }
    return list;
}

std::string_view model_text(fit::ShelfModel model) {
    switch (model) {
        case fit::ShelfModel::rails:
            return "rails";
        case fit::ShelfModel::plate:
            return "plate";
        case fit::ShelfModel::corners:
            break;
    }
    return "corners";
}

Json tip_json(const fit::ShelfSums<double>& sums) {
    return {{"nominal", number(sums.tip)}, {"worst", number(sums.tip_worst)}};
}

Json shelf_json(const ShelfSpec& spec, const fit::Shelf& shelf) {
    const fit::ShelfPlan& plan = shelf.plan;
    const fit::ShelfSums<double>& sums = shelf.sums;
    Json json = {
        {"id", plan.id},
        {"material", spec.material.value},
        {"support", support_text(*spec.support)},
        {"model", model_text(plan.model)},
        {"area", number(sums.area)},
        {"span", number(plan.span)},
        {"breadth", number(plan.breadth)},
        {"bulge", number(plan.bulge)},
        {"overhang", number(plan.overhang)},
        {"mass", number(sums.mass)},
        {"force", number(sums.force)},
        {"pressure", number(sums.pressure)},
        {"thickness_least", number(sums.thickness_least)},
        {"sag",
         {{"nominal", number(sums.sag)},
          {"worst", number(sums.sag_worst)},
          {"limit", number(sums.sag_limit)}}},
        {"stress",
         {{"nominal", number(sums.stress)},
          {"worst", number(sums.stress_worst)},
          {"limit", number(sums.stress_limit)}}},
        {"gap",
         {{"panes", {{"nominal", number(sums.pane_gap)}, {"least", number(sums.pane_gap_least)}}},
          {"posts", {{"nominal", number(sums.post_gap)}, {"least", number(sums.post_gap_least)}}}}},
        {"tip", tip_json(sums)},
        {"supports", supports_json(spec, shelf)}};
    if (sums.edge_load) {
        json["edge_load"] = number(*sums.edge_load);
    }
    return json;
}

}  // namespace

nlohmann::ordered_json shelves_json(const Case& c, const fit::Shelves& shelves) {
    Json list = Json::array();
    for (std::size_t i = 0; i < shelves.list.size(); ++i) {
        list.push_back(shelf_json(c.shelves[i], shelves.list[i]));
    }
    return list;
}

}  // namespace bowfront::report
