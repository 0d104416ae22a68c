#include "bowfront/study/student.hpp"

#include <cmath>
#include <numbers>

#include "bowfront/base/contract.hpp"

namespace bowfront::study {
namespace {

constexpr int kMostFreedom = 1'000'000;
// Halvings of a quarter turn until the angle is as good as a double can hold it.
constexpr int kHalvings = 60;
// A term of the sum this much smaller than its first no longer changes it.
constexpr double kNoMore = 1e-18;

// P(|T| ≤ t) for t = tan(angle)·√freedom. The sums run over powers of the cosine; every term is
// positive, so that nothing cancels.
double inside(double angle, int freedom) {
    const double sine = std::sin(angle);
    const double cosine = std::cos(angle);
    const bool odd = freedom % 2 != 0;
    double term = odd ? cosine : 1;
    double sum = freedom == 1 ? 0 : term;
    for (int k = odd ? 3 : 2; k < freedom && term > kNoMore; k += 2) {
        term *= cosine * cosine * (k - 1) / k;
        sum += term;
    }
    return odd ? 2 / std::numbers::pi * (angle + sine * sum) : sine * sum;
}

}  // namespace

double student_t(double outside, int freedom) {
    BOWFRONT_EXPECTS(outside > 0 && outside < 1);
    BOWFRONT_EXPECTS(freedom >= 1 && freedom <= kMostFreedom);
    double low = 0;
    double high = std::numbers::pi / 2;
    for (int i = 0; i < kHalvings; ++i) {
        const double middle = (low + high) / 2;
        (inside(middle, freedom) < 1 - outside ? low : high) = middle;
    }
    return std::tan((low + high) / 2) * std::sqrt(static_cast<double>(freedom));
}

double grubbs_limit(int count, double level) {
    BOWFRONT_EXPECTS(count >= 3 && count <= kMostFreedom);
    BOWFRONT_EXPECTS(level > 0 && level < 1);
    // Two sides: student_t takes the share of both together, that is twice level/2n.
    const double t = student_t(level / count, count - 2);
    return (count - 1) / std::sqrt(static_cast<double>(count)) *
           std::sqrt(t * t / (count - 2 + t * t));
}

}  // namespace bowfront::study
