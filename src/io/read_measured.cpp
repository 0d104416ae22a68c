#include "bowfront/io/read_measured.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <map>
#include <memory>
#include <optional>
#include <utility>

#include "bowfront/base/error.hpp"
#include "bowfront/model/plan_pieces.hpp"
#include "json_read.hpp"
#include "object_reader.hpp"
#include "value_kinds.hpp"

namespace bowfront::io {
namespace {

// Far more than the sides of a case, so that a side that stands twice is told as such.
constexpr std::size_t kMostEntries = 100;

// A tape held along an edge, and a calliper with the hand that holds it.
constexpr double kTape = 0.2;       // mm
constexpr double kCalliper = 0.02;  // mm
constexpr std::string_view kWhyTape = "a rule or tape, read with care (common practice, no source)";
constexpr std::string_view kWhyCalliper = "a calliper, read with care (common practice, no source)";

bool is_null(const Value& value) noexcept {
    return value.node->kind == JsonNode::Kind::null;
}

// The length under a key, where it was measured.
std::optional<double> measured(ObjectReader& object, std::string_view key) {
    const auto value = object.take(key);
    if (!value || is_null(*value)) {
        return std::nullopt;
    }
    const auto length = object.read(*value, LengthIn{kPositive});
    return length ? std::optional(length->value) : std::nullopt;
}

// The lengths listed under a key, each where it was measured.
std::vector<double> measured_places(ObjectReader& object, std::string_view key) {
    std::vector<double> lengths;
    const auto value = object.take(key);
    if (!value || is_null(*value)) {
        return lengths;
    }
    const auto places = object.items(key);
    if (places.size() > kMostMeasuredPlaces) {
        object.reading().refuse(*value, Code::input_limit,
                                "the list has " + std::to_string(places.size()) + " places",
                                "at most " + std::to_string(kMostMeasuredPlaces));
        return lengths;
    }
    for (const Value& place : places) {
        if (is_null(place)) {
            continue;
        }
        if (const auto length = object.read(place, LengthIn{kPositive})) {
            lengths.push_back(length->value);
        }
    }
    return lengths;
}

// The objects under a key that may be null: then it is as if left out.
ObjectReader object_or_null(ObjectReader& owner, std::string_view key) {
    const auto value = owner.take(key);
    return value && !is_null(*value) ? owner.object_of(*value, key) : owner.left_out(key);
}

using Sides = std::map<CaseSide, MeasuredSide>;

// Who may be measured: a side of the case that has a pane, once in each list.
MeasuredSide* find_side(ObjectReader& entry, const Case& c, Sides& sides,
                        std::vector<CaseSide>& seen) {
    const auto value = entry.take_needed("side");
    const auto side = value ? entry.read(*value, SideIn{c.plan}) : std::nullopt;
    if (!side) {
        return nullptr;
    }
    const std::string name(side_text(side->value));
    if (c.pane(side->value) == nullptr) {
        entry.reading().refuse(*value, Code::input_contradiction,
                               "the case has no pane at the " + name, "a side that has one");
        return nullptr;
    }
    if (std::find(seen.begin(), seen.end(), side->value) != seen.end()) {
        entry.reading().refuse(*value, Code::input_contradiction,
                               "the " + name + " stands in this list a second time",
                               "each side once");
        return nullptr;
    }
    seen.push_back(side->value);
    MeasuredSide& found = sides[side->value];
    found.side = side->value;
    return &found;
}

MeasuredPane read_pane(ObjectReader& entry) {
    MeasuredPane pane;
    ObjectReader blank = object_or_null(entry, "blank");
    pane.blank_length = measured(blank, "length");
    pane.blank_width = measured(blank, "width");
    blank.finish();
    ObjectReader formed = object_or_null(entry, "formed");
    pane.length = measured(formed, "length");
    pane.height = measured(formed, "height");
    pane.chord = measured(formed, "chord");
    pane.rise = measured(formed, "rise");
    pane.bends = measured_places(formed, "bends");
    Reading& reading = formed.reading();
    if (pane.chord.has_value() != pane.rise.has_value() &&
        !reading.faults().touch(formed.pointer())) {
        reading.refuse(formed.value(), Code::input_contradiction,
                       "a chord and a rise make a radius, and one of them is missing",
                       R"(both "chord" and "rise" of the inside face, or neither)");
    }
    formed.finish();
    pane.thickness = measured_places(entry, "thickness");
    return pane;
}

// What a radius can be told of: a pane that keeps a curve of its own, measured well enough.
void check_curve(ObjectReader& entry, const Case& c, const MeasuredSide& side,
                 const Sourced<double>& uncertainty) {
    const MeasuredPane& pane = side.pane;
    if (!pane.chord || !pane.rise) {
        return;
    }
    const std::string name(side_text(side.side));
    Reading& reading = entry.reading();
    if (!is_curved(c.plan, index(side.side))) {
        reading.refuse(entry.value(), Code::input_contradiction, "the " + name + " is flat",
                       R"(no "chord" and "rise": only a side that is an arc is bent)");
    } else if (c.pane(side.side)->bend.value == Bend::cold) {
        reading.refuse(entry.value(), Code::input_contradiction,
                       "the " + name + " is bent cold, so it is flat where nothing holds it",
                       R"(no "chord" and "rise": only a heated pane keeps a curve)");
    } else if (std::min(*pane.chord, *pane.rise) <= uncertainty.value) {
        reading.refuse(entry.value(), Code::input_contradiction,
                       "a chord of " + reading.length_text(*pane.chord) + " and a rise of " +
                           reading.length_text(*pane.rise) + " tell no radius when either may be " +
                           reading.length_text(uncertainty.value) + " off",
                       "a chord and a rise larger than the uncertainty of lengths");
    }
}

// The radii of bends are those of a heated pane of several straights and arcs, one for each arc.
void check_bends(ObjectReader& entry, const Case& c, const MeasuredSide& side,
                 const Sourced<double>& uncertainty) {
    const MeasuredPane& pane = side.pane;
    const std::string name(side_text(side.side));
    Reading& reading = entry.reading();
    const std::size_t place = index(side.side);
    const bool several = has_several_pieces(c.plan, place);
    if (several && pane.chord) {
        reading.refuse(entry.value(), Code::input_contradiction,
                       "the " + name + " has several bends, which chord and rise do not tell apart",
                       R"("bends", the inside radius of each, and no "chord" and "rise")");
    }
    if (pane.bends.empty()) {
        return;
    }
    if (!several || has_free_piece(c.plan, place)) {
        reading.refuse(entry.value(), Code::input_contradiction,
                       "the " + name + " is no run of straights and arcs",
                       R"(no "bends": only bends of one radius each can be told by it)");
        return;
    }
    const std::size_t wanted = arc_measures(c.plan, place).size() / 2;  // two of each arc
    if (pane.bends.size() != wanted) {
        reading.refuse(entry.value(), Code::input_contradiction,
                       "the " + name + " has " + std::to_string(wanted) + " bends, and " +
                           std::to_string(pane.bends.size()) + " were measured",
                       "the inside radius of each, from the pane's start on");
    } else if (*std::min_element(pane.bends.begin(), pane.bends.end()) <= uncertainty.value) {
        reading.refuse(entry.value(), Code::input_contradiction,
                       "a bend is no larger than the uncertainty of lengths",
                       "radii over " + reading.length_text(uncertainty.value));
    }
}

// Calls `read` with each object of the list under a key, and the side that it is of.
template <class Read>
void read_list(ObjectReader& file, std::string_view key, const Case& c, Sides& sides, Read read) {
    const auto list = file.take(key);
    if (!list || is_null(*list)) {
        return;
    }
    const std::vector<Value> entries = file.items(key);
    if (entries.size() > kMostEntries) {
        file.reading().refuse(*list, Code::input_limit,
                              "the list has " + std::to_string(entries.size()) + " entries",
                              "at most " + std::to_string(kMostEntries));
        return;
    }
    std::vector<CaseSide> seen;
    for (const Value& value : entries) {
        ObjectReader entry = file.item(value, key);
        MeasuredSide ignored;
        MeasuredSide* const side = find_side(entry, c, sides, seen);
        read(entry, side != nullptr ? *side : ignored);
        entry.finish();
    }
}

Sourced<double> read_uncertainty(ObjectReader& object, std::string_view key, double otherwise,
                                 std::string_view why) {
    const auto value = object.take(key);
    if (value && !is_null(*value)) {
        return object.read(*value, LengthIn{kNotNegative}).value_or(Sourced<double>{});
    }
    Reading& reading = object.reading();
    const std::string pointer = object.pointer_of(key);
    reading.assume(pointer, reading.length_text(otherwise), std::string(why));
    return {otherwise, {Origin::Kind::assumed, pointer, 0, std::string(why)}};
}

Measured read_file(ObjectReader& file, const Case& c) {
    Measured out;
    (void)file.take("$schema");  // for editors; any value will do
    (void)file.needed("bowfront_measured", VersionIn{"a file of measurements"});
    file.reading().set_unit(c.units);
    if (const auto unit = file.given("units", kUnits)) {
        file.reading().set_unit(unit->value);
    }
    ObjectReader uncertainty = object_or_null(file, "uncertainty");
    out.length_uncertainty = read_uncertainty(uncertainty, "length", kTape, kWhyTape);
    out.thickness_uncertainty =
        read_uncertainty(uncertainty, "thickness", kCalliper, kWhyCalliper);
    uncertainty.finish();
    Sides sides;
    read_list(file, "panes", c, sides, [&](ObjectReader& entry, MeasuredSide& side) {
        side.pane = read_pane(entry);
        if (!entry.reading().faults().touch(entry.pointer_of("side"))) {
            check_curve(entry, c, side, out.length_uncertainty);
            check_bends(entry, c, side, out.length_uncertainty);
        }
    });
    read_list(file, "openings", c, sides, [](ObjectReader& entry, MeasuredSide& side) {
        side.opening = {measured(entry, "length"), measured(entry, "height")};
    });
    read_list(file, "grooves", c, sides, [](ObjectReader& entry, MeasuredSide& side) {
        side.grooves = {measured_places(entry, "base"), measured_places(entry, "top"),
                        measured_places(entry, "start"), measured_places(entry, "end"),
                        measured_places(entry, "width")};
    });
    file.finish();
    for (auto& [which, side] : sides) {
        out.sides.push_back(std::move(side));
    }
    return out;
}

}  // namespace

ReadMeasured read_measured(std::string_view text, const std::string& file_name, const Case& c) {
    Faults faults(file_name);
    const std::shared_ptr<const JsonNode> root = read_json(text, faults);
    if (root == nullptr) {
        throw InputError(faults.in_file_order());
    }
    Reading reading(faults, measured_keys());
    ReadMeasured out;
    out.places = Places(root);
    ObjectReader file(reading, *root);
    out.value = read_file(file, c);
    if (!faults.empty()) {
        throw InputError(faults.in_file_order());
    }
    out.assumed = reading.take_assumed();
    return out;
}

}  // namespace bowfront::io
