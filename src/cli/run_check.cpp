#include "bowfront/pipeline/design.hpp"
#include "bowfront/report/report.hpp"
#include "commands.hpp"
#include "exit_code.hpp"
#include "standard_output.hpp"

namespace bowfront::cli {

int run(const CheckRequest& request) {
    const Design design = bowfront::design(read_text(request.case_file, io::kMostBytes),
                                           request.case_file, request.chance);
    const report::Content content{design.c(), design.read.assumed, design.sums, design.chance,
                                  design.spreads, design.shop, design.findings};
    print(request.json ? report::to_json(content) : report::to_text(content));
    return design.verdict() == Status::fail ? ExitCode::check_fails : ExitCode::fine;
}

}  // namespace bowfront::cli
