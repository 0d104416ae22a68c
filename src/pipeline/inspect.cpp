#include "bowfront/pipeline/inspect.hpp"

#include "bowfront/base/error.hpp"
#include "bowfront/io/read_measured.hpp"

namespace bowfront {

Inspected inspect(const Design& design, std::string_view text, const std::string& file_name) {
    io::ReadMeasured read = io::read_measured(text, file_name, design.c());
    std::vector<Diagnostic> faults;
    for (const Objection& objection : study::objections(design.c(), design.sums, read.value)) {
        // The pointer is one of the case file: it says which size the measurements contradict.
        faults.push_back({Code::input_contradiction, file_name, 0, 0, objection.pointer,
                          "as measured, " + objection.found, objection.wanted});
    }
    if (!faults.empty()) {
        throw InputError(std::move(faults));
    }
    return {std::move(read.assumed), study::inspect(design.c(), design.sums, read.value)};
}

}  // namespace bowfront
