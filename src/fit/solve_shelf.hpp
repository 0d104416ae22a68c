#pragma once
/// \file
/// The sums of one shelf, a template over the kind of number.

#include "bowfront/fit/shelf.hpp"

namespace bowfront::fit {

/// What the sums of one shelf are asked of.
template <class N>
struct ShelfTask {
    const Case& c;
    const ShelfSpec& spec;
    const ShelfPlan& plan;
    Book<N>& book;
};

template <class N>
[[nodiscard]] ShelfSums<N> solve_shelf(const ShelfTask<N>& task, const CaseSums<N>& sums);

/// A shelf as it is bent, but for its thickness.
template <class N>
struct BentShelf {
    ShelfModel model = ShelfModel::corners;
    N span;
    N breadth;
    N bulge;
    N pressure;
    N modulus;
    N alpha;  ///< of a plate: w = α·F·s²/(E·t³)
    N beta;   ///< of a plate: σ = β·F/t²
};

/// Bending as `shelf_bending` does it, with numbers of either kind.
template <class N>
struct ShelfBendingOf {
    N deflection;
    N stress;
};
template <class N>
[[nodiscard]] ShelfBendingOf<N> bend_shelf(const BentShelf<N>& of, N thickness) {
    const N t2 = thickness * thickness;
    const N t3 = t2 * thickness;
    const N l2 = of.span * of.span;
    constexpr double kEdge = 1.25;
    if (of.model == ShelfModel::plate) {
        const N force = of.pressure * of.span * of.breadth;
        return {kEdge * (of.alpha * force * l2 / (of.modulus * t3)),
                kEdge * (of.beta * force / t2)};
    }
    if (of.model == ShelfModel::rails) {
        const N more = 1 + 2 * of.bulge / of.span;
        return {5 * of.pressure * l2 * l2 / (32 * of.modulus * t3) * more,
                3 * of.pressure * l2 / (4 * t2) * more};
    }
    return {5 * of.pressure * (l2 * l2 + of.span * (of.breadth * of.breadth * of.breadth)) /
                (32 * of.modulus * t3),
            kEdge * (3 * of.pressure * l2 / (4 * t2))};
}

}  // namespace bowfront::fit
