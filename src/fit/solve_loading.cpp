#include <algorithm>
#include <cmath>
#include <numbers>

#include "over_states.hpp"

namespace bowfront::fit {
namespace {

constexpr std::string_view kGeometry = "geometry";
constexpr std::string_view kLimits = "limits of all tolerances added";

struct TiltedPane {
    double height;
    double opening;
    double rise;
    double thickness;
};

// The groove width that a pane's top edge takes at a tilt φ while its foot swings in, just clear of
// the base: e·sin φ + t·cos φ + f·(1 − cos φ), where e stands in the groove, measured along the face
// that stands higher: e·cos φ = W·cos φ + (f + t)·sin φ − H. With e measured along the lower face
// the sum would be too small by t·sin φ·tan φ, and let a pane pass that can't.
double tilt_width(const TiltedPane& pane, double angle) {
    const double sine = std::sin(angle);
    const double cosine = std::cos(angle);
    const double depth =
        pane.height * cosine + (pane.rise + pane.thickness) * sine - pane.opening;
    return depth > 0 ? depth * sine / cosine + pane.thickness * cosine + pane.rise * (1 - cosine)
                     : 0;  // out of the groove
}

// The most of it over the swing: tried at a few tilts, then closed in on between the neighbours of
// the best, where it has one top. Flat there: a tilt to 1e-7 rad gives the width to all digits.
double widest_tilt(const TiltedPane& pane) {
    constexpr int kTilts = 32;
    constexpr double kStep = 1.5 / kTilts;  // rad
    int best = 0;
    double widest = pane.thickness;
    for (int i = 1; i <= kTilts; ++i) {
        const double width = tilt_width(pane, kStep * i);
        if (width == 0) {
            break;  // out of the groove from here on
        }
        if (width > widest) {
            widest = width;
            best = i;
        }
    }
    constexpr double kGolden = 1 / std::numbers::phi;
    constexpr int kSections = 28;
    double low = kStep * std::max(0, best - 1);
    double high = kStep * (best + 1);
    double a = high - kGolden * (high - low);
    double b = low + kGolden * (high - low);
    double at_a = tilt_width(pane, a);
    double at_b = tilt_width(pane, b);
    for (int i = 0; i < kSections; ++i) {
        if (at_a < at_b) {
            low = a;
            a = b;
            at_a = at_b;
            b = low + kGolden * (high - low);
            at_b = tilt_width(pane, b);
        } else {
            high = b;
            b = a;
            at_b = at_a;
            a = high - kGolden * (high - low);
            at_a = tilt_width(pane, a);
        }
    }
    return std::max({widest, at_a, at_b});
}

}  // namespace

template <class N>
void solve_loading(const PaneTask<N>& task, N top_depth, PaneSums<N>& pane) {
    using std::sqrt;
    const FrameTolerances<N>& t = pane.tolerances;
    LoadingSums<N>& loading = pane.loading;
    loading.tilt_width = loading.tilt_width_worst = N(0);
    loading.tilt_rise = loading.tilt_rise_worst = N(0);
    const auto play = [&](N nominal, N worst, std::string_view source) {
        loading.play = task.figure("loading/play", "p", nominal, source);
        loading.play_worst = task.figure("loading/play_worst", "p_worst", worst, kLimits);
    };
    if (task.c.frame.loading.value == Loading::slide_in) {
        play(pane.room_sideways.nominal, pane.room_sideways.worst,
             "the pane slides down between the post grooves' bottoms");
        return;
    }
    if (task.c.frame.loading.value == Loading::beaded) {
        play(smaller(pane.room_vertical.nominal, pane.room_sideways.nominal),
             smaller(pane.room_vertical.worst, pane.room_sideways.worst),
             "the pane is laid into open rabbets");
        return;
    }
    play(pane.opening_height + top_depth - pane.height,
         over_states(task, pane, "lifted_play", "p", least_of<N>,
                     [&](const PaneState<N>& state) {
                         return pane.opening_height + top_depth * state.top -
                                pane.height * state.sheet;
                     }) -
             pane.height_tolerance - t.opening_height - t.top_depth,
         "lifted to the top groove's bottom, the foot must clear the base");
    const auto tilt = [&](std::string_view key, std::string_view symbol, N height, N opening,
                          N thickness) {
        return task.book.solved(
            {"panes", task.side, key}, symbol, Kind::length,
            widest_tilt({value_of(height), value_of(opening), value_of(pane.rise),
                         value_of(thickness)}),
            "largest e·sin φ + t·cos φ + f·(1 − cos φ) over the swing, e = W + (f + t)·tan φ − "
            "H/cos φ",
            {pane.height, pane.opening_height, pane.rise, thickness}, kGeometry);
    };
    const N tall = pane.height + pane.height_tolerance;
    const N low = pane.opening_height - t.opening_height;
    loading.tilt_width = tilt("loading/tilt_width", "b", pane.height, pane.opening_height,
                              pane.formed_thickness);
    loading.tilt_width_worst =
        tilt("loading/tilt_width_worst", "b_worst", tall, low, pane.thickest);
    const N deep = pane.rise + pane.formed_thickness;
    const N deep_worst = pane.rise + pane.thickest;
    loading.tilt_rise =
        task.figure("loading/tilt_rise", "z",
                    sqrt(pane.height * pane.height + deep * deep) - pane.opening_height,
                    "most that a tilted pane and the spread of its curved edge stand up");
    loading.tilt_rise_worst = task.figure("loading/tilt_rise_worst", "z_worst",
                                          sqrt(tall * tall + deep_worst * deep_worst) - low, kLimits);
}

template void solve_loading(const PaneTask<double>&, double, PaneSums<double>&);
template void solve_loading(const PaneTask<Traced>&, Traced, PaneSums<Traced>&);

}  // namespace bowfront::fit
