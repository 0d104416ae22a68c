#include "bowfront/io/read_case.hpp"

#include <algorithm>
#include <charconv>
#include <memory>
#include <optional>
#include <utility>

#include "bowfront/base/error.hpp"
#include "bowfront/base/quoted_text.hpp"
#include "case_parts.hpp"
#include "contradictions.hpp"
#include "json_read.hpp"
#include "object_reader.hpp"
#include "value_kinds.hpp"

namespace bowfront::io {
namespace {

}  // namespace

// The sections in the order of the table of keys, but for those that others need.
Case read_sections(ObjectReader& file) {
    Case whole;
    (void)file.take("$schema");  // for editors; any value will do
    (void)file.needed("bowfront", VersionIn{"a case file"});
    whole.name = *file.needed("name", TextLine{"a name for the case"});
    whole.units = *file.or_default("units", kUnits);
    file.reading().set_unit(whole.units);
    whole.plan = read_plan(file.needed_object("plan"));
    whole.frame = read_frame(file.needed_object("frame"));
    whole.sheets = read_sheets(file);
    read_panes(file, whole);
    whole.shelves = read_shelves(file, whole);
    if (const auto access = file.take("access")) {
        read_access(file.object_of(*access, "access"), whole);
    }
    whole.fit = read_fit(file.object("fit"), *whole.frame.loading);
    whole.tolerance = read_tolerances(file.object("tolerance"));
    whole.webs = read_webs(file.object("webs"));
    const bool formed =
        std::any_of(whole.panes.begin(), whole.panes.end(),
                    [&whole](const PaneSpec& pane) { return is_heated(pane, whole.plan); });
    whole.form = read_form(file.object("form"), formed ? Use::used : Use::unused);
    if (const auto oven = file.take("oven")) {
        whole.oven = read_oven(file.object_of(*oven, "oven"));
    }
    whole.service = read_service(file.object("service"));
    whole.stock = read_stock(file);
    whole.cutter = read_cutter(file.object("cutter"));
    whole.shop = read_shop(file.object("shop"), whole.units);
    if (const auto contents = file.take("contents")) {
        whole.contents = read_contents(file.object_of(*contents, "contents"));
    }
    whole.stand = read_stand(file.object("stand"));
    if (const auto prices = file.take("prices")) {
        whole.prices = read_prices(file.object_of(*prices, "prices"), whole);
    }
    file.finish();
    return whole;
}

ReadCase read_case(std::string_view text, const std::string& file_name) {
    Faults faults(file_name);
    const std::shared_ptr<const JsonNode> root = read_json(text, faults);
    if (root == nullptr) {
        throw InputError(faults.in_file_order());
    }
    Reading reading(faults);
    ReadCase out;
    out.places = Places(root);
    ObjectReader file(reading, *root);
    out.value = read_sections(file);
    find_contradictions(out.value, out.places, reading);
    if (!faults.empty()) {
        throw InputError(faults.in_file_order());
    }
    out.assumed = reading.take_assumed();
    return out;
}

}  // namespace bowfront::io
