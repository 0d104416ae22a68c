#include <algorithm>
#include <cmath>

#include "check_groups.hpp"

namespace bowfront::fit {
namespace {

// What is to spare when a rectangle lies in another, the better of both ways; negative where it
// does not go in.
double spare(double length, double width, double across, double deep) {
    return std::max(std::min(across - length, deep - width), std::min(across - width, deep - length));
}

constexpr double kSameThickness = 1e-6;  // mm; thicknesses are given, not computed

void check_stock(const Case& c, const PaneSums<double>& pane, CheckList& list) {
    const PaneSpec& spec = *c.pane(pane.side);
    const std::string_view library = c.sheets.at(spec.sheet).like->name;
    bool any = false;
    double best = 0;
    for (const StockItem& item : c.stock) {
        const bool same = (item.material == spec.sheet || item.material == library) &&
                          std::abs(item.thickness - spec.thickness.value) < kSameThickness;
        if (same) {
            const double left =
                spare(pane.blank_length, pane.blank_width, item.size[0], item.size[1]);
            best = any ? std::max(best, left) : left;
            any = true;
        }
    }
    if (any) {
        list.at_least({Code::fit_stock, "stock", std::string(side_text(pane.side)),
                       "blank on the largest sheet in stock"},
                      best, 0, [](double missing) {
                          return "buy a sheet larger by " + at_least_text(missing);
                      });
    }
}

// A blank that is cut once, and whose shrink nobody measured, can't be mended.
void check_shrink(const Case& c, const PaneSums<double>& pane, CheckList& list) {
    const PaneSpec& spec = *c.pane(pane.side);
    if (!pane.heated || spec.blank.method.value == BlankMethod::trim_after) {
        return;
    }
    const SheetSpec& sheet = c.sheets.at(spec.sheet);
    const double measured = (sheet.shrink_along.given() ? 1 : 0) + (sheet.shrink_across.given() ? 1 : 0);
    list.at_least({Code::fit_shrink, "shrink-measured", std::string(side_text(pane.side)),
                   "directions in which the sheet's shrink is known from coupons", ""},
                  measured, 2, [](double) {
                      return std::string(
                          "measure coupons of this sheet and state its shrink under \"sheets\", "
                          "or trim after forming");
                  });
    if (list.last().status == Status::fail) {
        list.last().status = Status::warn;  // the library's shrink may hold; nobody knows
        list.last().note = "only coupons of this very sheet can tell; state what they measure under "
                           "\"sheets\"";
    }
}

}  // namespace

void check_blank(const Case& c, const PaneSums<double>& pane, CheckList& list) {
    check_shrink(c, pane, list);
    check_stock(c, pane, list);
    if (pane.heated && c.oven) {
        list.at_least({Code::fit_oven, "oven", std::string(side_text(pane.side)),
                       "blank lying flat in the oven"},
                      spare(pane.blank_length, pane.blank_width, c.oven->inside[0].value,
                            c.oven->inside[1].value),
                      0, [&](double) {
                          return "an oven at least " + at_least_text(pane.blank_length) + " x " +
                                 at_least_text(pane.blank_width) + " inside";
                      });
    }
}

void check_heating(const Case& c, const HeatingSums<double>& heating, CheckList& list) {
    const std::string side(side_text(heating.side));
    const std::string oven =
        c.oven ? "oven set and its accuracy" : "oven set; no oven is described";
    list.at_least({Code::fit_heat, "heat-face", side, oven + " under the face limit", "K",
                   "heating/" + side + "/margin_to_limit"},
                  heating.margin_to_limit, 0, [&](double missing) {
                      return "set the oven " + rounded_text(std::ceil(missing), 0) +
                             " K lower, or use one that holds its temperature closer";
                  });
    if (list.last().status == Status::pass && heating.margin_to_limit < kHeatReserve) {
        list.last().status = Status::warn;
        list.last().advice = "keep " + rounded_text(kHeatReserve, 0) +
                             " K to the face limit: set the oven " +
                             rounded_text(std::ceil(kHeatReserve - heating.margin_to_limit), 0) +
                             " K lower";
    }
    list.at_least({Code::fit_heat, "heat-core", side, oven + " over the forming temperature", "K",
                   "heating/" + side + "/margin_to_core"},
                  heating.margin_to_core, 0, [](double missing) {
                      return "set the oven " + rounded_text(std::ceil(missing), 0) +
                             " K higher, or use one that holds its temperature closer";
                  });
}

}  // namespace bowfront::fit
