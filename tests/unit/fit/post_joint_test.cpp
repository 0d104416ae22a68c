#include "bowfront/fit/post_joint.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <utility>

#include "bowfront/fit/layout.hpp"
#include "random_cases.hpp"

namespace bowfront::fit {
namespace {

using sample::given;

// Some dozens of operations on sizes under 1 m, mm.
constexpr double kPlace = 1e-9;

Case joined(PostJoint joint) {
    Case c = sample::pilot_boat();
    c.frame.post.joint = given(joint, "/frame/post/joint");
    return c;
}

Layout layout_of(const Case& c) {
    return layout(c, solve(c));
}

TEST(PostJoint, of_a_butt_is_none) {
    for (const PostLayout& post : layout_of(sample::pilot_boat()).posts) {
        EXPECT_FALSE(post.joint);
    }
}

TEST(PostJoint, is_a_third_of_the_post_or_a_stock_dowel) {
    Post post = joined(PostJoint::tenon).frame.post;
    EXPECT_DOUBLE_EQ(joint_size(post), 14);
    post.joint.value = PostJoint::dowel;
    EXPECT_EQ(joint_size(post), 10);
    post.width.value = 33;
    EXPECT_EQ(joint_size(post), 8);
    post.width.value = 20;
    EXPECT_EQ(joint_size(post), 6);
    post.joint_size = given(7.0, "/frame/post/joint_size");
    EXPECT_EQ(joint_size(post), 7);
}

// The header's example.
TEST(PostJoint, leaves_half_of_the_board_and_room_for_glue) {
    const auto depth = joint_depth(20.0);
    EXPECT_EQ(depth.recess, 10);
    EXPECT_EQ(depth.tenon, 9);
}

// A tenon's corners are rounded by the cutter: its area is that of the square less four times
// (1 − π/4)·r².
TEST(PostJoint, has_a_tenon_with_the_corners_that_a_cutter_leaves) {
    Case c = joined(PostJoint::tenon);
    c.frame.post.joint_size = given(11.0, "/frame/post/joint_size");
    const Layout frame = layout_of(c);
    const double r = 3.175 / 2;
    for (const PostLayout& post : frame.posts) {
        ASSERT_EQ(post.joint->outlines.size(), 1U);
        EXPECT_NEAR(post.joint->outlines[0].area(), 11 * 11 - (4 - std::acos(-1.0)) * r * r,
                    kPlace * 11);
    }
}

TEST(PostJoint, is_alike_in_posts_that_mirror_each_other) {
    const Layout frame = layout_of(joined(PostJoint::tenon));
    for (const auto& [one, other] : {std::pair{0U, 1U}, std::pair{2U, 3U}}) {
        const PostJointLayout& left = *frame.posts[one].joint;
        const PostJointLayout& right = *frame.posts[other].joint;
        EXPECT_NEAR(left.clear, right.clear, kPlace);
        EXPECT_NEAR(left.shoulder, right.shoulder, kPlace);
        EXPECT_NEAR(left.centres[0].x, -right.centres[0].x, kPlace);
    }
}

// A third of the posts' 42 mm has no room beside deeper grooves: all four get what has.
TEST(PostJoint, of_no_size_of_its_own_has_room_and_is_the_same_in_every_post) {
    Case c = joined(PostJoint::tenon);
    EXPECT_EQ(layout_of(c).posts[0].joint->size, 14);
    c.frame.groove.post_depth.value = 17;
    const Layout frame = layout_of(c);
    for (const PostLayout& post : frame.posts) {
        EXPECT_LT(post.joint->size, 14);
        EXPECT_GT(post.joint->size, 10);
        EXPECT_EQ(post.joint->size, frame.posts[0].joint->size);
        EXPECT_EQ(post.joint->fitting, post.joint->size);
    }
}

// Every joint that passes its checks stands in its post's timber, and keeps off every groove.
TEST(PostJoint, stands_in_the_post_and_clear_of_grooves) {
    for (const PostJoint kind : {PostJoint::tenon, PostJoint::dowel}) {
        Case c = joined(kind);
        const Layout frame = layout_of(c);
        for (const PostLayout& post : frame.posts) {
            ASSERT_TRUE(post.joint);
            for (const Contour& outline : post.joint->outlines) {
                const auto out = subtract({{outline, {}}}, post.section);
                EXPECT_TRUE(out.empty());
                for (const PlateLayout* const plate : {&frame.base, &frame.top}) {
                    for (const PlateGroove& groove : plate->grooves) {
                        EXPECT_GE(gap(outline, groove.band), post.joint->clear - kPlace);
                        EXPECT_TRUE(
                            intersect({{outline, {}}}, {{groove.band, {}}}).empty());
                    }
                }
            }
        }
    }
}

TEST(PostJoint, too_large_to_keep_off_the_grooves_is_objected_to_with_a_size_that_would_do) {
    Case c = joined(PostJoint::tenon);
    c.frame.post.joint_size = given(30.0, "/frame/post/joint_size");
    const auto found = objections(c);
    ASSERT_EQ(found.size(), 4U);
    EXPECT_EQ(found[0].pointer, "/frame/post/joint_size");
    c.frame.post.joint_size->value = layout_of(c).posts[3].joint->fitting;
    EXPECT_GT(c.frame.post.joint_size->value, 10);
    EXPECT_TRUE(objections(c).empty());
    EXPECT_GE(layout_of(c).posts[3].joint->clear, c.webs.web.value);
    EXPECT_GE(layout_of(c).posts[3].joint->shoulder, kLeastShoulder);
}

class Joints : public RandomCases {};

TEST_F(Joints, without_objections_never_meet_a_groove) {
    static constexpr PostJoint kKinds[] = {PostJoint::tenon, PostJoint::dowel};
    int judged = 0;
    constexpr int kJoined = 30;  // each places joints four times over
    for (int i = 0; i < kJoined; ++i) {
        Case c = sound();
        c.frame.post.joint.value = pick(kKinds);
        if (!objections(c).empty()) {
            continue;
        }
        ++judged;
        const Layout frame = layout_of(c);
        for (const PostLayout& post : frame.posts) {
            for (const Contour& outline : post.joint->outlines) {
                EXPECT_TRUE(subtract({{outline, {}}}, post.section).empty()) << i;
                for (const PlateGroove& groove : frame.base.grooves) {
                    EXPECT_TRUE(intersect({{outline, {}}}, {{groove.band, {}}}).empty()) << i;
                }
            }
        }
    }
    EXPECT_GT(judged, kJoined / 4);
}

}  // namespace
}  // namespace bowfront::fit
