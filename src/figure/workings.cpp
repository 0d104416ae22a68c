#include "bowfront/figure/workings.hpp"

#include <algorithm>
#include <numbers>
#include <utility>

#include "bowfront/base/contract.hpp"
#include "bowfront/base/number_text.hpp"

namespace bowfront {
namespace {

// Binding strength of an operator in a printed formula.
constexpr int kSum = 1;
constexpr int kProduct = 2;
constexpr int kPrefix = 3;

constexpr int kFormulaDecimals = 6;

std::string_view function_name(Workings::Op op) {
    switch (op) {
        case Workings::Op::sine: return "sin";
        case Workings::Op::cosine: return "cos";
        case Workings::Op::arc_sine: return "asin";
        case Workings::Op::arc_cosine: return "acos";
        case Workings::Op::arc_tangent: return "atan";
        case Workings::Op::square_root: return "sqrt";
        case Workings::Op::magnitude: return "abs";
        case Workings::Op::ceiling: return "ceil";
        case Workings::Op::smaller: return "min";
        case Workings::Op::larger: return "max";
        default: return {};
    }
}

double degrees(double angle) { return angle * 180 / std::numbers::pi; }

}  // namespace

std::string_view kind_unit(Kind kind) noexcept {
    switch (kind) {
        case Kind::length: return "mm";
        case Kind::angle: return "deg";
        case Kind::ratio: return "%";
        case Kind::temperature: return "degC";
        case Kind::temperature_difference: return "K";
        case Kind::stress: return "MPa";
        case Kind::force: return "N";
        case Kind::mass: return "kg";
        case Kind::count:
        case Kind::plain: break;
    }
    return {};
}

std::string figure_text(Kind kind, double value) {
    double shown = value;
    if (kind == Kind::angle) {
        shown = degrees(value);
    } else if (kind == Kind::ratio) {
        shown = value * 100;
    }
    std::string text = rounded_text(shown, kFormulaDecimals);
    if (const std::string_view unit = kind_unit(kind); !unit.empty()) {
        text += ' ';
        text += unit;
    }
    return text;
}

std::int32_t Workings::add(Node node) {
    nodes_.push_back(node);
    return static_cast<std::int32_t>(nodes_.size()) - 1;
}

std::int32_t Workings::node_of(const Traced& number) {
    if (number.owner_ == nullptr) {
        return add({.op = Op::literal, .value = number.value_});
    }
    BOWFRONT_EXPECTS(number.owner_ == this);
    return number.node_;
}

Traced Workings::step(Op op, double value, const Traced& a) {
    if (a.owner_ == nullptr) {
        return Traced(value);  // a sum of literals is a literal
    }
    Workings& owner = *a.owner_;
    return {value, &owner, owner.add({.op = op, .a = a.node_, .value = value})};
}

Traced Workings::step(Op op, double value, const Traced& a, const Traced& b) {
    Workings* owner = a.owner_ != nullptr ? a.owner_ : b.owner_;
    if (owner == nullptr) {
        return Traced(value);
    }
    const std::int32_t left = owner->node_of(a);
    const std::int32_t right = owner->node_of(b);
    return {value, owner, owner->add({.op = op, .a = left, .b = right, .value = value})};
}

Traced Workings::name(Figure figure) {
    const std::string path = figure.path;
    const double value = figure.value;
    BOWFRONT_EXPECTS(std::isfinite(value));
    const auto [place, fresh] = figures_.emplace(path, std::move(figure));
    BOWFRONT_EXPECTS(fresh);  // a figure is computed once
    const std::int32_t node =
        add({.op = Op::named, .value = value, .figure = &place->second});
    named_.emplace(path, node);
    return {value, this, node};
}

Traced Workings::input(const std::string& path, std::string_view symbol, Kind kind, double value,
                       Origin origin) {
    if (const auto known = named_.find(path); known != named_.end()) {
        return {nodes_[static_cast<std::size_t>(known->second)].value, this, known->second};
    }
    return name({.path = path,
                 .symbol = std::string(symbol),
                 .kind = kind,
                 .value = value,
                 .origin = std::move(origin),
                 .formula = {},
                 .numbers = {},
                 .inputs = {}});
}

Traced Workings::figure(const std::string& path, std::string_view symbol, Kind kind, Traced value,
                        std::string_view source) {
    const std::int32_t node = node_of(value);
    Figure figure{.path = path,
                  .symbol = std::string(symbol),
                  .kind = kind,
                  .value = value.value(),
                  .origin = {Origin::Kind::computed, {}, 0, std::string(source)},
                  .formula = {},
                  .numbers = {},
                  .inputs = {}};
    render(node, 0, false, figure.formula);
    render(node, 0, true, figure.numbers);
    collect(node, figure.inputs);
    return name(std::move(figure));
}

Traced Workings::solved(const std::string& path, std::string_view symbol, Kind kind, double value,
                        std::string_view condition, const std::vector<Traced>& inputs,
                        std::string_view source) {
    Figure figure{.path = path,
                  .symbol = std::string(symbol),
                  .kind = kind,
                  .value = value,
                  .origin = {Origin::Kind::computed, {}, 0, std::string(source)},
                  .formula = std::string(condition),
                  .numbers = {},
                  .inputs = {}};
    for (const Traced& input : inputs) {
        collect(node_of(input), figure.inputs);
    }
    return name(std::move(figure));
}

const Figure* Workings::find(const std::string& path) const {
    const auto found = figures_.find(path);
    return found == figures_.end() ? nullptr : &found->second;
}

void Workings::render(std::int32_t index, int outer, bool numbers, std::string& text) const {
    const Node& node = nodes_[static_cast<std::size_t>(index)];
    const auto binary = [&](std::string_view sign, int own, int right) {
        const bool bracket = own < outer;
        text += bracket ? "(" : "";
        render(node.a, own, numbers, text);
        text += sign;
        render(node.b, right, numbers, text);
        text += bracket ? ")" : "";
    };
    switch (node.op) {
        case Op::literal:
            text += rounded_text(node.value, kFormulaDecimals);
            return;
        case Op::named:
            if (!numbers) {
                text += node.figure->symbol;
            } else if (node.value < 0 && outer > 0) {
                text += "(" + rounded_text(node.value, kFormulaDecimals) + ")";
            } else {
                text += rounded_text(node.value, kFormulaDecimals);
            }
            return;
        case Op::add: binary(" + ", kSum, kSum); return;
        case Op::subtract: binary(" − ", kSum, kSum + 1); return;
        case Op::multiply: binary("·", kProduct, kProduct); return;
        case Op::divide: binary("/", kProduct, kProduct + 1); return;
        case Op::negate:
            text += outer > kSum ? "(−" : "−";
            render(node.a, kPrefix, numbers, text);
            text += outer > kSum ? ")" : "";
            return;
        default: break;
    }
    text += function_name(node.op);
    text += '(';
    render_operands(node, numbers, text);
    text += ')';
}

// The least of the least of some is the least of all: one list, not brackets in brackets.
void Workings::render_operands(const Node& node, bool numbers, std::string& text) const {
    const bool lists = node.op == Op::smaller || node.op == Op::larger;
    const Node& first = nodes_[static_cast<std::size_t>(node.a)];
    if (lists && first.op == node.op) {
        render_operands(first, numbers, text);
    } else {
        render(node.a, 0, numbers, text);
    }
    if (node.b >= 0) {
        text += ", ";
        render(node.b, 0, numbers, text);
    }
}

void Workings::collect(std::int32_t index, std::vector<std::string>& inputs) const {
    const Node& node = nodes_[static_cast<std::size_t>(index)];
    if (node.op == Op::named) {
        if (std::find(inputs.begin(), inputs.end(), node.figure->path) == inputs.end()) {
            inputs.push_back(node.figure->path);
        }
        return;
    }
    for (const std::int32_t operand : {node.a, node.b}) {
        if (operand >= 0) {
            collect(operand, inputs);
        }
    }
}

Traced operator+(const Traced& a, const Traced& b) {
    return Workings::step(Workings::Op::add, a.value() + b.value(), a, b);
}
Traced operator-(const Traced& a, const Traced& b) {
    return Workings::step(Workings::Op::subtract, a.value() - b.value(), a, b);
}
Traced operator*(const Traced& a, const Traced& b) {
    return Workings::step(Workings::Op::multiply, a.value() * b.value(), a, b);
}
Traced operator/(const Traced& a, const Traced& b) {
    return Workings::step(Workings::Op::divide, a.value() / b.value(), a, b);
}
Traced operator-(const Traced& a) {
    return Workings::step(Workings::Op::negate, -a.value(), a);
}
Traced sin(const Traced& a) {
    return Workings::step(Workings::Op::sine, std::sin(a.value()), a);
}
Traced cos(const Traced& a) {
    return Workings::step(Workings::Op::cosine, std::cos(a.value()), a);
}
Traced asin(const Traced& a) {
    return Workings::step(Workings::Op::arc_sine, std::asin(a.value()), a);
}
Traced acos(const Traced& a) {
    return Workings::step(Workings::Op::arc_cosine, std::acos(a.value()), a);
}
Traced atan(const Traced& a) {
    return Workings::step(Workings::Op::arc_tangent, std::atan(a.value()), a);
}
Traced sqrt(const Traced& a) {
    return Workings::step(Workings::Op::square_root, std::sqrt(a.value()), a);
}
Traced abs(const Traced& a) {
    return Workings::step(Workings::Op::magnitude, std::abs(a.value()), a);
}
Traced ceil(const Traced& a) {
    return Workings::step(Workings::Op::ceiling, std::ceil(a.value()), a);
}
Traced smaller(const Traced& a, const Traced& b) {
    return Workings::step(Workings::Op::smaller, smaller(a.value(), b.value()), a, b);
}
Traced larger(const Traced& a, const Traced& b) {
    return Workings::step(Workings::Op::larger, larger(a.value(), b.value()), a, b);
}

}  // namespace bowfront
