#include "access_report.hpp"
#include "finding_json.hpp"

namespace bowfront::report {
namespace {

using Json = nlohmann::ordered_json;

Json both(const NominalAndWorst<double>& value) {
    return {{"nominal", number_json(value.nominal)}, {"worst", number_json(value.worst)}};
}

void add_grooved(const GroovedSums<double>& sums, Json& json) {
    json["length"] = number_json(sums.length);
    json["height"] = number_json(sums.height);
    json["engagement"] = {{"bottom", both(sums.bottom)}, {"top", both(sums.top)}};
    json["lift"] = both(sums.lift);
    json["tilt"] = both(sums.tilt);
    json["push"] = number_json(sums.push);
    json["bow"] = both(sums.bow);
    json["held"] = both(sums.held);
    if (sums.play) {
        json["play"] = both(*sums.play);
    }
}

void add_sliding(const SlidingSums<double>& sums, Json& json) {
    json["overlap"] = both(sums.overlap);
    json["open"] = number_json(sums.open);
    json["share"] = number_json(sums.share);
    json["faces"] = both(sums.faces);
}

void add_door(const DoorSums<double>& sums, const whole::AccessWeight& weight, Json& json) {
    json["length"] = number_json(sums.length);
    json["height"] = number_json(sums.height);
    json["latch"] = both(sums.latch);
    json["heel"] = both(sums.heel);
    json["above"] = both(sums.above);
    json["passage"] = number_json(sums.passage);
    if (weight.mass) {
        json["pull"] = number_json(weight.pull);
    }
}

}  // namespace

Json access_json(const Content& content) {
    const AccessSums<double>& sums = content.opened->sums;
    const whole::AccessWeight& weight = content.opened->weight;
    Json json = {{"kind", bowfront::access_text(*content.c.access)}};
    if (sums.pane) {
        json["side"] = side_text(sums.side);
        json["sheet"] = content.c.access_pane->sheet;
        json["thickness"] = number_json(sums.pane->thickness);
    }
    if (weight.mass) {
        json["mass"] = number_json(*weight.mass);
    }
    if (weight.people) {
        json["people"] = *weight.people;
    }
    if (sums.top) {
        json["travel"] = number_json(sums.top->travel);
        json["headroom"] = number_json(sums.top->headroom);
    }
    if (sums.grooved) {
        add_grooved(*sums.grooved, json);
    }
    if (sums.sliding) {
        add_sliding(*sums.sliding, json);
    }
    if (sums.door) {
        add_door(*sums.door, weight, json);
    }
    return json;
}

}  // namespace bowfront::report
