#include "options.hpp"

#include <CLI/CLI.hpp>
#include <charconv>
#include <cstdio>
#include <sstream>
#include <string_view>
#include <vector>

#include "exit_code.hpp"
#include "standard_output.hpp"
#include "unknown_name.hpp"

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
    SweepRequest sweep;
    CalibrateRequest calibrate;
    InspectRequest inspect;
    MaterialsRequest materials;
    SchemaRequest schema;
};

// An empty text names no file: most often a shell's variable that was never set.
CLI::Validator not_empty() {
    return {[](std::string& text) {
                return text.empty() ? std::string("the name is empty") : std::string();
            },
            ""};
}

void add_case(CLI::App& command, std::string& file) {
    command.add_option("CASE", file, "case file (JSON, comments allowed)")
        ->required()
        ->check(not_empty());
}

// Bounds that keep a slip of the finger from running for hours, and seeds exact in JSON.
void add_chance(CLI::App& command, study::ChanceOptions& chance) {
    command.add_option("--samples", chance.samples, "samples for the chance of a first-time fit")
        ->check(CLI::Range(1, 10'000'000))
        ->capture_default_str();
    command.add_option("--seed", chance.seed, "seed of the samples")
        ->check(CLI::Range(std::uint64_t{0}, std::uint64_t{1} << 53))
        ->capture_default_str();
}

void add_start(CLI::App& app, StartRequest& request, std::optional<Request>& chosen) {
    CLI::App* command = app.add_subcommand("start", "Print a commented case file to begin with");
    command->add_option("SHAPE", request.shape,
                        "bow-front (the default), bow-ends, half-round, polygon, quarter-round, "
                        "rectangle, serpentine or sides; or a way to open a case: "
                        "access-hinged-door, access-lift-off-top, access-lift-out-pane or "
                        "access-sliding-pair");
    command->add_option("-o,--output", request.file, "write it to this new file instead")
        ->check(not_empty());
    command->callback([&] { chosen = request; });
}

void add_check(CLI::App& app, CheckRequest& request, std::optional<Request>& chosen) {
    CLI::App* command = app.add_subcommand("check", "Read and solve a case, print the verdict");
    add_case(*command, request.case_file);
    CLI::Option* const json =
        command->add_flag("--json", request.json, "print what report.json would hold");
    command
        ->add_option("--suggest", request.suggest,
                     "write a corrected case to this new file, and print what was changed and what "
                     "is left; the exit code is that of CASE as it was given")
        ->check(not_empty())
        ->excludes(json);
    add_chance(*command, request.chance);
    command->callback([&] { chosen = request; });
}

