// A user of the libraries without the solid kernel: reads a case, prints its verdict.

#include <cstdio>
#include <fstream>
#include <sstream>

#include "bowfront/base/error.hpp"
#include "bowfront/fit/checks.hpp"
#include "bowfront/io/read_case.hpp"

int main(int argc, char** argv) {
    if (argc != 2) {
        return 2;
    }
    std::ostringstream text;
    text << std::ifstream(argv[1]).rdbuf();
    try {
        const auto read = bowfront::io::read_case(text.str(), argv[1]);
        if (!bowfront::fit::objections(read.value).empty()) {
            return 2;
        }
        const auto sums = bowfront::fit::solve(read.value);
        const auto layout = bowfront::fit::layout(read.value, sums);
        const auto findings = bowfront::fit::checks(read.value, sums, layout);
        const auto* front = sums.pane(bowfront::CaseSide::front);
        std::printf("%s: %s, front blank %.2f x %.2f mm\n", read.value.name.c_str(),
                    std::string(status_text(verdict(findings))).c_str(), front->blank_length,
                    front->blank_width);
        return verdict(findings) == bowfront::Status::fail ? 1 : 0;
    } catch (const bowfront::InputError& error) {
        std::fprintf(stderr, "%s\n", error.what());
        return 2;
    }
}
