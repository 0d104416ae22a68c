#include "bowfront/io/schema.hpp"
#include "bowfront/materials/catalogue.hpp"
#include "commands.hpp"
#include "exit_code.hpp"
#include "standard_output.hpp"
#include "unknown_name.hpp"

namespace bowfront::cli {

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
        refuse_unknown("material", request.name, material_names());
    }
    return ExitCode::fine;
}

int run(const SchemaRequest& request) {
    const auto text = io::schema_text(request.name);
    if (!text) {
        refuse_unknown("schema", request.name, io::schema_names());
    }
    print(*text);
    return ExitCode::fine;
}

}  // namespace bowfront::cli