void add_make(CLI::App& app, MakeRequest& request, std::optional<Request>& chosen) {
    CLI::App* command =
        app.add_subcommand("make", "Make solids, patterns and report, and write them to a folder");
    add_case(*command, request.case_file);
    command->add_option("-o,--output", request.folder, "folder for the output")
        ->required()
        ->check(not_empty());
    command->add_flag("--json", request.json, "print report.json's content to standard output");
    add_chance(*command, request.chance);
    command->add_flag("--despite-failures", request.despite_failures,
                      "write what is cut from even though a check fails; each file says so");
    command
        ->add_option_function<std::string>(
            "--dxf",
            [&request](const std::string& name) {
                request.dxf_version = name == "r12" ? dxf::Version::r12 : dxf::Version::ac1015;
            },
            "release of the DXF files, ac1015 where nothing is said")
        ->transform(CLI::IsMember({"ac1015", "r12"}, CLI::ignore_case));
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

// `I/N`, both from 1.
std::string parse_shard(const std::string& text, study::Shard& shard) {
    const auto number = [](std::string_view digits, std::size_t& out) {
        const auto result = std::from_chars(digits.data(), digits.data() + digits.size(), out);
        return result.ec == std::errc{} && result.ptr == digits.data() + digits.size();
    };
    const std::size_t slash = text.find('/');
    const bool right = slash != std::string::npos &&
                       number(std::string_view(text).substr(0, slash), shard.number) &&
                       number(std::string_view(text).substr(slash + 1), shard.of) &&
                       shard.number >= 1 && shard.number <= shard.of &&
                       shard.of <= study::kMostVariants;
    return right ? std::string() : "\"" + text + "\" is no part such as 1/4";
}

void add_sweep(CLI::App& app, SweepRequest& request, std::optional<Request>& chosen) {
    CLI::App* command =
        app.add_subcommand("sweep", "Solve and check a grid of variants, print a table (CSV)");
    add_case(*command, request.case_file);
    command
        ->add_option("--vary", request.vary,
                     "POINTER=FROM:TO:STEP: a number of the case file by its JSON pointer, as "
                     "/plan/front/radius=400:450:5; may be given again, the last varies fastest")
        ->required()
        ->allow_extra_args(false);
    command->add_option("-o,--output", request.file, "write the table to this new file instead")
        ->check(not_empty());
    command
        ->add_option("--plot", request.plot,
                     "draw the least worst margin over one or two varied numbers (a new SVG file)")
        ->check(not_empty());
    command
        ->add_option("--samples", request.samples,
                     "samples for the chance of a first-time fit of each variant; 0: leave it out")
        ->check(CLI::Range(0, 10'000'000))
        ->capture_default_str();
    command->add_option("--seed", request.seed, "seed of the samples")
        ->check(CLI::Range(std::uint64_t{0}, std::uint64_t{1} << 53))
        ->capture_default_str();
    command->add_option("--jobs", request.jobs, "threads; all that the machine has by default")
        ->check(CLI::Range(1, 1024));
    command->add_option_function<std::string>(
        "--shard",
        [&request](const std::string& text) {
            if (std::string fault = parse_shard(text, request.shard); !fault.empty()) {
                throw CLI::ValidationError("--shard", fault);
            }
        },
        "I/N: only part I of N; the parts joined in order are the whole table");
    command->footer(
        "Lengths in the table are in mm. \"margin\" is the least worst margin of all checks that\n"
        "hold a length of pane or frame against its limit; \"verdict\" is that of all checks.\n"
        "The exit code is 0 when the table is whole, whatever the verdicts in it.");
    command->callback([&] { chosen = request; });
}

void add_calibrate(CLI::App& app, CalibrateRequest& request, std::optional<Request>& chosen) {
    CLI::App* command = app.add_subcommand(
        "calibrate", "Print what measured samples tell of a sheet, as an entry for the case file");
    command
        ->add_option("COUPONS", request.coupons_file,
                     "CSV file, columns direction,before,after (coupons before and after heating) "
                     "or radius_on_form,chord,rise (test arcs, measured on the inside face)")
        ->required()
        ->check(not_empty());
    command->add_option("--like", request.like,
                        "the library's sheet for what was not measured, cast-acrylic where nothing "
                        "is said");
    command->add_option("--key", request.key, "name of the entry, measured where nothing is said");
    command->add_flag("--json", request.json, "print every figure behind the entry as JSON");
    command->callback([&] { chosen = request; });
}

void add_inspect(CLI::App& app, InspectRequest& request, std::optional<Request>& chosen) {
    CLI::App* command =
        app.add_subcommand("inspect", "Print the fit of what was made, and what can still be done");
    add_case(*command, request.case_file);
    command
        ->add_option("MEASURED", request.measured_file,
                     "what was measured (JSON; make writes one to fill in, measuring-card.json)")
        ->required()
        ->check(not_empty());
    command->add_flag("--json", request.json, "print it as JSON");
    command->callback([&] { chosen = request; });
}

void add_libraries(CLI::App& app, Requests& requests, std::optional<Request>& chosen) {
    CLI::App* materials =
        app.add_subcommand("materials", "Print the library of materials, or one of them in full");
    materials->add_option("NAME", requests.materials.name, "a name of the library");
    materials->callback([&] { chosen = requests.materials; });
    CLI::App* schema = app.add_subcommand("schema", "Print a JSON schema: case, measured or report");
    schema->add_option("NAME", requests.schema.name, "case, measured or report")->required();
    schema->callback([&] { chosen = requests.schema; });
}

// A first word that is no command is named, which the library would not do.
void refuse_unknown_command(const CLI::App& app, int argc, const char* const* argv) {
    if (argc < 2 || std::string_view(argv[1]).starts_with('-')) {
        return;
    }
    std::vector<std::string_view> names;
    for (const CLI::App* command : app.get_subcommands({})) {
        if (command->get_name() == argv[1]) {
            return;
        }
        names.push_back(command->get_name());
    }
    refuse_unknown("command", argv[1], names);
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
    add_sweep(app, requests.sweep, parsed.request);
    add_calibrate(app, requests.calibrate, parsed.request);
    add_inspect(app, requests.inspect, parsed.request);
    add_libraries(app, requests, parsed.request);
    refuse_unknown_command(app, argc, argv);
    try {
        app.parse(argc, argv);
    } catch (const CLI::ParseError& error) {
        // The library has an exit code for each kind of usage error; ours is one.
        std::ostringstream asked_for;
        std::ostringstream complaint;
        const int code = app.exit(error, asked_for, complaint);
        std::fputs(complaint.str().c_str(), stderr);
        print(asked_for.str());
        parsed.request.reset();
        parsed.exit_code = code == 0 ? ExitCode::fine : ExitCode::bad_input;
    }
    return parsed;
}

}  // namespace bowfront::cli
