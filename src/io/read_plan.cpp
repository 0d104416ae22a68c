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
#include "value_kinds.hpp"

namespace bowfront::io {
namespace {

constexpr double kPi = std::numbers::pi;
constexpr Range kSweep{0, 2 * kPi, Range::Low::open};
constexpr Range kTurn{-kPi, kPi};

// Far more sides than a maker glazes; `check` takes a fraction of a second for so many.
constexpr std::size_t kMostSides = 400;
constexpr int kMostPanesOfSide = 60;
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
const WordOf<Bow, 2> kBow{"which way an arc bows", {{{"out", Bow::out}, {"in", Bow::in}}}};

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

struct Measure {
    std::string_view key;
    ArcMeasure measure;
};
constexpr std::array kMeasures = {
    Measure{"radius", ArcMeasure::radius}, Measure{"rise", ArcMeasure::rise},
    Measure{"sweep", ArcMeasure::sweep}, Measure{"length", ArcMeasure::length},
    Measure{"chord", ArcMeasure::chord}};

// The measures of an arc that its object holds, and how many keys there were, right or wrong.
struct GivenMeasures {
    std::vector<FrontArc> arcs;
    std::size_t keys = 0;
};

GivenMeasures read_measures(ObjectReader& arc, std::size_t known) {
    GivenMeasures out;
    for (std::size_t i = 0; i < known; ++i) {
        const Measure& row = kMeasures[i];
        const auto value = arc.take(row.key);
        if (!value) {
            continue;
        }
        ++out.keys;
        const auto number = row.measure == ArcMeasure::sweep
                                ? arc.read(*value, AngleIn{kSweep})
                                : arc.read(*value, LengthIn{kPositive});
        if (number) {
            out.arcs.push_back({row.measure, *number});
        }
    }
    return out;
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

// A side's name is part of file names and of paths in the report.
struct SideNameIn {
    using Result = std::string;
    std::optional<std::string> operator()(Reading& reading, const Value& value) const {
        constexpr std::size_t kLongestName = 20;  // a number of a pane comes behind it
        constexpr std::string_view kWanted =
            "1 to 20 small letters, digits and hyphens, such as \"front-left\"";
        if (value.node->kind != JsonNode::Kind::text) {
            reading.refuse_type(value, kWanted);
            return std::nullopt;
        }
        const std::string& text = value.node->text;
        const bool fits = !text.empty() && text.size() <= kLongestName &&
                          text.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789-") ==
                              std::string::npos &&
                          text.front() != '-' && text.back() != '-';
        if (!fits) {
            reading.refuse(value, Code::input_value,
                           quoted_text(text) + " can't be the name of a side",
                           std::string(kWanted));
            return std::nullopt;
        }
        return text;
    }
};

struct TruthIn {
    using Result = bool;
    std::optional<bool> operator()(Reading& reading, const Value& value) const {
        if (value.node->kind != JsonNode::Kind::truth) {
            reading.refuse_type(value, "true or false");
            return std::nullopt;
        }
        return value.node->text == "true";
    }
};

// An arc of the chain: two measures, or one where the chord is solved for.
void read_chain_arc(ObjectReader arc, bool closing, PieceSpec& piece) {
    const GivenMeasures given = read_measures(arc, closing ? 4 : 5);
    if (closing && arc.take("chord")) {
        arc.reading().refuse(*arc.take("chord"), Code::input_contradiction,
                             "the chord of a side that closes the chain is solved for",
                             R"(one of "radius", "rise", "sweep" or "length")");
    }
    const std::size_t wanted = closing ? 1 : 2;
    if (given.keys != wanted) {
        arc.reading().refuse(
            arc.value(),
            given.keys < wanted ? Code::input_missing_key : Code::input_contradiction,
            "the arc has " + std::to_string(given.keys) +
                (given.keys == 1 ? " measure" : " measures"),
            closing ? R"(exactly one of "radius", "rise", "sweep" or "length")"
                    : R"(exactly two of "radius", "rise", "sweep", "length" and "chord")");
    }
    piece.arc = given.arcs;
    arc.finish();
}

SideSpec read_side(ObjectReader side, std::size_t number, bool turn_is_free) {
    Reading& reading = side.reading();
    SideSpec out;
    out.pointer = out.piece.pointer = side.pointer();
    const auto name = side.given("name", SideNameIn{});
    out.name = name ? **name : "side-" + std::to_string(number);
    const auto closing = side.given("closing", TruthIn{});
    out.closing = closing && **closing;
    out.piece.straight = side.given("straight", LengthIn{kPositive});
    const auto arc = side.take("arc");
    if (arc) {
        read_chain_arc(side.object_of(*arc, "arc"), out.closing, out.piece);
    }
    const auto bow = side.take("bow");
    out.piece.bow = side.or_default("bow", kBow, arc ? Use::used : Use::unused);
    if (bow && !arc) {
        reading.refuse(*bow, Code::input_contradiction, "a straight side does not bow",
                       R"(no "bow", or an "arc")");
    }
    out.panes = side.or_default("panes", CountIn{kMostPanesOfSide}, Use::unused).value;
    const bool straight = side.take("straight").has_value();
    if (straight && arc) {
        reading.refuse(side.value(), Code::input_contradiction,
                       "the side is a straight and an arc", R"("straight" or "arc")");
    } else if (!straight && !arc && !out.closing) {
        reading.refuse(side.value(), Code::input_missing_key, "the side has no shape",
                       R"("straight" with its length, or "arc" with two measures)");
    } else if (straight && out.closing) {
        reading.refuse(*side.take("straight"), Code::input_contradiction,
                       "the length of a side that closes the chain is solved for",
                       R"(no "straight")");
    }
    const auto turn = side.take("turn");
    out.turn_follows = !turn;
    if (turn && turn_is_free) {
        reading.refuse(*turn, Code::input_contradiction,
                       "where this side ends, the turn follows from the side that closes the chain",
                       R"(no "turn")");
    } else if (turn) {
        out.turn = side.read(*turn, AngleIn{kTurn}).value_or(Sourced<double>{});
    }
    side.finish();
    return out;
}

bool closes(const Value& side) {
    const JsonMember* const closing =
        side.node->kind == JsonNode::Kind::object ? side.node->find("closing") : nullptr;
    return closing != nullptr && closing->value.kind == JsonNode::Kind::truth &&
           closing->value.text == "true";
}

bool too_many(Reading& reading, const Value& list, std::size_t count, std::size_t most,
              std::string_view what) {
    if (count <= most) {
        return false;
    }
    reading.refuse(list, Code::input_limit,
                   "the plan has " + std::to_string(count) + " " + std::string(what),
                   "at most " + std::to_string(most));
    return true;
}

void read_chain(ObjectReader& plan, Plan& out) {
    const auto list = plan.take_needed("sides");
    const std::vector<Value> sides = plan.items("sides");
    Reading& reading = plan.reading();
    if (!list || too_many(reading, *list, sides.size(), kMostSides, "sides")) {
        return;
    }
    if (sides.empty() && list->node->kind == JsonNode::Kind::list) {
        reading.refuse(*list, Code::input_value, "the chain has no sides", "at least one");
    }
    const bool closing = !sides.empty() && closes(sides.back());
    std::size_t panes = 0;
    for (std::size_t i = 0; i < sides.size(); ++i) {
        const bool last = i + 1 == sides.size();
        const bool free = closing && i + 2 >= sides.size();
        SideSpec side = read_side(plan.item(sides[i], "sides"), i + 1, free);
        if (side.turn_follows && !free && !last) {
            reading.refuse(sides[i], Code::input_missing_key, "\"turn\" is missing",
                           "the angle to the next side, 0 where it goes on smoothly");
        }
        panes += static_cast<std::size_t>(side.panes);
        out.chain.push_back(std::move(side));
    }
    (void)too_many(reading, *list, panes, kMostSides, "panes");
}

void read_corners(ObjectReader& plan, const Value& list, Plan& out) {
    const std::vector<Value> corners = plan.items("corners");
    if (too_many(plan.reading(), list, corners.size(), kMostSides, "corners")) {
        return;
    }
    for (const Value& corner : corners) {
        const std::vector<Value> axes =
            plan.items_of(corner, 2, "a corner as [x, y], two lengths in square brackets");
        std::array<Sourced<double>, 2> at;
        for (std::size_t i = 0; i < axes.size(); ++i) {
            at[i] = plan.read(axes[i], LengthIn{kAnywhere}).value_or(Sourced<double>{});
        }
        out.corners.push_back(at);
    }
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
        read_corners(plan, *corners, out);
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
    const auto shape = shape_value ? plan.read(*shape_value, kShape) : std::nullopt;
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
