#include "whole_json.hpp"

#include <cmath>
#include <numbers>

#include "finding_json.hpp"

namespace bowfront::report {
namespace {

using Json = nlohmann::ordered_json;

constexpr double kDegrees = 180 / std::numbers::pi;
constexpr double kPercent = 100;

Json centre_json(const whole::Weight<double>& weight) {
    return {
        {"x", number_json(weight.x)}, {"y", number_json(weight.y)}, {"z", number_json(weight.z)}};
}

Json standing_json(const whole::Standing<double>& standing) {
    const whole::Tipping<double>& tipping = standing.tipping;
    const whole::Edges<double>& edges = standing.edges;
    Json json = {{"mass", number_json(standing.weight.mass)},
                 {"centre", centre_json(standing.weight)},
                 {"tipping",
                  {{"towards", whole::direction_text(tipping.direction)},
                   {"direction", number_json(tipping.direction * kDegrees)},
                   {"distance", number_json(tipping.distance)},
                   {"angle", number_json(tipping.angle * kDegrees)},
                   {"force", number_json(tipping.force)}}},
                 {"edges",
                  {{"left", number_json(edges.left)},
                   {"right", number_json(edges.right)},
                   {"front", number_json(edges.front)},
                   {"back", number_json(edges.back)}}}};
    if (standing.people) {
        json["people"] = std::lround(*standing.people);
    }
    return json;
}

Json row_json(const whole::CostRow<double>& row) {
    Json json = {{"id", row.id}, {"what", row.what}};
    if (row.thickness) {
        json["thickness"] = number_json(*row.thickness);
    }
    json["net"] = number_json(row.net);
    json["quantity"] = number_json(row.quantity);
    json["unit"] = price_unit_text(row.unit);
    json["price"] = number_json(row.price);
    json["cost"] = number_json(row.cost);
    return json;
}

}  // namespace

Json whole_json(const whole::WholeSums<double>& sums) {
    Json json = {{"height", number_json(sums.height)}, {"groups", Json::object()}};
    for (const auto& [group, mass] : sums.groups) {
        json["groups"][group] = number_json(mass);
    }
    json["unknown"] = sums.unknown;
    if (sums.contents) {
        json["contents"] = {{"mass", number_json(sums.contents->mass)},
                            {"x", number_json(sums.contents->x)},
                            {"y", number_json(sums.contents->y)},
                            {"z", number_json(sums.contents->z)}};
    }
    if (sums.empty) {
        json["empty"] = standing_json(*sums.empty);
    }
    if (sums.loaded) {
        json["loaded"] = standing_json(*sums.loaded);
    }
    return json;
}

Json cost_json(const whole::CostSums<double>& sums) {
    return {{"currency", sums.currency},
            {"waste", number_json(sums.waste * kPercent)},
            {"rows", list_json(sums.rows, row_json)},
            {"total", number_json(sums.total)},
            {"not_priced", sums.not_priced}};
}

}  // namespace bowfront::report
