#include "bowfront/pipeline/design.hpp"

#include <utility>

#include "bowfront/base/error.hpp"
#include "bowfront/fit/checks.hpp"
#include "build_figures.hpp"
#include "parts.hpp"

namespace bowfront {
namespace {

void refuse(const std::vector<Objection>& objections, const io::Places& places,
            const std::string& file_name) {
    std::vector<Diagnostic> faults;
    for (const Objection& objection : objections) {
        const io::Place place = places.of_value(objection.pointer);
        faults.push_back({Code::input_contradiction, file_name, place.line, place.column,
                          objection.pointer, objection.found, objection.wanted});
    }
    if (!faults.empty()) {
        throw InputError(std::move(faults));
    }
}

// How the case is opened, as the way in, is left to `design`: a sweep has no use for it.
OpenedCase opened_case(const Case& c, const fit::Layout& layout, std::vector<Finding>& findings) {
    OpenedCase out;
    out.sums = fit::solve_access(c);
    out.layout = fit::access_layout(c, out.sums, layout);
    append(fit::access_checks(c, out.sums, out.layout, layout), findings);
    return out;
}

}  // namespace

Design design(std::string_view text, const std::string& file_name,
              const study::ChanceOptions& chance) {
    Design result;
    result.read = io::read_case(text, file_name);
    fit::Solution solution = fit::solution(result.c());
    refuse(solution.objections, result.read.places, file_name);
    refuse(fit::access_objections(result.c()), result.read.places, file_name);
    result.sums = std::move(solution.sums);
    result.layout = std::move(solution.layout);
    // Shelves, as the way in, are left to `design`: a sweep has no use for them.
    result.shelves = fit::shelves(result.c(), result.sums, result.layout);
    refuse(result.shelves.objections, result.read.places, file_name);
    result.findings = fit::checks(result.c(), result.sums, result.layout);
    append(fit::shelf_checks(result.c(), result.sums, result.shelves), result.findings);
    if (result.c().access) {
        result.access = opened_case(result.c(), result.layout, result.findings);
    }
    // Left out of `checks`: it costs more than they and the sums do together, and a sweep runs those
    // for every variant.
    result.paths = fit::loading_paths(result.c(), result.sums, result.layout);
    append(fit::path_checks(result.c(), result.sums, result.paths), result.findings);
    result.chance = study::first_time_fit(result.c(), result.sums, chance);
    append(study::chance_checks(result.chance), result.findings);
    result.spreads = study::spreads(result.c(), result.sums, chance);
    result.shop = study::shop_sizes(result.c(), result.sums);
    append(study::shop_checks(result.shop), result.findings);
    // The parts are made here and in `make` only: sweeps and advice know nothing of them.
    const std::vector<Part> parts = all_parts(result);
    result.whole = whole::whole_sums(result.c(), result.layout, parts);
    append(whole::whole_checks(result.c(), result.whole), result.findings);
    if (OpenedCase* const access = result.access ? &*result.access : nullptr) {
        access->weight = whole::access_weight(result.c(), access->sums, access->layout,
                                              result.layout, parts);
        append(whole::access_weight_checks(result.c(), access->weight), result.findings);
    }
    if (result.c().prices) {
        result.cost = whole::cost_sums(result.c(), parts);
    }
    Book<double> book;
    result.build = fit::build_sums(result.c(), result.layout, book);
    result.timber = fit::timber_list(result.c(), timber_pieces(parts), book);
    return result;
}

}  // namespace bowfront
