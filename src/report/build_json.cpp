#include "build_json.hpp"

#include <cmath>
#include <numbers>

#include "finding_json.hpp"

namespace bowfront::report {
namespace {

using Json = nlohmann::ordered_json;

constexpr double kDegrees = 180 / std::numbers::pi;

Json rail_json(const RailSums<double>& rail) {
    return {{"id", rail.name},
            {"length", number_json(rail.length)},
            {"width", number_json(rail.width)},
            {"area", number_json(rail.area)},
            {"run_out", number_json(rail.run_out * kDegrees)},
            {"bending_left", number_json(rail.bending_left)},
            {"joint", number_json(rail.joint)}};
}

Json plate_json(const Plate& plate, const RingSums<double>* ring) {
    if (ring == nullptr) {
        return {{"build", "plate"}};
    }
    return {{"build", "rails"},
            {"corner", plate.build.corner.value == RailCorner::mitre ? "mitre" : "butt"},
            {"tongue",
             {{"thickness", number_json(ring->tongue.thickness)},
              {"floor", number_json(ring->tongue.floor)},
              {"from_face", number_json(ring->tongue.from_face)},
              {"reach", number_json(ring->tongue.reach)}}},
            {"area", number_json(ring->area)},
            {"pieces", list_json(ring->pieces, rail_json)}};
}

Json size_json(const BoardSize<double>& size) {
    return {{"length", number_json(size.length)},
            {"width", number_json(size.width)},
            {"thickness", number_json(size.thickness)}};
}

Json depth_json(const fit::JointDepth<double>& depth) {
    return {{"recess", number_json(depth.recess)}, {"tenon", number_json(depth.tenon)}};
}

Json joint_json(PostJoint kind, const std::optional<JointSums<double>>& joint) {
    Json json = {{"kind", joint_text(kind)}};
    if (joint) {
        json["size"] = number_json(joint->size);
        json["base"] = depth_json(joint->base);
        json["top"] = depth_json(joint->top);
        json["dowels"] = std::lround(joint->dowels);
        json["reach"] = number_json(joint->reach);
        json["posts"] = list_json(joint->posts, [](const PostJointSums<double>& post) {
            return Json{{"id", post.corner},
                        {"clear", number_json(post.clear)},
                        {"shoulder", number_json(post.shoulder)}};
        });
    }
    return json;
}

}  // namespace

Json build_json(const Case& c, const BuildSums<double>& build) {
    return {{"base", plate_json(c.frame.base, build.ring("base"))},
            {"top", plate_json(c.frame.top, build.ring("top"))},
            {"joint", joint_json(c.frame.post.joint.value, build.joint)}};
}

Json timber_json(const Case& c, const TimberList<double>& timber) {
    return {{"species", c.frame.timber.value},
            {"board_feet", number_json(timber.board_feet)},
            {"volume", number_json(timber.volume)},
            {"finished_volume", number_json(timber.finished_volume)},
            {"cut_away", number_json(timber.cut_away)},
            {"pieces", list_json(timber.rows, [](const TimberRow<double>& row) {
                 return Json{{"id", row.id},
                             {"count", std::lround(row.count)},
                             {"finished", size_json(row.finished)},
                             {"rough", size_json(row.rough)},
                             {"board_feet", number_json(row.board_feet)},
                             {"volume", number_json(row.volume)}};
             })}};
}

}  // namespace bowfront::report
