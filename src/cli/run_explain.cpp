#include "bowfront/pipeline/advise.hpp"
#include "commands.hpp"
#include "exit_code.hpp"
#include "standard_output.hpp"

namespace bowfront::cli {

int run(const ExplainRequest& request) {
    const std::string text = read_text(request.case_file, io::kMostBytes);
    Design design = bowfront::design(text, request.case_file);
    if (request.quantity.starts_with("checks/")) {
        advise(design, text);
    }
    print(explain_figure(design, request.quantity, request.json));
    return ExitCode::fine;
}

}  // namespace bowfront::cli
