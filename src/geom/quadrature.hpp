#pragma once
/// \file
/// Integrals of smooth functions with an estimate of their error.

#include <array>
#include <cmath>

namespace bowfront {

struct Integral {
    double value = 0;
    double difference = 0;  ///< from the rule with fewer points; far larger than the error
};

/// The integral of `f` from `low` to `high` by 15 points: exact for polynomials up to degree 22;
/// the 7 points of Gauss that are among them are exact up to degree 13.
///
/// Source: Gauss–Kronrod rule; nodes and weights as in Piessens et al., QUADPACK, 1983
template <class Function>
[[nodiscard]] Integral integral(const Function& f, double low, double high) {
    struct Node {
        double place, kronrod, gauss;
    };
    static constexpr std::array kNodes{
        Node{0.991455371120812639206854697526329, 0.022935322010529224963732008058970, 0},
        Node{0.949107912342758524526189684047851, 0.063092092629978553290700663189204,
             0.129484966168869693270611432679082},
        Node{0.864864423359769072789712788640926, 0.104790010322250183839876322541518, 0},
        Node{0.741531185599394439863864773280788, 0.140653259715525918745189590510238,
             0.279705391489276667901467771423780},
        Node{0.586087235467691130294144691258160, 0.169004726639267902826583426598550, 0},
        Node{0.405845151377397166906606412076961, 0.190350578064785409913256402421014,
             0.381830050505118944950369775488975},
        Node{0.207784955007898467600689403773245, 0.204432940075298892414161999234649, 0}};
    static constexpr Node kMiddle{0, 0.209482141084727828012999174891714,
                                  0.417959183673469387755102040816327};
    const double middle = (low + high) / 2;
    const double half = (high - low) / 2;
    const double central = f(middle);
    double kronrod = kMiddle.kronrod * central;
    double gauss = kMiddle.gauss * central;
    for (const Node& node : kNodes) {
        const double pair = f(middle - node.place * half) + f(middle + node.place * half);
        kronrod += node.kronrod * pair;
        gauss += node.gauss * pair;
    }
    return {kronrod * half, std::abs(kronrod - gauss) * half};
}

}  // namespace bowfront
