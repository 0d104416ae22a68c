#include "bowfront/solid/engagement.hpp"
#include "bowfront/base/error.hpp"
#include "support/sample_bodies.hpp"

namespace bowfront {
namespace {

// What the measurement promises: the kernel's tolerance ten times over.
constexpr double kReach = 1e-6;

Solid made(const Body& body) {
    return solid::make(body, "part");
}

TEST(Engagement, in_a_plate_is_how_far_the_pane_stands_beyond_its_face) {
    const Solid base = made(sample::plate());
    const Solid top = made(sample::plate(Face::low)).placed(sample::at(0, 0, 400));
    const Solid pane =
        made(sample::bent_pane({200, 300}, 250, 3, 1.5 * std::numbers::pi - 0.58, 1.16, 388))
            .placed(sample::at(0, 0, 15.25));
    EXPECT_NEAR(solid::engagement_in_plate(pane, base), 20 - 15.25, kReach);
    EXPECT_NEAR(solid::engagement_in_plate(pane, top), 15.25 + 388 - 400, kReach);
    EXPECT_NEAR(solid::engagement_in_plate(pane.placed(sample::at(0, 0, 6)), base), -1.25, kReach);
}

TEST(Engagement, of_a_flat_pane_in_a_square_post_is_the_length_within_its_face) {
    const Solid left = made(sample::notched_post(42, 4.8, 15, 380));
    const Solid right = left.placed(sample::turned(std::numbers::pi, {300, 0, 0}));
    // 252.5 long: 3 from the bottom of the left groove, which lies at x = 6.
    const Solid pane = made(sample::block({9, -1.5}, {261.5, 1.5}, 300));
    EXPECT_NEAR(solid::engagement_in_post(pane, left, {9, 0}), 12, kReach);
    EXPECT_NEAR(solid::engagement_in_post(pane, right, {261.5, 0}), 261.5 - 279, kReach)
        << "the pane ends short of the right post";
    const Solid shifted = pane.placed(sample::at(21, 0, 0));
    EXPECT_NEAR(solid::engagement_in_post(shifted, right, {282.5, 0}), 3.5, kReach);
    EXPECT_NEAR(solid::engagement_in_post(shifted, left, {30, 0}), -9, kReach);
}

/// A hexagonal post about the start of the arc (radius 300 about the origin, at angle `start`),
/// with a straight groove along the tangent there.
Body oblique_post(double start, double across) {
    std::vector<Point> corners;
    const double out = across / 2 / std::cos(std::numbers::pi / 6);
    for (int i = 0; i < 6; ++i) {
        corners.push_back(direction(start + 0.2 + i * std::numbers::pi / 3) * out +
                          direction(start) * 300);
    }
    Body body;
    const Region hexagon{Contour::polygon(corners), {}};
    const Point along = left_of(direction(start));
    const Point foot = direction(start) * 300 + along * 4.0;
    const Region groove{band({{foot, foot + along * 60.0, 0}}, 6, BandEnd::square, BandEnd::square),
                        {}};
    body.section = subtract({hexagon}, {groove}).front();
    body.height = 380;
    return body;
}

TEST(Engagement, of_a_bent_pane_in_an_oblique_groove_is_the_arc_within_the_posts_skin) {
    const double start = 0.7;
    const double across = 42;
    // The pane begins 6 mm of arc beyond the post's middle.
    const Body pane = sample::bent_pane({0, 0}, 300, 3, start + 6.0 / 300, 1.1, 388);
    // By hand: the hexagon's face normal nearest to the tangent stands at 90° − 0.2 rad − k·60°
    // about the arc's spoke; the arc leaves it where 300·cos(a − n) − 300·cos(n) = across/2.
    double leaves = HUGE_VAL;
    for (int i = 0; i < 6; ++i) {
        const double normal = 0.2 + std::numbers::pi / 6 + i * std::numbers::pi / 3;
        const double reach = std::cos(normal) + across / 2 / 300;
        if (std::abs(reach) <= 1) {
            for (const double angle : {normal - std::acos(reach), normal + std::acos(reach)}) {
                const double turned = std::remainder(angle, 2 * std::numbers::pi);
                leaves = turned > 0 ? std::min(leaves, turned) : leaves;
            }
        }
    }
    const Point end = direction(start + 6.0 / 300) * 300.0;
    EXPECT_NEAR(solid::engagement_in_post(made(pane), made(oblique_post(start, across)), end),
                300 * leaves - 6, kReach);
}

TEST(Engagement, in_a_round_post_is_reckoned_to_its_circle) {
    // Post of radius 25 at the origin, open towards +X by a groove 5 wide to x = 8.
    const Region round{Contour::circle({0, 0}, 25), {}};
    const Region groove{Contour::rectangle({8, -2.5}, {40, 2.5}), {}};
    Body post;
    post.section = subtract({round}, {groove}).front();
    post.height = 380;
    const Solid flat = made(sample::block({11, -1}, {211, 2}, 300));  // mid-line at y = 0.5
    EXPECT_NEAR(solid::engagement_in_post(flat, made(post), {11, 0.5}), std::sqrt(625 - 0.25) - 11,
                kReach);
    // An arc of radius 400 about (0, 400) passes through the post's axis; it leaves the post's
    // circle at a chord of 25 from the axis. Its end lies 10 mm of arc from the axis.
    const double start = -std::numbers::pi / 2 + 10.0 / 400;
    const Solid bent = made(sample::bent_pane({0, 400}, 400, 3, start, 0.9, 388));
    EXPECT_NEAR(solid::engagement_in_post(bent, made(post), {10, 0.1}),
                400 * 2 * std::asin(25.0 / 800) - 10, kReach);
}

TEST(Engagement, in_a_post_is_measured_where_the_post_stands) {
    // A low case: the pane stands 26 mm deep in the plates, and the post between them is 15 high.
    const Solid post = made(sample::notched_post(42, 4.8, 15, 15)).placed(sample::at(0, 0, 6));
    const Solid pane = made(sample::block({9, -1.5}, {209, 1.5}, 50)).placed(sample::at(0, 0, -20));
    EXPECT_NEAR(solid::engagement_in_post(pane, post, {9, 0}), 12, kReach);
    EXPECT_NEAR(solid::engagement_in_post(pane.placed(sample::at(0, 0, -10)), post, {9, 0}), 12,
                kReach);
}

TEST(Engagement, is_refused_where_pane_and_post_do_not_meet) {
    const Solid post = made(sample::notched_post(42, 4.8, 15, 380));
    const Solid pane = made(sample::block({9, 98.5}, {209, 101.5}, 300));
    EXPECT_THROW(static_cast<void>(solid::engagement_in_post(pane, post, {9, 100})), KernelError);
    const Solid above =
        made(sample::block({9, -1.5}, {209, 1.5}, 300)).placed(sample::at(0, 0, 1000));
    EXPECT_THROW(static_cast<void>(solid::engagement_in_post(above, post, {9, 0})), KernelError);
}

}  // namespace
}  // namespace bowfront
