#include "bowfront/study/shop_sizes.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <string>

#include "bowfront/base/contract.hpp"
#include "bowfront/base/number_text.hpp"
#include "bowfront/fit/checks.hpp"

namespace bowfront::study {
namespace {

// Of a step: far above the rounding of the sums, far below anything that could be measured.
constexpr double kWhole = 1e-6;
// A limit that is kept exactly is kept, mm: above the rounding of the sums.
constexpr double kOnTheLimit = 1e-9;

constexpr std::array kRoundings{Rounding::down, Rounding::up};

// The direction that a size of a pane is measured in.
enum class Way { upright, sideways };

void take(double nominal, double worst, Slack& slack) {
    slack.nominal = std::min(slack.nominal, nominal);
    slack.worst = std::min(slack.worst, worst);
}

Slack least(Slack a, const Slack& b) {
    take(b.nominal, b.worst, a);
    return a;
}

void take_edge(const PaneSums<double>& pane, PaneEdge edge, Slack& slack) {
    const EdgeSums<double>& sums = pane.edge(edge);
    take(sums.settled - pane.least_engagement, sums.engagement_least - pane.least_engagement, slack);
}

// What the limits leave that a pane's size in one direction decides.
Slack slack_of(const Case& c, const PaneSums<double>& pane, Way way) {
    Slack slack{std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity()};
    const auto room = [&](const RoomSums<double>& sums) {
        take(sums.nominal - fit::kLeastRoom, sums.worst - fit::kLeastRoom, slack);
    };
    if (way == Way::sideways) {
        take_edge(pane, PaneEdge::start, slack);
        take_edge(pane, PaneEdge::end, slack);
        room(pane.room_sideways);
        return slack;
    }
    take_edge(pane, PaneEdge::top, slack);
    room(pane.room_vertical);
    if (c.frame.loading.value == Loading::lift_and_drop) {
        const LoadingSums<double>& loading = pane.loading;
        take(loading.play - c.fit.loading_clearance.value, loading.play_worst, slack);
        const double depth = c.frame.groove.top_depth.value;
        take(depth - loading.tilt_rise, depth - loading.tilt_rise_worst, slack);
        const double width = c.frame.groove.width.value;
        take(width - loading.tilt_width, width - loading.tilt_width_worst, slack);
    }
    return slack;
}

Slack slack_of(const Case& c, const PaneSums<double>& pane) {
    return least(slack_of(c, pane, Way::upright), slack_of(c, pane, Way::sideways));
}

// The exact sizes as the case's own, so that posts of another length don't change them.
Case with_own_sizes(Case c, const CaseSums<double>& sums) {
    for (PaneSpec& spec : c.panes) {
        if (spec.blank.method.value != BlankMethod::as_cut) {
            const PaneSums<double>& pane = *sums.pane(spec.side);
            spec.length = Sourced<double>{pane.length, {}};
            spec.height = Sourced<double>{pane.height, {}};
        }
    }
    return c;
}

// A pane of the size that a shop gives it.
struct PaneSize {
    double length = 0;
    double width = 0;
};

void resize(const PaneSize& size, PaneSpec& spec) {
    if (spec.blank.method.value == BlankMethod::trim_after) {
        spec.length = Sourced<double>{size.length, {}};
        spec.height = Sourced<double>{size.width, {}};
        return;
    }
    spec.blank.method.value = BlankMethod::as_cut;
    spec.blank.length = Sourced<double>{size.length, {}};
    spec.blank.width = Sourced<double>{size.width, {}};
}

class Shopper {
  public:
    Shopper(const Case& c, const CaseSums<double>& sums)
        : sums_(sums), step_(c.shop.step.value), case_(with_own_sizes(c, sums)) {}

    ShopSizes run() {
        ShopSizes sizes;
        sizes.step = step_;
        sizes.post = post_length();
        frames_.push_back(case_);
        if (std::abs(sizes.post.over()) > 0) {
            frames_.push_back(case_);
            frames_.back().frame.clear_height.value = sizes.post.size;
        }
        for (const PaneSums<double>& pane : sums_.panes) {
            sizes.panes.push_back(pane_sizes(pane));
        }
        return sizes;
    }

