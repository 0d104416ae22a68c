#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "bowfront/base/quoted_text.hpp"
#include "bowfront/materials/catalogue.hpp"
#include "bowfront/materials/timber.hpp"
#include "case_parts.hpp"
#include "value_kinds.hpp"

namespace bowfront::io {
namespace {

constexpr Range kWaste{0, 5};
constexpr std::size_t kMostPrices = 1000;

// A name of the library, or of a sheet of the case's own.
struct MaterialIn {
    using Result = std::string;
    const Case& whole;
    std::optional<std::string> operator()(Reading& reading, const Value& value) const {
        std::vector<std::string_view> names = material_names();
        for (const auto& [key, sheet] : whole.sheets) {
            if (std::find(names.begin(), names.end(), key) == names.end()) {
                names.push_back(key);
            }
        }
        const auto index = word_index(reading, value, "a material", names);
        return index ? std::optional<std::string>(names[*index]) : std::nullopt;
    }
};

// The items of a list that is not longer than anybody needs.
std::vector<Value> some_items(ObjectReader& prices, std::string_view key) {
    std::vector<Value> items = prices.items(key);
    if (items.size() > kMostPrices) {
        prices.reading().refuse(*prices.take(key), Code::input_limit,
                                "the list has " + std::to_string(items.size()) + " prices",
                                "at most " + std::to_string(kMostPrices));
        items.clear();
    }
    return items;
}

std::optional<Sourced<Price>> read_price(ObjectReader& item) {
    const auto value = item.take_needed("price");
    return value ? item.read(*value, PriceIn{}) : std::nullopt;
}

bool in_stock(const MaterialPrice& price, const Case& whole) {
    return std::any_of(whole.stock.begin(), whole.stock.end(), [&](const StockItem& item) {
        return item.material == price.material &&
               (!price.thickness || item.thickness == *price.thickness);
    });
}

// What a price is of must be how its material is sold: timber by its volume, what comes in sheets
// by its area or the sheet.
void check_unit(Reading& reading, const Value& value, const MaterialPrice& price,
                const Case& whole) {
    const Measure measure = measure_of(price.unit);
    const bool timber = find_timber(price.material) != nullptr;
    const bool right = timber ? measure == Measure::volume
                              : measure == Measure::area || measure == Measure::sheets;
    const std::string found =
        "a price by " + quoted_text(price_unit_text(price.unit)) + " of " + price.material;
    if (timber && price.thickness) {
        reading.refuse(value, Code::input_contradiction,
                       "a thickness for a price of " + price.material + ", which is by its volume",
                       "no thickness");
    }
    if (!right) {
        reading.refuse(value, Code::input_unit, found,
                       timber ? R"(a price of timber by its volume, "/m3" or "/bf")"
                              : R"(a price by the area or the sheet, "/m2", "/ft2" or "/sheet")");
    } else if (measure == Measure::sheets && !in_stock(price, whole)) {
        reading.refuse(value, Code::input_contradiction,
                       found + ", and no stock of it says how large a sheet is",
                       R"(a sheet of it under "stock", or a price by "/m2" or "/ft2")");
    }
}

std::optional<MaterialPrice> read_material(ObjectReader item, const Case& whole) {
    MaterialPrice out;
    out.material = *item.needed("material", MaterialIn{whole});
    if (const auto thickness = item.given("thickness", LengthIn{kPositive})) {
        out.thickness = **thickness;
    }
    const auto price = read_price(item);
    item.finish();
    if (!price || out.material.empty()) {
        return std::nullopt;
    }
    out.amount = {price->value.amount, price->origin};
    out.unit = price->value.unit;
    return out;
}

std::vector<MaterialPrice> read_materials(ObjectReader& prices, const Case& whole) {
    std::vector<MaterialPrice> all;
    Reading& reading = prices.reading();
    for (const Value& value : some_items(prices, "materials")) {
        ObjectReader item = prices.item(value, "materials");
        if (auto price = read_material(item, whole)) {
            const bool twice = std::any_of(all.begin(), all.end(), [&](const auto& other) {
                return other.material == price->material && other.thickness == price->thickness;
            });
            if (twice) {
                reading.refuse(value, Code::input_contradiction,
                               "a second price of " + quoted_text(price->material),
                               "one for each material and thickness");
            }
            check_unit(reading, value, *price, whole);
            all.push_back(std::move(*price));
        }
    }
    return all;
}

std::optional<Hardware> read_hardware(ObjectReader item) {
    Hardware out;
    out.name = *item.needed("name", TextLine{"a name for the hardware"});
    out.count = *item.needed("count", CountIn{});
    const auto price = read_price(item);
    item.finish();
    if (!price) {
        return std::nullopt;
    }
    if (measure_of(price->value.unit) != Measure::pieces) {
        item.reading().refuse(
            item.value(), Code::input_unit,
            "a price by " + quoted_text(price_unit_text(price->value.unit)) + " of hardware",
            R"(a price by the piece, "/each")");
    }
    out.amount = {price->value.amount, price->origin};
    return out;
}

}  // namespace

Prices read_prices(ObjectReader prices, const Case& whole) {
    Prices out;
    out.currency = *prices.needed("currency", TextLine{"a currency"});
    out.waste = prices.or_default("waste", RatioIn{kWaste});
    out.materials = read_materials(prices, whole);
    for (const Value& value : some_items(prices, "hardware")) {
        if (auto hardware = read_hardware(prices.item(value, "hardware"))) {
            out.hardware.push_back(std::move(*hardware));
        }
    }
    prices.finish();
    return out;
}

}  // namespace bowfront::io
