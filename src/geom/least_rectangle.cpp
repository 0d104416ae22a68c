#include "bowfront/geom/least_rectangle.hpp"

#include <algorithm>
#include <array>
#include <numbers>
#include <vector>

#include "bowfront/base/contract.hpp"

namespace bowfront {
namespace {

constexpr double kQuarter = std::numbers::pi / 2;
constexpr int kDirections = 180;
/// Less of the area than this is the rounding of its sides.
constexpr double kRounding = 1e-12;

double area_when_turned(const Contour& contour, double angle) {
    const Box box = contour.moved({.angle = angle, .shift = {}, .mirrored = false}).box();
    return box.width() * box.height();
}

/// Source: golden-section search, Kiefer 1953.
double least_between(const Contour& contour, double low, double high) {
    constexpr double kGolden = 1 / std::numbers::phi;
    double left = high - kGolden * (high - low);
    double right = low + kGolden * (high - low);
    double area_left = area_when_turned(contour, left);
    double area_right = area_when_turned(contour, right);
    while (low < left && left < right && right < high) {
        if (area_left <= area_right) {
            high = right;
            right = left;
            area_right = area_left;
            left = high - kGolden * (high - low);
            area_left = area_when_turned(contour, left);
        } else {
            low = left;
            left = right;
            area_left = area_right;
            right = low + kGolden * (high - low);
            area_right = area_when_turned(contour, right);
        }
    }
    return (low + high) / 2;
}

/// Turns that may be the best, within an eighth of a turn either way; no turn first.
std::vector<double> candidates(const Contour& contour) {
    std::vector<double> angles{0};
    const double step = kQuarter / kDirections;
    const auto turn = [&](int k) { return (k - kDirections / 2) * step; };
    std::array<double, kDirections> areas;
    for (int k = 0; k < kDirections; ++k) {
        areas[static_cast<std::size_t>(k)] = area_when_turned(contour, turn(k));
    }
    const auto area_at = [&](int k) {  // comes round after a quarter turn
        return areas[static_cast<std::size_t>((k + kDirections) % kDirections)];
    };
    for (int k = 0; k < kDirections; ++k) {
        if (area_at(k) <= area_at(k - 1) && area_at(k) <= area_at(k + 1)) {
            angles.push_back(least_between(contour, turn(k - 1), turn(k + 1)));
        }
    }
    for (const Segment& segment : contour.segments()) {
        if (segment.straight()) {
            const Point along = segment.to - segment.from;
            angles.push_back(std::remainder(-std::atan2(along.y, along.x), kQuarter));
        }
    }
    std::stable_sort(angles.begin(), angles.end(),
                     [](double a, double b) { return std::abs(a) < std::abs(b); });
    return angles;
}

}  // namespace

EnclosingRectangle least_rectangle(const Contour& contour) {
    BOWFRONT_EXPECTS(!contour.empty());
    double best = 0;
    double least = HUGE_VAL;
    for (const double angle : candidates(contour)) {
        const double area = area_when_turned(contour, angle);
        if (area < least * (1 - kRounding)) {
            best = angle;
            least = area;
        }
    }
    const Box box = contour.moved({.angle = best, .shift = {}, .mirrored = false}).box();
    if (box.width() >= box.height()) {
        return {best, box.width(), box.height()};
    }
    return {best > 0 ? best - kQuarter : best + kQuarter, box.height(), box.width()};
}

}  // namespace bowfront
