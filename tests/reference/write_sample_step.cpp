// Writes the sample assembly as a STEP file, for judges that are no C++ programs.

#include <fstream>
#include <iostream>

#include "support/sample_assembly.hpp"

int main(int argument_count, char** arguments) {
    if (argument_count != 2) {
        std::cerr << "usage: write_sample_step FILE\n";
        return 2;
    }
    std::ofstream file(arguments[1], std::ios::binary);
    file << bowfront::step::write(bowfront::sample::assembly(),
                                  {"2024-05-06T07:08:09", "bowfront", "1.2.3"});
    file.close();
    return file ? 0 : 3;
}
