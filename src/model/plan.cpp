#include "bowfront/model/plan.hpp"

#include <algorithm>
#include <string_view>

#include "bowfront/base/contract.hpp"
#include "bowfront/model/plan_pieces.hpp"

namespace bowfront {
namespace {

// A side before it is divided into panes.
struct WholeSide {
    std::string name;
    int panes = 1;
};

std::vector<WholeSide> whole_sides(const Plan& plan) {
    const int n = plan.arc_panes;
    switch (plan.shape) {
        case PlanShape::rectangle: return {{"front"}, {"right"}, {"back"}, {"left"}};
        case PlanShape::bow_front: return {{"front", n}, {"right"}, {"back"}, {"left"}};
        case PlanShape::quarter_round: return {{"front", n}, {"back"}, {"left"}};
        case PlanShape::half_round: return {{"front", n}, {"back"}};
        case PlanShape::bow_ends:
            return {{"front"}, {"right", n}, {"back"}, {"left", n}};
        case PlanShape::serpentine: {
            std::vector<WholeSide> sides;
            for (int i = 1; i <= plan.arcs; ++i) {
                sides.push_back({"front-" + std::to_string(i), n});
            }
            for (const char* name : {"right", "back", "left"}) {
                sides.push_back({name});
            }
            return sides;
        }
        case PlanShape::polygon: {
            const int count =
                plan.corners.empty() ? plan.count : static_cast<int>(plan.corners.size());
            std::vector<WholeSide> sides;
            for (int i = 1; i <= count; ++i) {
                sides.push_back({"side-" + std::to_string(i)});
            }
            return sides;
        }
        case PlanShape::sides: break;
    }
    std::vector<WholeSide> sides;
    for (const SideSpec& side : plan.chain) {
        sides.push_back({side.name, side.panes});
    }
    return sides;
}

// The side of the chain that the side of a place is, or is a part of.
const SideSpec& chained_side(const Plan& plan, std::size_t place) {
    std::size_t end = 0;
    for (const SideSpec& side : plan.chain) {
        end += static_cast<std::size_t>(side.panes);
        if (place < end) {
            return side;
        }
    }
    contract_failed("place < sides of the plan", __FILE__, __LINE__);
}

}  // namespace

std::string_view shape_text(PlanShape shape) noexcept {
    switch (shape) {
        case PlanShape::rectangle: return "rectangle";
        case PlanShape::bow_front: return "bow-front";
        case PlanShape::quarter_round: return "quarter-round";
        case PlanShape::half_round: return "half-round";
        case PlanShape::bow_ends: return "bow-ends";
        case PlanShape::serpentine: return "serpentine";
        case PlanShape::polygon: return "polygon";
        case PlanShape::sides: break;
    }
    return "sides";
}

std::string_view measure_text(ArcMeasure measure) noexcept {
    switch (measure) {
        case ArcMeasure::radius: return "radius";
        case ArcMeasure::rise: return "rise";
        case ArcMeasure::sweep: return "sweep";
        case ArcMeasure::length: return "length";
        case ArcMeasure::chord: break;
    }
    return "chord";
}

std::vector<CaseSide> sides_of(const Plan& plan) {
    if (plan.shape == PlanShape::rectangle ||
        (plan.shape == PlanShape::bow_front && plan.arc_panes == 1)) {
        return {kFourSides.begin(), kFourSides.end()};
    }
    std::vector<CaseSide> sides;
    for (const WholeSide& side : whole_sides(plan)) {
        for (int i = 1; i <= side.panes; ++i) {
            sides.emplace_back(sides.size(),
                               side.panes == 1 ? side.name : side.name + "-" + std::to_string(i));
        }
    }
    return sides;
}

std::string corner_name(const Plan& plan, std::size_t place) {
    const auto one_of = [&](std::initializer_list<std::string_view> names) {
        return std::string(names.begin()[place]);
    };
    if (plan.arc_panes == 1) {
        switch (plan.shape) {
            case PlanShape::rectangle:
            case PlanShape::bow_front:
            case PlanShape::bow_ends:
                return one_of({"front-left", "front-right", "back-right", "back-left"});
            case PlanShape::quarter_round: return one_of({"front-left", "back-right", "back-left"});
            case PlanShape::half_round: return one_of({"left", "right"});
            default: break;
        }
    }
    return "corner-" + std::to_string(place + 1);
}

std::string side_pointer(const Plan& plan, std::size_t place) {
    if (plan.shape == PlanShape::sides) {
        return chained_side(plan, place).pointer;
    }
    if (!is_curved(plan, place)) {
        return "/plan";
    }
    return plan.shape == PlanShape::bow_ends ? "/plan/ends" : "/plan/front";
}

bool is_curved(const Plan& plan, std::size_t place) {
    const auto panes = static_cast<std::size_t>(plan.arc_panes);
    switch (plan.shape) {
        case PlanShape::rectangle:
        case PlanShape::polygon: return false;
        case PlanShape::bow_front:
        case PlanShape::quarter_round:
        case PlanShape::half_round: return place < panes;
        case PlanShape::serpentine: return place < static_cast<std::size_t>(plan.arcs) * panes;
        case PlanShape::bow_ends:  // front, right end, back, left end
            return place > 0 && place != panes + 1;
        case PlanShape::sides: break;
    }
    const auto& pieces = chained_side(plan, place).pieces;
    return std::any_of(pieces.begin(), pieces.end(),
                       [](const PieceSpec& piece) { return piece.is_curved(); });
}

bool has_several_pieces(const Plan& plan, std::size_t place) {
    if (plan.shape != PlanShape::sides) {
        return false;
    }
    const auto& pieces = chained_side(plan, place).pieces;
    return pieces.size() > 1 || pieces.front().is_free();
}

bool has_free_piece(const Plan& plan, std::size_t place) {
    if (plan.shape != PlanShape::sides) {
        return false;
    }
    const auto& pieces = chained_side(plan, place).pieces;
    return std::any_of(pieces.begin(), pieces.end(),
                       [](const PieceSpec& piece) { return piece.is_free(); });
}

std::vector<const FrontArc*> arc_measures(const Plan& plan, std::size_t place) {
    if (!is_curved(plan, place)) {
        return {};
    }
    if (plan.shape != PlanShape::sides) {
        return plan.front ? std::vector{&*plan.front} : std::vector<const FrontArc*>{};
    }
    std::vector<const FrontArc*> measures;
    for (const PieceSpec& piece : chained_side(plan, place).pieces) {
        for (const FrontArc& measure : piece.arc) {
            measures.push_back(&measure);
        }
    }
    return measures;
}

}  // namespace bowfront