  private:
    [[nodiscard]] ShopSize post_length() const {
        const double exact = case_.frame.clear_height.value;
        ShopSize best{exact, whole_steps(exact, step_, Rounding::down)};
        double most = -std::numeric_limits<double>::infinity();
        for (const Rounding rounding : kRoundings) {
            Case tried = case_;
            tried.frame.clear_height.value = whole_steps(exact, step_, rounding);
            if (!(tried.frame.clear_height.value > 0)) {
                continue;  // posts shorter than a step
            }
            double worst = std::numeric_limits<double>::infinity();
            for (const PaneSums<double>& pane : fit::solve(tried).panes) {
                worst = std::min(worst, slack_of(tried, pane, Way::upright).worst);
            }
            if (worst > most) {
                most = worst;
                best.size = tried.frame.clear_height.value;
            }
        }
        return best;
    }

    // The least that the limits leave of one pane, whichever length the posts have.
    [[nodiscard]] Slack slack_with(const PaneSize& size, const CaseSide& side, Way way) {
        Slack slack{std::numeric_limits<double>::infinity(),
                    std::numeric_limits<double>::infinity()};
        for (Case& tried : frames_) {
            tried.panes = {*case_.pane(side)};
            resize(size, tried.panes.front());
            const CaseSums<double> sums = fit::solve(tried);
            slack = least(slack, slack_of(tried, sums.panes.front(), way));
        }
        return slack;
    }

    [[nodiscard]] PaneShopSizes pane_sizes(const PaneSums<double>& pane) {
        PaneShopSizes sizes;
        sizes.side = pane.side;
        sizes.length = {pane.blank_length, pane.blank_length};
        sizes.width = {pane.blank_width, pane.blank_width};
        sizes.exact = sizes.slack = slack_of(case_, pane);
        const BlankMethod method = case_.pane(pane.side)->blank.method.value;
        if (method == BlankMethod::as_cut) {
            return sizes;
        }
        const bool trimmed = pane.heated && method == BlankMethod::trim_after;
        const PaneSize exact = trimmed ? PaneSize{pane.length, pane.height}
                                       : PaneSize{pane.blank_length, pane.blank_width};
        PaneSize best = exact;
        best.length = best_of(exact, pane.side, Way::sideways);
        best.width = best_of(exact, pane.side, Way::upright);
        sizes.slack = least(slack_with(best, pane.side, Way::sideways),
                            slack_with(best, pane.side, Way::upright));
        if (trimmed) {
            sizes.trimmed_length = ShopSize{exact.length, best.length};
            sizes.trimmed_height = ShopSize{exact.width, best.width};
            sizes.length.size = whole_steps(sizes.length.exact, step_, Rounding::up);
            sizes.width.size = whole_steps(sizes.width.exact, step_, Rounding::up);
        } else {
            sizes.length.size = best.length;
            sizes.width.size = best.width;
        }
        return sizes;
    }

    // The size in one direction that leaves most, the other direction being exact.
    [[nodiscard]] double best_of(const PaneSize& exact, const CaseSide& side, Way way) {
        double best = 0;
        double most = -std::numeric_limits<double>::infinity();
        for (const Rounding rounding : kRoundings) {
            PaneSize tried = exact;
            double& size = way == Way::sideways ? tried.length : tried.width;
            size = whole_steps(size, step_, rounding);
            if (!(size > 0)) {
                continue;  // a pane smaller than a step
            }
            const double worst = slack_with(tried, side, way).worst;
            if (worst > most) {
                most = worst;
                best = size;
            }
        }
        return best;
    }

