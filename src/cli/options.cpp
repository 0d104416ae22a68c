#include "options.hpp"

#include <CLI/CLI.hpp>
#include <map>

#include "exit_code.hpp"

namespace bowfront::cli {
namespace {

constexpr const char* kExitCodes =
    "Exit codes: 0 all checks pass (warnings allowed), 1 a check fails, 2 bad input or usage,\n"
    "3 the output could not be written, 4 a fault of the program's own.";

// The requests that the options of each command are bound to.
struct Requests {
    StartRequest start;
    CheckRequest check;
    MakeRequest make;
    ExplainRequest explain;
    MaterialsRequest materials;
    SchemaRequest schema;
};

void add_case(CLI::App& command, std::string& file) {
    command.add_option("CASE", file, "case file (JSON, comments allowed)")->required();
}

void add_start(CLI::App& app, StartRequest& request, std::optional<Request>& chosen) {
    CLI::App* command = app.add_subcommand("start", "Print a commented case file to begin with");
    command->add_option("SHAPE", request.shape, "bow-front (the default) or rectangle");
    command->add_option("-o,--output", request.file, "write it to this new file instead");
    command->callback([&] { chosen = request; });
}

void add_check(CLI::App& app, CheckRequest& request, std::optional<Request>& chosen) {
    CLI::App* command = app.add_subcommand("check", "Read and solve a case, print the verdict");
    add_case(*command, request.case_file);
    command->add_flag("--json", request.json, "print what report.json would hold");
    command->callback([&] { chosen = request; });
}

void add_make(CLI::App& app, MakeRequest& request, std::optional<Request>& chosen) {
    CLI::App* command =
        app.add_subcommand("make", "Make solids, patterns and report, and write them to a folder");
    add_case(*command, request.case_file);
    command->add_option("-o,--output", request.folder, "folder for the output")->required();
    command->add_flag("--json", request.json, "print report.json's content to standard output");
    command->add_flag("--despite-failures", request.despite_failures,
                      "write what is cut from even though a check fails; each file says so");
    const std::map<std::string, dxf::Version> versions{{"ac1015", dxf::Version::ac1015},
                                                       {"r12", dxf::Version::r12}};
    command->add_option("--dxf", request.dxf_version, "release of the DXF files: ac1015, r12")
        ->transform(CLI::CheckedTransformer(versions, CLI::ignore_case));
    command->callback([&] { chosen = request; });
}

void add_explain(CLI::App& app, ExplainRequest& request, std::optional<Request>& chosen) {
    CLI::App* command = app.add_subcommand("explain", "Print how one figure comes about");
    add_case(*command, request.case_file);
    command
        ->add_option("QUANTITY", request.quantity,
                     "path in the report, as panes/front/blank/length")
        ->required();
    command->add_flag("--json", request.json, "print it as JSON");
    command->callback([&] { chosen = request; });
}

void add_libraries(CLI::App& app, Requests& requests, std::optional<Request>& chosen) {
    CLI::App* materials =
        app.add_subcommand("materials", "Print the library of materials, or one of them in full");
    materials->add_option("NAME", requests.materials.name, "a name of the library");
    materials->callback([&] { chosen = requests.materials; });
    CLI::App* schema = app.add_subcommand("schema", "Print a JSON schema: case or report");
    schema->add_option("NAME", requests.schema.name, "case or report")->required();
    schema->callback([&] { chosen = requests.schema; });
}

}  // namespace

Parsed parse(int argc, const char* const* argv) {
    CLI::App app{"Display cases with bent fronts: from a case file to parts that fit", "bowfront"};
    app.set_version_flag("--version", std::string("bowfront ") + BOWFRONT_VERSION);
    app.require_subcommand(1);
    app.footer(kExitCodes);
    Requests requests;
    Parsed parsed;
    add_start(app, requests.start, parsed.request);
    add_check(app, requests.check, parsed.request);
    add_make(app, requests.make, parsed.request);
    add_explain(app, requests.explain, parsed.request);
    add_libraries(app, requests, parsed.request);
    try {
        app.parse(argc, argv);
    } catch (const CLI::ParseError& error) {
        // The library has an exit code for each kind of usage error; ours is one.
        parsed.request.reset();
        parsed.exit_code = app.exit(error) == 0 ? ExitCode::fine : ExitCode::bad_input;
    }
    return parsed;
}

}  // namespace bowfront::cli
