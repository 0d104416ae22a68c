#include "parts.hpp"

#include "bowfront/pattern/access_parts.hpp"
#include "bowfront/pattern/case_parts.hpp"
#include "bowfront/pattern/shelf_parts.hpp"

namespace bowfront {

std::vector<Part> all_parts(const Design& design) {
    std::vector<Part> parts = pattern::case_parts(design.c(), design.sums, design.layout);
    pattern::mark_pins(design.c(), design.shelves, parts);
    for (Part& part : pattern::shelf_parts(design.c(), design.shelves)) {
        parts.push_back(std::move(part));
    }
    if (design.access) {
        pattern::add_access_parts(design.c(), design.access->sums, design.access->layout, parts);
    }
    for (const auto& form : design.sums.forms) {
        for (Part& part : pattern::form_parts(design.c(), form)) {
            parts.push_back(std::move(part));
        }
    }
    return parts;
}

}  // namespace bowfront
