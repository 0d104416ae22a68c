#pragma once
/// \file
/// Points and directions in the plane and in space. Plain numbers in millimetres.

#include <cmath>

namespace bowfront {

/// A point or a displacement in the plane, mm.
struct Point {
    double x = 0;
    double y = 0;

    friend constexpr Point operator+(Point a, Point b) { return {a.x + b.x, a.y + b.y}; }
    friend constexpr Point operator-(Point a, Point b) { return {a.x - b.x, a.y - b.y}; }
    friend constexpr Point operator*(Point a, double k) { return {a.x * k, a.y * k}; }
    friend constexpr bool operator==(Point a, Point b) = default;
};

/// A point or a displacement in space, mm.
struct Point3 {
    double x = 0;
    double y = 0;
    double z = 0;
    friend constexpr bool operator==(Point3 a, Point3 b) = default;
};

[[nodiscard]] constexpr double dot(Point a, Point b) {
    return a.x * b.x + a.y * b.y;
}
/// z of the cross product: positive when `b` lies to the left of `a`.
[[nodiscard]] constexpr double cross(Point a, Point b) {
    return a.x * b.y - a.y * b.x;
}
[[nodiscard]] inline double norm(Point a) {
    return std::hypot(a.x, a.y);
}
[[nodiscard]] inline double distance(Point a, Point b) {
    return norm(b - a);
}
/// `a` turned a quarter turn counter-clockwise.
[[nodiscard]] constexpr Point left_of(Point a) {
    return {-a.y, a.x};
}
/// The direction at an angle in radians from X. Exactly along an axis where the angle is a quarter
/// turn as well as a double can say it, so that no 6e-17 reaches a coordinate.
[[nodiscard]] Point direction(double angle);

/// A rigid motion of the plane: an optional mirror in the Y axis first (x becomes −x), then a
/// rotation about the origin, then a shift.
struct Motion {
    double angle = 0;  ///< rad
    Point shift;
    bool mirrored = false;
    [[nodiscard]] Point operator()(Point p) const;
};

/// A box with sides along the axes; empty until the first point is added.
struct Box {
    Point low{HUGE_VAL, HUGE_VAL};
    Point high{-HUGE_VAL, -HUGE_VAL};
    void add(Point p);
    void add(const Box& other);
    [[nodiscard]] bool empty() const { return !(low.x <= high.x); }
    [[nodiscard]] double width() const { return high.x - low.x; }
    [[nodiscard]] double height() const { return high.y - low.y; }
};

/// Whether two boxes come within a reach of each other, along X and along Y.
[[nodiscard]] constexpr bool within(const Box& a, const Box& b, double reach) {
    return a.low.x <= b.high.x + reach && b.low.x <= a.high.x + reach &&
           a.low.y <= b.high.y + reach && b.low.y <= a.high.y + reach;
}

}  // namespace bowfront
