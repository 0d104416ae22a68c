#include "as_made.hpp"

namespace bowfront::study {
namespace {

double value_of(const std::optional<MeasuredSize>& measured, double designed) {
    return measured ? measured->value : designed;
}

}  // namespace

NewPane new_pane(const Case& designed, const CaseAsMade& made, const CaseSide& side) {
    PaneSpec spec = *designed.pane(side);
    AsMade& sizes = spec.made;
    sizes = made.pane(side).made;
    sizes.length = sizes.height = sizes.thickness = sizes.thinnest = std::nullopt;
    sizes.blank_length = sizes.blank_width = std::nullopt;
    sizes.radius = std::nullopt;
    sizes.bends.clear();
    Case alone = made.c;
    Groove& groove = alone.frame.groove;
    groove.base_depth.value = value_of(sizes.base_depth, groove.base_depth.value);
    groove.top_depth.value = value_of(sizes.top_depth, groove.top_depth.value);
    const PostDepths posts = made.posts_of(side);
    const double depth = groove.post_depth.value;
    groove.post_depth.value = (value_of(posts.start, depth) + value_of(posts.end, depth)) / 2;
    alone.panes = {spec};
    const PaneSums<double> sums = fit::solve(alone).panes.front();
    if (spec.blank.method.value != BlankMethod::as_cut) {
        const Origin origin{Origin::Kind::computed, spec.pointer, 0, "the frame as it is"};
        spec.length = Sourced<double>{sums.length, origin};
        spec.height = Sourced<double>{sums.height, origin};
    }
    return {spec, {sums.length, sums.height, sums.blank_length, sums.blank_width}};
}

}  // namespace bowfront::study
