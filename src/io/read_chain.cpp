#include "read_chain.hpp"

#include <numbers>
#include <optional>
#include <string>
#include <utility>

#include "bowfront/base/quoted_text.hpp"
#include "value_kinds.hpp"

namespace bowfront::io {
namespace {

constexpr double kPi = std::numbers::pi;
constexpr Range kSweep{0, 2 * kPi, Range::Low::open};
constexpr Range kTurn{-kPi, kPi};
constexpr Range kWithinTurn{-2 * kPi, 2 * kPi};
constexpr Range kChordError{1e-6, 1};
constexpr std::size_t kMostPieces = 60;

const WordOf<Bow, 2> kBow{"which way an arc bows", {{{"out", Bow::out}, {"in", Bow::in}}}};

// In the order of the table of keys; the chord, which most arcs have already, last.
constexpr std::array kMeasures = {ArcMeasure::radius, ArcMeasure::rise, ArcMeasure::sweep,
                                  ArcMeasure::length, ArcMeasure::chord};

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
        const bool fits =
            !text.empty() && text.size() <= kLongestName &&
            text.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789-") == std::string::npos &&
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
            arc.value(), given.keys < wanted ? Code::input_missing_key : Code::input_contradiction,
            "the arc has " + std::to_string(given.keys) +
                (given.keys == 1 ? " measure" : " measures"),
            closing ? R"(exactly one of "radius", "rise", "sweep" or "length")"
                    : R"(exactly two of "radius", "rise", "sweep", "length" and "chord")");
    }
    piece.arc = given.arcs;
    arc.finish();
}

EllipseSpec read_ellipse(ObjectReader ellipse) {
    EllipseSpec out;
    if (const auto list = ellipse.take_needed("semi_axes")) {
        const std::vector<Value> axes =
            ellipse.items_of(*list, 2, "half of each axis, two lengths in square brackets");
        for (std::size_t i = 0; i < axes.size(); ++i) {
            out.semi_axes[i] =
                ellipse.read(axes[i], LengthIn{kPositive}).value_or(Sourced<double>{});
        }
    }
    out.from = ellipse.needed("from", AngleIn{kWithinTurn});
    out.to = ellipse.needed("to", AngleIn{kWithinTurn});
    ellipse.finish();
    return out;
}

// What a piece is beside a straight or an arc: how many of these it is.
void read_free(ObjectReader& of, PieceSpec& piece) {
    if (const auto ellipse = of.take("ellipse")) {
        piece.ellipse = read_ellipse(of.object_of(*ellipse, "ellipse"));
    }
    if (const auto curve = of.take("curve")) {
        ObjectReader line = of.object_of(*curve, "curve");
        piece.curve = CurveSpec{read_points(line, "through", "a point", "the curve", "points")};
        line.finish();
    }
    const auto error = of.take("chord_error");
    piece.chord_error = of.or_default("chord_error", LengthIn{kChordError},
                                      piece.is_free() ? Use::used : Use::unused);
    if (error && !piece.is_free()) {
        of.reading().refuse(*error, Code::input_contradiction,
                            "a straight or an arc is held to no chord error",
                            R"(no "chord_error", or "ellipse" or "curve")");
    }
}

// The keys that each give a piece its shape.
constexpr std::array<std::string_view, 4> kShapes = {"straight", "arc", "ellipse", "curve"};

std::size_t shapes_given(ObjectReader& of) {
    std::size_t count = 0;
    for (const std::string_view key : kShapes) {
        count += of.take(key) ? 1U : 0U;
    }
    return count;
}

// A straight, an arc or a curve, of whatever the object is: `a side`, `a piece`.
PieceSpec read_piece(ObjectReader& of, bool closing, std::string_view what) {
    PieceSpec piece;
    piece.pointer = of.pointer();
    piece.straight = of.given("straight", LengthIn{kPositive});
    const auto arc = of.take("arc");
    if (arc) {
        read_chain_arc(of.object_of(*arc, "arc"), closing, piece);
    }
    const auto bow = of.take("bow");
    piece.bow = of.or_default("bow", kBow, arc ? Use::used : Use::unused);
    if (bow && !arc) {
        of.reading().refuse(*bow, Code::input_contradiction,
                            "a straight " + std::string(what) + " does not bow",
                            R"(no "bow", or an "arc")");
    }
    read_free(of, piece);
    if (of.take("straight") && arc) {
        of.reading().refuse(of.value(), Code::input_contradiction,
                            "the " + std::string(what) + " is a straight and an arc",
                            R"("straight" or "arc")");
    } else if (shapes_given(of) > 1) {
        of.reading().refuse(of.value(), Code::input_contradiction,
                            "the " + std::string(what) + " has more than one shape",
                            R"(one of "straight", "arc", "ellipse" and "curve")");
    }
    if (closing && piece.is_free()) {
        of.reading().refuse(of.value(), Code::input_contradiction,
                            "the chord of a side that closes the chain is solved for, and a curve "
                            "has its own",
                            "a straight or an arc that closes the chain");
    }
    return piece;
}

bool has_no_shape(ObjectReader& of) {
    return of.present() && shapes_given(of) == 0;
}

