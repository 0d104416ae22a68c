#include "bowfront/fit/build_sums.hpp"

#include <algorithm>

#include "bowfront/fit/grain_slope.hpp"

namespace bowfront::fit {
namespace {

constexpr std::string_view kDrawn = "measured on the drawn outline";
constexpr std::string_view kPractice = "common practice, no source";

template <class N>
RailSums<N> rail_sums(const std::string& plate, const RailPiece& piece, const Segment& joint,
                      Book<N>& book) {
    const std::string path = plate + "/pieces/" + piece.name;
    const auto drawn = [&](std::string_view key, std::string_view symbol, Kind kind, double value) {
        return book.figure({"frame", path, key}, symbol, kind, N(value), kDrawn);
    };
    RailSums<N> sums;
    sums.name = piece.name;
    sums.length = drawn("length", "l", Kind::length, piece.length);
    sums.width = drawn("width", "w", Kind::length, piece.width);
    sums.area = drawn("area", "A", Kind::plain, piece.outline.area());
    sums.run_out = drawn("run_out", "α", Kind::angle, piece.run_out);
    sums.bending_left =
        book.figure({"frame", path, "bending_left"}, "k_α", Kind::plain,
                    bending_left(sums.run_out),
                    "Hankinson's formula with Q/P = 0.045: Wood Handbook FPL-GTR-190, chapter 5; "
                    "from memory, not verified");
    sums.joint = drawn("joint", "j", Kind::length, joint.length());
    return sums;
}

template <class N>
RingSums<N> ring_sums(const std::string& name, const Plate& plate, const Sourced<double>& depth,
                      const Ring& ring, Book<N>& book) {
    RingSums<N> sums;
    sums.plate = name;
    const auto tongue = rail_tongue(book.input("t", Kind::length, plate.thickness),
                                    book.input("d", Kind::length, depth));
    const auto figure = [&](std::string_view key, std::string_view symbol, const N& value,
                            std::string_view source) {
        return book.figure({"frame", name, "tongue", key}, symbol, Kind::length, value, source);
    };
    sums.tongue.floor = figure("floor", "f", tongue.floor, "timber under the grooves");
    sums.tongue.thickness = figure("thickness", "t_z", tongue.thickness, kPractice);
    sums.tongue.from_face = figure("from_face", "e_z", tongue.from_face,
                                   "in the middle of the floor, clear of the grooves");
    sums.tongue.reach = figure("reach", "r_z", tongue.reach, kPractice);
    for (std::size_t i = 0; i < ring.pieces.size(); ++i) {
        sums.pieces.push_back(rail_sums(name, ring.pieces[i], ring.joints[i], book));
    }
    N area = sums.pieces.front().area;
    for (std::size_t i = 1; i < sums.pieces.size(); ++i) {
        area = area + sums.pieces[i].area;
    }
    sums.area = book.figure({"frame", name, "area"}, "A_r", Kind::plain, area,
                            "the pieces cover the ring side by side, mm²");
    return sums;
}

template <class N>
JointDepth<N> depth_sums(const std::string& name, const Plate& plate, Book<N>& book) {
    const auto depth = joint_depth(book.input("t", Kind::length, plate.thickness));
    return {book.figure({"frame/joint", name, "recess"}, "d_m", Kind::length, depth.recess,
                        kPractice),
            book.figure({"frame/joint", name, "tenon"}, "l_m", Kind::length, depth.tenon,
                        kPractice)};
}

// As given, or by rule and by what all posts have room for.
template <class N>
N joint_size_sums(const Case& c, const Layout& layout, Book<N>& book) {
    const Post& post = c.frame.post;
    const auto figure = [&](const N& value, std::string_view source) {
        return book.figure({"frame/joint/size"}, "s", Kind::length, value, source);
    };
    if (post.joint_size) {
        return figure(book.input("s", Kind::length, *post.joint_size), "the case file");
    }
    const auto drawn = std::find_if(layout.posts.begin(), layout.posts.end(),
                                    [](const PostLayout& each) { return each.joint.has_value(); });
    const double size = drawn == layout.posts.end() ? joint_size(post) : drawn->joint->size;
    if (post.joint.value == PostJoint::dowel || size < joint_size(post)) {
        return figure(N(size),
                      "the largest by rule that all posts have room for (common practice, no "
                      "source)");
    }
    return figure(book.input("w_p", Kind::length, post.width) * kTenonShare, kPractice);
}

template <class N>
JointSums<N> joint_sums(const Case& c, const Layout& layout, Book<N>& book) {
    constexpr int kEnds = 2;
    const Post& post = c.frame.post;
    const bool dowel = post.joint.value == PostJoint::dowel;
    const auto figure = [&](std::string_view key, std::string_view symbol, Kind kind, const N& value,
                            std::string_view source) {
        return book.figure({"frame/joint", key}, symbol, kind, value, source);
    };
    JointSums<N> sums;
    sums.size = joint_size_sums(c, layout, book);
    sums.base = depth_sums("base", c.frame.base, book);
    sums.top = depth_sums("top", c.frame.top, book);
    std::size_t count = 0;
    for (const PostLayout& each : layout.posts) {
        if (!each.joint) {
            continue;
        }
        const std::string path = "posts/" + each.name;
        count += kEnds * each.joint->centres.size();
        sums.posts.push_back(
            {each.name,
             book.figure({"frame/joint", path, "clear"}, "c_m", Kind::length, N(each.joint->clear),
                         kDrawn),
             book.figure({"frame/joint", path, "shoulder"}, "s_m", Kind::length,
                         N(each.joint->shoulder), kDrawn)});
    }
    sums.dowels = figure("dowels", "n", Kind::count, N(dowel ? static_cast<double>(count) : 0),
                         "two at each end of each post");
    sums.reach = figure("reach", "r", Kind::length, dowel ? sums.size * kDowelReach : N(0),
                        kPractice);
    return sums;
}

}  // namespace

template <class N>
BuildSums<N> build_sums(const Case& c, const Layout& layout, Book<N>& book) {
    BuildSums<N> sums;
    if (layout.base.ring) {
        sums.rings.push_back(ring_sums("base", c.frame.base, c.frame.groove.base_depth,
                                       *layout.base.ring, book));
    }
    if (layout.top.ring) {
        sums.rings.push_back(
            ring_sums("top", c.frame.top, c.frame.groove.top_depth, *layout.top.ring, book));
    }
    if (c.frame.post.joint.value != PostJoint::butt) {
        sums.joint = joint_sums(c, layout, book);
    }
    return sums;
}

template BuildSums<double> build_sums(const Case&, const Layout&, Book<double>&);
template BuildSums<Traced> build_sums(const Case&, const Layout&, Book<Traced>&);

}  // namespace bowfront::fit
