#pragma once
/// \file
/// One sample of a case: every size drawn, and what each limit is left with.

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "bowfront/fit/checks.hpp"
#include "bowfront/model/case.hpp"
#include "bowfront/study/random.hpp"

namespace bowfront::study {

/// What all panes of one sheet share in one sample, as shares of the limits.
struct SheetDraw {
    double along = 0;
    double across = 0;
    double thickness = 0;
    double springback = 0;
};

/// What all panes of a case share in one sample, as shares of the limits.
struct FrameDraw {
    double height = 0;
    double base = 0;
    double top = 0;
    double width = 0;
};

/// One size of a pane as it comes out: what was cut, and what the heat left of it.
struct Extent {
    double cut = 0;            // nominal, mm
    double cut_tolerance = 0;  // ± mm
    double shrink = 0;         // 0 where the cut is the last step
    double spread = 0;

    [[nodiscard]] double draw(double cut_share, double shrink_share) const {
        return (cut + cut_tolerance * cut_share) * (1 - shrink - spread * shrink_share);
    }
};

/// What is drawn from for one pane.
struct PaneModel {
    const PaneSums<double>* sums = nullptr;
    std::size_t sheet = 0;
    bool lengthwise = true;  // the sheet's extrusion runs along the pane's length
    Extent length;
    Extent height;
    double base = 0;  // depths and width of the grooves, nominal, mm
    double top = 0;
    double post = 0;
    double width = 0;
    FrameTolerances<double> tolerances;
    double along = 0;  // shrink of a heated pane, and its spread
    double along_spread = 0;
    double across = 0;
    double across_spread = 0;
    double curve_taken = 0;       // of a post groove's width, by the pane's curve
    double thickness_taken = 1;   // of a post groove's width, per thickness
    bool lifted = false;
};

/// @param sheet  which of the sheets' draws are the pane's
[[nodiscard]] PaneModel pane_model(const Case& c, const PaneSums<double>& pane, std::size_t sheet);

/// What one sample leaves of a pane's engagements, rooms and clearances in one state, mm.
struct TrialSizes {
    double bottom = 0;  ///< engagement, settled by gravity
    double top = 0;
    double start = 0;  ///< engagement, shoved hard against the other post
    double end = 0;
    double vertical = 0;  ///< room between groove bottoms
    double sideways = 0;
    double play = 0;  ///< lift-and-drop: over the pane when it is lifted

    /// The less of both, size by size.
    [[nodiscard]] static TrialSizes least(const TrialSizes& a, const TrialSizes& b) {
        return {std::min(a.bottom, b.bottom),     std::min(a.top, b.top),
                std::min(a.start, b.start),       std::min(a.end, b.end),
                std::min(a.vertical, b.vertical), std::min(a.sideways, b.sideways),
                std::min(a.play, b.play)};
    }
};

/// One sample of a pane.
class Trial {
  public:
    Trial(const PaneModel& pane, const FrameDraw& frame, const SheetDraw& sheet, Random& random)
        : pane_(pane), t_(pane.tolerances) {
        const auto share = [&] { return cut_normal(random.uniform()); };
        const double along = pane.lengthwise ? sheet.along : sheet.across;
        const double across = pane.lengthwise ? sheet.across : sheet.along;
        length_ = pane.length.draw(share(), along);
        height_ = pane.height.draw(share(), across);
        base_ = pane.base + t_.base_depth * frame.base;
        top_ = pane.top + t_.top_depth * frame.top;
        start_ = pane.post + t_.post_depth * share();
        end_ = pane.post + t_.post_depth * share();
        opening_off_ = t_.opening_length * share();
        opening_height_ = pane.sums->opening_height + t_.opening_height * frame.height;
        thickness_ = (pane.sums->thickness + pane.sums->thickness_tolerance * sheet.thickness) /
                     ((1 - pane.along - pane.along_spread * sheet.along) *
                      (1 - pane.across - pane.across_spread * sheet.across));
        const RadiusSums<double>& radius = pane.sums->radius_error;
        free_radius_ = radius.free_radius +
                       (radius.free_radius_most - radius.free_radius_least) / 2 * sheet.springback;
        width_ = pane.width + t_.groove_width * frame.width;
    }

