#include <algorithm>
#include <cmath>

#include "solve.hpp"

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
    const double depth = pane.height * std::cos(angle) +
                         (pane.rise + pane.thickness) * std::sin(angle) - pane.opening;
    return depth > 0 ? depth * std::tan(angle) + pane.thickness * std::cos(angle) +
                           pane.rise * (1 - std::cos(angle))
                     : 0;  // out of the groove
}

// The most of it over the swing. Between two of the tilts that are tried the sum has one top at
// most; that is closed in on until its width no longer changes.
double widest_tilt(const TiltedPane& pane) {
    constexpr int kTilts = 64;
    constexpr double kSteepest = 1.5;  // rad
    int best = 0;
    double widest = pane.thickness;
    for (int i = 1; i <= kTilts; ++i) {
        const double width = tilt_width(pane, kSteepest * i / kTilts);
        if (width > widest) {
            widest = width;
            best = i;
        }
    }
    double low = kSteepest * std::max(0, best - 1) / kTilts;
    double high = kSteepest * std::min(kTilts, best + 1) / kTilts;
    constexpr int kThirds = 40;  // of 0.05 rad, to 5e-9: flat at the top, the width is exact
    for (int i = 0; i < kThirds; ++i) {
        const double a = low + (high - low) / 3;
        const double b = high - (high - low) / 3;
        const bool rises = tilt_width(pane, a) < tilt_width(pane, b);
        (rises ? low : high) = rises ? a : b;
    }
    return std::max(widest, tilt_width(pane, (low + high) / 2));
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
         pane.opening_height + top_depth - pane.height - pane.height_tolerance -
             t.opening_height - t.top_depth,
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
