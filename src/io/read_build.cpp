#include <numbers>

#include "case_parts.hpp"
#include "value_kinds.hpp"

namespace bowfront::io {
namespace {

const WordOf<PlateBuild, 2> kBuild{"a way of building it",
                                   {{{"plate", PlateBuild::plate}, {"rails", PlateBuild::rails}}}};
const WordOf<RailCorner, 2> kCorner{"a joint of rails",
                                    {{{"mitre", RailCorner::mitre}, {"butt", RailCorner::butt}}}};

const WordOf<PostJoint, 3> kJointWord{"a joint of posts",
                                      {{{"butt", PostJoint::butt},
                                        {"tenon", PostJoint::tenon},
                                        {"dowel", PostJoint::dowel}}}};

// At half a right angle the grain runs across the rail as much as along it.
constexpr Range kRunOut{0, std::numbers::pi / 4, Range::Low::open};
// More pieces would be shorter than any cutter could hold.
constexpr int kMostSegments = 100;

}  // namespace

void read_post_joint(ObjectReader& post, Post& out) {
    out.joint = post.or_default("joint", kJointWord);
    const bool butt = out.joint.value == PostJoint::butt;
    out.joint_size = post.given("joint_size", LengthIn{kPositive});
    if (!out.joint_size) {
        (void)post.assume_rule("joint_size", butt ? Use::unused : Use::used);
    }
}

Sourced<PlateBuild> read_build_kind(ObjectReader& plate) {
    return plate.or_default("build", kBuild);
}

void read_rails(ObjectReader& plate, const Sourced<double>& margin, Build& build) {
    const Use use = build.rails() ? Use::used : Use::unused;
    if (const auto inset = plate.given("inset", LengthIn{kPositive})) {
        build.inset = *inset;
    } else {
        build.inset = {margin.value, plate.assume_rule("inset", use)};
    }
    build.board_width = plate.or_default("board_width", LengthIn{kPositive}, use);
    build.corner = plate.or_default("corner", kCorner, use);
    build.run_out = plate.or_default("run_out", AngleIn{kRunOut}, use);
    build.segments = plate.given("segments", CountIn{kMostSegments});
    if (!build.segments) {
        (void)plate.assume_rule("segments", use);
    }
}

}  // namespace bowfront::io
