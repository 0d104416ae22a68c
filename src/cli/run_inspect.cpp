#include "bowfront/pipeline/inspect.hpp"

#include "bowfront/report/inspection.hpp"
#include "commands.hpp"
#include "exit_code.hpp"
#include "standard_output.hpp"

namespace bowfront::cli {

int run(const InspectRequest& request) {
    // The chance of a first-time fit is past asking: one sample, and it is not printed.
    const Design design = bowfront::design(read_text(request.case_file, io::kMostBytes),
                                           request.case_file, {1, 1});
    const Inspected inspected =
        bowfront::inspect(design, read_text(request.measured_file, io::kMostBytes),
                          request.measured_file);
    print(request.json ? report::inspection_json(design.c(), inspected.assumed,
                                                 inspected.inspection)
                       : report::inspection_text(design.c(), inspected.assumed,
                                                 inspected.inspection));
    return inspected.inspection.verdict() == Status::fail ? ExitCode::check_fails
                                                          : ExitCode::fine;
}

}  // namespace bowfront::cli
