#include "bowfront/forming/form.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "bowfront/base/contract.hpp"
#include "support/sample_case.hpp"

namespace bowfront::forming {
namespace {

// A dozen operations on sizes up to 1 m, mm.
constexpr double kRounding = 1e-11;

const FormTask<double> kTask{.inside_radius = 418.5,
                             .sweep = 1.25,
                             .blank_width = 400,
                             .widest_hot = 396,
                             .springback = 0};

FormSizes<double> sizes(const FormTask<double>& task, const FormSpec& spec) {
    Book<double> book;
    return form_sizes(task, spec, "front", book);
}

// Source: common practice, no source: a form's radius is the wanted inside radius less the skin
// (and here the cover). Numbers worked by hand.
TEST(Form, is_smaller_than_the_pane_by_skin_and_cover) {
    const auto form = sizes(kTask, sample::pilot_boat().form);
    EXPECT_NEAR(form.face_radius, 418.5, kRounding);
    EXPECT_NEAR(form.rib_radius, 414.9, kRounding);
    EXPECT_NEAR(form.width, 440, kRounding);
    EXPECT_NEAR(form.fence_gap, 397, kRounding);
    // (418.5·1.25 + 120)/418.5, and the skin's mid-surface at 416.4.
    EXPECT_NEAR(form.rib_sweep, 1.25 + 120 / 418.5, kRounding);
    EXPECT_NEAR(form.skin_length, 416.4 * (1.25 + 120 / 418.5), kRounding);
}

TEST(Form, is_bent_tighter_where_the_pane_springs_back) {
    FormTask<double> task = kTask;
    task.springback = 0.02;
    const auto form = sizes(task, sample::pilot_boat().form);
    // Released, the face radius grows by the springback and is the pane's again.
    EXPECT_NEAR(form.face_radius * 1.02, 418.5, kRounding);
    // The arc on the face stays the pane's inside arc and both overruns: material does not stretch.
    EXPECT_NEAR(form.face_radius * form.rib_sweep, 418.5 * 1.25 + 120, kRounding);
}

TEST(Form, has_the_fewest_ribs_within_the_spacing) {
    FormSpec spec = sample::pilot_boat().form;
    for (const double width : {30.0, 138.0, 158.0, 158.1, 338.0, 338.1, 960.0}) {
        FormTask<double> task = kTask;
        task.blank_width = width;
        const auto form = sizes(task, spec);
        const double run = width + 40 - 18;  // between the centres of the outer ribs
        EXPECT_GE(form.rib_count, 2);
        EXPECT_EQ(form.rib_count, std::round(form.rib_count));
        EXPECT_NEAR(form.rib_pitch * (form.rib_count - 1), run, kRounding);
        EXPECT_LE(form.rib_pitch, 180 + kRounding);
        if (form.rib_count > 2) {
            EXPECT_GT(run / (form.rib_count - 2), 180) << "one rib less would do at " << width;
        }
    }
}

TEST(Form, knows_the_smallest_radius_that_leaves_ribs) {
    const FormSpec spec = sample::pilot_boat().form;
    EXPECT_NEAR(least_inside_radius(spec, 0.02), 3.6 * 1.02, kRounding);
    FormTask<double> task = kTask;
    task.springback = 0.02;
    task.inside_radius = least_inside_radius(spec, 0.02) * 1.001;
    EXPECT_GT(sizes(task, spec).rib_radius, 0);
    task.inside_radius = least_inside_radius(spec, 0.02) * 0.999;
    EXPECT_THROW((void)sizes(task, spec), ContractError);
}

}  // namespace
}  // namespace bowfront::forming
