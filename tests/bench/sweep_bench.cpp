// How fast the sums of a case are, and how a sweep grows with its threads.

#include <benchmark/benchmark.h>

#include <string>

#include "bowfront/fit/checks.hpp"
#include "bowfront/fit/sums.hpp"
#include "bowfront/pipeline/design.hpp"
#include "bowfront/pipeline/sweep_case.hpp"
#include "bowfront/study/chance.hpp"

namespace {

std::string pilot_boat() {
    return bowfront::read_text(BOWFRONT_SOURCE_DIR "/examples/pilot-boat/case.json",
                               bowfront::io::kMostBytes);
}

// The fit sums of the whole case: four panes in five states of the air, form and soak.
void sums_of_a_case(benchmark::State& state) {
    const auto read = bowfront::io::read_case(pilot_boat(), "case.json");
    for (auto _ : state) {
        benchmark::DoNotOptimize(bowfront::fit::solve(read.value));
    }
}
BENCHMARK(sums_of_a_case)->Unit(benchmark::kMicrosecond);

// A million samples of the chance of a first-time fit, on one thread.
void million_samples(benchmark::State& state) {
    const auto read = bowfront::io::read_case(pilot_boat(), "case.json");
    const auto sums = bowfront::fit::solve(read.value);
    for (auto _ : state) {
        benchmark::DoNotOptimize(
            bowfront::study::first_time_fit(read.value, sums, {1'000'000, 1}));
    }
}
BENCHMARK(million_samples)->Unit(benchmark::kMillisecond);

// What a variant costs besides: outlines and all checks.
void layout_and_checks(benchmark::State& state) {
    const auto read = bowfront::io::read_case(pilot_boat(), "case.json");
    const auto sums = bowfront::fit::solve(read.value);
    for (auto _ : state) {
        const auto layout = bowfront::fit::layout(read.value, sums);
        benchmark::DoNotOptimize(bowfront::fit::checks(read.value, sums, layout));
    }
}
BENCHMARK(layout_and_checks)->Unit(benchmark::kMicrosecond);

// Variants per second with a number of threads; twenty frames, each for two hundred variants.
void variants(benchmark::State& state) {
    auto sweep = bowfront::sweep_of(
        pilot_boat(), "case.json",
        {"/plan/front/radius=300:490:10", "/fit/end_clearance=1:5:0.02"});
    sweep.jobs = static_cast<std::size_t>(state.range(0));
    for (auto _ : state) {
        std::size_t bytes = 0;
        bowfront::study::run(sweep, [&](const bowfront::study::TablePart& part) {
            bytes += part.text.size();
        });
        benchmark::DoNotOptimize(bytes);
    }
    state.SetItemsProcessed(state.iterations() * static_cast<std::int64_t>(sweep.count()));
}
BENCHMARK(variants)->Arg(1)->Arg(2)->UseRealTime()->MeasureProcessCPUTime()->Unit(
    benchmark::kMillisecond);

}  // namespace

BENCHMARK_MAIN();
