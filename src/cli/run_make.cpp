#include <unistd.h>

#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <ctime>

#include "bowfront/base/error.hpp"
#include "bowfront/pipeline/advise.hpp"
#include "bowfront/pipeline/make.hpp"
#include "commands.hpp"
#include "exit_code.hpp"
#include "kernel_module.hpp"
#include "standard_output.hpp"

namespace bowfront::cli {
namespace {

volatile std::sig_atomic_t interrupted = 0;

void on_interrupt(int) { interrupted = 1; }

// Shows each step where a person looks on, and ends the work when he asks for it; what was
// written beside the folder is then taken away again.
class Progress {
  public:
    Progress() : terminal_(isatty(STDERR_FILENO) != 0) {
        for (const int signal : {SIGINT, SIGTERM, SIGHUP}) {
            if (std::signal(signal, on_interrupt) == SIG_IGN) {
                std::signal(signal, SIG_IGN);  // as under nohup, and it shall stay so
            }
        }
        // A file over the limit that is set for this process: the write fails and is told.
        std::signal(SIGXFSZ, SIG_IGN);
    }
    Progress(const Progress&) = delete;
    Progress& operator=(const Progress&) = delete;
    ~Progress() {
        if (terminal_) {
            std::fputs("\r\033[K", stderr);
        }
    }
    void operator()(const std::string& step) const {
        if (interrupted != 0) {
            throw IoError("output folder", "interrupted; what stood there is left as it was");
        }
        if (terminal_) {
            std::fprintf(stderr, "\r\033[K%s", step.c_str());
            std::fflush(stderr);
        }
    }

  private:
    bool terminal_;
};

// The same input gives the same bytes, so no clock is asked: the time that files carry is the one
// of the environment's SOURCE_DATE_EPOCH (reproducible-builds specification), else its zero.
std::string stamp_time() {
    const char* text = std::getenv("SOURCE_DATE_EPOCH");
    char* end = nullptr;
    const long long seconds = text != nullptr ? std::strtoll(text, &end, 10) : 0;
    constexpr long long kLatest = 253402300799;  // the last second of the year 9999
    const bool usable = text != nullptr && end != text && *end == '\0' && seconds >= 0 &&
                        seconds <= kLatest;
    const std::time_t time = usable ? static_cast<std::time_t>(seconds) : 0;
    std::tm parts{};
    gmtime_r(&time, &parts);
    char buffer[32];
    std::strftime(buffer, sizeof buffer, "%Y-%m-%dT%H:%M:%S", &parts);
    return buffer;
}

std::string closing_line(const Made& made, const MakeRequest& request) {
    switch (made.verdict()) {
        case Status::pass: return "made " + request.folder + ": every check passes";
        case Status::warn:
            return "made " + request.folder + ": passes with warnings, see report.json";
        case Status::fail: break;
    }
    return "made " + request.folder +
           (request.despite_failures
                ? ": A CHECK FAILS; patterns were written all the same, marked as failed"
                : ": A CHECK FAILS; nothing to cut from was written");
}

}  // namespace

int run(const MakeRequest& request) {
    const std::string text = read_text(request.case_file, io::kMostBytes);
    Design design = bowfront::design(text, request.case_file, request.chance);
    advise(design, text);
    MakeOptions options;
    options.folder = request.folder;
    options.despite_failures = request.despite_failures;
    options.dxf.version = request.dxf_version;
    options.stamp = {stamp_time(), "bowfront", BOWFRONT_VERSION};
    Made made;
    {
        const Progress progress;
        made = make(design, options, open_solid_shop(),
                    [&](const std::string& step) { progress(step); });
    }
    if (request.json) {
        print(made.report_json);
    } else {
        std::fputs(made.report_text.c_str(), stderr);
    }
    std::fprintf(stderr, "%s\n", closing_line(made, request).c_str());
    return made.verdict() == Status::fail ? ExitCode::check_fails : ExitCode::fine;
}

}  // namespace bowfront::cli
