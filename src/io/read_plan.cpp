#include <algorithm>
#include <array>
#include <cstddef>
#include <numbers>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "bowfront/base/number_text.hpp"
#include "bowfront/base/quoted_text.hpp"
#include "case_parts.hpp"
#include "read_chain.hpp"
#include "value_kinds.hpp"

namespace bowfront::io {
namespace {

constexpr double kPi = std::numbers::pi;

constexpr int kMostArcs = 60;

const WordOf<PlanShape, 8> kShape{"a shape",
                                  {{{"rectangle", PlanShape::rectangle},
                                    {"bow-front", PlanShape::bow_front},
                                    {"quarter-round", PlanShape::quarter_round},
                                    {"half-round", PlanShape::half_round},
                                    {"bow-ends", PlanShape::bow_ends},
                                    {"serpentine", PlanShape::serpentine},
                                    {"polygon", PlanShape::polygon},
                                    {"sides", PlanShape::sides}}}};

// A sheet is bent about upright lines alone: what is curved in its height, too, has no flat pattern.
bool refuse_dome(Reading& reading, const Value& shape) {
    if (shape.node->kind != JsonNode::Kind::text || shape.node->text != "dome") {
        return false;
    }
    reading.refuse(shape, Code::input_value,
                   "a dome is curved both ways, and such a face can't be unrolled into a flat blank",
                   R"("sides" with an "ellipse" or a "run", which bend one way, or "polygon")");
    return true;
}

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

// An arc over a chord that the shape knows, and how many panes it is divided into.
struct ShapeArc {
    std::optional<FrontArc> arc;
    int panes = 1;
};

ShapeArc read_shape_arc(ObjectReader front, const std::string& name, const std::string& chord) {
    const std::string wanted =
        R"(exactly one of "radius", "rise", "sweep" or "length"; the chord is )" + chord;
    ShapeArc out;
    const GivenMeasures given = read_measures(front, 4);
    out.panes = front.or_default("panes", CountIn{kMostPanesOfSide}, Use::unused).value;
    if (given.keys > 1) {
        front.reading().refuse(front.value(), Code::input_contradiction,
                               name + " has " + std::to_string(given.keys) + " measures", wanted);
    } else if (given.keys == 0 && front.present()) {
        front.reading().refuse(front.value(), Code::input_missing_key, name + " has no measure",
                               wanted);
    }
    front.finish();
    if (!given.arcs.empty()) {
        out.arc = given.arcs.front();
    }
    return out;
}

// An arc that the shape has a measure of its own for.
ShapeArc read_usual_arc(ObjectReader& plan, double usual_sweep, const std::string& chord) {
    if (plan.take("front")) {
        return read_shape_arc(plan.object("front"), "the front", chord);
    }
    const std::string pointer = plan.pointer_of("front") + "/sweep";
    const std::string why = "what the shape is named for";
    plan.reading().assume(pointer, rounded_text(usual_sweep / kPi * 180, 0) + " deg", why);
    ShapeArc out;
    out.arc = FrontArc{ArcMeasure::sweep,
                       {usual_sweep, {Origin::Kind::assumed, pointer, 0, why}}};
    return out;
}

void read_polygon(ObjectReader& plan, Plan& out) {
    const auto corners = plan.take("corners");
    const auto count = plan.take("count");
    const auto side = plan.take("side");
    constexpr std::string_view kWanted =
        R"("count" and "side" of a regular polygon, or "corners" of any other)";
    if (corners && (count || side)) {
        plan.reading().refuse(plan.value(), Code::input_contradiction,
                              "the polygon is given in two ways", std::string(kWanted));
    } else if (corners) {
        out.corners = read_points(plan, "corners", "a corner", "the plan", "corners");
    } else if (count && side) {
        out.count = plan.read(*count, CountIn{static_cast<int>(kMostSides)})
                        .value_or(Sourced<int>{})
                        .value;
        out.side = plan.read(*side, LengthIn{kPositive}).value_or(Sourced<double>{});
    } else if (plan.present()) {
        plan.reading().refuse(plan.value(), Code::input_missing_key, "the polygon has no sides",
                              std::string(kWanted));
    }
}

// Keys that only some shapes have, and which.
struct ShapeKey {
    std::string_view key;
    std::vector<PlanShape> shapes;
};

const std::vector<ShapeKey>& shape_keys() {
    using enum PlanShape;
    static const std::vector<ShapeKey> kKeys = {
        {"width", {rectangle, bow_front, quarter_round, half_round, bow_ends, serpentine}},
        {"depth", {rectangle, bow_front, quarter_round, bow_ends, serpentine}},
        {"front", {bow_front, quarter_round, half_round, serpentine}},
        {"ends", {bow_ends}},
        {"arcs", {serpentine}},
        {"count", {polygon}},
        {"side", {polygon}},
        {"corners", {polygon}},
        {"sides", {sides}}};
    return kKeys;
}

std::string shapes_text(const std::vector<PlanShape>& shapes) {
    std::vector<std::string_view> words;
    for (const PlanShape shape : shapes) {
        words.push_back(shape_text(shape));
    }
    return listed(words);
}

// A key that the plan's shape has no use for would be left unread without a word.
void refuse_other_keys(ObjectReader& plan, PlanShape shape) {
    for (const ShapeKey& row : shape_keys()) {
        const auto value = plan.take(row.key);
        const bool of_shape =
            std::find(row.shapes.begin(), row.shapes.end(), shape) != row.shapes.end();
        if (value && !of_shape) {
            plan.reading().refuse(*value, Code::input_contradiction,
                                  "a " + std::string(shape_text(shape)) + " has no " +
                                      quoted_text(row.key),
                                  "no " + quoted_text(row.key) + ", or the shape " +
                                      shapes_text(row.shapes));
        }
    }
}

void take_arc(ShapeArc arc, Plan& out) {
    out.front = std::move(arc.arc);
    out.arc_panes = arc.panes;
}

// The sizes of a shape, each key of which stands in its row of `shape_keys`.
void read_sizes(ObjectReader& plan, Plan& out) {
    switch (out.shape) {
        case PlanShape::rectangle:
        case PlanShape::bow_front:
            out.width = plan.needed("width", LengthIn{kPositive});
            out.depth = plan.needed("depth", LengthIn{kPositive});
            if (out.shape == PlanShape::bow_front) {
                take_arc(read_shape_arc(plan.needed_object("front"), "the front",
                                        "the plan's width"),
                         out);
            }
            break;
        case PlanShape::quarter_round:
            out.width = plan.needed("width", LengthIn{kPositive});
            if (const auto depth = plan.take("depth")) {
                out.depth = plan.read(*depth, LengthIn{kPositive}).value_or(Sourced<double>{});
            } else {
                out.depth = {out.width.value, plan.assume_rule("depth")};
            }
            take_arc(read_usual_arc(plan, kPi / 2, "over width and depth"), out);
            break;
        case PlanShape::half_round:
            out.width = plan.needed("width", LengthIn{kPositive});
            take_arc(read_usual_arc(plan, kPi, "the plan's width"), out);
            break;
        case PlanShape::bow_ends:
            out.width = plan.needed("width", LengthIn{kPositive});
            out.depth = plan.needed("depth", LengthIn{kPositive});
            take_arc(read_shape_arc(plan.needed_object("ends"), "an end", "the plan's depth"), out);
            break;
        case PlanShape::serpentine: {
            out.width = plan.needed("width", LengthIn{kPositive});
            out.depth = plan.needed("depth", LengthIn{kPositive});
            const auto arcs = plan.or_default("arcs", CountIn{kMostArcs});
            if (arcs.value < 2) {
                plan.reading().refuse(*plan.take("arcs"), Code::input_value,
                                      "an S has at least two arcs", "2 or more");
            }
            out.arcs = std::max(2, arcs.value);
            take_arc(read_shape_arc(plan.needed_object("front"), "the front",
                                    "the plan's width divided by \"arcs\""),
                     out);
            break;
        }
        case PlanShape::polygon: read_polygon(plan, out); break;
        case PlanShape::sides: read_chain(plan, out); break;
    }
}

}  // namespace

bool names_known(Faults& faults) {
    for (const char* pointer : {"/plan/shape", "/plan/sides", "/plan/corners", "/plan/count",
                                "/plan/arcs", "/plan/front/panes", "/plan/ends/panes"}) {
        if (faults.touch(pointer)) {
            return false;
        }
    }
    return true;
}

Plan read_plan(ObjectReader plan) {
    Plan out;
    const auto shape_value = plan.take_needed("shape");
    const bool dome = shape_value && refuse_dome(plan.reading(), *shape_value);
    const auto shape = shape_value && !dome ? plan.read(*shape_value, kShape) : std::nullopt;
    read_axis(plan);
    if (shape) {
        out.shape = shape->value;
        read_sizes(plan, out);
        refuse_other_keys(plan, out.shape);
    } else {
        for (const ShapeKey& row : shape_keys()) {
            (void)plan.take(row.key);
        }
    }
    plan.finish();
    return out;
}

}  // namespace bowfront::io
