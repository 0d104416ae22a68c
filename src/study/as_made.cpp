#include "as_made.hpp"

#include <algorithm>
#include <cmath>

#include "bowfront/base/contract.hpp"
#include "bowfront/fit/checks.hpp"
#include "bowfront/forming/arc.hpp"
#include "bowfront/forming/pane.hpp"

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
            made_.bows[side.side] = {{*side.pane.chord, length_}, {*side.pane.rise, length_}};
        }
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

double radius_of(double chord, double rise) {
    Book<double> book;
    return forming::arc_over_chord(ArcMeasure::rise, rise, chord, "curve", book).radius;
}

// Between two arcs through the same two points, at mid-length. The points are the measured chord's
// ends, or, where one arc is too small for it, a diameter of that arc.
double gap_between(double radius, double wanted, double chord) {
    Book<double> book;
    const double over = std::min({chord, 2 * radius, 2 * wanted});
    const auto rise = [&](double r) {
        return forming::arc_over_chord(ArcMeasure::radius, r, over, "curve", book).rise;
    };
    return std::abs(rise(radius) - rise(wanted));
}

MeasuredCurve curve_of(const Case& c, const MeasuredBow& bow, const PaneSums<double>& pane) {
    MeasuredCurve curve;
    curve.radius = radius_of(bow.chord.value, bow.rise.value);
    curve.wanted = pane.inside_radius;
    curve.gap = gap_between(curve.radius, curve.wanted, bow.chord.value);
    for (const double chord_share : {-1, 1}) {
        for (const double rise_share : {-1, 1}) {
            const double chord = bow.chord.value + chord_share * bow.chord.uncertainty;
            const double rise = bow.rise.value + rise_share * bow.rise.uncertainty;
            if (chord > 0 && rise > 0) {
                curve.gap_worst = std::max(
                    curve.gap_worst, gap_between(radius_of(chord, rise), curve.wanted, chord));
            }
        }
    }
    curve.gap_worst = std::max(curve.gap_worst, curve.gap);
    const double half = pane.thickness / 2;
    const Sheet& sheet = *c.sheets.at(c.pane(pane.side)->sheet).like;
    curve.stress = sheet.modulus.value *
                   forming::flexing_strain(pane.thickness, 1 / (curve.radius + half),
                                           1 / (curve.wanted + half));
    return curve;
}

Finding curve_finding(const PaneSums<double>& pane, std::string id, std::string state) {
    Finding finding;
    finding.code = Code::fit_bend;
    finding.id = std::move(id);
    finding.about = side_text(pane.side);
    finding.state = std::move(state);
    finding.bound = Bound::at_most;
    return finding;
}

// A pane whose curve is not the grooves' touches their cheeks once the difference is more than the
// face clearance. That is no failure, if the sheet can bear to be held.
void add_curve_findings(const Case& c, const InspectedPane& pane, std::vector<Finding>& findings) {
    const MeasuredCurve& curve = *pane.curve;
    Finding touch = curve_finding(pane.sums, "curve", "between the measured curve and the grooves'");
    touch.value = curve.gap;
    touch.worst = curve.gap_worst;
    touch.limit = std::max(0.0, pane.sums.edge(PaneEdge::bottom).face_clearance);
    touch.unit = "mm";
    touch.status = touch.worst > touch.limit ? Status::warn : Status::pass;
    const bool held = touch.value > touch.limit;
    const bool held_at_worst = touch.worst > touch.limit;
    findings.push_back(touch);
    const Sheet& sheet = *c.sheets.at(c.pane(pane.sums.side)->sheet).like;
    if (!sheet.long_term_stress || !held_at_worst) {
        return;
    }
    Finding stress = curve_finding(pane.sums, "curve-stress", "held to the grooves' curve for good");
    stress.value = held ? curve.stress : 0;
    stress.worst = curve.stress;
    stress.limit = sheet.long_term_stress->value;
    stress.unit = "MPa";
    stress.status = stress.margin() < 0         ? Status::fail
                    : stress.worst_margin() < 0 ? Status::warn
                                                : Status::pass;
    findings.push_back(std::move(stress));
}

bool of_pane(const CaseAsMade& made, const Finding& finding) {
    const Code code = finding.code;
    if (code == Code::fit_radius) {
        // Of a curve that was not measured the design's spread of springback is all that is known.
        return std::none_of(made.bows.begin(), made.bows.end(), [&](const auto& bow) {
            return finding.about.starts_with(side_text(bow.first));
        });
    }
    return code == Code::fit_engagement || code == Code::fit_room ||
           code == Code::fit_face_clearance || code == Code::fit_loading;
}
bool of_timber(const Finding& finding) {
    const Code code = finding.code;
    return code == Code::frame_web || code == Code::frame_cheek || code == Code::frame_floor;
}

template <class Wanted>
void append(std::vector<Finding> all, Wanted wanted, std::vector<Finding>& to) {
    for (Finding& finding : all) {
        if (wanted(finding)) {
            to.push_back(std::move(finding));
        }
    }
}

std::optional<double> shrink_of(const std::optional<MeasuredSize>& blank,
                                const std::optional<MeasuredSize>& formed) {
    return blank && formed ? std::optional(1 - formed->value / blank->value) : std::nullopt;
}

}  // namespace

PaneSpec& CaseAsMade::pane(CaseSide side) {
    const auto found = std::find_if(c.panes.begin(), c.panes.end(),
                                    [side](const PaneSpec& each) { return each.side == side; });
    BOWFRONT_EXPECTS(found != c.panes.end());
    return *found;
}

const PaneSpec& CaseAsMade::pane(CaseSide side) const {
    const PaneSpec* const found = c.pane(side);
    BOWFRONT_EXPECTS(found != nullptr);
    return *found;
}

CaseAsMade as_made(const Case& c, const CaseSums<double>& sums, const Measured& measured) {
    CaseAsMade made{c, {}, {}, c};
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
    append(
        fit::checks(made.c, sums, layout),
        [&](const Finding& finding) { return of_pane(made, finding); }, result.findings);
    for (const PaneSums<double>& pane : sums.panes) {
        const AsMade& sizes = made.pane(pane.side).made;
        InspectedPane entry{pane, std::nullopt, shrink_of(sizes.blank_length, sizes.length),
                            shrink_of(sizes.blank_width, sizes.height)};
        if (const auto bow = made.bows.find(pane.side); bow != made.bows.end()) {
            entry.curve = curve_of(made.c, bow->second, pane);
            add_curve_findings(made.c, entry, result.findings);
        }
        result.panes.push_back(std::move(entry));
    }
    append(fit::checks(made.frame, frame_sums, layout), of_timber, result.findings);
    return result;
}

}  // namespace bowfront::study
