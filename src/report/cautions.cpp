#include "bowfront/base/number_text.hpp"
#include "bowfront/materials/sheet.hpp"
#include "bowfront/report/report.hpp"

namespace bowfront::report {

std::vector<std::string> cautions(const Case& c, const CaseSums<double>& sums) {
    std::vector<std::string> list;
    const auto add = [&](std::string text) { list.push_back(std::move(text)); };
    add("All sizes are estimates from the values listed here. Measure the sheet, try a sample, and "
        "check before cutting good material.");
    bool glass = false;
    for (const PaneSpec& pane : c.panes) {
        glass = glass || c.sheets.at(pane.sheet).like->kind == SheetKind::float_glass;
    }
    if (!sums.heating.empty()) {
        add("Hot plastic gives off vapours that can be hazardous and can burn: use a vented "
            "forced-air oven with an over-temperature cut-out, never one for food; no open flame; "
            "stay with it; keep an extinguisher at hand.");
        for (const auto& heating : sums.heating) {
            add("Never let the " + std::string(side_text(heating.side)) + " pane's face pass " +
                rounded_text(heating.face_limit, 0) +
                " °C. The sheet maker's own data take precedence over every temperature here.");
        }
        add("Hot sheet and form burn skin: heat-proof gloves, long sleeves, eye protection, and a "
            "second pair of hands. Take the protective film off before heating.");
        add("Measure the shrink of the very sheet on marked coupons before cutting blanks.");
    }
    add("Saws, routers and lasers: guard, eye and ear protection, dust extraction and a mask for "
        "wood and plastic dust; never laser-cut PVC. Follow the machine maker's rules.");
    if (glass) {
        add("Glass: have edges arrised, wear cut-proof gloves, and ask the supplier which kind of "
            "safety glass your place requires; toughened glass can't be cut afterwards.");
    }
    add("A tall or heavy case can tip: stand it level and fix it to the wall where people pass. "
        "Local codes and licensed practice decide what is required.");
    return list;
}

}  // namespace bowfront::report
