#include <cmath>
#include <numbers>

#include "bowfront/base/contract.hpp"
#include "bowfront/fit/plan.hpp"
#include "run.hpp"

namespace bowfront::fit {
namespace {

constexpr double kPi = std::numbers::pi;

// The direction of an angle; of whole quarter turns without the rounding of sine and cosine, so
// that a plan that is square stays square to the last digit.
Point exact_direction(double angle) {
    const double quarters = angle / (kPi / 2);
    const double whole = std::round(quarters);
    if (std::abs(quarters - whole) < 1e-14) {
        constexpr Point kQuarters[] = {{1, 0}, {0, 1}, {-1, 0}, {0, -1}};
        return kQuarters[static_cast<std::size_t>(std::lround(whole) & 3)];
    }
    return direction(angle);
}

Point chord_of(const SideSums<double>& side) {
    return exact_direction(side.chord_heading) * side.chord;
}

// How many sides the first one of the plan is divided into.
std::size_t first_panes(const Plan& plan) {
    if (plan.shape == PlanShape::sides) {
        return static_cast<std::size_t>(plan.chain.front().panes);
    }
    return is_curved(plan, 0) ? static_cast<std::size_t>(plan.arc_panes) : 1;
}

// X is 0 at the middle of the front's chord, Y on it; a serpentine's front is all of its arcs, and
// a quarter-round's X is that of its back.
Point first_corner(const Plan& plan, const std::vector<SideSums<double>>& sides) {
    switch (plan.shape) {
        case PlanShape::rectangle:
        case PlanShape::bow_front:
        case PlanShape::quarter_round:
        case PlanShape::half_round:
        case PlanShape::bow_ends:
        case PlanShape::serpentine:
            return {-plan.width.value / 2, 0};
        case PlanShape::polygon:
            if (!plan.corners.empty()) {
                return {plan.corners.front()[0].value, plan.corners.front()[1].value};
            }
            break;
        case PlanShape::sides:
            break;
    }
    Point chord;
    for (std::size_t i = 0; i < first_panes(plan); ++i) {
        chord = chord + chord_of(sides[i]);
    }
    return chord * -0.5;
}

}  // namespace

GlazingLine glazing_line(const Plan& plan, const std::vector<SideSums<double>>& sides) {
    const std::size_t count = sides.size();
    GlazingLine line;
    line.corners.reserve(count);
    line.corners.push_back(first_corner(plan, sides));
    for (std::size_t i = 0; i + 1 < count; ++i) {
        line.corners.push_back(line.corners.back() + chord_of(sides[i]));
    }
    line.directions.resize(count);
    for (std::size_t i = 0; i < count; ++i) {
        line.order.push_back(sides[i].side);
        const std::size_t next = line.order.size() % count;
        line.sides.push_back(segments_of(sides[i].pieces, line.corners[i]));
        line.sides.back().back().to = line.corners[next];
        line.directions[i].next = sides[i].start_heading();
        line.directions[i].next_curved = sides[i].pieces.front().curved;
        line.directions[next].previous = sides[i].end_heading() + kPi;
        line.directions[next].previous_curved = sides[i].pieces.back().curved;
    }
    return line;
}

GlazingLine glazing_line(const Plan& plan) {
    Book<double> book;
    return glazing_line(plan, solve_sides(plan, book));
}

}  // namespace bowfront::fit