    /// Between the groove of base or top and the pane's faces.
    [[nodiscard]] double face_clearance() const { return width_ - thickness_; }
    /// Between a post's straight groove and the faces of the pane, which may be curved there.
    [[nodiscard]] double face_clearance_in_posts() const {
        return width_ - pane_.curve_taken - pane_.thickness_taken * thickness_;
    }

    [[nodiscard]] TrialSizes sizes_in(const PaneState<double>& state) const {
        const double height = height_ * state.sheet;
        const double length = length_ * state.sheet;
        const double base = base_ * state.base;
        const double reach = (pane_.sums->reach - pane_.post) * state.post;
        const double start = start_ * state.post;
        const double end = end_ * state.post;
        const double widest = state.opening_most + opening_off_;
        const double narrowest = state.opening_least + opening_off_;
        const double up = height - opening_height_ - base;
        return {base,
                up,
                length - widest - end,
                length - widest - start,
                top_ * state.top - up,
                narrowest + start + end + 2 * reach - length,
                opening_height_ + top_ * state.top - height};
    }

    /// What a heated pane's own radius leaves of the face clearance in a state; that of a flat pane
    /// or of one that is held cold where nothing is asked of it.
    [[nodiscard]] double contact_in(const PaneState<double>& state) const {
        const double off = std::max(std::abs(free_radius_ * state.sheet - state.base_radius),
                                    std::abs(free_radius_ * state.sheet - state.top_radius));
        return std::max(0.0, face_clearance()) - pane_.sums->radius_error.share * off;
    }

    /// Whether every limit holds in a state.
    [[nodiscard]] bool holds(const TrialSizes& sizes) const {
        const double least = pane_.sums->least_engagement;
        return sizes.bottom >= least && sizes.top >= least && sizes.start >= least &&
               sizes.end >= least && sizes.vertical >= fit::kLeastRoom &&
               sizes.sideways >= fit::kLeastRoom && (!pane_.lifted || sizes.play >= 0);
    }

    /// Whether every limit of every edge holds in every state.
    [[nodiscard]] bool fits() const {
        return face_clearance() >= 0 && face_clearance_in_posts() >= 0 &&
               std::all_of(
                   pane_.sums->states.begin(), pane_.sums->states.end(),
                   [&](const PaneState<double>& state) { return holds(sizes_in(state)); });
    }

  private:
    const PaneModel& pane_;
    const FrameTolerances<double>& t_;
    double length_ = 0;
    double height_ = 0;
    double base_ = 0;
    double top_ = 0;
    double start_ = 0;
    double end_ = 0;
    double opening_off_ = 0;
    double opening_height_ = 0;
    double thickness_ = 0;
    double width_ = 0;
    double free_radius_ = 0;
};

/// Draws the samples of a case one after the other, all panes of a sample at once.
class Trials {
  public:
    Trials(const Case& c, const CaseSums<double>& sums, std::uint64_t seed);

    /// Calls `visit(index of the pane, const Trial&)` for each pane of the next sample.
    template <class Visit>
    void next(const Visit& visit) {
        const auto share = [&] { return cut_normal(random_.uniform()); };
        for (SheetDraw& draw : sheets_) {
            draw = {share(), share(), share(), share()};
        }
        const FrameDraw frame{share(), share(), share(), share()};
        for (std::size_t i = 0; i < panes_.size(); ++i) {
            visit(i, Trial(panes_[i], frame, sheets_[panes_[i].sheet], random_));
        }
    }

  private:
    Random random_;
    std::vector<PaneModel> panes_;
    std::vector<SheetDraw> sheets_;
};

}  // namespace bowfront::study
