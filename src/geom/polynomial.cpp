#include "geom/polynomial.hpp"

#include <algorithm>

namespace bowfront {
namespace {

/// The sign change between `low` and `high`, where the polynomial has different signs.
double halved(const Polynomial& polynomial, double low, double high) {
    const bool rises = value(polynomial, low) < 0;
    while (true) {
        const double middle = (low + high) / 2;
        if (middle <= low || middle >= high) {
            return middle;
        }
        ((value(polynomial, middle) < 0) == rises ? low : high) = middle;
    }
}

}  // namespace

double value(const Polynomial& polynomial, double x) {
    double sum = 0;
    for (auto c = polynomial.rbegin(); c != polynomial.rend(); ++c) {
        sum = sum * x + *c;
    }
    return sum;
}

Polynomial derivative(const Polynomial& polynomial) {
    Polynomial slope;
    for (std::size_t power = 1; power < polynomial.size(); ++power) {
        slope.push_back(static_cast<double>(power) * polynomial[power]);
    }
    return slope.empty() ? Polynomial{0} : slope;
}

Polynomial operator*(const Polynomial& a, const Polynomial& b) {
    Polynomial product(a.size() + b.size() - 1);
    for (std::size_t i = 0; i < a.size(); ++i) {
        for (std::size_t j = 0; j < b.size(); ++j) {
            product[i + j] += a[i] * b[j];
        }
    }
    return product;
}

Polynomial operator+(const Polynomial& a, const Polynomial& b) {
    Polynomial sum(std::max(a.size(), b.size()));
    for (std::size_t i = 0; i < sum.size(); ++i) {
        sum[i] = (i < a.size() ? a[i] : 0) + (i < b.size() ? b[i] : 0);
    }
    return sum;
}

Polynomial operator*(double factor, const Polynomial& polynomial) {
    return Polynomial{factor} * polynomial;
}

std::vector<double> sign_changes(const Polynomial& polynomial) {
    if (polynomial.size() < 2) {
        return {};
    }
    std::vector<double> ends = sign_changes(derivative(polynomial));
    ends.insert(ends.begin(), 0);
    ends.push_back(1);
    std::vector<double> found;
    for (std::size_t i = 1; i < ends.size(); ++i) {
        const double before = value(polynomial, ends[i - 1]);
        const double after = value(polynomial, ends[i]);
        if ((before < 0 && after > 0) || (before > 0 && after < 0)) {
            found.push_back(halved(polynomial, ends[i - 1], ends[i]));
        }
    }
    return found;
}

}  // namespace bowfront
