#include "bowfront/pipeline/design.hpp"

#include <utility>

#include "bowfront/base/error.hpp"
#include "bowfront/fit/checks.hpp"
#include "bowfront/pattern/case_parts.hpp"
#include "build_figures.hpp"

namespace bowfront {

Design design(std::string_view text, const std::string& file_name,
              const study::ChanceOptions& chance) {
    Design result;
    result.read = io::read_case(text, file_name);
    std::vector<Diagnostic> faults;
    fit::Solution solution = fit::solution(result.c());
    for (const Objection& objection : solution.objections) {
        const io::Place place = result.read.places.of_value(objection.pointer);
        faults.push_back({Code::input_contradiction, file_name, place.line, place.column,
                          objection.pointer, objection.found, objection.wanted});
    }
    if (!faults.empty()) {
        throw InputError(std::move(faults));
    }
    result.sums = std::move(solution.sums);
    result.layout = std::move(solution.layout);
    result.findings = fit::checks(result.c(), result.sums, result.layout);
    // Left out of `checks`: it costs more than they and the sums do together, and a sweep runs those
    // for every variant.
    result.paths = fit::loading_paths(result.c(), result.sums, result.layout);
    for (Finding& finding : fit::path_checks(result.c(), result.sums, result.paths)) {
        result.findings.push_back(std::move(finding));
    }
    result.chance = study::first_time_fit(result.c(), result.sums, chance);
    for (Finding& finding : study::chance_checks(result.chance)) {
        result.findings.push_back(std::move(finding));
    }
    result.spreads = study::spreads(result.c(), result.sums, chance);
    result.shop = study::shop_sizes(result.c(), result.sums);
    for (Finding& finding : study::shop_checks(result.shop)) {
        result.findings.push_back(std::move(finding));
    }
    Book<double> book;
    result.build = fit::build_sums(result.c(), result.layout, book);
    result.timber = fit::timber_list(
        result.c(), timber_pieces(pattern::case_parts(result.c(), result.sums, result.layout)),
        book);
    return result;
}

}  // namespace bowfront
