#include "check_groups.hpp"

namespace bowfront::fit {

void check_joints(const Case& c, const Layout& layout, CheckList& list) {
    for (const PostLayout& post : layout.posts) {
        if (!post.joint) {
            continue;
        }
        const PostJointLayout& joint = *post.joint;
        const std::string& corner = post.name;
        const std::string what(joint_text(joint.kind));
        const auto smaller = [&](double) {
            return joint.fitting > 0 ? "give a joint_size of " + mm(joint.fitting)
                                     : "make the posts larger, or butt them";
        };
        list.at_least({Code::frame_post_joint, "joint-web", "post-" + corner,
                       "from the " + what + " to the grooves in base and top", "mm",
                       "frame/joint/posts/" + corner + "/clear"},
                      joint.clear, c.webs.web.value, smaller);
        list.at_least({Code::frame_post_joint, "joint-shoulder", "post-" + corner,
                       "from the " + what + " to the post's edges and grooves", "mm",
                       "frame/joint/posts/" + corner + "/shoulder"},
                      joint.shoulder, kLeastShoulder, smaller);
    }
}

}  // namespace bowfront::fit
