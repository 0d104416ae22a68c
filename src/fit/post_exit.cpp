#include "post_exit.hpp"

#include <algorithm>

#include "bowfront/base/contract.hpp"
#include "bowfront/fit/plan.hpp"

namespace bowfront::fit {
namespace {

// How far a point, seen from the corner, stands outside of a post; negative inside.
double outside(const Post& post, const std::vector<PostFace>& faces, Point p) {
    if (faces.empty()) {
        return norm(p) - post.width.value / 2;
    }
    double most = -HUGE_VAL;
    for (const PostFace& face : faces) {
        const double size = face.size == FaceSize::half_width ? post.width.value : post.depth.value;
        most = std::max(most, dot(p, direction(face.angle)) - size / 2);
    }
    return most;
}

}  // namespace

double length_to_exit(const Post& post, const std::vector<PostFace>& faces,
                      const std::vector<Segment>& chain) {
    const Point corner = chain.front().from;
    const double whole = Path{chain}.length();
    const auto is_out = [&](double along) {
        return outside(post, faces, point_at(chain, along) - corner) > 0;
    };
    // Steps that no face of a post is missed by.
    const double step = std::min(post.width.value, post.depth.value) / 64;
    double out = step;
    while (out < whole && !is_out(out)) {
        out += step;
    }
    BOWFRONT_EXPECTS(out < whole);
    double in = out - step;
    constexpr int kHalvings = 60;
    for (int i = 0; i < kHalvings; ++i) {
        const double middle = (in + out) / 2;
        (is_out(middle) ? out : in) = middle;
    }
    return out;
}

}  // namespace bowfront::fit
