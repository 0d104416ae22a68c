#include "as_made.hpp"

#include <algorithm>

#include "bowfront/base/contract.hpp"
#include "bowfront/fit/checks.hpp"

namespace bowfront::study {
namespace {

double least(const std::vector<double>& places) {
    return *std::min_element(places.begin(), places.end());
}
double most(const std::vector<double>& places) {
    return *std::max_element(places.begin(), places.end());
}

// Puts in what was measured of one side.
class SideWriter {
  public:
    SideWriter(const Measured& measured, CaseAsMade& made)
        : length_(measured.length_uncertainty.value),
          thickness_(measured.thickness_uncertainty.value),
          made_(made) {}

    void write(const MeasuredSide& side) const {
        AsMade& to = made_.pane(side.side).made;
        to.blank_length = size(side.pane.blank_length);
        to.blank_width = size(side.pane.blank_width);
        to.length = size(side.pane.length);
        to.height = size(side.pane.height);
        if (!side.pane.thickness.empty()) {
            to.thickness = MeasuredSize{most(side.pane.thickness), thickness_};
            to.thinnest = MeasuredSize{least(side.pane.thickness), thickness_};
        }
        to.opening_length = size(side.opening.length);
        to.opening_height = size(side.opening.height);
        // A straight edge stands on the high places of a groove's bottom.
        to.base_depth = shallowest(side.grooves.base);
        to.top_depth = shallowest(side.grooves.top);
        made_.posts[side.side] = {shallowest(side.grooves.start), shallowest(side.grooves.end)};
        if (!side.grooves.width.empty()) {
            to.groove_width = MeasuredSize{least(side.grooves.width), thickness_};
        }
        if (side.pane.chord && side.pane.rise) {
            to.radius = radius_of(*side.pane.chord, *side.pane.rise, length_);
        }
        for (const double radius : side.pane.bends) {
            to.bends.push_back({radius, radius - length_, radius + length_});
        }
        to.before_heating = made_.heated(side.side) && made_.stage(side.side) != PaneStage::made;
        deepen(side.grooves);
    }

  private:
    [[nodiscard]] std::optional<MeasuredSize> size(const std::optional<double>& value) const {
        return value ? std::optional(MeasuredSize{*value, length_}) : std::nullopt;
    }
    [[nodiscard]] std::optional<MeasuredSize> shallowest(const std::vector<double>& places) const {
        return places.empty() ? std::nullopt : size(least(places));
    }

    // What is left round the grooves is judged where most was taken away.
    void deepen(const MeasuredGrooves& grooves) const {
        Groove& frame = made_.frame.frame.groove;
        const auto grow = [](Sourced<double>& designed, const std::vector<double>& places) {
            if (!places.empty()) {
                designed.value = std::max(designed.value, most(places));
            }
        };
        grow(frame.base_depth, grooves.base);
        grow(frame.top_depth, grooves.top);
        grow(frame.post_depth, grooves.start);
        grow(frame.post_depth, grooves.end);
        grow(frame.width, grooves.width);
    }

