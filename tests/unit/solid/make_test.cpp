#include "bowfront/base/contract.hpp"
#include "bowfront/base/error.hpp"
#include "bowfront/solid/solid.hpp"
#include "support/sample_bodies.hpp"

namespace bowfront {
namespace {

using testing::HasSubstr;

// The kernel integrates planes and cylinders to about 14 digits.
constexpr double kDigits = 1e-12;
// The kernel finds points to a hundredth of this; the box of a cylinder is found by search.
constexpr double kBox = 1e-6;

#define EXPECT_REL(measured, expected) EXPECT_NEAR(measured, expected, kDigits* std::abs(expected))

std::string fault(const Body& body) {
    try {
        static_cast<void>(solid::make(body, "post"));
    } catch (const KernelError& error) {
        EXPECT_EQ(error.operation(), "make");
        EXPECT_EQ(error.part(), "post");
        return error.detail();
    }
    return "none";
}

Recess square_recess(Point low, Point high, double depth) {
    return {Region{Contour::rectangle(low, high), {}}, depth};
}

TEST(Solid, of_a_bent_pane_has_thickness_times_mid_arc_times_height) {
    for (const double sweep : {0.3, 1.2, 3.0}) {
        const Solid pane = solid::make(sample::bent_pane({10, -20}, 420, 3, 0.4, sweep, 388), "p");
        const Measures measured = solid::measure(pane);
        EXPECT_REL(measured.volume, 3 * 420 * sweep * 388);
        // Two faces of the arc, two edges along it, two ends.
        EXPECT_REL(measured.area, 2 * 420 * sweep * 388 + 2 * 3 * 420 * sweep + 2 * 3 * 388);
        EXPECT_EQ(measured.faces, 6);
    }
}

TEST(Solid, of_a_plate_has_its_grooves_taken_out_from_the_face_told) {
    for (const Face face : {Face::high, Face::low}) {
        const Body body = sample::plate(face);
        const Measures measured = solid::measure(solid::make(body, "base"));
        EXPECT_REL(measured.volume, volume(body));
        // 6 of the block; 2 + 2 walls of a straight groove with round ends, 2 + 3 of the arc's
        // (its round end split where it meets the arcs), a floor each; bores of two halves.
        EXPECT_EQ(measured.faces, 6 + 5 + 5 + 2 + 3);
        EXPECT_NEAR(measured.box.high.z, 20, kBox);
        // Material is missing near the face with the grooves, so the centroid lies off the middle.
        EXPECT_EQ(measured.centroid.z < 10, face == Face::high);
    }
}

TEST(Solid, keeps_an_island_in_a_recess_and_a_hole_through_the_island) {
    Body body = sample::block({0, 0}, {100, 100}, 10);
    body.section.holes.push_back(Contour::circle({50, 50}, 4).reversed());
    Recess ring = square_recess({20, 20}, {80, 80}, 3);
    ring.area.holes.push_back(Contour::rectangle({35, 35}, {65, 65}).reversed());
    body.recesses.push_back(ring);
    body.recesses.push_back(square_recess({38, 38}, {42, 42}, 5));
    const Measures measured = solid::measure(solid::make(body, "frame"));
    EXPECT_REL(measured.volume,
               100 * 100 * 10 - std::numbers::pi * 16 * 10 - 3 * (3600 - 900) - 5 * 16);
    // block 6, hole 2, recess 4 + 4 + floor + island, little recess 4 + floor
    EXPECT_EQ(measured.faces, 6 + 2 + 10 + 5);
}

TEST(Solid, of_a_disc_with_holes_counts_half_circles) {
    Body body;
    body.section.outer = Contour::circle({0, 0}, 50);
    body.height = 12;
    body.bores = {{{20, 0}, 6, 12}, {{-20, 0}, 6, 5}};
    const Measures measured = solid::measure(solid::make(body, "disc"));
    EXPECT_REL(measured.volume, std::numbers::pi * (2500 * 12 - 9 * 12 - 9 * 5));
    EXPECT_NEAR(measured.box.low.x, -50, kBox);
    EXPECT_NEAR(measured.box.high.y, 50, kBox);
}

TEST(Solid, lets_a_recess_run_out_at_an_edge) {
    Body body = sample::block({0, 0}, {100, 60}, 20);
    body.recesses.push_back(square_recess({0, 50}, {100, 60}, 8));  // a rabbet along one side
    const Measures measured = solid::measure(solid::make(body, "rail"));
    EXPECT_REL(measured.volume, 100.0 * 60 * 20 - 100 * 10 * 8);
    EXPECT_EQ(measured.faces, 8);
    EXPECT_NEAR(measured.box.high.y, 60, kBox);
}

TEST(Solid, lets_recesses_of_two_depths_meet) {
    Body body = sample::block({0, 0}, {100, 60}, 20);
    body.face = Face::low;
    body.recesses.push_back(square_recess({10, 10}, {50, 50}, 8));
    body.recesses.push_back(square_recess({50, 10}, {90, 50}, 4));
    EXPECT_REL(solid::measure(solid::make(body, "rail")).volume,
               100.0 * 60 * 20 - 1600 * 8 - 1600 * 4);
}

// Source: geometry: a step adds its prism, and of its foot's area takes away as much of the face as it
// gives back on its top; its walls come on top.
TEST(Solid, stands_out_where_it_has_steps_on_either_end) {
    Body body = sample::block({0, 0}, {40, 40}, 100);
    const Region tenon{Contour::rectangle({12, 15}, {26, 25}), {}};
    body.steps = {{tenon, 9, Face::low}, {tenon, 11, Face::high}};
    const Measures measured = solid::measure(solid::make(body, "post"));
    EXPECT_REL(volume(body), 40 * 40 * 100 + 14 * 10 * (9 + 11));
    EXPECT_REL(measured.volume, volume(body));
    EXPECT_REL(measured.area, 2 * 40 * 40 + 4 * 40 * 100 + 2 * (14 + 10) * (9 + 11));
    EXPECT_EQ(measured.faces, 6 + 2 * 5);
    EXPECT_NEAR(measured.box.low.z, -9, kBox);
    EXPECT_NEAR(measured.box.high.z, 111, kBox);
}

TEST(Solid, is_bored_from_both_ends) {
    for (const Face face : {Face::high, Face::low}) {
        Body body = sample::block({0, 0}, {40, 40}, 100);
        body.face = face;
        body.bores = {{{10, 10}, 8, 20}};
        body.back_bores = {{{10, 10}, 8, 30}, {{30, 30}, 8, 25}};
        const Measures measured = solid::measure(solid::make(body, "post"));
        EXPECT_REL(volume(body), 40 * 40 * 100 - std::numbers::pi * 16 * (20 + 30 + 25));
        EXPECT_REL(measured.volume, volume(body));
        // More is bored from the back, so the centroid lies towards the face.
        EXPECT_EQ(measured.centroid.z > 50, face == Face::high);
    }
}

TEST(Solid, is_refused_where_its_outline_crosses_itself) {
    Body body;
    body.section.outer = Contour::polygon(std::vector<Point>{{0, 0}, {100, 0}, {20, 60}, {80, 60}});
    body.height = 10;
    EXPECT_NE(fault(body), "none");
}

TEST(Solid, is_refused_where_recesses_overlap_or_leave_the_section) {
    const Body sound = sample::block({0, 0}, {100, 60}, 20);
    Body body = sound;
    body.recesses = {square_recess({10, 10}, {40, 40}, 5), square_recess({30, 20}, {60, 50}, 5)};
    EXPECT_THAT(fault(body), HasSubstr("mm3"));
    body = sound;
    body.recesses = {square_recess({10, 10}, {40, 40}, 5), square_recess({20, 20}, {30, 30}, 5)};
    EXPECT_NE(fault(body), "none") << "one within the other";
    body = sound;
    body.recesses = {square_recess({90, 10}, {120, 40}, 5)};
    EXPECT_THAT(fault(body), HasSubstr("mm3"));
    body = sound;
    body.recesses = {square_recess({200, 10}, {220, 40}, 5)};
    EXPECT_THAT(fault(body), HasSubstr("outside the section"));
    body = sound;
    body.bores = {{{50, 30}, 10, 20}, {{52, 30}, 10, 20}};
    EXPECT_NE(fault(body), "none");
    body = sound;
    body.bores = {{{99, 30}, 10, 20}};
    EXPECT_NE(fault(body), "none");
}

TEST(Solid, is_refused_where_a_size_is_no_size) {
    const Body sound = sample::block({0, 0}, {100, 60}, 20);
    Body body = sound;
    body.height = 0;
    EXPECT_THAT(fault(body), HasSubstr("no height"));
    body.height = std::nan("");
    EXPECT_THAT(fault(body), HasSubstr("no height"));
    body = sound;
    body.section.outer = {};
    EXPECT_THAT(fault(body), HasSubstr("no section"));
    body = sound;
    body.recesses = {square_recess({10, 10}, {40, 40}, 20)};
    EXPECT_THAT(fault(body), HasSubstr("goes through"));
    body = sound;
    body.bores = {{{50, 30}, 10, 21}};
    EXPECT_THAT(fault(body), HasSubstr("deeper than the body"));
    body = sound;
    body.back_bores = {{{50, 30}, 10, 20}};
    EXPECT_THAT(fault(body), HasSubstr("goes through"));
    body = sound;
    body.steps = {{Region{Contour::rectangle({10, 10}, {40, 40}), {}}, 0, Face::high}};
    EXPECT_THAT(fault(body), HasSubstr("no height"));
}

TEST(Solid, stands_where_it_is_placed) {
    const Solid block = solid::make(sample::block({0, 0}, {30, 20}, 10), "b");
    // Local X up, local Z to the viewer's right: local Y then runs to the front.
    const Placement upright{{100, 200, 300}, {0, 0, 1}, {1, 0, 0}};
    const Measures measured = solid::measure(block.placed(upright));
    EXPECT_NEAR(measured.box.low.x, 100, kBox);
    EXPECT_NEAR(measured.box.high.x, 110, kBox);
    EXPECT_NEAR(measured.box.low.y, 180, kBox);
    EXPECT_NEAR(measured.box.high.y, 200, kBox);
    EXPECT_NEAR(measured.box.low.z, 300, kBox);
    EXPECT_NEAR(measured.box.high.z, 330, kBox);
    EXPECT_NEAR(measured.centroid.z, 315, kBox);
    EXPECT_REL(measured.volume, 6000);
    const Measures twice = solid::measure(block.placed(upright).placed(sample::at(0, 0, -300)));
    EXPECT_NEAR(twice.box.low.z, 0, kBox);
    EXPECT_THROW(static_cast<void>(block.placed({{}, {1, 0, 0}, {1, 0, 0}})), ContractError);
}

TEST(Solid, has_the_exact_box_of_a_turned_arc) {
    // A quarter arc turned so that its crown looks along X: the box ends at the outer radius.
    const Body body =
        sample::bent_pane({0, 0}, 300, 4, -std::numbers::pi / 4, std::numbers::pi / 2, 100);
    const Solid pane = solid::make(body, "pane").placed(sample::turned(0.3, {7, 8, 9}));
    const Box3 box = solid::box(pane);
    EXPECT_NEAR(box.high.x, 7 + 302, kBox);
    EXPECT_NEAR(box.high.y, 8 + 302 * std::sin(std::numbers::pi / 4 + 0.3), kBox);
    EXPECT_NEAR(box.low.x, 7 + 298 * std::cos(std::numbers::pi / 4 + 0.3), kBox);
    EXPECT_NEAR(box.low.z, 9, kBox);
    EXPECT_NEAR(box.high.z, 109, kBox);
}

TEST(Solid, leaves_standard_output_alone) {
    testing::internal::CaptureStdout();
    Body crossing = sample::block({0, 0}, {100, 60}, 20);
    crossing.recesses.push_back(square_recess({90, 10}, {120, 40}, 5));
    EXPECT_NE(fault(crossing), "none");
    static_cast<void>(solid::measure(solid::make(sample::plate(), "base")));
    EXPECT_EQ(testing::internal::GetCapturedStdout(), "");
}

}  // namespace
}  // namespace bowfront
