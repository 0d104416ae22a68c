#include "bowfront/pattern/part.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "bowfront/base/contract.hpp"

namespace bowfront {
namespace {

using std::numbers::pi;

// Some dozens of operations on coordinates under 1 m, mm.
constexpr double kRounding = 1e-10;

Body block() {
    Body body;
    body.section = {Contour::rectangle({10, 20}, {110, 80}), {}};
    body.height = 30;
    return body;
}

TEST(Body, of_one_piece_has_its_centre_in_the_middle) {
    const Point3 centre = centroid(block());
    EXPECT_NEAR(centre.x, 60, kRounding);
    EXPECT_NEAR(centre.y, 50, kRounding);
    EXPECT_NEAR(centre.z, 15, kRounding);
}

// A block of 180 cm³ less one of 40·20·10 = 8 cm³ about (30, 30): by moments, in mm,
// x = (60·180 − 30·8)/172, y = (50·180 − 30·8)/172; z, cut from the high face about 25, is
// (15·180 − 25·8)/172, and from the low face about 5, (15·180 − 5·8)/172.
TEST(Body, with_a_recess_has_the_centre_of_what_is_left) {
    Body body = block();
    body.recesses = {{{Contour::rectangle({10, 20}, {50, 40}), {}}, 10}};
    const Point3 high = centroid(body);
    EXPECT_NEAR(high.x, (60 * 180 - 30 * 8) / 172.0, kRounding);
    EXPECT_NEAR(high.y, (50 * 180 - 30 * 8) / 172.0, kRounding);
    EXPECT_NEAR(high.z, (15 * 180 - 25 * 8) / 172.0, kRounding);
    body.face = Face::low;
    EXPECT_NEAR(centroid(body).z, (15 * 180 - 5 * 8) / 172.0, kRounding);
}

TEST(Body, with_a_bore_has_the_centre_of_what_is_left) {
    Body body = block();
    body.bores = {{{100, 70}, 10, 12}};
    const double bore = pi / 4 * 10 * 10 * 12;
    const double left = 180000 - bore;
    EXPECT_NEAR(volume(body), left, kRounding * left);
    EXPECT_NEAR(centroid(body).x, (60 * 180000 - 100 * bore) / left, kRounding);
    EXPECT_NEAR(centroid(body).z, (15 * 180000 - 24 * bore) / left, kRounding);
}

// Source: Machinery's Handbook, centres of gravity, circle segment: b = c³/(12·A) from the circle's
// centre, with the chord c and the area A of the segment (from memory; the same as
// 4·r·sin³(θ/2)/(3·(θ − sin θ)), which reference tables on the web give).
TEST(Body, of_a_circular_segment_has_the_handbook_s_centre) {
    constexpr double kRadius = 420;
    for (const double sweep : {0.3, 1.3343, 2.5}) {
        const Point from = direction(-sweep / 2) * kRadius;
        const Point to = direction(sweep / 2) * kRadius;
        Body body;
        body.section = {Contour({{from, std::tan(sweep / 4)}, {to}}), {}};
        body.height = 10;
        const double chord = 2 * kRadius * std::sin(sweep / 2);
        const double area = kRadius * kRadius / 2 * (sweep - std::sin(sweep));
        EXPECT_NEAR(body.section.area(), area, kRounding * area + 1e-7);
        EXPECT_NEAR(centroid(body).x, std::pow(chord, 3) / (12 * area), 1e-8) << sweep;
        EXPECT_NEAR(centroid(body).y, 0, 1e-8) << sweep;
        const double other =
            4 * kRadius * std::pow(std::sin(sweep / 2), 3) / (3 * (sweep - std::sin(sweep)));
        EXPECT_NEAR(centroid(body).x, other, 1e-8) << sweep;
    }
}

TEST(Body, of_which_nothing_is_left_has_no_centre) {
    Body body = block();
    body.recesses = {{body.section, 30}};
    EXPECT_THROW((void)centroid(body), ContractError);
}

TEST(Placement, turns_and_shifts_a_point) {
    const Point3 standing = placed({.origin = {1, 2, 3}}, {10, 20, 30});
    EXPECT_EQ(standing, (Point3{11, 22, 33}));
    // Lying on its side: local X along X, local Z along −Y, and so local Y along Z.
    const Placement lying{{1, 2, 3}, {1, 0, 0}, {0, -1, 0}};
    EXPECT_EQ(placed(lying, {10, 20, 30}), (Point3{11, -28, 23}));
}

}  // namespace
}  // namespace bowfront
