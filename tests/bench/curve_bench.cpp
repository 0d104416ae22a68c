// What a front costs that is no arc of a circle: its curve, its lengths, its chain of arcs.

#include <benchmark/benchmark.h>

#include <numbers>

#include "bowfront/geom/arc_fit.hpp"
#include "bowfront/geom/least_rectangle.hpp"

namespace {

using bowfront::SmoothCurve;

/// Half an ellipse, 520 mm wide and 90 mm deep.
SmoothCurve elliptic_front() {
    return SmoothCurve(bowfront::EllipticArc{.centre = {},
                                             .semi_x = 260,
                                             .semi_y = 90,
                                             .rotation = 0,
                                             .from = std::numbers::pi,
                                             .to = 2 * std::numbers::pi});
}

/// A front that swings out and in again.
SmoothCurve free_front() {
    return SmoothCurve(bowfront::FreeLine{{{0, 0}, {150, -60}, {300, 20}, {450, 90}, {600, 0}}});
}

void make_free_front(benchmark::State& state) {
    for (auto _ : state) {
        benchmark::DoNotOptimize(free_front().length());
    }
}
BENCHMARK(make_free_front)->Unit(benchmark::kMicrosecond);

void parameter_of_a_length(benchmark::State& state) {
    const SmoothCurve curve = free_front();
    for (auto _ : state) {
        benchmark::DoNotOptimize(curve.parameter_at(0.37 * curve.length()));
    }
}
BENCHMARK(parameter_of_a_length)->Unit(benchmark::kMicrosecond);

void crossing_and_bends(benchmark::State& state) {
    const SmoothCurve curve = free_front();
    for (auto _ : state) {
        benchmark::DoNotOptimize(curve.self_crossing());
        benchmark::DoNotOptimize(curve.tightest());
        benchmark::DoNotOptimize(curve.inflections());
    }
}
BENCHMARK(crossing_and_bends)->Unit(benchmark::kMicrosecond);

// Chord errors of 1 mm down to 1e-4 mm; `arcs` is how many the chain has.
void chain_of_arcs(benchmark::State& state) {
    const SmoothCurve curve = state.range(0) == 0 ? elliptic_front() : free_front();
    const double error = 1.0 / static_cast<double>(state.range(1));
    std::size_t arcs = 0;
    for (auto _ : state) {
        arcs = bowfront::fit_arcs(curve, error).chain.size();
    }
    state.counters["arcs"] = static_cast<double>(arcs);
}
BENCHMARK(chain_of_arcs)
    ->ArgsProduct({{0, 1}, {1, 10, 100, 1000, 10000}})
    ->Unit(benchmark::kMicrosecond);

void least_rectangle_of_an_outline(benchmark::State& state) {
    const bowfront::Contour outline(
        {{{-200, 40}, 0.2}, {{200, 40}, 0}, {{140, 300}, -0.2}, {{-140, 300}}});
    for (auto _ : state) {
        benchmark::DoNotOptimize(bowfront::least_rectangle(outline));
    }
}
BENCHMARK(least_rectangle_of_an_outline)->Unit(benchmark::kMicrosecond);

}  // namespace
