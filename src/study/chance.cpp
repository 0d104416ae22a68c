#include "bowfront/study/chance.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <string>

#include "bowfront/base/contract.hpp"
#include "bowfront/fit/checks.hpp"
#include "bowfront/study/random.hpp"

namespace bowfront::study {
namespace {

constexpr int kMostSamples = 100'000'000;

// What all panes of one sheet share in one sample, as shares of the limits.
struct SheetDraw {
    double along = 0;
    double across = 0;
    double thickness = 0;
};

// What all panes of a case share in one sample, as shares of the limits.
struct FrameDraw {
    double height = 0;
    double base = 0;
    double top = 0;
    double width = 0;
};

// One size of a pane as it comes out: what was cut, and what the heat left of it.
struct Extent {
    double cut = 0;            // nominal, mm
    double cut_tolerance = 0;  // ± mm
    double shrink = 0;         // 0 where the cut is the last step
    double spread = 0;

    [[nodiscard]] double draw(double cut_share, double shrink_share) const {
        return (cut + cut_tolerance * cut_share) * (1 - shrink - spread * shrink_share);
    }
};

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
    double thickness_shrink = 1;  // product of (1 − s)
    double curve_taken = 0;       // of a post groove's width, by the pane's curve
    double thickness_taken = 1;   // of a post groove's width, per thickness
    bool lifted = false;
};

Extent extent(bool last_cut, double blank, double formed,
              double tolerance, double shrink, double spread) {
    if (last_cut) {
        return {formed, tolerance, 0, 0};
    }
    // The sums' tolerance holds cut and spread; what the cut alone leaves of it before the heat:
    const double cut = (tolerance - blank * spread) / (1 - shrink);
    return {blank, cut, shrink, spread};
}

PaneModel pane_model(const Case& c, const PaneSums<double>& pane, std::size_t sheet) {
    const PaneSpec& spec = *c.pane(pane.side);
    const SheetSpec& of = c.sheets.at(spec.sheet);
    PaneModel model;
    model.sums = &pane;
    model.sheet = sheet;
    model.lengthwise = spec.along.value == Extrusion::length;
    const double along = pane.heated ? of.shrink_along.value : 0;
    const double across = pane.heated ? of.shrink_across.value : 0;
    const double along_spread = pane.heated ? of.spread_along.value : 0;
    const double across_spread = pane.heated ? of.spread_across.value : 0;
    const bool last = !pane.heated || spec.blank.method.value == BlankMethod::trim_after;
    const bool lengthwise = model.lengthwise;
    model.length =
        extent(last, pane.blank_length, pane.length, pane.length_tolerance,
               lengthwise ? along : across, lengthwise ? along_spread : across_spread);
    model.height = extent(last, pane.blank_width, pane.height, pane.height_tolerance,
                          lengthwise ? across : along, lengthwise ? across_spread : along_spread);
    model.thickness_shrink = (1 - along) * (1 - across);
    const Groove& groove = c.frame.groove;
    model.base = groove.base_depth.value;
    model.top = groove.top_depth.value;
    model.post = groove.post_depth.value;
    model.width = groove.width.value;
    model.tolerances = pane.tolerances;
    if (pane.curved) {
        const double turned = pane.reach / pane.radius;
        model.curve_taken = pane.radius * (1 - std::cos(turned));
        model.thickness_taken = (1 + std::cos(turned)) / 2;
    }
    model.lifted = c.frame.loading.value == Loading::lift_and_drop;
    return model;
}

// Whether every limit of every edge of a pane holds in one sample.
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
                     pane.thickness_shrink;
        width_ = pane.width + t_.groove_width * frame.width;
    }

    [[nodiscard]] bool fits() const {
        const double ends = pane_.curve_taken + pane_.thickness_taken * thickness_;
        if (width_ - thickness_ < 0 || width_ - ends < 0) {
            return false;
        }
        return std::all_of(pane_.sums->states.begin(), pane_.sums->states.end(),
                           [&](const PaneState<double>& state) { return fits_in(state); });
    }

  private:
    [[nodiscard]] bool fits_in(const PaneState<double>& state) const {
        const double least = pane_.sums->least_engagement;
        const double height = height_ * state.sheet;
        const double length = length_ * state.sheet;
        const double base = base_ * state.base;
        const double top = top_ * state.top;
        const double reach = (pane_.sums->reach - pane_.post) * state.post;
        const double start = start_ * state.post;
        const double end = end_ * state.post;
        const double widest = state.opening_most + opening_off_;
        const double narrowest = state.opening_least + opening_off_;
        const double up = height - opening_height_ - base;
        return base >= least && up >= least && length - widest - end >= least &&
               length - widest - start >= least && top - up >= fit::kLeastRoom &&
               narrowest + start + end + 2 * reach - length >= fit::kLeastRoom &&
               (!pane_.lifted || opening_height_ + top - height >= 0);
    }

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
};

Share share_of(int hits, int samples) {
    const double value = static_cast<double>(hits) / samples;
    return {value, std::sqrt(value * (1 - value) / samples)};
}

}  // namespace

Chance first_time_fit(const Case& c, const CaseSums<double>& sums, const ChanceOptions& options) {
    BOWFRONT_EXPECTS(options.samples >= 1 && options.samples <= kMostSamples);
    std::map<std::string, std::size_t> sheets;
    std::vector<PaneModel> panes;
    for (const auto& pane : sums.panes) {
        const std::size_t sheet =
            sheets.emplace(c.pane(pane.side)->sheet, sheets.size()).first->second;
        panes.push_back(pane_model(c, pane, sheet));
    }
    Random random(options.seed);
    std::vector<SheetDraw> sheet_draws(sheets.size());
    std::vector<int> hits(panes.size());
    int all_hits = 0;
    for (int sample = 0; sample < options.samples; ++sample) {
        const auto share = [&] { return cut_normal(random.uniform()); };
        for (SheetDraw& draw : sheet_draws) {
            draw = {share(), share(), share()};
        }
        const FrameDraw frame{share(), share(), share(), share()};
        bool all = true;
        for (std::size_t i = 0; i < panes.size(); ++i) {
            const bool fits = Trial(panes[i], frame, sheet_draws[panes[i].sheet], random).fits();
            hits[i] += fits ? 1 : 0;
            all = all && fits;
        }
        all_hits += all ? 1 : 0;
    }
    Chance chance{options, share_of(all_hits, options.samples), {}};
    for (std::size_t i = 0; i < panes.size(); ++i) {
        chance.panes.push_back({sums.panes[i].side, share_of(hits[i], options.samples)});
    }
    return chance;
}

std::vector<Finding> chance_checks(const Chance& chance) {
    std::vector<Finding> findings;
    for (const PaneChance& pane : chance.panes) {
        Finding finding;
        finding.code = Code::fit_chance;
        finding.id = "first-time-fit";
        finding.about = side_text(pane.side);
        finding.state = "share of " + std::to_string(chance.options.samples) +
                        " samples in which every limit of every edge holds";
        finding.value = finding.worst = pane.fit.value;
        finding.limit = kLeastChance;
        if (pane.fit.value < kLeastChance) {
            finding.status = Status::fail;
            finding.advice =
                "see the checks of this pane that warn: give the edge with the least margin more "
                "room or more engagement, or measure the sheet's shrink and thickness";
        }
        findings.push_back(std::move(finding));
    }
    return findings;
}

}  // namespace bowfront::study