    const CaseSums<double>& sums_;
    double step_;
    Case case_;
    // With posts of the exact length, and of the shop's where it differs; the pane that is tried is
    // put in, so that what one pane costs does not grow with the others.
    std::vector<Case> frames_;
};

Finding shop_check(const PaneShopSizes& pane, double step) {
    Finding finding;
    finding.code = Code::fit_shop_size;
    finding.id = "shop-size";
    finding.about = side_text(pane.side);
    finding.state = "cut by hand in steps of " + rounded_text(step, 3) +
                    " mm, what the tightest limit leaves";
    finding.value = pane.slack.nominal;
    finding.worst = pane.slack.worst;
    finding.bound = Bound::at_least;
    finding.unit = "mm";
    // What the exact sizes break already is no fault of the rounding.
    const double nominal_limit = std::min(0.0, pane.exact.nominal);
    const double worst_limit = std::min(0.0, pane.exact.worst);
    if (finding.value < nominal_limit - kOnTheLimit) {
        finding.status = Status::fail;
        finding.limit = nominal_limit;
    } else {
        finding.status =
            finding.worst < worst_limit - kOnTheLimit ? Status::warn : Status::pass;
        finding.limit = worst_limit;
    }
    if (finding.status != Status::pass) {
        finding.advice = "cut this pane to its exact size by its pattern, or set a finer step "
                         "under \"shop\"";
    }
    return finding;
}

// Names a size and how many steps it is.
class Explainer {
  public:
    Explainer(const Case& c, Workings& workings)
        : workings_(workings),
          step_(workings.input(c.shop.step.origin.pointer, "δ", Kind::length, c.shop.step.value,
                               c.shop.step.origin)) {
        workings.figure("shop/step", "δ", Kind::length, step_, "what the shop can set");
    }

    void size(const std::string& path, const std::string& exact_path, std::string_view exact_symbol,
              const ShopSize& size, std::string_view why, bool cut_already = false) {
        const Traced exact =
            workings_.input(exact_path, exact_symbol, Kind::length, size.exact, {});
        const double steps = std::round(size.size / step_.value());
        if (cut_already) {
            name(path, exact, exact, "cut already: stays as it is");
            return;
        }
        const Traced count = workings_.solved(
            path + "/steps", "n", Kind::count, steps,
            size.over() < 0 ? "the most whole steps that are no more than the exact size"
                            : "the fewest whole steps that are no less than the exact size",
            {exact, step_}, why);
        name(path, count * step_, exact, "whole steps");
    }

  private:
    void name(const std::string& path, const Traced& size, const Traced& exact,
              std::string_view source) {
        const Traced set = workings_.figure(path + "/size", "s", Kind::length, size, source);
        workings_.figure(path + "/over", "Δs", Kind::length, set - exact,
                         "shop's size less exact size");
    }

    Workings& workings_;
    Traced step_;
};

}  // namespace

double whole_steps(double length, double step, Rounding rounding) {
    BOWFRONT_EXPECTS(length >= 0 && step > 0);
    const double steps = length / step;
    const double nearest = std::round(steps);
    if (std::abs(steps - nearest) < kWhole) {
        return nearest * step;
    }
    return (rounding == Rounding::up ? std::ceil(steps) : std::floor(steps)) * step;
}

ShopSizes shop_sizes(const Case& c, const CaseSums<double>& sums) {
    return Shopper(c, sums).run();
}

std::vector<Finding> shop_checks(const ShopSizes& sizes) {
    std::vector<Finding> findings;
    for (const PaneShopSizes& pane : sizes.panes) {
        findings.push_back(shop_check(pane, sizes.step));
    }
    return findings;
}

void explain_shop_sizes(const Case& c, const ShopSizes& sizes, Workings& workings) {
    constexpr std::string_view kSafer =
        "the way that leaves more to the limit that it leaves least to, at worst";
    constexpr std::string_view kUp = "up: the pane is trimmed after forming";
    Explainer explainer(c, workings);
    explainer.size("shop/post_length", c.frame.clear_height.origin.pointer, "h", sizes.post,
                   kSafer);
    for (const PaneShopSizes& pane : sizes.panes) {
        const std::string of = "panes/" + std::string(side_text(pane.side)) + "/";
        const std::string shop = of + "blank/shop/";
        const std::string_view why = pane.trimmed_length ? kUp : kSafer;
        const bool cut = c.pane(pane.side)->blank.method.value == BlankMethod::as_cut;
        explainer.size(shop + "length", of + "blank/length", "L₀", pane.length, why, cut);
        explainer.size(shop + "width", of + "blank/width", "W₀", pane.width, why, cut);
        if (pane.trimmed_length) {
            explainer.size(shop + "trimmed_length", of + "formed/developed_length", "L",
                           *pane.trimmed_length, kSafer);
            explainer.size(shop + "trimmed_height", of + "formed/height", "W",
                           *pane.trimmed_height, kSafer);
        }
    }
}

}  // namespace bowfront::study
