#include "bowfront/pipeline/advise.hpp"
#include "bowfront/pipeline/output_file.hpp"
#include "bowfront/report/correction.hpp"
#include "bowfront/report/report.hpp"
#include "commands.hpp"
#include "exit_code.hpp"
#include "standard_output.hpp"

namespace bowfront::cli {
namespace {

int exit_code(const Design& design) {
    return design.verdict() == Status::fail ? ExitCode::check_fails : ExitCode::fine;
}

// The new file is opened first, so that a name that is taken is refused before any work; it goes
// away again where nothing is written to it.
int suggest(const CheckRequest& request, const std::string& text) {
    NewFile file(request.suggest);
    const Corrected result = corrected(text, request.case_file, request.chance);
    std::vector<report::MadeChange> made;
    for (const Correction& one : result.made) {
        made.push_back({one.check, one.change});
    }
    if (!made.empty()) {
        file.write(result.text);
        file.finish();
    }
    print(report::correction_text(result.before.findings, result.after.findings, made,
                                  request.suggest));
    return exit_code(result.before);
}

}  // namespace

int run(const CheckRequest& request) {
    const std::string text = read_text(request.case_file, io::kMostBytes);
    if (!request.suggest.empty()) {
        return suggest(request, text);
    }
    Design design = bowfront::design(text, request.case_file, request.chance);
    advise(design, text);
    report::Content content{design.c(), design.read.assumed, design.sums, design.chance,
                                  design.spreads, design.shop, design.findings,
                                  design.paths, design.whole, design.cost, design.shelves,
                                  design.build, design.timber};
    if (design.access) {
        content.opened.emplace(report::OpenedEntry{design.access->sums, design.access->weight});
    }
    print(request.json ? report::to_json(content) : report::to_text(content));
    return exit_code(design);
}

}  // namespace bowfront::cli
