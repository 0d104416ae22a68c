#include <algorithm>

#include "access_report.hpp"
#include "bowfront/base/number_text.hpp"
#include "bowfront/materials/sheet.hpp"
#include "bowfront/report/report.hpp"

namespace bowfront::report {
namespace {

void add_shelves(const Case& c, std::vector<std::string>& list) {
    if (c.shelves.empty()) {
        return;
    }
    list.push_back(
        "Shelves are reckoned for the load stated, spread evenly and lying still, and not for what is "
        "dropped, leant or hung on them. Load a new shelf by and by, and look at it again after a "
        "month.");
    const bool glass = std::ranges::any_of(c.shelves, [](const ShelfSpec& shelf) {
        return shelf.sheet != nullptr && shelf.sheet->kind == SheetKind::float_glass;
    });
    if (glass) {
        list.push_back(
            "Glass shelves: ask for toughened glass (EN 12150; EN 14072 is for glass in furniture) "
            "with all edges ground and arrised, polished where hands reach, notches and corners "
            "rounded before it is toughened. The sums take the lasting stress of annealed glass, "
            "which breaks to shards. The supplier has the last word on kind, thickness, notches and "
            "load; lay the glass on soft sleeves, not on bare steel.");
    }
}

std::string kilograms(double mass) {
    return rounded_text(mass, 1) + " kg";
}

// By the heavier of empty and loaded.
void add_standing(const Content& content, std::vector<std::string>& list) {
    const auto& standing = content.whole.loaded ? content.whole.loaded : content.whole.empty;
    const Fixing fixed = content.c.stand.fixed.value;
    if (fixed != Fixing::none) {
        list.push_back("What holds the case to the " +
                       std::string(fixed == Fixing::wall ? "wall" : "floor") +
                       " must bear a push at its upper edge: choose fixings for what it is made "
                       "of, and put nothing into the case before they hold.");
    } else if (standing && content.whole.height >= whole::kTall &&
               standing->weight.mass >= whole::kHeavy) {
        list.push_back("This case is tall and heavy (" + rounded_text(content.whole.height, 0) +
                       " mm, " + kilograms(standing->weight.mass) +
                       "): fix it to the wall or the floor. Bedroom storage from 686 mm and 13.6 "
                       "kg on falls under ASTM F2057-23 for its tipping over; no such standard of "
                       "display cases is known here.");
    }
}

void add_lifting(const Content& content, std::vector<std::string>& list) {
    if (!content.whole.empty) {
        return;
    }
    const whole::Standing<double>& empty = *content.whole.empty;
    std::string text = "Lifting: take the contents out first; hold the case under its base on both "
                       "sides of its centre of gravity, never by the top or the panes, which are "
                       "no handles. Empty it weighs " +
                       kilograms(empty.weight.mass);
    if (!empty.people) {
        text += ": too much for people alone, use lifting gear";
    } else if (*empty.people > 1) {
        text += ": " + rounded_text(*empty.people, 0) + " people at the best of conditions";
    }
    list.push_back(text + ". What is bulky or held away from the body asks for more people.");
}

}  // namespace

std::vector<std::string> cautions(const Content& content) {
    const Case& c = content.c;
    const CaseSums<double>& sums = content.sums;
    std::vector<std::string> list;
    const auto add = [&](std::string text) { list.push_back(std::move(text)); };
    add("All sizes are estimates from the values listed here. Measure the sheet, try a sample, and "
        "check before cutting good material.");
    bool glass = false;
    for (const PaneSpec& pane : c.panes) {
        glass = glass || c.sheets.at(pane.sheet).like->kind == SheetKind::float_glass;
    }
    if (c.access_pane) {
        glass = glass || c.sheets.at(c.access_pane->sheet).like->kind == SheetKind::float_glass;
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
    for (std::string& caution : access_cautions(content)) {
        add(std::move(caution));
    }
    add_lifting(content, list);
    add_standing(content, list);
    add_shelves(c, list);
    add("A tall or heavy case can tip: stand it level and fix it to the wall where people pass. "
        "Local codes and licensed practice decide what is required.");
    return list;
}

}  // namespace bowfront::report
