#include <algorithm>
#include <array>
#include <numbers>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "bowfront/base/quoted_text.hpp"
#include "case_parts.hpp"
#include "value_kinds.hpp"

namespace bowfront::io {
namespace {

// Shapes that a case may have by its description, and that are not made yet.
constexpr std::array<std::string_view, 6> kLaterShapes = {"quarter-round", "half-round", "bow-ends",
                                                          "serpentine",    "polygon",    "sides"};

constexpr Range kSweep{0, 2 * std::numbers::pi, Range::Low::open};

struct ShapeIn {
    using Result = PlanShape;
    std::optional<PlanShape> operator()(Reading& reading, const Value& value) const {
        const WordOf<PlanShape, 2> shape{
            "a shape",
            {{{"rectangle", PlanShape::rectangle}, {"bow-front", PlanShape::bow_front}}}};
        const std::string& text = value.node->text;
        const bool later =
            value.node->kind == JsonNode::Kind::text &&
            std::find(kLaterShapes.begin(), kLaterShapes.end(), text) != kLaterShapes.end();
        if (later) {
            reading.refuse(value, Code::input_value,
                           "the shape " + quoted_text(text) + " is not made by this version",
                           R"("rectangle" or "bow-front")");
            return std::nullopt;
        }
        return shape(reading, value);
    }
};

void read_axis(ObjectReader& plan) {
    const auto axis = plan.take("axis");
    if (!axis) {
        return;
    }
    if (axis->node->kind == JsonNode::Kind::text && axis->node->text == "horizontal") {
        plan.reading().refuse(*axis, Code::input_value,
                              "a case lying down is not made by this version", R"("vertical")");
        return;
    }
    constexpr std::array<std::string_view, 1> kAxes = {"vertical"};
    (void)word_index(plan.reading(), *axis, "an axis", kAxes);
}

std::optional<FrontArc> read_front(ObjectReader front) {
    struct Measure {
        std::string_view key;
        ArcMeasure measure;
    };
    constexpr std::array kMeasures = {
        Measure{"radius", ArcMeasure::radius}, Measure{"rise", ArcMeasure::rise},
        Measure{"sweep", ArcMeasure::sweep}, Measure{"length", ArcMeasure::length}};
    constexpr std::string_view kWanted =
        R"(exactly one of "radius", "rise", "sweep" or "length"; the chord is the plan's width)";

    std::vector<std::string_view> present;
    std::optional<FrontArc> arc;
    for (const Measure& row : kMeasures) {
        const auto value = front.take(row.key);
        if (!value) {
            continue;
        }
        present.push_back(row.key);
        const auto number = row.measure == ArcMeasure::sweep
                                ? front.read(*value, AngleIn{kSweep})
                                : front.read(*value, LengthIn{kPositive});
        if (number) {
            arc = FrontArc{row.measure, *number};
        }
    }
    if (present.size() > 1) {
        front.reading().refuse(front.value(), Code::input_contradiction,
                               "the front has " + std::to_string(present.size()) + " measures",
                               std::string(kWanted));
    } else if (present.empty() && front.present()) {
        front.reading().refuse(front.value(), Code::input_missing_key, "the front has no measure",
                               std::string(kWanted));
    }
    front.finish();
    return arc;
}

}  // namespace

Plan read_plan(ObjectReader plan) {
    Plan out;
    const auto shape_value = plan.take_needed("shape");
    const auto shape = shape_value ? plan.read(*shape_value, ShapeIn{}) : std::nullopt;
    out.width = plan.needed("width", LengthIn{kPositive});
    out.depth = plan.needed("depth", LengthIn{kPositive});
    read_axis(plan);
    if (shape) {
        out.shape = shape->value;
    }
    if (shape && out.shape == PlanShape::bow_front) {
        out.front = read_front(plan.needed_object("front"));
    } else if (const auto front = plan.take("front"); front && shape) {
        plan.reading().refuse(*front, Code::input_contradiction, "a rectangle has no bowed front",
                              R"(no "front", or the shape "bow-front")");
    }
    plan.finish();
    return out;
}

}  // namespace bowfront::io
