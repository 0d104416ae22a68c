#include <span>

#include "bowfront/base/error.hpp"
#include "bowfront/io/nearest.hpp"
#include "bowfront/io/schema.hpp"
#include "bowfront/materials/catalogue.hpp"
#include "commands.hpp"
#include "exit_code.hpp"
#include "standard_output.hpp"

namespace bowfront::cli {
namespace {

[[noreturn]] void refuse(std::string_view kind, const std::string& name,
                         std::span<const std::string_view> known) {
    const std::string near = io::nearest(name, known);
    std::string wanted;
    if (near.empty()) {
        wanted = "there are";
        for (const std::string_view word : known) {
            wanted += wanted.ends_with("are") ? " " : ", ";
            wanted += word;
        }
    } else {
        wanted = "did you mean " + near + "?";
    }
    throw InputError({{Code::input_value, {}, 0, 0, {},
                       "there is no " + std::string(kind) + " \"" + name + "\"", wanted}});
}

}  // namespace

int run(const MaterialsRequest& request) {
    if (request.name.empty()) {
        print(list_materials());
    } else if (const Sheet* sheet = find_sheet(request.name)) {
        print(describe(*sheet));
    } else if (const Timber* timber = find_timber(request.name)) {
        print(describe(*timber));
    } else if (const Board* board = find_board(request.name)) {
        print(describe(*board));
    } else {
        refuse("material", request.name, material_names());
    }
    return ExitCode::fine;
}

int run(const SchemaRequest& request) {
    const auto text = io::schema_text(request.name);
    if (!text) {
        refuse("schema", request.name, io::schema_names());
    }
    print(*text);
    return ExitCode::fine;
}

}  // namespace bowfront::cli
