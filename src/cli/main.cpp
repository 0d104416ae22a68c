#include <cstdio>
#include <exception>

#include "bowfront/base/error.hpp"
#include "commands.hpp"
#include "exit_code.hpp"

namespace {

using bowfront::cli::ExitCode;

int run(int argc, const char* const* argv) {
    const auto parsed = bowfront::cli::parse(argc, argv);
    if (!parsed.request) {
        return parsed.exit_code;
    }
    return std::visit([](const auto& request) { return bowfront::cli::run(request); },
                      *parsed.request);
}

}  // namespace

// The only place that catches: every kind of error has its exit code here.
int main(int argc, char** argv) {
    try {
        return run(argc, argv);
    } catch (const bowfront::InputError& error) {
        std::fprintf(stderr, "%s\n", error.what());
        return ExitCode::bad_input;
    } catch (const bowfront::IoError& error) {
        std::fprintf(stderr, "%s\n", error.what());
        return ExitCode::no_output;
    } catch (const std::exception& error) {
        std::fprintf(stderr, "a fault of the program, please report it with the case file: %s\n",
                     error.what());
        return ExitCode::own_fault;
    }
}
