#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "bowfront/base/quoted_text.hpp"
#include "bowfront/io/sheet_key.hpp"
#include "bowfront/materials/sheet.hpp"
#include "bowfront/model/coupon.hpp"
#include "case_parts.hpp"
#include "value_kinds.hpp"

namespace bowfront::io {
namespace {

constexpr std::size_t kMostSheets = 100;

constexpr Range kShrink{kShrinkRange.low, kShrinkRange.high};
constexpr Range kShrinkSpread{0, kShrinkRange.most_spread};
constexpr Range kSpringback{kSpringbackRange.low, kSpringbackRange.high};
constexpr Range kSpringbackSpread{0, kSpringbackRange.most_spread};

struct LikeIn {
    using Result = const Sheet*;
    std::optional<const Sheet*> operator()(Reading& reading, const Value& value) const {
        std::vector<std::string_view> names;
        for (const Sheet& sheet : sheets()) {
            names.push_back(sheet.name);
        }
        const auto index = word_index(reading, value, "a sheet of the library", names);
        return index ? std::optional(&sheets()[*index]) : std::nullopt;
    }
};

// A library entry under a key of the case.
SheetSpec as_known(const Sheet& sheet, std::string_view key) {
    const std::string pointer = pointer_step("/sheets", key);
    const auto sourced = [&pointer](const Property& property, std::string_view step) {
        std::string source(property.source);
        source += "; " + std::string(certainty_text(property.certainty));
        return Sourced<double>{
            property.value,
            {Origin::Kind::library, pointer + std::string(step), 0, std::move(source)}};
    };
    return {std::string(key),
            &sheet,
            sourced(sheet.shrink_along, "/shrink/along"),
            sourced(sheet.shrink_across, "/shrink/across"),
            sourced(sheet.shrink_spread_along, "/shrink/spread/along"),
            sourced(sheet.shrink_spread_across, "/shrink/spread/across"),
            sourced(sheet.springback, "/springback/radius"),
            sourced(sheet.springback_spread, "/springback/spread")};
}

// Overwrites what is known with what the file gives.
void take_given(ObjectReader& object, std::string_view key, const Range& range,
                Sourced<double>& into) {
    if (auto given = object.given(key, RatioIn{range})) {
        into = std::move(*given);
    }
}

void read_shrink(ObjectReader shrink, SheetSpec& spec) {
    take_given(shrink, "along", kShrink, spec.shrink_along);
    take_given(shrink, "across", kShrink, spec.shrink_across);
    const auto spread = shrink.take("spread");
    if (spread && spread->node->kind != JsonNode::Kind::object) {
        if (const auto both = shrink.read(*spread, RatioIn{kShrinkSpread})) {
            spec.spread_along = *both;
            spec.spread_across = *both;
        }
    } else if (spread) {
        ObjectReader directions = shrink.object_of(*spread, "spread");
        take_given(directions, "along", kShrinkSpread, spec.spread_along);
        take_given(directions, "across", kShrinkSpread, spec.spread_across);
        directions.finish();
    }
    shrink.finish();
}

void read_springback(ObjectReader& sheet, SheetSpec& spec) {
    const auto value = sheet.take("springback");
    if (!value) {
        return;
    }
    if (value->node->kind != JsonNode::Kind::object) {
        spec.springback =
            sheet.read(*value, RatioIn{kSpringback}).value_or(std::move(spec.springback));
        return;
    }
    ObjectReader springback = sheet.object_of(*value, "springback");
    take_given(springback, "radius", kSpringback, spec.springback);
    take_given(springback, "spread", kSpringbackSpread, spec.springback_spread);
    springback.finish();
}

// Whether the key of a sheet of the maker's own can be told from all others and be printed.
bool is_own_key(Reading& reading, const JsonMember& member, const std::string& pointer) {
    if (reading.sheet_keys() == Reading::SheetKeys::of_library_too &&
        find_sheet(member.key) != nullptr) {
        return true;
    }
    const auto fault = sheet_key_fault(member.key);
    if (fault) {
        reading.faults().add(Code::input_value, member.place, pointer, fault->found, fault->wanted);
    }
    return !fault;
}

}  // namespace

std::optional<SheetKeyFault> sheet_key_fault(std::string_view key) {
    if (std::string found = line_fault(key); !found.empty()) {
        return SheetKeyFault{std::move(found), "a key of 1 to 200 characters on one line"};
    }
    if (find_sheet(key) != nullptr) {
        return SheetKeyFault{quoted_text(key) + " is a sheet of the library",
                             "a name of its own, with the library's under \"like\""};
    }
    return std::nullopt;
}

std::vector<std::string_view> sheet_names(const Case& whole) {
    std::vector<std::string_view> names;
    for (const auto& [key, sheet] : whole.sheets) {
        if (find_sheet(key) == nullptr) {
            names.push_back(key);
        }
    }
    for (const Sheet& sheet : sheets()) {
        names.push_back(sheet.name);
    }
    return names;
}

SheetSpec library_sheet(const Sheet& sheet) {
    return as_known(sheet, sheet.name);
}

std::map<std::string, SheetSpec> read_sheets(ObjectReader& file) {
    std::map<std::string, SheetSpec> all;
    const auto value = file.take("sheets");
    if (!value) {
        return all;
    }
    if (value->node->kind != JsonNode::Kind::object) {
        file.reading().refuse_type(*value, "an object: the case's own sheets by their names");
        return all;
    }
    if (value->node->members.size() > kMostSheets) {
        file.reading().refuse(
            *value, Code::input_limit,
            "the case has " + std::to_string(value->node->members.size()) + " sheets of its own",
            "at most " + std::to_string(kMostSheets));
        return all;
    }
    for (const JsonMember& member : value->node->members) {
        const Value entry{&member.value, pointer_step(value->pointer, member.key)};
        const bool key_is_right = is_own_key(file.reading(), member, entry.pointer);
        ObjectReader sheet = file.item(entry, "sheets");
        const auto like = sheet.needed("like", LikeIn{});
        SheetSpec spec;
        if (*like != nullptr) {
            spec = as_known(**like, member.key);
        }
        read_shrink(sheet.object("shrink"), spec);
        read_springback(sheet, spec);
        sheet.finish();
        if (key_is_right) {
            spec.key = member.key;
            all.emplace(member.key, std::move(spec));
        }
    }
    return all;
}

}  // namespace bowfront::io
