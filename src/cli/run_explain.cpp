#include "bowfront/pipeline/design.hpp"
#include "commands.hpp"
#include "exit_code.hpp"
#include "standard_output.hpp"

namespace bowfront::cli {

int run(const ExplainRequest& request) {
    const Design design =
        bowfront::design(read_text(request.case_file, io::kMostBytes), request.case_file);
    print(explain_figure(design, request.quantity, request.json));
    return ExitCode::fine;
}

}  // namespace bowfront::cli
