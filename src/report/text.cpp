#include <algorithm>
#include <cmath>
#include <numbers>

#include "bowfront/base/number_text.hpp"
#include "bowfront/report/measuring_card.hpp"
#include "bowfront/report/report.hpp"
#include "build_text.hpp"
#include "access_report.hpp"
#include "finding_text.hpp"
#include "pane_text.hpp"
#include "shelf_report.hpp"
#include "shop_size_text.hpp"
#include "whole_text.hpp"

namespace bowfront::report {
namespace {

constexpr double kDegrees = 180 / std::numbers::pi;
constexpr int kDecimals = 2;

std::string shown(double value) { return fixed_text(value, kDecimals); }

std::string percent(const study::Share& share) {
    return fixed_text(share.value * 100, 1) + " % ± " + fixed_text(share.error * 100, 1) + " %";
}

void headline(const Content& content, std::string& text) {
    const Status status = verdict(content.findings);
    text += content.c.name + ": ";
    switch (status) {
        case Status::pass: text += "pass - every check holds, worst case included\n"; break;
        case Status::warn:
            text += "pass with warnings - every nominal holds, a worst case does not\n";
            break;
        case Status::fail: text += "FAIL - do not cut from these figures\n"; break;
    }
    text += "First-time fit of all panes: " + percent(content.chance.fit) + " (" +
            std::to_string(content.chance.options.samples) + " samples, seed " +
            std::to_string(content.chance.options.seed) + ")\n";
    for (const CaseSide& side : sides_of(content.c.plan)) {
        if (content.c.is_open(side)) {
            text += "The " + std::string(side_text(side)) + " has no pane and stays open.\n";
        }
    }
}

// Where the bends of a pane of several pieces begin and end on its blank.
std::string bends_text(const PaneSums<double>& pane) {
    std::string text;
    for (std::size_t i = 0; i < pane.bends.size(); ++i) {
        const BendSums<double>& bend = pane.bends[i];
        text += "\n  bend " + std::to_string(i + 1) + "        on the blank from " +
                shown(bend.blank_start) + " to " + shown(bend.blank_end) +
                " mm from its start edge, inside radius " + shown(bend.inside_radius) +
                " mm, sweep " + shown(bend.sweep * kDegrees) + " deg" +
                (bend.bow == Bow::in ? ", into the case" : "");
    }
    return text;
}

std::string spread_text(const study::PaneSpreads& pane) {
    const auto shown_spread = [](const study::Spread& spread) {
        return shown(spread.mean) + " ± " + shown(spread.deviation);
    };
    std::string text = "  engagement settled, mean ± deviation: ";
    for (std::size_t i = 0; i < kPaneEdges.size(); ++i) {
        text += (i == 0 ? "" : ", ") + std::string(edge_text(kPaneEdges[i])) + " " +
                shown_spread(pane.engagement[i]);
    }
    return text + "\n  room, mean ± deviation: vertical " + shown_spread(pane.vertical) +
           ", sideways " + shown_spread(pane.sideways) + "\n";
}

void shop_sizes(const CaseSide& side, const study::ShopSizes& shop, std::string& text) {
    for (const study::PaneShopSizes& pane : shop.panes) {
        if (pane.side != side) {
            continue;
        }
        text += "  by hand       " + shop_sizes_text(pane.length, pane.width, shop.step);
        if (pane.trimmed_length) {
            text += ", trimmed to " +
                    shop_sizes_text(*pane.trimmed_length, *pane.trimmed_height, shop.step);
        }
        text += "\n";
    }
}

void pane(const PaneSums<double>& pane, const Content& content, std::string& text) {
    text += "\nPane, " + std::string(side_text(pane.side)) +
            (!pane.curved            ? " (flat)\n"
             : pane.is_run()         ? " (of several pieces, bent from one blank)\n"
             : pane.bow == Bow::out ? " (curved)\n"
                                    : " (curved into the case: its hollow face looks outwards)\n");
    text += "  opening       " + shown(pane.opening_length) + " x " + shown(pane.opening_height) +
            " mm\n";
    text += "  finished      " + shown(pane.length) + " x " + shown(pane.height) + " x " +
            shown(pane.formed_thickness) + " mm";
    if (pane.curved) {
        text += ", inside radius " + shown(pane.inside_radius) + " mm, chord " +
                shown(pane.chord) + ", rise " + shown(pane.rise) + ", sweep " +
                shown(pane.sweep * kDegrees) + " deg";
    }
    text += bends_text(pane);
    text += "\n  cut the blank " + shown(pane.blank_length) + " x " + shown(pane.blank_width) +
            " mm" + (pane.heated ? "" : " (not heated)") + "\n";
    shop_sizes(pane.side, content.shop, text);
    text += "  edge     engagement  least   most   edge gap  face gap  least\n";
    for (const PaneEdge which : kPaneEdges) {
        const EdgeSums<double>& edge = pane.edge(which);
        const auto column = [](double value, std::size_t width) {
            const std::string number = shown(value);
            return std::string(width - std::min(width, number.size()), ' ') + number;
        };
        std::string name(edge_text(which));
        name.resize(8, ' ');
        text += "  " + name + column(edge.engagement, 11) + column(edge.engagement_least, 7) +
                column(edge.engagement_most, 7) + column(edge.clearance, 11) +
                column(edge.face_clearance, 10) + column(edge.face_clearance_least, 7) + "\n";
    }
    text += states_text(pane) + strength_text(pane);
    for (const fit::LoadingPath& path : content.paths) {
        if (path.side == pane.side) {
            text += loading_text(path);
        }
    }
    for (const study::PaneSpreads& spread : content.spreads) {
        if (spread.side == pane.side) {
            text += spread_text(spread);
        }
    }
    for (const study::PaneChance& entry : content.chance.panes) {
        if (entry.side == pane.side) {
            text += "  first-time fit " + percent(entry.fit) + "\n";
        }
    }
}

std::string form_pieces_text(const FormSizes<double>& sizes) {
    constexpr std::size_t kMostTold = 12;
    std::string face;
    bool hollow = false;
    for (const FormPiece<double>& piece : sizes.pieces) {
        face += (face.empty() ? " " : ", ") +
                (piece.radius > 0 ? "radius " + shown(piece.radius) + " mm over " +
                                        shown(piece.sweep * kDegrees) + " deg" +
                                        (piece.hollow ? " (hollow)" : "")
                                  : shown(piece.length) + " mm straight");
        hollow = hollow || (piece.radius > 0 && piece.hollow);
    }
    if (sizes.pieces.size() > kMostTold) {
        face = " " + std::to_string(sizes.pieces.size()) +
               " straights and arcs, which the report tells one by one";
    }
    return (face.empty() ? face : "  its face, from the pane's start:" + face + "\n") +
           (hollow ? "  hold the sheet down into the hollow places until it has cooled\n" : "");
}

void forms(const CaseSums<double>& sums, std::string& text) {
    for (const auto& form : sums.forms) {
        const FormSizes<double>& sizes = form.sizes;
        text += "\nForm for the " + std::string(side_text(form.side)) + " pane\n";
        text += "  " + std::to_string(std::lround(sizes.rib_count)) + " ribs, " +
                (sizes.pieces.empty() ? "edge" : "tightest edge") + " radius " +
                shown(sizes.rib_radius) + " mm over " + shown(sizes.rib_sweep * kDegrees) +
                " deg, face radius with skin and cover " + shown(sizes.face_radius) + " mm\n" +
                form_pieces_text(sizes);
        text += "  skin " + shown(sizes.skin_length) + " x " + shown(sizes.width) +
                " mm flat; fences " + shown(sizes.fence_gap) + " mm apart\n";
    }
    for (const auto& heating : sums.heating) {
        text += "\nOven for the " + std::string(side_text(heating.side)) + " pane\n";
        text += "  set " + shown(heating.oven_set) + " °C; core at least " +
                shown(heating.core_min) + ", face never over " + shown(heating.face_limit) +
                " °C; " + shown(heating.margin_to_limit) + " K to that limit\n";
        text += "  shop rule for the soak: " + fixed_text(heating.shop_rule, 1) +
                " min (common practice, no source)\n";
    }
}

void findings(const std::vector<Finding>& all, std::string& text) {
    const auto passed = std::count_if(all.begin(), all.end(), [](const Finding& finding) {
        return finding.status == Status::pass;
    });
    text += "\nChecks: " + std::to_string(passed) + " of " + std::to_string(all.size()) + " pass\n";
    for (const Finding* const finding : worst_first(all)) {
        text += finding_text(*finding);
    }
}

}  // namespace

std::string to_text(const Content& content) {
    std::string text;
    headline(content, text);
    for (const auto& sums : content.sums.panes) {
        pane(sums, content, text);
    }
    text += "\nPosts, cut by hand: " + shop_size_text(content.shop.post.size, content.shop.step) +
            " long (" + over_text(content.shop.post) + ")\n";
    text += shelves_text(content.c, content.shelves);
    text += build_text(content.c, content.build) + timber_text(content.c, content.timber);
    forms(content.sums, text);
    text += whole_text(content.whole);
    if (content.opened) {
        text += access_text(content);
    }
    if (content.cost) {
        text += cost_text(*content.cost);
    }
    findings(content.findings, text);
    if (!content.assumed.empty()) {
        text += "\nAssumed, because the case file does not say\n";
        for (const Assumption& assumption : content.assumed) {
            text += "  " + assumption.pointer + ": " + assumption.value + " (" + assumption.why +
                    ")\n";
        }
    }
    text += "\nOrder of work\n";
    for (const WorkStep& step : order_of_work(content.c, content.sums)) {
        text += "  - " + step.step + "\n";
        if (!step.hold.empty()) {
            text += "    HOLD: " + step.hold + "\n";
        }
    }
    text += "\nCautions\n";
    for (const std::string& caution : cautions(content)) {
        text += "  - " + caution + "\n";
    }
    return text;
}

}  // namespace bowfront::report
