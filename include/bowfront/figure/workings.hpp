#pragma once
/// \file
/// Numbers that remember how they were computed.
///
/// Every sum of bowfront is one function template over the kind of number: with `double` it runs
/// at full speed, with `Traced` the same lines of code record each step. So the formula that
/// `explain` prints is the formula that was computed; the two can't drift apart.

#include <cmath>
#include <cstdint>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "bowfront/base/origin.hpp"

namespace bowfront {

/// What a figure measures; it decides the unit that it is printed in.
enum class Kind { length, angle, ratio, temperature, temperature_difference, stress, force,
                  mass, count, plain };

/// The unit's text: `mm`, `deg`, `%`, `degC`, `K`, `MPa`, `N`, `kg`, or empty.
[[nodiscard]] std::string_view kind_unit(Kind kind) noexcept;

/// A value as people read it, with its unit: an angle in degrees, a ratio in per cent.
/// @param value  in the units used inside (mm, rad, plain ratio, °C, MPa); finite
[[nodiscard]] std::string figure_text(Kind kind, double value);

class Workings;

/// A number with its derivation. Cheap to copy; belongs to the Workings that it came from.
class Traced {
  public:
    /// A literal in a formula.
    Traced(double literal = 0) : value_(literal) {}  // NOLINT: literals stand in formulas

    [[nodiscard]] double value() const noexcept { return value_; }

  private:
    friend class Workings;
    Traced(double value, Workings* owner, std::int32_t node)
        : value_(value), owner_(owner), node_(node) {}
    double value_ = 0;
    Workings* owner_ = nullptr;
    std::int32_t node_ = -1;
};

/// A named result or input.
struct Figure {
    std::string path;    ///< `panes/front/blank/length`
    std::string symbol;  ///< `L₀`
    Kind kind = Kind::length;
    double value = 0;    ///< in the units used inside
    Origin origin;       ///< computed figures: `source` is the source of the formula
    std::string formula;   ///< with symbols, right side only; empty for an input
    std::string numbers;   ///< the same with numbers
    std::vector<std::string> inputs;  ///< paths of the figures in the formula, in order of reading
};

/// All figures of one run of the sums.
class Workings {
  public:
    Workings() = default;
    Workings(const Workings&) = delete;
    Workings& operator=(const Workings&) = delete;

    /// A value that the sums start from. Asked again for the same path, gives the same figure.
    Traced input(const std::string& path, std::string_view symbol, Kind kind, double value,
                 Origin origin);
    /// Names the result of a formula.
    Traced figure(const std::string& path, std::string_view symbol, Kind kind, Traced value,
                  std::string_view source);
    /// Names a result that no closed formula gives, with the condition that it fulfils.
    Traced solved(const std::string& path, std::string_view symbol, Kind kind, double value,
                  std::string_view condition, const std::vector<Traced>& inputs,
                  std::string_view source);

    /// All figures by path.
    [[nodiscard]] const std::map<std::string, Figure>& figures() const noexcept {
        return figures_;
    }
    [[nodiscard]] const Figure* find(const std::string& path) const;

    /// The step kinds of a formula.
    enum class Op : std::uint8_t {
        literal, named, add, subtract, multiply, divide, negate, sine, cosine,
        arc_sine, arc_cosine, arc_tangent, square_root, magnitude, ceiling, smaller, larger
    };
    /// Records one step; used by the operators below.
    static Traced step(Op op, double value, const Traced& a);
    static Traced step(Op op, double value, const Traced& a, const Traced& b);

  private:
    struct Node {
        Op op = Op::literal;
        std::int32_t a = -1;
        std::int32_t b = -1;
        double value = 0;
        const Figure* figure = nullptr;  // named: stands in formulas by its symbol
    };
    std::int32_t node_of(const Traced& number);
    std::int32_t add(Node node);
    Traced name(Figure figure);
    void render(std::int32_t node, int outer, bool numbers, std::string& text) const;
    void render_operands(const Node& node, bool numbers, std::string& text) const;
    void collect(std::int32_t node, std::vector<std::string>& inputs) const;

    std::vector<Node> nodes_;
    std::map<std::string, Figure> figures_;
    std::map<std::string, std::int32_t> named_;
};

// Arithmetic on traced numbers: the value as for double, the step recorded.
Traced operator+(const Traced& a, const Traced& b);
Traced operator-(const Traced& a, const Traced& b);
Traced operator*(const Traced& a, const Traced& b);
Traced operator/(const Traced& a, const Traced& b);
Traced operator-(const Traced& a);
Traced sin(const Traced& a);
Traced cos(const Traced& a);
Traced asin(const Traced& a);
Traced acos(const Traced& a);
Traced atan(const Traced& a);
Traced sqrt(const Traced& a);
Traced abs(const Traced& a);
Traced ceil(const Traced& a);
Traced smaller(const Traced& a, const Traced& b);
Traced larger(const Traced& a, const Traced& b);

// The same names for plain numbers, so that one template serves both.
[[nodiscard]] inline double smaller(double a, double b) { return b < a ? b : a; }
[[nodiscard]] inline double larger(double a, double b) { return a < b ? b : a; }
[[nodiscard]] inline double value_of(double number) { return number; }
[[nodiscard]] inline double value_of(const Traced& number) { return number.value(); }

/// The derivation of a figure down to its leaves, as text; each figure is explained once.
/// @throws ContractError where there is no figure of that path
[[nodiscard]] std::string explain(const Workings& workings, const std::string& path);

}  // namespace bowfront
