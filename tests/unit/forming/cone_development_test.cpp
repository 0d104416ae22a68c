#include "bowfront/forming/cone_development.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <numbers>
#include <random>

#include "bowfront/base/contract.hpp"
#include "bowfront/geom/least_rectangle.hpp"

namespace bowfront::forming {
namespace {

using std::numbers::pi;
using testing::HasSubstr;

/// Rounding of a few operations on sizes under 1 m, mm.
constexpr double kRounding = 1e-12;
/// Half the last digit of figures given with three decimals.
constexpr double kThreeDecimals = 0.5e-3;
constexpr double kChordError = 0.01;
constexpr BlankShrink<double> kNoShrink{0, 0};

ConeSizes<double> cone(double base, double top, double height, double sweep) {
    Book<double> book;
    return cone_sizes(ConicalPane<double>{base, top, height, sweep}, "cones/front", book);
}

ConeBlank<double> blank(const ConeSizes<double>& sizes, const BlankShrink<double>& shrink) {
    Book<double> book;
    return cone_blank(sizes, shrink, "cones/front", book);
}

ConicalPane<double> on_form(const ConeSizes<double>& sizes, double springback) {
    Book<double> book;
    return cone_on_form(sizes, springback, "cones/front", book);
}

/// Cones of the size of a case, upright and flaring, narrow and wide.
std::vector<ConeSizes<double>> some_cones() {
    std::mt19937 random(20250318);
    const auto between = [&](double low, double high) {
        return low + (high - low) * (static_cast<double>(random()) / 4294967296.0);
    };
    std::vector<ConeSizes<double>> all;
    for (int i = 0; i < 60; ++i) {
        const double base = between(60, 500);
        const double top = base * (i % 2 == 0 ? between(0.3, 0.98) : between(1.02, 2));
        all.push_back(cone(base, top, between(100, 600), between(0.2, 2 * pi)));
    }
    return all;
}

// Source: Giesecke et al., Technical Drawing, developments: a cone's sector has 360 deg times the
// radius over the slant height, which is the sine of the half angle. A half angle of 30 deg makes
// half a disc, 60 deg is √3/2 of one.
TEST(ConeSizes, of_a_whole_cone_cover_the_handbook_s_sector) {
    const double height = 300;
    const auto half_disc = cone(100 + height * std::tan(pi / 6), 100, height, 2 * pi);
    EXPECT_NEAR(half_disc.half_angle * 180 / pi, 30, kRounding * 100);
    EXPECT_NEAR(half_disc.sector_angle * 180 / pi, 180, kRounding * 1000);
    const auto blunt = cone(100 + height * std::tan(pi / 3), 100, height, 2 * pi);
    EXPECT_NEAR(blunt.sector_angle * 180 / pi, 360 * std::sqrt(0.75), kRounding * 1000);
}

// Source: the example of the header, a triangle of 30, 60 and 90 deg.
TEST(ConeSizes, of_a_half_turn_are_those_of_the_triangle) {
    const auto found = cone(300, 200, 173.205081, pi);
    EXPECT_NEAR(found.slant, 200, kThreeDecimals);
    EXPECT_NEAR(found.half_angle * 180 / pi, 30, kThreeDecimals);
    EXPECT_NEAR(found.apex_height, 519.615, kThreeDecimals);
    EXPECT_NEAR(found.base_reach, 600, kThreeDecimals);
    EXPECT_NEAR(found.top_reach, 400, kThreeDecimals);
    EXPECT_NEAR(found.sector_angle * 180 / pi, 90, kThreeDecimals);
    const auto cut = blank(found, {0.015, 0.015});
    EXPECT_NEAR(cut.length, 861.450, kThreeDecimals);
    EXPECT_NEAR(cut.height, 321.987, kThreeDecimals);
}

// Source: Bronshtein and Semendyayev, Handbook of Mathematics: the frustum of a circular cone has
// the lateral area π·(R + r)·l.
TEST(ConeSizes, of_a_whole_turn_have_the_handbook_s_lateral_area) {
    const auto found = cone(300, 200, 240, 2 * pi);
    EXPECT_NEAR(found.slant, 260, kRounding * 1000);
    EXPECT_NEAR(found.area, pi * 500 * 260, found.area * 1e-14);
}

TEST(ConeOutline, has_the_edges_and_the_area_of_the_pane) {
    for (const auto& sizes : some_cones()) {
        SCOPED_TRACE(testing::Message() << sizes.pane.base_radius << ' ' << sizes.pane.top_radius);
        const Contour outline = cone_outline(sizes, kNoShrink, kChordError);
        EXPECT_NEAR(outline.area(), sizes.area, sizes.area * 1e-12);
        EXPECT_NEAR(outline.perimeter(), sizes.base_length + sizes.top_length + 2 * sizes.slant,
                    1e-9);
        int arcs = 0;
        for (const Segment& segment : outline.segments()) {
            arcs += segment.straight() ? 0 : 1;
            EXPECT_LE(std::abs(segment.bulge), 1);
        }
        EXPECT_EQ(arcs, sizes.sector_angle > pi ? 4 : 2);
    }
}

// Source: geometry: what lies ρ from the apex and turns by ψ on the flat lies ρ·sin α from the axis
// and turns by ψ/sin α on the cone.
TEST(ConeOutline, rolls_up_to_the_pane) {
    for (const auto& sizes : some_cones()) {
        const auto& pane = sizes.pane;
        SCOPED_TRACE(testing::Message() << pane.base_radius << ' ' << pane.top_radius);
        const bool flares = pane.top_radius > pane.base_radius;
        const Contour outline = cone_outline(sizes, kNoShrink, kChordError);
        const double sine = std::sin(sizes.half_angle);
        // The middle of the lower edge lies over x = 0; the apex above it, or below where it
        // flares.
        const double middle = flares ? outline.box().high.y - sizes.slant : 0;
        const Point apex{0, flares ? middle - sizes.base_reach : middle + sizes.base_reach};
        for (const Segment& segment : outline.segments()) {
            for (const double share : {0.0, 0.3, 0.5, 0.9}) {
                const Point p = segment.at(share) - apex;
                const double radius = norm(p) * sine;
                const double turn = std::atan2(p.x, flares ? p.y : -p.y) / sine;
                const double height =
                    (radius - pane.base_radius) / (pane.top_radius - pane.base_radius);
                EXPECT_GE(height, -1e-9);
                EXPECT_LE(height, 1 + 1e-9);
                EXPECT_LE(std::abs(turn), pane.sweep / 2 + 1e-9);
                if (segment.straight()) {
                    EXPECT_NEAR(std::abs(turn), pane.sweep / 2, 1e-9);
                } else {
                    EXPECT_NEAR(height * (1 - height), 0, 1e-9);
                }
            }
        }
    }
}

TEST(ConeOutline, lies_in_the_rectangle_of_the_blank) {
    for (const auto& sizes : some_cones()) {
        for (const BlankShrink<double> shrink :
             {kNoShrink, {0.015, 0.015}, BlankShrink<double>{0.03, -0.005}}) {
            SCOPED_TRACE(testing::Message() << sizes.pane.base_radius << ' ' << shrink.length);
            const Box box = cone_outline(sizes, shrink, kChordError).box();
            const auto sides = blank(sizes, shrink);
            // Edges that are no circles may stray from the ellipse.
            const double stray = shrink.length == shrink.height ? 1e-9 : kChordError;
            EXPECT_NEAR(box.low.x, -sides.length / 2, stray);
            EXPECT_NEAR(box.high.x, sides.length / 2, stray);
            EXPECT_NEAR(box.low.y, 0, stray);
            EXPECT_NEAR(box.high.y, sides.height, stray);
        }
    }
}

// Every point of the blank, shrunk as the sheet shrinks, lies on the edge of the true sector, and
// the other way round.
TEST(ConeOutline, shrinks_to_the_true_sector) {
    constexpr BlankShrink<double> kShrink{0.03, -0.005};
    for (const auto& sizes : some_cones()) {
        SCOPED_TRACE(testing::Message() << sizes.pane.base_radius << ' ' << sizes.pane.top_radius);
        const auto formed = cone_outline(sizes, kNoShrink, kChordError).segments();
        const auto cut = cone_outline(sizes, kShrink, kChordError).segments();
        // A tenth more for the stretch, and for what lies in a corner.
        constexpr double kStray = 1.1 * kChordError;
        const auto off = [](const std::vector<Segment>& edges, Point p) {
            double least = HUGE_VAL;
            for (const Segment& edge : edges) {
                least = std::min(least, edge.distance_to(p));
            }
            return least;
        };
        for (const Segment& edge : cut) {
            for (const double share : {0.0, 0.25, 0.5, 0.75}) {
                const Point p = edge.at(share);
                const Point shrunk{p.x * (1 - kShrink.length), p.y * (1 - kShrink.height)};
                EXPECT_LE(off(formed, shrunk), kStray);
            }
        }
        for (const Segment& edge : formed) {
            for (const double share : {0.0, 0.25, 0.5, 0.75}) {
                const Point p = edge.at(share);
                EXPECT_LE(off(cut, {p.x / (1 - kShrink.length), p.y / (1 - kShrink.height)}),
                          kStray);
            }
        }
    }
}

TEST(ConeOutline, with_equal_shrink_is_the_sector_made_larger) {
    const auto sizes = cone(300, 200, 240, 2.4);
    const Contour formed = cone_outline(sizes, kNoShrink, kChordError);
    const Contour cut = cone_outline(sizes, {0.02, 0.02}, kChordError);
    ASSERT_EQ(cut.size(), 4);
    for (std::size_t i = 0; i < cut.size(); ++i) {
        EXPECT_NEAR(distance(cut.vertices()[i].at * 0.98, formed.vertices()[i].at), 0,
                    1000 * kRounding);
        EXPECT_NEAR(cut.vertices()[i].bulge, formed.vertices()[i].bulge, kRounding);
    }
}

TEST(ConeOutline, of_a_flaring_pane_stands_on_its_shorter_edge) {
    const auto flaring = cone(200, 300, 240, 1.8);
    const auto upright = cone(300, 200, 240, 1.8);
    EXPECT_LT(flaring.apex_height, 0);
    EXPECT_EQ(flaring.top_reach, upright.base_reach);
    const Contour turned = cone_outline(flaring, kNoShrink, kChordError);
    EXPECT_NEAR(turned.area(), upright.area, upright.area * 1e-12);
    // The lower edge bulges upwards, the upper one, too.
    double lowest_arc = HUGE_VAL;
    double length = 0;
    for (const Segment& segment : turned.segments()) {
        if (!segment.straight() && segment.at(0.5).y < lowest_arc) {
            lowest_arc = segment.at(0.5).y;
            length = segment.length();
            EXPECT_GT(segment.at(0.5).y, segment.from.y);
        }
    }
    EXPECT_NEAR(length, flaring.base_length, 1e-9);
}

// A cone of so little taper is a cylinder: θ·R by H, but for the taper and for the sagitta of an
// edge 4e7 mm from the apex.
TEST(ConeOutline, of_hardly_a_cone_is_a_rectangle) {
    const double taper = 400 * kLeastTaper;
    const auto sizes = cone(400, 400 - taper, 400, 1.3);
    const Box box = cone_outline(sizes, kNoShrink, kChordError).box();
    EXPECT_NEAR(box.width(), 1.3 * 400, 1e-6);
    EXPECT_NEAR(box.height(), 400, 2 * taper);
    const auto sides = blank(sizes, kNoShrink);
    // Differences of two reaches of 4e7 mm.
    EXPECT_NEAR(sides.height, box.height(), 4e7 * 1e-15);
    EXPECT_NEAR(sides.length, box.width(), 1e-9);
}

TEST(ConeOutline, may_lie_askew_in_less_of_the_sheet) {
    const auto slender = cone(200, 10, 300, 1);
    const auto upright = blank(slender, kNoShrink);
    const auto least = least_rectangle(cone_outline(slender, kNoShrink, kChordError));
    EXPECT_LT(least.area(), 0.999 * upright.length * upright.height);
}

// Source: geometry: the distance from a point to a generator, in the plane through the axis.
TEST(ConeRib, carries_its_edge_as_deep_as_told) {
    for (const auto& sizes : some_cones()) {
        const auto& pane = sizes.pane;
        EXPECT_EQ(cone_radius_at(pane, 0.0), pane.base_radius);
        EXPECT_NEAR(cone_radius_at(pane, pane.height), pane.top_radius, kRounding);
        constexpr double kDepth = 5.1;
        const Segment generator{{pane.base_radius, 0}, {pane.top_radius, pane.height}};
        const double height = 0.5 * pane.height;
        const double radius = cone_rib_radius(sizes, height, kDepth);
        EXPECT_NEAR(generator.distance_to({radius, height}), kDepth, kRounding);
        EXPECT_LT(radius, cone_radius_at(pane, height));
    }
}

// Source: differential geometry: the curvature of a surface z = f(x, y) over its tangent plane is
// the second derivative there. The cone x² + y² = (z·tan α)² is seen from a point of it.
TEST(ConeBend, is_the_curvature_square_to_the_generator) {
    const auto sizes = cone(300, 200, 240, 2);
    const double alpha = sizes.half_angle;
    // A step h along the tangent at radius R; from there along the normal to the cone and back.
    const double radius = 300;
    const double h = 0.5;
    // (R + u·cos α)² + h² = ((R/tan α + u·sin α)·tan α)²: the offset u along the inward normal
    // (−cos α, −sin α) by halving.
    double low = 0;
    double high = 1;
    for (int i = 0; i < 100; ++i) {
        const double u = (low + high) / 2;
        const double across = std::hypot(radius - u * std::cos(alpha), h);
        const double there = radius + u * std::sin(alpha) * std::tan(alpha);
        (across > there ? low : high) = u;
    }
    // The next term is the square of h/R of it.
    EXPECT_NEAR(h * h / (2 * low), cone_bend_radius(sizes, 0.0), radius * 3e-6);
    EXPECT_NEAR(cone_bend_radius(sizes, 0.0), sizes.base_reach * std::tan(alpha), kRounding * 1000);
    EXPECT_NEAR(cone_bend_radius(cone(300, 200, 173.205081, pi), 0.0), 346.410, kThreeDecimals);
}

TEST(ConeOnForm, keeps_the_sector_and_bends_it_tighter_everywhere) {
    for (const auto& sizes : some_cones()) {
        if (sizes.pane.sweep > 5) {
            continue;
        }
        SCOPED_TRACE(testing::Message() << sizes.pane.base_radius << ' ' << sizes.pane.top_radius);
        constexpr double kSpringback = 0.04;
        const auto form = on_form(sizes, kSpringback);
        const auto there = cone(form.base_radius, form.top_radius, form.height, form.sweep);
        EXPECT_NEAR(there.base_reach, sizes.base_reach, sizes.base_reach * kRounding);
        EXPECT_NEAR(there.top_reach, sizes.top_reach, sizes.top_reach * kRounding);
        EXPECT_NEAR(there.sector_angle, sizes.sector_angle, kRounding);
        for (const double share : {0.0, 0.4, 1.0}) {
            EXPECT_NEAR(cone_bend_radius(there, share * form.height) * (1 + kSpringback),
                        cone_bend_radius(sizes, share * sizes.pane.height), 1e-9);
        }
        const auto same = on_form(sizes, 0);
        EXPECT_NEAR(same.base_radius, sizes.pane.base_radius, 1e-9);
        EXPECT_NEAR(same.height, sizes.pane.height, 1e-9);
        EXPECT_NEAR(same.sweep, sizes.pane.sweep, 1e-9);
    }
}

TEST(ConeFigures, are_those_of_plain_numbers_and_say_how) {
    Workings workings;
    Book<Traced> book(workings);
    const auto input = [&](const std::string& path, std::string_view symbol, Kind kind,
                           double value) { return workings.input(path, symbol, kind, value, {}); };
    const ConicalPane<Traced> pane{
        input("/base", "R₁", Kind::length, 310.5), input("/top", "R₂", Kind::length, 187.25),
        input("/height", "H", Kind::length, 402.125), input("/sweep", "θ", Kind::angle, 1.7)};
    const Traced shrink = input("/shrink", "s", Kind::ratio, 0.015);
    const Traced springback = input("/springback", "k", Kind::ratio, 0.02);
    const auto traced = cone_sizes(pane, "cones/front", book);
    const auto traced_blank =
        cone_blank(traced, BlankShrink<Traced>{shrink, shrink}, "cones/front", book);
    const auto traced_form = cone_on_form(traced, springback, "cones/front", book);

    const auto plain = cone(310.5, 187.25, 402.125, 1.7);
    const auto plain_blank = blank(plain, {0.015, 0.015});
    const auto plain_form = on_form(plain, 0.02);
    const auto value = [&](const char* key) {
        return workings.find(std::string("cones/front/") + key)->value;
    };
    EXPECT_EQ(value("slant"), plain.slant);
    EXPECT_EQ(value("half_angle"), plain.half_angle);
    EXPECT_EQ(value("apex_height"), plain.apex_height);
    EXPECT_EQ(value("base_reach"), plain.base_reach);
    EXPECT_EQ(value("top_reach"), plain.top_reach);
    EXPECT_EQ(value("sector_angle"), plain.sector_angle);
    EXPECT_EQ(value("base_length"), plain.base_length);
    EXPECT_EQ(value("top_length"), plain.top_length);
    EXPECT_EQ(value("area"), plain.area);
    EXPECT_EQ(value("blank/length"), plain_blank.length);
    EXPECT_EQ(value("blank/height"), plain_blank.height);
    EXPECT_EQ(value("form/base_radius"), plain_form.base_radius);
    EXPECT_EQ(value("form/top_radius"), plain_form.top_radius);
    EXPECT_EQ(value("form/height"), plain_form.height);
    EXPECT_EQ(value("form/sweep"), plain_form.sweep);
    EXPECT_EQ(traced_blank.length.value(), plain_blank.length);
    EXPECT_EQ(traced_form.sweep.value(), plain_form.sweep);
    EXPECT_EQ(cone_rib_radius(traced, Traced(100), Traced(5)).value(),
              cone_rib_radius(plain, 100.0, 5.0));

    const std::string told = explain(workings, "cones/front/blank/length");
    EXPECT_THAT(told, HasSubstr("φ = θ·sin(α)"));
    EXPECT_THAT(told, HasSubstr("α = asin(abs(R₁ − R₂)/s)"));
    EXPECT_THAT(told, HasSubstr("L₀ = 2·max(ρ₁, ρ₂)·sin(φ/2)/(1 − s)"));
}

TEST(ConeSizes, holds_callers_to_the_ranges) {
    EXPECT_THROW((void)cone(0, 200, 240, 2), ContractError);
    EXPECT_THROW((void)cone(300, 0, 240, 2), ContractError);
    EXPECT_THROW((void)cone(300, 200, 0, 2), ContractError);
    EXPECT_THROW((void)cone(300, 300, 240, 2), ContractError);
    EXPECT_THROW((void)cone(300, 200, 240, 0), ContractError);
    EXPECT_THROW((void)cone(300, 200, 240, 6.3), ContractError);
    const auto sizes = cone(300, 200, 240, 2 * pi);
    EXPECT_THROW((void)blank(sizes, {1, 0}), ContractError);
    EXPECT_THROW((void)cone_outline(sizes, {0, 1}, kChordError), ContractError);
    EXPECT_THROW((void)on_form(sizes, -1), ContractError);
    EXPECT_THROW((void)on_form(sizes, 0.02), ContractError);  // over a whole turn
}

}  // namespace
}  // namespace bowfront::forming
