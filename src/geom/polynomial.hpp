#pragma once
/// \file
/// Polynomials of one variable, and where they change their sign.

#include <vector>

namespace bowfront {

/// Coefficients, that of the lowest power first; never empty.
using Polynomial = std::vector<double>;

[[nodiscard]] double value(const Polynomial& polynomial, double x);
[[nodiscard]] Polynomial derivative(const Polynomial& polynomial);
[[nodiscard]] Polynomial operator*(const Polynomial& a, const Polynomial& b);
[[nodiscard]] Polynomial operator+(const Polynomial& a, const Polynomial& b);
[[nodiscard]] Polynomial operator*(double factor, const Polynomial& polynomial);

/// Every x within 0 to 1 at which the polynomial changes its sign, ascending. It is monotone
/// between the sign changes of its derivative, so halving each such range misses none.
[[nodiscard]] std::vector<double> sign_changes(const Polynomial& polynomial);

}  // namespace bowfront
