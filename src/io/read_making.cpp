#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "case_parts.hpp"
#include "value_kinds.hpp"

namespace bowfront::io {
namespace {

// The oven's dial, and anything that is heated.
constexpr Range kHeat{-50, 400};
// The air a case stands in: above the cold end of the table of timber moisture, -1.1 C, and no
// warmer than acrylic is kept in lasting use.
constexpr Range kAir{-1, 60};
constexpr Range kHumidity{0.05, 0.95};
constexpr Range kAccuracy{0, 50};
// Up to a grown man's weight and as much again.
constexpr Range kPush{0, 2000};
// From what a good rule shows to an inch; what is coarser sets nothing that a pane could fit into.
constexpr Range kStep{0.01, 25.4};
constexpr double kMetricStep = 0.5;
constexpr double kInchStep = 25.4 / 32;
constexpr std::size_t kMostStock = 1000;

Sourced<double> thickness_or_default(ObjectReader object, const Range& range, Use use) {
    auto thickness = object.or_default("thickness", LengthIn{range}, use);
    object.finish();
    return thickness;
}

// Low and high under one key.
template <class In>
std::array<Sourced<double>, 2> read_span(ObjectReader& object, std::string_view key, const In& in,
                                         std::string_view what) {
    std::array<Sourced<double>, 2> out;
    const auto value = object.take(key);
    if (!value) {
        ObjectReader ends = object.left_out(key);
        return {ends.assumed("0", in, Use::used), ends.assumed("1", in, Use::used)};
    }
    const auto ends = object.items_of(*value, 2, what);
    for (std::size_t i = 0; i < ends.size(); ++i) {
        out[i] = object.read(ends[i], in).value_or(Sourced<double>{});
    }
    return out;
}

StockItem read_item(ObjectReader item) {
    StockItem out;
    out.pointer = item.pointer();
    out.material = *item.needed("material", TextLine{"a material"});
    out.thickness = *item.needed("thickness", LengthIn{kPositive});
    if (const auto size = item.take_needed("size")) {
        const auto sides = item.items_of(*size, 2, "a list of width and length");
        for (std::size_t i = 0; i < sides.size(); ++i) {
            out.size[i] = *item.read(sides[i], LengthIn{kPositive}).value_or(Sourced<double>{});
        }
    }
    if (const auto count = item.take("count")) {
        if (const auto number = item.read(*count, CountIn{})) {
            out.count = **number;
        }
    } else {
        (void)item.assume_rule("count");
    }
    item.finish();
    return out;
}

}  // namespace

FitSpec read_fit(ObjectReader fit, Loading loading) {
    const bool drops = loading == Loading::lift_and_drop;
    const LengthIn length{kNotNegative};
    FitSpec out;
    out.end_clearance = fit.or_default("end_clearance", length);
    out.top_clearance = fit.or_default("top_clearance", length, drops ? Use::unused : Use::used);
    out.loading_clearance =
        fit.or_default("loading_clearance", length, drops ? Use::used : Use::unused);
    if (const auto least = fit.take("least_engagement")) {
        out.least_engagement = fit.read(*least, length);
    } else {
        (void)fit.assume_rule("least_engagement");
    }
    fit.finish();
    return out;
}

Tolerances read_tolerances(ObjectReader tolerance) {
    Tolerances out;
    out.cut = tolerance.or_default("cut", ToleranceIn{});
    out.groove_depth = tolerance.or_default("groove_depth", ToleranceIn{});
    out.groove_width = tolerance.or_default("groove_width", ToleranceIn{});
    out.opening = tolerance.or_default("opening", ToleranceIn{});
    if (const auto thickness = tolerance.take("sheet_thickness")) {
        out.sheet_thickness = tolerance.read(*thickness, ToleranceIn{});
    } else {
        (void)tolerance.assume_rule("sheet_thickness");
    }
    tolerance.finish();
    return out;
}

Webs read_webs(ObjectReader webs) {
    Webs out;
    out.web = webs.or_default("web", LengthIn{kNotNegative});
    out.cheek = webs.or_default("cheek", LengthIn{kNotNegative});
    out.floor = webs.or_default("floor", RatioIn{{0, 1}});
    webs.finish();
    return out;
}

FormSpec read_form(ObjectReader form, Use use) {
    const LengthIn positive{kPositive};
    const LengthIn not_negative{kNotNegative};
    FormSpec out;
    out.skin = thickness_or_default(form.object("skin"), kPositive, use);
    out.cover = thickness_or_default(form.object("cover"), kNotNegative, use);
    out.overrun = form.or_default("overrun", not_negative, use);
    out.overhang = form.or_default("overhang", not_negative, use);
    ObjectReader ribs = form.object("ribs");
    out.rib_thickness = ribs.or_default("thickness", positive, use);
    out.rib_depth = ribs.or_default("depth", positive, use);
    out.rib_spacing = ribs.or_default("max_spacing", positive, use);
    out.foot = ribs.or_default("foot", positive, use);
    ribs.finish();
    ObjectReader fence = form.object("fence");
    out.fence_depth = fence.or_default("depth", positive, use);
    out.fence_clearance = fence.or_default("clearance", not_negative, use);
    fence.finish();
    out.joint_allowance = form.or_default("joint_allowance", not_negative, use);
    form.finish();
    return out;
}

Oven read_oven(ObjectReader oven) {
    Oven out;
    if (const auto inside = oven.take_needed("inside")) {
        const auto sides = oven.items_of(*inside, 3, "a list of width, depth and height");
        for (std::size_t i = 0; i < sides.size(); ++i) {
            out.inside[i] = oven.read(sides[i], LengthIn{kPositive}).value_or(Sourced<double>{});
        }
    }
    out.accuracy = oven.or_default("accuracy", TemperatureDifferenceIn{kAccuracy});
    out.set = oven.given("set", TemperatureIn{kHeat});
    oven.finish();
    return out;
}

Service read_service(ObjectReader service) {
    Service out;
    ObjectReader built_at = service.object("built_at");
    out.built_temperature = built_at.or_default("temperature", TemperatureIn{kAir});
    out.built_humidity = built_at.or_default("humidity", RatioIn{kHumidity});
    built_at.finish();
    out.temperature = read_span(service, "temperature", TemperatureIn{kAir},
                                "a list of the lowest and the highest temperature");
    out.humidity = read_span(service, "humidity", RatioIn{kHumidity},
                             "a list of the lowest and the highest humidity");
    out.push = service.or_default("push", ForceIn{kPush});
    service.finish();
    return out;
}

std::vector<StockItem> read_stock(ObjectReader& file) {
    std::vector<StockItem> out;
    const auto items = file.items("stock");
    if (items.size() > kMostStock) {
        file.reading().refuse(*file.take("stock"), Code::input_limit,
                              "the list has " + std::to_string(items.size()) + " kinds of stock",
                              "at most " + std::to_string(kMostStock));
        return out;
    }
    for (const Value& value : items) {
        out.push_back(read_item(file.item(value, "stock")));
    }
    return out;
}

Cutter read_cutter(ObjectReader cutter) {
    Cutter out;
    out.diameter = cutter.or_default("diameter", LengthIn{kPositive});
    out.spacing = cutter.or_default("spacing", LengthIn{kNotNegative});
    cutter.finish();
    return out;
}

Shop read_shop(ObjectReader shop, LengthUnit units) {
    Shop out;
    if (const auto step = shop.given("step", LengthIn{kStep})) {
        out.step = *step;
    } else {
        out.step = {units == LengthUnit::inch ? kInchStep : kMetricStep, shop.assume_rule("step")};
    }
    ObjectReader allowance = shop.object("allowance");
    out.allowance.length = allowance.or_default("length", LengthIn{kNotNegative});
    out.allowance.width = allowance.or_default("width", LengthIn{kNotNegative});
    out.allowance.thickness = allowance.or_default("thickness", LengthIn{kNotNegative});
    allowance.finish();
    shop.finish();
    return out;
}

}  // namespace bowfront::io
