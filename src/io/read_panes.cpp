#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "bowfront/base/quoted_text.hpp"
#include "case_parts.hpp"
#include "value_kinds.hpp"

namespace bowfront::io {
namespace {

const WordOf<Extrusion, 2> kAlong{"a direction of the extrusion",
                                  {{{"length", Extrusion::length}, {"height", Extrusion::height}}}};
const WordOf<Bend, 2> kBend{"a bend", {{{"heat", Bend::heat}, {"cold", Bend::cold}}}};

constexpr std::string_view kBlankWanted =
    R"("allow-shrink", "trim-after" or { "length": ..., "width": ... } of a blank as it is cut)";

// Far more than the sides of a case, so that a side that stands twice is told as such.
constexpr std::size_t kMostPanes = 1000;

struct MethodIn {
    using Result = BlankMethod;
    std::optional<BlankMethod> operator()(Reading& reading, const Value& value) const {
        const WordOf<BlankMethod, 2> method{"how the blank is cut",
                                            {{{"allow-shrink", BlankMethod::allow_shrink},
                                              {"trim-after", BlankMethod::trim_after}}}};
        if (value.node->kind == JsonNode::Kind::text && value.node->text == "as-cut") {
            reading.refuse(value, Code::input_value, "a blank as it is cut is given by its size",
                           std::string(kBlankWanted));
            return std::nullopt;
        }
        return method(reading, value);
    }
};

bool by_direction(const SheetSpec& sheet) noexcept {
    return *sheet.shrink_along != *sheet.shrink_across ||
           *sheet.spread_along != *sheet.spread_across;
}

// Whose blank it is: only one pane's can be given by its size.
enum class BlankOf { one_pane, all_panes };

// A blank given as an object, by its method or its size.
BlankSpec read_blank_object(ObjectReader blank, BlankOf whose) {
    BlankSpec out;
    Reading& reading = blank.reading();
    const auto method = blank.given("method", MethodIn{});
    out.trim = blank.or_default("trim", LengthIn{kPositive}, Use::unused);
    if (whose == BlankOf::one_pane) {
        out.length = blank.given("length", LengthIn{kPositive});
        out.width = blank.given("width", LengthIn{kPositive});
    }
    const bool sized = out.length || out.width;
    if (method) {
        out.method = *method;
        if (sized) {
            reading.refuse(blank.value(), Code::input_contradiction,
                           "the blank has a method and a size", std::string(kBlankWanted));
        }
    } else if (out.length && out.width) {
        out.method = {BlankMethod::as_cut, given_at(blank.value())};
    } else if (!reading.faults().touch(blank.pointer())) {
        reading.refuse(blank.value(), Code::input_missing_key,
                       sized ? "the blank has half a size" : "the blank has no method",
                       whose == BlankOf::one_pane
                           ? std::string(kBlankWanted)
                           : R"("method" with "allow-shrink" or "trim-after")");
    }
    if (out.trim.given() && *out.method != BlankMethod::trim_after) {
        reading.refuse(blank.value(), Code::input_contradiction,
                       "a trim for a blank that is not trimmed", R"(the method "trim-after")");
    }
    blank.finish();
    return out;
}

// The blank under an object's key, or nothing where it is left out.
std::optional<BlankSpec> read_blank(ObjectReader& owner, BlankOf whose) {
    const auto value = owner.take("blank");
    if (!value) {
        return std::nullopt;
    }
    if (value->node->kind == JsonNode::Kind::object) {
        return read_blank_object(owner.object_of(*value, "blank"), whose);
    }
    BlankSpec out;
    out.trim = owner.left_out("blank").assumed("trim", LengthIn{kPositive}, Use::unused);
    if (const auto method = owner.read(*value, MethodIn{})) {
        out.method = *method;
    }
    return out;
}

BlankSpec default_blank(ObjectReader& pane) {
    BlankSpec out;
    out.method = pane.assumed("blank", MethodIn{}, Use::unused);
    out.trim = pane.left_out("blank").assumed("trim", LengthIn{kPositive}, Use::unused);
    return out;
}

// The sheet of a pane, put among the case's sheets where the library has it; null after a fault.
const SheetSpec* read_sheet_name(ObjectReader& pane, Case& whole, PaneSpec& spec) {
    const auto value = pane.take_needed("sheet");
    const auto name = value ? pane.read(*value, TextLine{"a sheet"}) : std::nullopt;
    if (!name) {
        return nullptr;
    }
    spec.sheet = **name;
    if (const auto own = whole.sheets.find(spec.sheet); own != whole.sheets.end()) {
        return own->second.like != nullptr ? &own->second : nullptr;
    }
    if (const Sheet* const known = find_sheet(spec.sheet)) {
        return &whole.sheets.emplace(spec.sheet, library_sheet(*known)).first->second;
    }
    const std::vector<std::string_view> names = sheet_names(whole);
    // A sheet of the case's own whose key or entry is wrong has its fault already.
    if (!pane.reading().faults().touch(pointer_step("/sheets", spec.sheet))) {
        (void)word_index(pane.reading(), *value, "a sheet of the library or of \"sheets\"", names);
    }
    return nullptr;
}

void read_size(ObjectReader size, PaneSpec& spec) {
    spec.length = size.given("length", LengthIn{kPositive});
    spec.height = size.given("height", LengthIn{kPositive});
    if (size.present() && size.value().node->members.empty()) {
        size.reading().refuse(size.value(), Code::input_missing_key, "the size is empty",
                              R"("length", "height" or both)");
    }
    size.finish();
}

// What is asked of a pane against what its sheet and side allow.
void check_sheet_use(ObjectReader& pane, const PaneSpec& spec, const SheetSpec& sheet,
                     const Value& sheet_value, const Plan& plan) {
    Reading& reading = pane.reading();
    if (is_curved(plan, index(spec.side)) && !sheet.like->can_be_heated) {
        reading.refuse(sheet_value, Code::input_contradiction,
                       quoted_text(spec.sheet) + " stays flat, and the " + std::string(side_text(spec.side)) +
                           " is curved",
                       "a sheet that can be bent, such as \"cast-acrylic\"");
    }
    if (const auto along = pane.take("along"); along && !by_direction(sheet)) {
        reading.refuse(*along, Code::input_contradiction,
                       quoted_text(spec.sheet) + " shrinks the same both ways",
                       "no \"along\": a direction has no meaning here");
    }
}

std::string default_text(std::string_view pointer) {
    return std::string(default_of(pointer).value);
}

void list_assumptions(Reading& reading, const PaneSpec& pane, const SheetSpec& sheet,
                      const Plan& plan) {
    if (!is_curved(plan, index(pane.side))) {
        return;
    }
    reading.list_used(pane.bend.origin, default_text("/panes/*/bend"));
    if (!is_heated(pane, plan)) {
        return;
    }
    if (by_direction(sheet)) {
        reading.list_used(pane.along.origin, default_text("/panes/*/along"));
    }
    reading.list_used(pane.blank.method.origin, default_text("/panes/*/blank"));
    if (*pane.blank.method == BlankMethod::trim_after) {
        reading.list_used(pane.blank.trim.origin, default_text("/panes/*/blank/trim"));
    }
    for (const Sourced<double>* const ratio :
         {&sheet.shrink_along, &sheet.shrink_across, &sheet.spread_along, &sheet.spread_across,
          &sheet.springback, &sheet.springback_spread}) {
        reading.list_used(ratio->origin, percent_text(ratio->value));
    }
}

PaneSpec read_pane(ObjectReader pane, const std::optional<BlankSpec>& shared, Case& whole) {
    PaneSpec spec;
    spec.pointer = pane.pointer();
    const auto side = pane.needed("side", SideIn{whole.plan});
    spec.side = *side;
    const SheetSpec* const sheet = read_sheet_name(pane, whole, spec);
    spec.thickness = pane.needed("thickness", LengthIn{kPositive});
    spec.along = pane.or_default("along", kAlong, Use::unused);
    spec.bend = pane.or_default("bend", kBend, Use::unused);
    if (spec.bend.given() && side.given() && !is_curved(whole.plan, index(spec.side))) {
        pane.reading().refuse(*pane.take("bend"), Code::input_contradiction,
                              "the " + std::string(side_text(spec.side)) + " is flat",
                              "no \"bend\": only a side that is an arc is bent");
    }
    const auto own = read_blank(pane, BlankOf::one_pane);
    spec.blank = own ? *own : shared ? *shared : default_blank(pane);
    read_size(pane.object("size"), spec);
    if (sheet != nullptr && side.given()) {
        check_sheet_use(pane, spec, *sheet, *pane.take("sheet"), whole.plan);
        list_assumptions(pane.reading(), spec, *sheet, whole.plan);
    }
    pane.finish();
    return spec;
}

void refuse_second(ObjectReader& file, const PaneSpec& first, const Value& pane) {
    const JsonMember* const side = pane.node->find("side");
    file.reading().refuse({&side->value, pointer_step(pane.pointer, "side")},
                          Code::input_contradiction,
                          "a second pane on the " + std::string(side_text(first.side)),
                          "one pane a side; the first is " + first.pointer);
}

}  // namespace

bool is_heated(const PaneSpec& pane, const Plan& plan) {
    return is_curved(plan, index(pane.side)) && *pane.bend == Bend::heat;
}

void read_panes(ObjectReader& file, Case& whole) {
    const auto shared = read_blank(file, BlankOf::all_panes);
    const auto list = file.take_needed("panes");
    const std::vector<Value> panes = file.items("panes");
    if (list && list->node->kind == JsonNode::Kind::list && panes.empty()) {
        file.reading().refuse(*list, Code::input_value, "the case has no pane", "at least one");
    }
    if (panes.size() > kMostPanes) {
        file.reading().refuse(*list, Code::input_limit,
                              "the case has " + std::to_string(panes.size()) + " panes",
                              "at most " + std::to_string(kMostPanes));
        return;
    }
    for (const Value& value : panes) {
        PaneSpec pane = read_pane(file.item(value, "panes"), shared, whole);
        if (file.reading().faults().touch(pointer_step(value.pointer, "side")) ||
            !names_known(file.reading().faults())) {
            continue;
        }
        if (const PaneSpec* const first = whole.pane(pane.side)) {
            refuse_second(file, *first, value);
            continue;
        }
        whole.panes.push_back(std::move(pane));
    }
}

}  // namespace bowfront::io