    double length_;
    double thickness_;
    CaseAsMade& made_;
};

// The sums with every post groove as deep as that at the panes' starts, or at their ends.
CaseSums<double> sums_with(const CaseAsMade& made, PaneEdge end) {
    Case c = made.c;
    for (PaneSpec& pane : c.panes) {
        if (const auto found = made.posts.find(pane.side); found != made.posts.end()) {
            pane.made.post_depth =
                end == PaneEdge::start ? found->second.start : found->second.end;
        }
    }
    return fit::solve(c);
}

double mean(double a, double b) {
    return (a + b) / 2;
}

// A pane between two post grooves that are not alike, from the sums with both like either. How far
// an end goes in is a matter of its own post; how far it comes out, of the other. Room is linear in
// what both ends can reach.
PaneSums<double> join(Loading loading, const PaneSums<double>& by_start,
                      const PaneSums<double>& by_end) {
    PaneSums<double> pane = by_start;
    EdgeSums<double>& start = pane.edges[static_cast<std::size_t>(PaneEdge::start)];
    EdgeSums<double>& end = pane.edges[static_cast<std::size_t>(PaneEdge::end)];
    start.settled = by_end.edge(PaneEdge::start).settled;
    start.engagement_least = by_end.edge(PaneEdge::start).engagement_least;
    end = by_end.edge(PaneEdge::end);
    end.settled = by_start.edge(PaneEdge::end).settled;
    end.engagement_least = by_start.edge(PaneEdge::end).engagement_least;
    pane.reach = std::min(by_start.reach, by_end.reach);
    const auto& one = by_start.room_sideways;
    const auto& other = by_end.room_sideways;
    pane.room_sideways = {mean(one.nominal, other.nominal), mean(one.worst, other.worst)};
    // What a bow leaves at both ends goes by the one that is left least.
    const auto join_held = [](LoadSums<double>& load, const LoadSums<double>& at_end) {
        load.held = std::min(load.held, at_end.held);
        load.held_worst = std::min(load.held_worst, at_end.held_worst);
    };
    join_held(pane.push, by_end.push);
    join_held(pane.carried, by_end.carried);
    if (loading != Loading::lift_and_drop) {
        pane.loading.play = pane.room_sideways.nominal;
        pane.loading.play_worst = pane.room_sideways.worst;
    }
    if (loading == Loading::beaded) {
        pane.loading.play = std::min(pane.loading.play, pane.room_vertical.nominal);
        pane.loading.play_worst = std::min(pane.loading.play_worst, pane.room_vertical.worst);
    }
    return pane;
}

CaseSums<double> joined_sums(const CaseAsMade& made) {
    CaseSums<double> sums = sums_with(made, PaneEdge::start);
    const CaseSums<double> by_end = sums_with(made, PaneEdge::end);
    for (std::size_t i = 0; i < sums.panes.size(); ++i) {
        sums.panes[i] = join(made.c.frame.loading.value, sums.panes[i], by_end.panes[i]);
    }
    return sums;
}

void append_asked(const CaseAsMade& made, std::vector<Finding> all, bool (*wanted)(Code),
                  std::vector<Finding>& to) {
    for (Finding& finding : all) {
        if (wanted(finding.code) && still_asked(made, finding)) {
            to.push_back(std::move(finding));
        }
    }
}

bool of_timber(Code code) {
    return code == Code::frame_web || code == Code::frame_cheek || code == Code::frame_floor;
}
bool of_panes(Code code) {
    return !of_timber(code);
}

std::optional<double> shrink_of(const std::optional<MeasuredSize>& blank,
                                const std::optional<MeasuredSize>& formed) {
    return blank && formed ? std::optional(1 - formed->value / blank->value) : std::nullopt;
}

}  // namespace

PaneSpec& CaseAsMade::pane(const CaseSide& side) {
    PaneSpec* const found = c.pane(side);
    BOWFRONT_EXPECTS(found != nullptr);
    return *found;
}

const PaneSpec& CaseAsMade::pane(const CaseSide& side) const {
    const PaneSpec* const found = c.pane(side);
    BOWFRONT_EXPECTS(found != nullptr);
    return *found;
}

bool CaseAsMade::heated(const CaseSide& side) const {
    return is_curved(c.plan, index(side)) && pane(side).bend.value == Bend::heat;
}

PaneStage CaseAsMade::stage(const CaseSide& side) const {
    const AsMade& made = pane(side).made;
    const bool blank = made.blank_length || made.blank_width;
    // A sheet's thickness may be measured before anything is cut from it.
    if (made.length || made.height || made.radius || !made.bends.empty() ||
        (blank && !heated(side))) {
        return PaneStage::made;
    }
    return blank ? PaneStage::blank_cut : PaneStage::not_cut;
}

bool CaseAsMade::place_measured(const CaseSide& side) const {
    const AsMade& sizes = pane(side).made;
    const PostDepths depths = posts_of(side);
    return sizes.opening_length || sizes.opening_height || sizes.base_depth || sizes.top_depth ||
           sizes.groove_width || depths.start || depths.end;
}

PostDepths CaseAsMade::posts_of(const CaseSide& side) const {
    const auto found = posts.find(side);
    return found == posts.end() ? PostDepths{} : found->second;
}

MeasuredRadius radius_of(double chord, double rise, double uncertainty) {
    BOWFRONT_EXPECTS(uncertainty >= 0 && chord > uncertainty && rise > uncertainty);
    const auto radius = [](double c, double f) { return (c * c / 4 + f * f) / (2 * f); };
    const double low = rise - uncertainty;
    const double high = rise + uncertainty;
    const double narrow = chord - uncertainty;
    const double wide = chord + uncertainty;
    // Over a chord the radius is least where the rise is half of it.
    return {radius(chord, rise), radius(narrow, std::clamp(narrow / 2, low, high)),
            std::max(radius(wide, low), radius(wide, high))};
}

CaseAsMade as_made(const Case& c, const CaseSums<double>& sums, const Measured& measured) {
    CaseAsMade made{c, {}, c};
    for (PaneSpec& pane : made.c.panes) {
        if (pane.blank.method.value == BlankMethod::as_cut) {
            continue;  // its size follows from its blank, not from the frame
        }
        const PaneSums<double>& designed = *sums.pane(pane.side);
        const Origin origin{Origin::Kind::computed, pane.pointer, 0, "the design's sums"};
        pane.length = Sourced<double>{designed.length, origin};
        pane.height = Sourced<double>{designed.height, origin};
    }
    for (const MeasuredSide& side : measured.sides) {
        SideWriter(measured, made).write(side);
    }
    return made;
}

Assessment assess(const CaseAsMade& made) {
    const CaseSums<double> sums = joined_sums(made);
    const CaseSums<double> frame_sums = fit::solve(made.frame);
    const fit::Layout layout = fit::layout(made.frame, frame_sums);
    Assessment result;
    append_asked(made, fit::checks(made.c, sums, layout), of_panes, result.findings);
    append_asked(made, fit::checks(made.frame, frame_sums, layout), of_timber, result.findings);
    for (const PaneSums<double>& pane : sums.panes) {
        const AsMade& sizes = made.pane(pane.side).made;
        InspectedPane entry;
        entry.sums = pane;
        entry.stage = made.stage(pane.side);
        entry.as_drawn = entry.stage == PaneStage::not_cut && !sizes.thickness &&
                         !made.place_measured(pane.side);
        entry.shrink_length = shrink_of(sizes.blank_length, sizes.length);
        entry.shrink_height = shrink_of(sizes.blank_width, sizes.height);
        if (sizes.radius) {
            entry.curve = MeasuredCurve{*sizes.radius, pane.inside_radius};
        }
        result.panes.push_back(std::move(entry));
    }
    return result;
}

}  // namespace bowfront::study
