#include <algorithm>

#include "bowfront/base/error.hpp"
#include "bowfront/io/nearest.hpp"
#include "bowfront/io/starter.hpp"
#include "bowfront/pipeline/output_file.hpp"
#include "commands.hpp"
#include "exit_code.hpp"
#include "standard_output.hpp"

namespace bowfront::cli {

int run(const StartRequest& request) {
    const auto shapes = io::starter_shapes();
    if (std::find(shapes.begin(), shapes.end(), request.shape) == shapes.end()) {
        std::string wanted = "there are";
        for (const std::string_view shape : shapes) {
            wanted += wanted.ends_with("are") ? " " : ", ";
            wanted += shape;
        }
        throw InputError({{Code::input_value, {}, 0, 0, {},
                           "there is no starter for \"" + request.shape + "\"", wanted}});
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
