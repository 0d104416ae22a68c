#include <algorithm>
#include <optional>
#include <thread>

#include "bowfront/base/error.hpp"
#include "bowfront/pipeline/design.hpp"
#include "bowfront/pipeline/output_file.hpp"
#include "bowfront/pipeline/sweep_case.hpp"
#include "bowfront/study/sweep_plot.hpp"
#include "commands.hpp"
#include "exit_code.hpp"
#include "standard_output.hpp"

namespace bowfront::cli {
namespace {

std::optional<study::ChanceOptions> chance_of(const SweepRequest& request) {
    if (request.samples == 0) {
        return std::nullopt;
    }
    return study::ChanceOptions{request.samples, request.seed};
}

}  // namespace

int run(const SweepRequest& request) {
    study::Sweep sweep = sweep_of(read_text(request.case_file, io::kMostBytes), request.case_file,
                                  request.vary);
    sweep.chance = chance_of(request);
    sweep.shard = request.shard;
    sweep.jobs = request.jobs != 0
                     ? request.jobs
                     : std::max<std::size_t>(1, std::thread::hardware_concurrency());
    std::optional<study::SweepPlot> plot;
    std::optional<NewFile> drawing;
    if (!request.plot.empty()) {
        plot.emplace(sweep);
        drawing.emplace(request.plot);
    }
    std::optional<NewFile> table;
    if (!request.file.empty()) {
        table.emplace(request.file);
    }
    study::run(sweep, [&](const study::TablePart& part) {
        if (table) {
            table->write(part.text);
        } else {
            print(part.text);
        }
        if (plot) {
            plot->add(part);
        }
    });
    if (plot) {
        drawing->write(plot->svg());
        drawing->finish();
    }
    if (table) {
        table->finish();
    }
    return ExitCode::fine;
}

}  // namespace bowfront::cli
