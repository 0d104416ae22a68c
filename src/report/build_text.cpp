#include "build_text.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "bowfront/base/number_text.hpp"

namespace bowfront::report {
namespace {

constexpr double kDegrees = 180 / std::numbers::pi;

std::string shown(double value) { return fixed_text(value, 1); }

std::string percent(double share) { return fixed_text(share * 100, 0) + " %"; }

std::string filled(std::string text, std::size_t width) {
    text.resize(std::max(width, text.size()), ' ');
    return text;
}

std::string size_text(const BoardSize<double>& size) {
    return shown(size.length) + " x " + shown(size.width) + " x " + shown(size.thickness);
}

void ring_text(const Case& c, const RingSums<double>& ring, std::string& text) {
    const Plate& plate = ring.plate == "base" ? c.frame.base : c.frame.top;
    text += "\n" + std::string(ring.plate == "base" ? "Base" : "Top") + " of rails, corners " +
            (plate.build.corner.value == RailCorner::mitre ? "mitred" : "butted") + "\n";
    text += "  joints with a loose tongue " + fixed_text(ring.tongue.thickness, 2) +
            " mm thick, " + fixed_text(ring.tongue.from_face, 2) +
            " mm from the face without grooves and " + shown(ring.tongue.reach) +
            " mm into each piece, under the grooves and clear of them\n";
    for (const RailSums<double>& rail : ring.pieces) {
        text += "  " + filled(rail.name, 10) + shown(rail.length) + " along the grain x " +
                shown(rail.width) + " mm across";
        if (rail.run_out > 0) {
            text += ", grain up to " + shown(rail.run_out * kDegrees) + " deg to the edge, " +
                    percent(rail.bending_left) + " of the bending strength left";
        }
        text += "\n";
    }
}

void joint_words(const Case& c, const JointSums<double>& joint, std::string& text) {
    const bool dowel = c.frame.post.joint.value == PostJoint::dowel;
    text += "\nPosts joined to base and top by ";
    text += dowel ? std::to_string(std::lround(joint.dowels)) + " dowels of " +
                        rounded_text(joint.size, 2) + " mm, " + shown(joint.reach) +
                        " mm into the posts\n"
                  : "tenons of " + fixed_text(joint.size, 2) + " mm with rounded corners\n";
    text += dowel ? "  bores " : "  mortises ";
    text += fixed_text(joint.base.recess, 2) + " mm deep in the base and " +
            fixed_text(joint.top.recess, 2) + " in the top, " + (dowel ? "dowels " : "tenons ") +
            fixed_text(joint.base.tenon, 2) + " and " + fixed_text(joint.top.tenon, 2) +
            " mm into them\n";
    for (const PostJointSums<double>& post : joint.posts) {
        text += "  " + filled(post.corner, 13) + fixed_text(post.clear, 2) +
                " mm clear of the grooves, " + fixed_text(post.shoulder, 2) +
                " mm inside the post\n";
    }
}

}  // namespace

std::string build_text(const Case& c, const BuildSums<double>& build) {
    std::string text;
    for (const RingSums<double>& ring : build.rings) {
        ring_text(c, ring, text);
    }
    if (build.joint) {
        joint_words(c, *build.joint, text);
    }
    return text;
}

std::string timber_text(const Case& c, const TimberList<double>& timber) {
    std::size_t width = 0;
    for (const TimberRow<double>& row : timber.rows) {
        width = std::max(width, row.id.size());
    }
    const Allowance& more = c.shop.allowance;
    std::string text = "\nTimber, " + c.frame.timber.value + ": " +
                       fixed_text(timber.board_feet, 2) + " board feet, " +
                       fixed_text(timber.volume, 4) + " m3 rough; " + percent(timber.cut_away) +
                       " of it is cut away\n  finished and rough (" + rounded_text(*more.length, 2) +
                       ", " + rounded_text(*more.width, 2) + " and " +
                       rounded_text(*more.thickness, 2) +
                       " mm more), length along the grain x width x thickness, mm\n";
    for (const TimberRow<double>& row : timber.rows) {
        text += "  " + std::to_string(std::lround(row.count)) + " " + filled(row.id, width + 2) +
                filled(size_text(row.finished), 24) + size_text(row.rough) + "\n";
    }
    return text;
}

}  // namespace bowfront::report
