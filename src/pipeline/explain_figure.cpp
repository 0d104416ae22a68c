#include <map>
#include <numbers>

#include "bowfront/base/error.hpp"
#include "bowfront/base/number_text.hpp"
#include "bowfront/io/nearest.hpp"
#include "bowfront/pattern/case_parts.hpp"
#include "bowfront/pipeline/design.hpp"
#include "bowfront/report/derivation.hpp"
#include "build_figures.hpp"
#include "parts.hpp"
#include "path_figures.hpp"

namespace bowfront {
namespace {

constexpr std::string_view kAccess = "access/";

void add_part(const Part& part, Workings& workings) {
    const auto measured = [&](const std::string& key, std::string_view symbol, Kind kind,
                              double value, std::string_view source) {
        (void)workings.figure("parts/" + part.id + "/" + key, symbol, kind, Traced(value), source);
    };
    measured("area", "A", Kind::plain, part.pattern.outline.area(),
             "area of the outline: shoelace formula and circular segments");
    measured("thickness", "t", Kind::length, part.pattern.thickness, "the board or sheet");
    measured("count", "n", Kind::count, part.count(), "number of places it stands in");
}

// What a form's part weighs; those of the case are weighed by the sums of the whole.
void add_weight(const Part& part, Workings& workings) {
    Book<Traced> book(workings);
    if (part.density > 0) {
        (void)whole::part_weight(part, book);
    } else {
        (void)whole::part_volume(part, book);
    }
}

void add_parts(const Design& design, Workings& workings) {
    const std::vector<Part> parts = all_parts(design);
    for (const Part& part : parts) {
        add_part(part, workings);
        if (part.assembly != whole::kWeighed) {
            add_weight(part, workings);
        }
    }
    whole::whole_sums(design.c(), design.layout, parts, workings);
    if (design.c().prices) {
        whole::cost_sums(design.c(), parts, workings);
    }
    add_build_figures(design, parts, workings);
}

void add_share(const study::Share& share, const study::ChanceOptions& options,
               const std::string& value_path, const std::string& error_path,
               std::string_view what, Workings& workings) {
    const Traced value = workings.figure(
        value_path, "P", Kind::plain, Traced(share.value),
        "counted: share of " + std::to_string(options.samples) + " samples, seed " +
            std::to_string(options.seed) + ", in which every limit of every edge of " +
            std::string(what) + " holds in every state of the air");
    workings.figure(error_path, "ΔP", Kind::plain,
                    sqrt(value * (1 - value) / Traced(options.samples)),
                    "standard error of a share");
}

void add_chance(const study::Chance& chance, Workings& workings) {
    add_share(chance.fit, chance.options, "first_time_fit/value", "first_time_fit/error",
              "every pane", workings);
    for (const study::PaneChance& pane : chance.panes) {
        const std::string path = "panes/" + std::string(side_text(pane.side)) + "/first_time_fit";
        add_share(pane.fit, chance.options, path, path + "_error", "this pane", workings);
    }
}

[[noreturn]] void refuse(const std::string& quantity, const Workings& workings,
                         const std::map<std::string, const Finding*>& checks) {
    std::vector<std::string_view> known;
    for (const auto& [path, figure] : workings.figures()) {
        known.push_back(path);
    }
    for (const auto& [path, finding] : checks) {
        known.push_back(path);
    }
    std::string inside;
    for (const std::string_view path : known) {
        if (path.starts_with(quantity + "/")) {
            inside += (inside.empty() ? "" : ", ") + std::string(path);
        }
    }
    if (!inside.empty()) {
        throw InputError({{Code::input_value, {}, 0, 0, {},
                           "\"" + quantity + "\" is no figure but holds some",
                           "ask for one of " + inside}});
    }
    const std::string near = io::nearest(quantity, known);
    throw InputError({{Code::input_value, {}, 0, 0, {}, "there is no figure \"" + quantity + "\"",
                       near.empty() ? "name a path of the report, as panes/front/blank/length"
                                    : "did you mean " + near + "?"}});
}

}  // namespace

std::string explain_figure(const Design& design, const std::string& quantity, bool as_json) {
    Workings workings;
    const CaseSums<Traced> sums = fit::solve(design.c(), workings);
    add_path_figures(design, sums, workings);
    fit::explain_shelves(design.c(), sums, design.shelves, workings);
    add_parts(design, workings);
    add_chance(design.chance, workings);
    study::explain_spreads(design.spreads, design.chance.options, workings);
    study::explain_shop_sizes(design.c(), design.shop, workings);
    std::map<std::string, const Finding*> checks;
    for (const Finding& finding : design.findings) {
        checks.emplace("checks/" + finding.id + "/" + finding.about, &finding);
    }
    // The frame about the side that opens has figures of its own under the panes' paths.
    Workings opening;
    if (design.c().access) {
        (void)fit::solve_access(design.c(), opening);
    }
    if (const auto check = checks.find(quantity); check != checks.end()) {
        const bool opens = check->second->figure.starts_with(kAccess);
        return report::check_derivation(*check->second, opens ? opening : workings, as_json);
    }
    if (quantity.starts_with(kAccess) && opening.find(quantity) != nullptr) {
        return as_json ? report::derivation_json(opening, quantity) : explain(opening, quantity);
    }
    if (workings.find(quantity) == nullptr) {
        refuse(quantity, quantity.starts_with(kAccess) ? opening : workings, checks);
    }
    return as_json ? report::derivation_json(workings, quantity) : explain(workings, quantity);
}

}  // namespace bowfront
