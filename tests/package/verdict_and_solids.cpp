// A user of the libraries with the solid kernel: makes the base of a case as a solid, writes it as
// STEP, reads it back and prints both volumes.

#include <cstdio>
#include <fstream>
#include <sstream>

#include "bowfront/fit/checks.hpp"
#include "bowfront/io/read_case.hpp"
#include "bowfront/pattern/case_parts.hpp"
#include "bowfront/step/step.hpp"

int main(int argc, char** argv) {
    if (argc != 2) {
        return 2;
    }
    std::ostringstream text;
    text << std::ifstream(argv[1]).rdbuf();
    const auto read = bowfront::io::read_case(text.str(), argv[1]);
    const auto sums = bowfront::fit::solve(read.value);
    const auto parts = bowfront::pattern::case_parts(read.value, sums,
                                                     bowfront::fit::layout(read.value, sums));
    const bowfront::Part& base = parts.front();
    bowfront::step::Assembly assembly{read.value.name, {}};
    assembly.items.push_back({base.id, base.name, base.group, base.finish,
                              bowfront::solid::make(base.body, base.id), volume(base.body),
                              base.placements});
    const auto instances = bowfront::step::read(bowfront::step::write(assembly, {}));
    if (instances.size() != 1) {
        return 1;
    }
    std::printf("%s: %.3f mm3 drawn, %.3f mm3 read back\n", instances.front().name.c_str(),
                volume(base.body), instances.front().measures.volume);
    return 0;
}
