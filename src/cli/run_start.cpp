#include <algorithm>

#include "bowfront/io/starter.hpp"
#include "bowfront/pipeline/output_file.hpp"
#include "commands.hpp"
#include "exit_code.hpp"
#include "standard_output.hpp"
#include "unknown_name.hpp"

namespace bowfront::cli {

int run(const StartRequest& request) {
    const auto shapes = io::starter_shapes();
    if (std::find(shapes.begin(), shapes.end(), request.shape) == shapes.end()) {
        refuse_unknown("starter", request.shape, shapes);
    }
    const std::string text = io::starter(request.shape);
    if (request.file.empty()) {
        print(text);
    } else {
        write_new_file(request.file, text);
    }
    return ExitCode::fine;
}

}  // namespace bowfront::cli