// A run, as the pieces that it has; a run of one piece is that piece.
std::vector<PieceSpec> read_run(ObjectReader& side, const Value& list) {
    Reading& reading = side.reading();
    std::vector<PieceSpec> pieces;
    const std::vector<Value> given = side.items("run");
    if (given.empty() && list.node->kind == JsonNode::Kind::list) {
        reading.refuse(list, Code::input_value, "the run has no pieces", "at least one");
    }
    if (too_many(reading, list, given.size(), kMostPieces, "the run", "pieces")) {
        return pieces;
    }
    for (const Value& each : given) {
        ObjectReader piece = side.item(each, "run");
        pieces.push_back(read_piece(piece, false, "piece"));
        if (has_no_shape(piece)) {
            reading.refuse(
                each, Code::input_missing_key, "the piece has no shape",
                R"("straight" with its length, "arc" with two measures, "ellipse" or "curve")");
        }
        piece.finish();
    }
    return pieces;
}

// A side's run stands in the place of its straight or arc.
void read_run_of(ObjectReader& side, SideSpec& out) {
    const auto run = side.take("run");
    if (!run) {
        return;
    }
    Reading& reading = side.reading();
    std::vector<PieceSpec> pieces = read_run(side, *run);
    if (!has_no_shape(side) || side.take("bow")) {
        reading.refuse(side.value(), Code::input_contradiction,
                       "the side has a shape beside its run",
                       R"("run" alone; its pieces are straights and arcs)");
    }
    if (out.closing) {
        reading.refuse(*run, Code::input_contradiction,
                       "the chord of a side that closes the chain is solved for, and a run has its "
                       "own",
                       "a straight or an arc that closes the chain");
    }
    if (pieces.size() > 1 && out.panes > 1 && side.take("panes")) {
        reading.refuse(*side.take("panes"), Code::input_contradiction,
                       "a run of several pieces is glazed by one pane",
                       R"(no "panes", or sides of its pieces)");
    }
    if (!pieces.empty()) {
        out.pieces = std::move(pieces);
    }
}

SideSpec read_side(ObjectReader side, std::size_t number, bool turn_is_free) {
    Reading& reading = side.reading();
    SideSpec out;
    out.pointer = side.pointer();
    const auto name = side.given("name", SideNameIn{});
    out.name = name ? **name : "side-" + std::to_string(number);
    const auto closing = side.given("closing", TruthIn{});
    out.closing = closing && **closing;
    out.pieces = {read_piece(side, out.closing, "side")};
    out.panes = side.or_default("panes", CountIn{kMostPanesOfSide}, Use::unused).value;
    const auto run = side.take("run");
    read_run_of(side, out);
    if (!run && !out.closing && has_no_shape(side)) {
        reading.refuse(
            side.value(), Code::input_missing_key, "the side has no shape",
            R"("straight" with its length, "arc" with two measures, "ellipse", "curve" or "run")");
    } else if (side.take("straight") && out.closing) {
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

}  // namespace

GivenMeasures read_measures(ObjectReader& arc, std::size_t known) {
    GivenMeasures out;
    for (std::size_t i = 0; i < known; ++i) {
        const ArcMeasure measure = kMeasures[i];
        const auto value = arc.take(measure_text(measure));
        if (!value) {
            continue;
        }
        ++out.keys;
        const auto number = measure == ArcMeasure::sweep
                                ? arc.read(*value, AngleIn{kSweep})
                                : arc.read(*value, LengthIn{kPositive});
        if (number) {
            out.arcs.push_back({measure, *number});
        }
    }
    return out;
}

bool too_many(Reading& reading, const Value& list, std::size_t count, std::size_t most,
              std::string_view whole, std::string_view what) {
    if (count <= most) {
        return false;
    }
    reading.refuse(list, Code::input_limit,
                   std::string(whole) + " has " + std::to_string(count) + " " + std::string(what),
                   "at most " + std::to_string(most));
    return true;
}

std::vector<std::array<Sourced<double>, 2>> read_points(ObjectReader& of, std::string_view key,
                                                        std::string_view point,
                                                        std::string_view whole,
                                                        std::string_view what) {
    std::vector<std::array<Sourced<double>, 2>> points;
    const auto list = of.take_needed(key);
    const std::vector<Value> given = of.items(key);
    if (!list || too_many(of.reading(), *list, given.size(), kMostSides, whole, what)) {
        return points;
    }
    for (const Value& each : given) {
        const std::vector<Value> axes =
            of.items_of(each, 2, std::string(point) + " as [x, y], two lengths in square brackets");
        std::array<Sourced<double>, 2> at;
        for (std::size_t i = 0; i < axes.size(); ++i) {
            at[i] = of.read(axes[i], LengthIn{kAnywhere}).value_or(Sourced<double>{});
        }
        points.push_back(at);
    }
    return points;
}

void read_chain(ObjectReader& plan, Plan& out) {
    const auto list = plan.take_needed("sides");
    const std::vector<Value> sides = plan.items("sides");
    Reading& reading = plan.reading();
    if (!list || too_many(reading, *list, sides.size(), kMostSides, "the plan", "sides")) {
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
    (void)too_many(reading, *list, panes, kMostSides, "the plan", "panes");
}

}  // namespace bowfront::io
